import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { ANSWER_STEPS } from "@/lib/brief/draft";
import { asked, couple, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { plansOf } from "@/app/_server/plans";
import { Rain } from "@/app/_parts/rain";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Fees } from "@/components/desk/fees";
import { Findings } from "@/components/desk/findings";
import { Answers, type Answer } from "@/components/form/answers";
import { saidShown } from "@/components/form/said";
import { stepTitle } from "@/components/form/steps";
import { oneOf, shownValues } from "@/components/form/values";
import { Caution } from "@/components/plan/caution";
import { Day } from "@/components/plan/day";
import { ErrorSummary } from "@/components/ui/errors";
import { AreaField } from "@/components/ui/field";
import { Names } from "@/components/ui/names";
import { sayDay } from "@/components/ui/say";
import { foundOf } from "@/lib/words/rain";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking, actor, say } = await couple();
  const kept = heldFor(await asked(searchParams, "kept"), "send", actor.reference);
  return { title: `${kept && kept.errors.length > 0 ? say("Error: ") : ""}${say("Step {n} of {of}: {title}", { n: 8, of: 8, title: stepTitle("send", say) })} – ${booking.venue.name}` };
}

export default async function SendPage({ searchParams }: Props) {
  const { house, actor, booking, say } = await couple();
  if (!booking.open) redirect("/request/sent");
  if (!booking.brief) redirect("/request/guests?why=guests");
  if (!booking.chosen) redirect("/request/layout");
  if (booking.chosen.outdated) redirect("/request/layout?why=changed");
  const { venue } = booking;
  const { layout } = booking.chosen;
  const reader = booking.package.coordinator ? say("your coordinator") : say("the venue");
  const kept = heldFor(await asked(searchParams, "kept"), "send", actor.reference);
  const plans = await plansOf(house, actor, { reference: booking.reference, layout });
  const titleOf = (scene: string): string => layout.scenes.find((s) => s.id === scene)?.title ?? scene;
  const saved = booking.draft.extras?.notes ?? "";
  const notes = kept ? oneOf(kept.values, "notes") : saved;
  const errors = (kept?.errors ?? []).map((one) => ({ ...one, message: say.given(one.message) }));
  return (
    <CoupleFrame booking={booking} back={{ href: "/request/layout", text: stepTitle("layout", say) }} savedAt={booking.savedAt}>
      <ErrorSummary errors={errors} />
      <p className="step-line">{say("Step {n} of {of}", { n: 8, of: 8 })}</p>
      <h1>{stepTitle("send", say)}</h1>
      <p className="lead measure mt-4">{say("Read it through once more. Nothing goes to {reader} before you press Send.", { reader })}</p>
      {kept?.stale && <div className="errors mt-4" role="alert">
          <p><b>{say("Someone saved this booking while you had this page open.")}</b> {say("Below is how it stands now; look it over and send it if it is right.")}</p>
          {notes !== saved && <><p className="mt-2">{say("The words to the venue are two by now. Yours stand in the field below; saved meanwhile were these:")}</p><blockquote className="their-words mt-2">{saved || say("None")}</blockquote></>}
        </div>}
      <div className="answers-grid">
        <section className="section"><h2>{say("The day")}</h2>
          <Answers say={say} answers={[
            { name: say("Couple"), said: <Names names={booking.names} locale={venue.locale} /> }, { name: say("Date"), said: sayDay(booking.date, venue.locale) },
            { name: say("Package"), said: booking.package.name }, { name: say("Layout"), said: layout.title, step: "layout" },
          ]} />
        </section>
        {ANSWER_STEPS.map((step) => (
          <section className="section" key={step}><h2>{stepTitle(step, say)}</h2>
            <Answers say={say} answers={saidShown(step, shownValues(booking.draft, step), venue, say).filter((s) => s.field !== "notes").map((s): Answer => ({ name: s.name, said: s.said, step }))} />
          </section>
        ))}
      </div>
      <Day layout={layout} venue={venue} plans={plans} query={`ref=${encodeURIComponent(booking.reference)}`} say={say} />
      <p className="mt-4"><a href="/request/layout/adjust">{say("Move things on the plan by hand")}</a></p>
      <Rain layout={layout} venue={venue} reference={booking.reference} />
      <Caution say={say} />
      <div className="two-up max-w-[70rem]">
        <section className="section"><h2>{say("Fee summary")}</h2>{layout.quote ? <Fees quote={layout.quote} locale={venue.locale} tax={venue.tax} say={say} /> : <p className="mt-3">{say("This layout has not been priced.")}</p>}</section>
        <section className="section"><h2>{say("What the checks found")}</h2><Findings findings={foundOf(layout, say)} levels={layout.findings.some((f) => f.level === "must") ? ["must", "should", "note"] : ["should", "note"]} sceneWord={titleOf} say={say} /></section>
      </div>
      <form method="post" action="/request/send/go" noValidate className="section max-w-[50rem]">
        <h2>{say("Send it")}</h2>
        <input type="hidden" name="revision" value={booking.revision} />
        <AreaField name="notes" label={say("Anything {reader} should know? (optional)", { reader })} hint={say("10,000 characters at the most.")} value={notes} errors={errors} />
        <p className="small sec measure mt-4">{say("Once sent it is read-only to you until {reader} agrees it or returns it.", { reader })}</p>
        <div className="go-row">
          <button className="btn btn-go" type="submit" name="then" value="send">{say("Send to {venue}", { venue: venue.name })}</button>
          <button className="btn-quiet" type="submit" name="then" value="later">{say("Save and come back later")}</button>
        </div>
      </form>
    </CoupleFrame>
  );
}
