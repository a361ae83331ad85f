import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { ANSWER_STEPS } from "@/lib/brief/draft";
import { asked, couple, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { plansOf } from "@/app/_server/plans";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Fees } from "@/components/desk/fees";
import { Findings } from "@/components/desk/findings";
import { Answers, type Answer } from "@/components/form/answers";
import { saidIn } from "@/components/form/said";
import { stepTitle } from "@/components/form/steps";
import { oneOf, shownValues } from "@/components/form/values";
import { Caution } from "@/components/plan/caution";
import { Day } from "@/components/plan/day";
import { ErrorSummary } from "@/components/ui/errors";
import { AreaField } from "@/components/ui/field";
import { Names } from "@/components/ui/names";
import { sayDay } from "@/components/ui/say";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking, actor } = await couple();
  const kept = heldFor(await asked(searchParams, "kept"), "send", actor.reference);
  return { title: `${kept && kept.errors.length > 0 ? "Error: " : ""}Step 8 of 8: Check and send – ${booking.venue.name}` };
}

export default async function SendPage({ searchParams }: Props) {
  const { house, actor, booking } = await couple();
  if (!["invited", "started", "returned"].includes(booking.state)) redirect("/request/sent");
  if (!booking.brief) redirect("/request/guests?why=guests");
  if (!booking.chosen) redirect("/request/layout");
  if (booking.chosen.outdated) redirect("/request/layout?why=changed");
  const { venue } = booking;
  const { layout } = booking.chosen;
  const reader = booking.package.coordinator ? "your coordinator" : "the venue";
  const kept = heldFor(await asked(searchParams, "kept"), "send", actor.reference);
  const plans = await plansOf(house, actor, { reference: booking.reference, layout });
  const titleOf = (scene: string): string => layout.scenes.find((s) => s.id === scene)?.title ?? scene;
  const notes = kept ? oneOf(kept.values, "notes") : (booking.draft.extras?.notes ?? "");
  return (
    <CoupleFrame booking={booking} back={{ href: "/request/layout", text: stepTitle("layout") }} savedAt={booking.savedAt}>
      <ErrorSummary errors={kept?.errors ?? []} />
      <p className="step-line">Step 8 of 8</p>
      <h1>Check and send</h1>
      <p className="lead measure mt-4">Read it through once more. Nothing goes to {reader} before you press Send.</p>
      {kept?.stale && <p className="errors mt-4" role="alert"><b>Someone saved this booking while you had this page open.</b> Below is how it stands now; look it over and send it if it is right.</p>}
      <div className="answers-grid">
        <section className="section"><h2>The day</h2>
          <Answers answers={[
            { name: "Couple", said: <Names names={booking.names} locale={venue.locale} /> }, { name: "Date", said: sayDay(booking.date, venue.locale) },
            { name: "Package", said: booking.package.name }, { name: "Layout", said: layout.title, step: "layout" },
          ]} />
        </section>
        {ANSWER_STEPS.map((step) => (
          <section className="section" key={step}><h2>{stepTitle(step)}</h2>
            <Answers answers={saidIn(step, shownValues(booking.draft, step), venue).filter((s) => s.field !== "notes").map((s): Answer => ({ name: s.name, said: s.said, step }))} />
          </section>
        ))}
      </div>
      <Day layout={layout} venue={venue} plans={plans} query={`ref=${encodeURIComponent(booking.reference)}`} />
      <Caution />
      <div className="two-up max-w-[70rem]">
        <section className="section"><h2>Fee summary</h2>{layout.quote ? <Fees quote={layout.quote} locale={venue.locale} tax={venue.tax} /> : <p className="mt-3">This layout has not been priced.</p>}</section>
        <section className="section"><h2>What the checks found</h2><Findings findings={layout.findings} levels={["should", "note"]} sceneWord={titleOf} /></section>
      </div>
      <form method="post" action="/request/send/go" noValidate className="section max-w-[50rem]">
        <h2>Send it</h2>
        <input type="hidden" name="revision" value={booking.revision} />
        <AreaField name="notes" label={`Anything ${reader} should know? (optional)`} hint="10,000 characters at the most." value={notes} errors={kept?.errors ?? []} />
        <p className="small sec measure mt-4">Once sent it is read-only to you until {reader} agrees it or returns it.</p>
        <div className="go-row">
          <button className="btn btn-go" type="submit" name="then" value="send">Send to {venue.name}</button>
          <button className="btn-quiet" type="submit" name="then" value="later">Save and come back later</button>
        </div>
      </form>
    </CoupleFrame>
  );
}
