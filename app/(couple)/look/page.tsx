import type { Metadata } from "next";
import { ANSWER_STEPS } from "@/lib/brief/draft";
import { looking } from "@/app/_server/asking";
import { plansOf } from "@/app/_server/plans";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Answers } from "@/components/form/answers";
import { saidShown } from "@/components/form/said";
import { stepTitle } from "@/components/form/steps";
import { shownValues } from "@/components/form/values";
import { Caution } from "@/components/plan/caution";
import { Day } from "@/components/plan/day";
import { Names, namesText } from "@/components/ui/names";
import { sayDay, sayMoment } from "@/components/ui/say";

export async function generateMetadata(): Promise<Metadata> {
  const { seen, say } = await looking();
  return { title: `${say("The day of {names}", { names: namesText(seen.names, seen.venue.locale) })} – ${seen.venue.name}` };
}

const STANDING = {
  chosen: "This is the layout chosen so far. It has not been sent, and may still change.",
  sent: "This layout is with the venue, and not agreed yet.",
  agreed: "This layout is agreed.",
  set: "Nothing has been sent yet: this is the venue’s own standard layout, which is not agreed.",
} as const;

/** For those whom the couple gave a link: plan and answers, and nothing that could be changed. */
export default async function LookPage() {
  const { house, actor, seen, say } = await looking();
  const { venue, layout, reference } = seen;
  const plans = layout ? await plansOf(house, actor, { reference, layout, set: seen.standing === "set" }) : {};
  const answered = ANSWER_STEPS.filter((step) => seen.draft[step] !== undefined);
  return (
    <CoupleFrame booking={seen} home="/look">
      <p className="step-line">{sayDay(seen.date, venue.locale)}, {seen.packageName}</p>
      <h1><Names names={seen.names} locale={venue.locale} /></h1>
      <p className="lead measure mt-4">{say("You may look at how their day is laid, and change nothing.")} {layout && seen.standing ? say(STANDING[seen.standing]) : say("No layout has been chosen yet.")}</p>
      <p className="small sec mt-2">{say("As it stands since {time}.", { time: sayMoment(seen.changedAt, venue) })}</p>
      {layout && (
        <>
          <Day layout={layout} venue={venue} plans={plans} words query={`ref=${encodeURIComponent(reference)}${seen.standing === "set" ? "&set" : ""}`} say={say} />
          <Caution say={say} />
        </>
      )}
      <h2 className="mt-12">{say("What they have answered")}</h2>
      {answered.length === 0 && <p className="mt-3">{say("Nothing yet.")}</p>}
      <div className="answers-grid">
        {answered.map((step) => (
          <section className="section" key={step}><h3>{stepTitle(step, say)}</h3>
            <Answers say={say} answers={saidShown(step, shownValues(seen.draft, step), venue, say).filter((s) => s.field !== "notes").map(({ name, said }) => ({ name, said }))} />
          </section>
        ))}
      </div>
      <form method="post" action="/look/leave" className="go-row"><button className="btn-quiet" type="submit">{say("Leave this page for good")}</button></form>
    </CoupleFrame>
  );
}
