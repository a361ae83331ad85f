import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { isStep as asksSomething, type StepId } from "@/lib/brief/draft";
import { people } from "@/lib/brief";
import { arrangeFor, capacityFor } from "@/lib/service";
import type { Say } from "@/lib/words/pages";
import { asked, couple, type Search } from "@/app/_server/asking";
import { heldFor, type Kept } from "@/app/_server/kept";
import { drawn } from "@/app/_server/plans";
import { answerIn } from "@/app/_server/spoken";
import { hereOf, soon } from "@/app/_server/soon";
import { wasOf } from "@/app/_server/was";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { effectOf, effectView, guestsAt } from "@/components/form/effect";
import { EffectPanel } from "@/components/form/effect-panel";
import { Checked } from "@/components/form/page/checked";
import { PageForm } from "@/components/form/page/page-form";
import { QUESTIONS } from "@/components/form/questions";
import { fieldNames } from "@/components/form/said";
import { isStep, stepBefore, stepNumber, STEPS, stepTitle } from "@/components/form/steps";
import { named } from "@/components/form/tidy";
import { oneOf, shownValues } from "@/components/form/values";

/** How long a page of questions waits for its drawing: long enough for an answer that is kept, and no one waits for one that is being worked out. */
const PATIENCE_MS = 150;

type Props = { readonly params: Promise<{ readonly step: string }>; readonly searchParams: Search };

const headOf = (step: StepId, say: Say): string => say("Step {n} of {of}: {title}", { n: stepNumber(step), of: STEPS.length, title: stepTitle(step, say) });

async function keptFor(step: StepId, search: Search): Promise<Kept | null> {
  const { actor } = await couple();
  return heldFor(await asked(search, "kept"), step, actor.reference);
}

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { step } = await params;
  if (!isStep(step) || !asksSomething(step)) return {};
  const { booking, say } = await couple();
  const kept = await keptFor(step, searchParams);
  return { title: `${kept && kept.errors.length > 0 ? say("Error: ") : ""}${headOf(step, say)} – ${booking.venue.name}` };
}

export default async function StepPage({ params, searchParams }: Props) {
  const { step } = await params;
  if (!isStep(step) || !asksSomething(step)) notFound();
  const { house, actor, booking, say } = await couple();
  if (!booking.open) redirect("/request?why=closed");
  const reference = booking.reference;
  const kept = await keptFor(step, searchParams);
  const names = fieldNames(step, booking.venue, say);
  const errors = named(kept?.errors ?? [], names, say);
  const values = kept?.values ?? shownValues(booking.draft, step);
  const [counts, arranged] = await Promise.all([
    soon(capacityFor(house, actor, { reference }), PATIENCE_MS), booking.brief ? soon(arrangeFor(house, actor, { reference }), PATIENCE_MS) : null,
  ]);
  const capacity = hereOf(counts);
  const { venue, brief } = booking;
  const pack = venue.packages.find((p) => p.id === booking.package.id);
  const rooms = venue.rooms.filter((r) => pack?.rooms.includes(r.id));
  const guests = guestsAt(step, brief);
  const meal = shownValues(booking.draft, "meal");
  const answer = hereOf(arranged)?.result;
  const result = answer ? answerIn(answer, { venue, say }) : null;
  const effect = effectOf({
    say,
    step, venue, rooms, capacity, result, guests, brief,
    tables: oneOf(meal, "tables"), drape: oneOf(meal, "drape"),
  });
  const plan = effect.layout && effect.scene ? await drawn(house, actor, { reference, layout: effect.layout.id, scene: effect.scene }, 540) : null;
  const ask = QUESTIONS[step]({
    values, errors, venue, rooms, turnoverInPackage: pack?.turnover ?? false, capacity, guests: brief ? people(brief) : 0, say,
  });
  const toSend = (await asked(searchParams, "back")) === "send";
  const why = await asked(searchParams, "why");
  const sure = (await asked(searchParams, "sure")) === "1";
  const before = stepBefore(step);
  const back = toSend ? { href: "/request/send", text: stepTitle("send", say) } : before ? { href: `/request/${before}`, text: stepTitle(before, say) } : { href: "/request", text: say("All steps") };
  return (
    <CoupleFrame booking={booking} back={back} savedAt={booking.answered.length > 0 ? booking.savedAt : undefined}>
      <Checked errors={errors}>
      <p className="step-line">{say("Step {n} of {of}", { n: stepNumber(step), of: STEPS.length })}</p>
      <h1>{stepTitle(step, say)}</h1>
      {why === "guests" && <p className="lead measure mt-4" role="status">{say("First we need to know how many adults you are: your layouts follow from it.")}</p>}
      {sure && kept && (
        <div className="errors" role="alert" tabIndex={-1} autoFocus aria-labelledby="sure-head">
          <h2 id="sure-head">{say("This sets your chosen layout aside")}</h2>
          <p className="small mt-2">{say("You have chosen “{layout}”. It was made for the answers as they were; with these you choose anew, and what you moved by hand is lost. Nothing is saved yet: “Save and continue” below saves it.", { layout: booking.chosen?.layout.title ?? "" })}</p>
          <p className="small mt-2"><a href={`/request/${step}`}>{say("Leave everything as it is")}</a></p>
        </div>
      )}
      <PageForm form={step} names={names} className="step-grid" action={`/request/${step}/save`}>
        <input type="hidden" name="revision" value={kept?.base?.revision ?? booking.revision} />
        <input type="hidden" name="was" value={kept?.base?.was ?? wasOf(booking.draft, step)} />
        <input type="hidden" name="reference" value={reference} />
        {sure && kept && <input type="hidden" name="sure" value="1" />}
        {toSend && <input type="hidden" name="back" value="send" />}
        <div className="step-first">{ask.first}</div>
        <EffectPanel
          step={step} view={effectView(effect, { step, venue, guests, say })} svg={plan} working={counts.kind === "working" || arranged?.kind === "working"}
          query={effect.layout && effect.scene ? `ref=${encodeURIComponent(reference)}&layout=${encodeURIComponent(effect.layout.id)}&scene=${effect.scene}` : null}
          full={effect.layout ? `/request/layout/${effect.layout.id}` : null}
        />
        <div className="step-rest">
          {ask.rest}
          <div className="go-row">
            <button className="btn btn-go" type="submit" name="then" value="next">{say("Save and continue")}</button>
            <button className="btn-quiet" type="submit" name="then" value="later">{say("Save and come back later")}</button>
            <button className="btn-quiet" type="submit" name="then" value="stay">{say("Save and see what it does")}</button>
          </div>
        </div>
      </PageForm>
      </Checked>
    </CoupleFrame>
  );
}
