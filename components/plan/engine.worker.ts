import { briefSchema, questionOf, SEED } from "@/lib/brief";
import { briefFileOfDraft, readStep, type Draft, type FormValues, type StepId } from "@/lib/brief/draft";
import { composePlan } from "@/lib/drawing";
import { arrange } from "@/lib/engine";
import { layoutIn } from "@/lib/words/layout";
import { sayIn } from "@/lib/words/pages";
import { effectOf, effectView, guestsAt } from "../form/effect";
import type { FromWorker, LiveFacts, ToWorker } from "../form/live/messages";
import { tidied } from "../form/tidy";
import { oneOf, shownValues } from "../form/values";

/** The engine on a thread of the browser's own: while it thinks, the page answers. It is ended from outside when it is to stop. */
let facts: LiveFacts | null = null;
const tell = (message: FromWorker): void => { self.postMessage(message); };

self.addEventListener("message", ({ data }: MessageEvent<ToWorker>) => {
  switch (data.kind) {
    case "facts": facts = data.facts; return;
    case "ask": return answer(data);
    case "draw": return show({ ...data, step: "meal", values: facts ? shownValues(facts.draft, "meal") : {}, draft: facts?.draft ?? {} });
  }
});

/** Reads the step as the server would, in place of what is saved of it. */
function answer({ ask, step, values, width }: Extract<ToWorker, { kind: "ask" }>): void {
  const typed = tidied(step, values);
  const read = readStep(step, typed);
  if (!facts || !read.ok) return tell({ kind: "unread", ask });
  const meal = step === "meal" ? typed : shownValues(facts.draft, "meal");
  show({ ask, step, width, values: meal, draft: { ...facts.draft, [step]: read.value } });
}

type Show = { readonly ask: number; readonly step: StepId; readonly width: number; /** The meal's answers. */ readonly values: FormValues; readonly draft: Draft };

function show({ ask, step, width, values, draft }: Show): void {
  if (!facts) return;
  const { venue, capacity, booking } = facts;
  const say = sayIn(facts.language);
  const file = briefFileOfDraft(draft, booking);
  const brief = file && briefSchema.parse(file);
  const pack = venue.packages.find((p) => p.id === booking.package);
  const rooms = venue.rooms.filter((r) => pack?.rooms.includes(r.id));
  const about = { step, venue, rooms, capacity, guests: guestsAt(step, brief), brief, tables: oneOf(values, "tables"), drape: oneOf(values, "drape"), say };
  if (!brief) return tell({ kind: "effect", ask, done: true, view: effectView(effectOf({ ...about, result: null }), about), plan: null });
  if (step === "guests" || step === "meal" || step === "ceremony") tell({ kind: "effect", ask, done: false, view: effectView(effectOf({ ...about, result: null }), about), plan: null });
  // The quickest answer: one layout, and no search for what would do instead. Once saved, the server works out all that is offered.
  const result = arrange(venue, questionOf(brief), { seed: SEED, layouts: 1, instead: false, onProgress: ({ done, of }) => tell({ kind: "progress", ask, done, of }) });
  const effect = effectOf({ ...about, result: { ...result, layouts: result.layouts.map((one) => layoutIn(one, { venue, say })) } });
  const { layout, scene } = effect;
  const plan = layout && scene ? { drawing: composePlan(venue, layout, scene, { pixelWidth: width, frame: false }), idPrefix: "live-" } : null;
  tell({ kind: "effect", ask, done: true, view: effectView(effect, about), plan });
}
