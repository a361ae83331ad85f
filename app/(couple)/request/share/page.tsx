import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { listLookLinks } from "@/lib/service";
import { asked, couple, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { oneOf } from "@/components/form/values";
import { CopyAddress } from "@/components/form/copy-address";
import { ErrorSummary } from "@/components/ui/errors";
import { TextField } from "@/components/ui/field";
import { sayMoment } from "@/components/ui/say";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking, actor, say } = await couple();
  const kept = heldFor(await asked(searchParams, "kept"), "share", actor.reference);
  return { title: `${kept && kept.errors.length > 0 ? say("Error: ") : ""}${say("Let someone look")} – ${booking.venue.name}` };
}

/** Links for family and friends: they see plan and answers, and change nothing. */
export default async function SharePage({ searchParams }: Props) {
  const { house, actor, booking, say } = await couple();
  const links = await listLookLinks(house, actor, { reference: booking.reference });
  if (!links.ok) redirect("/request?why=closed");
  const kept = heldFor(await asked(searchParams, "kept"), "share", actor.reference);
  const made = heldFor(await asked(searchParams, "made"), "look-link", actor.reference);
  const errors = (kept?.errors ?? []).map((one) => ({ ...one, message: say.given(one.message) }));
  return (
    <CoupleFrame booking={booking} back={{ href: "/request", text: say("Your day") }}>
      <ErrorSummary errors={errors} />
      <h1 className="mt-3">{say("Let someone look")}</h1>
      <p className="lead measure mt-4">{say("A parent, a witness, a friend who helps: with a link of their own they see your plans and your answers, and can change nothing.")}</p>
      <p className="small sec measure mt-2">{say("They see neither the fees nor what you write to the venue. A link ends when you withdraw it, or thirty days after your day.")}</p>
      {made && (
        <section className="section max-w-[50rem]" aria-labelledby="made-head" role="status">
          <h2 id="made-head">{say("The link for {name}", { name: oneOf(made.values, "label") })}</h2>
          <p className="mt-3">{oneOf(made.values, "email") ? say("It is on its way to {address}. You may also hand it on yourselves:", { address: oneOf(made.values, "email") }) : say("Hand it on yourselves; it is shown here this once:")}</p>
          <CopyAddress href={oneOf(made.values, "href")} label={say("Address of the link")} copy={say("Copy it")} copied={say("Copied.")} />
        </section>
      )}
      <form method="post" action="/request/share/make" noValidate className="section max-w-[34rem]">
        <h2>{say("A new link")}</h2>
        <TextField name="label" label={say("For whom is it?")} hint={say("A name by which you know the link again.")} value={kept ? oneOf(kept.values, "label") : ""} errors={errors} maxLength={80} />
        <TextField name="email" type="email" inputMode="email" label={say("Their mail address (optional)")} hint={say("We mail the link to it. Leave it empty to hand it on yourselves.")} value={kept ? oneOf(kept.values, "email") : ""} errors={errors} />
        <div className="go-row"><button className="btn btn-go" type="submit">{say("Make the link")}</button></div>
      </form>
      <section className="section max-w-[50rem]" aria-labelledby="links-head">
        <h2 id="links-head">{say("Links that open")}</h2>
        {links.value.length === 0 ? <p className="mt-3">{say("None: only the two of you and the venue see your day.")}</p> : (
          <ul className="ruled mt-3">
            {links.value.map((link) => (
              <li key={link.id} className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 py-3 border-b border-rule">
                <span><b><bdi>{link.label}</bdi></b><span className="block small sec">{say("Made {time}.", { time: sayMoment(link.madeAt, booking.venue) })} {link.lastOpenedAt ? say("Last opened {time}.", { time: sayMoment(link.lastOpenedAt, booking.venue) }) : say("Not opened yet.")}</span></span>
                <form method="post" action="/request/share/withdraw">
                  <input type="hidden" name="link" value={link.id} />
                  <button className="btn-quiet" type="submit">{say("Withdraw it")}<span className="hidden-words">: {link.label}</span></button>
                </form>
              </li>
            ))}
          </ul>
        )}
      </section>
    </CoupleFrame>
  );
}
