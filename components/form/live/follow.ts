import type { StepId } from "@/lib/brief/draft";
import { valuesIn } from "../form-values";
import type { EffectView } from "../effect";
import { isFacts, type FromWorker, type LiveFacts, type LivePlan, type ToWorker } from "./messages";

export type Live =
  | { readonly kind: "working"; readonly done: number; readonly of: number }
  | { readonly kind: "still" }
  | { readonly kind: "stopped" };
type Told = { readonly effect: (seen: { readonly view: EffectView; readonly plan: LivePlan | null; readonly done: boolean; /** Of answers that are not saved yet. */ readonly ahead: boolean }) => void; readonly state: (state: Live) => void };
type How = { readonly step: StepId; readonly width: () => number; readonly told: Told };

/** Answers come one after another: the engine is asked once they pause. */
const PAUSE_MS = 350;
/** How many fit is counted once for a venue; who comes before that is done asks again this often, milliseconds. */
const COUNTS_MS = 3_000;

const learn = (): Promise<LiveFacts | null> =>
  fetch("/api/answers.json").then((a) => (a.ok ? a.json() : null)).then((said: unknown) => (isFacts(said) ? said : null)).catch(() => null);

/** True where a field no longer holds what the page came with: typed while the scripts were still on their way, or put back by the browser. */
function isTouched(form: HTMLFormElement): boolean {
  return [...form.elements].some((one) => {
    if (one instanceof HTMLInputElement) return one.type === "checkbox" || one.type === "radio" ? one.checked !== one.defaultChecked : one.value !== one.defaultValue;
    if (one instanceof HTMLTextAreaElement) return one.value !== one.defaultValue;
    return one instanceof HTMLSelectElement && [...one.options].some((o) => o.defaultSelected && !o.selected);
  });
}

/** Follows the form's answers with the engine in a worker of the browser. A newer answer ends the work on the one before. */
export function follow(form: HTMLFormElement, { step, width, told }: How): { readonly ask: () => void; readonly stop: () => void; readonly leave: () => void } {
  let worker: Worker | null = null, facts: Promise<LiveFacts | null> | null = null;
  let asked = 0, busy = false, ahead = isTouched(form);
  let timer: ReturnType<typeof setTimeout> | undefined, recount: ReturnType<typeof setTimeout> | undefined;
  let left = false;
  const end = (): void => { worker?.terminate(); worker = null; busy = false; };
  const send = (to: Worker, message: ToWorker): void => to.postMessage(message);

  const hear = ({ data }: MessageEvent<FromWorker>): void => {
    if (data.ask !== asked) return;
    if (data.kind === "progress") return told.state({ kind: "working", done: data.done, of: data.of });
    if (data.kind === "effect") told.effect({ view: data.view, plan: data.plan, done: data.done, ahead });
    if (data.kind === "effect" && !data.done) return;
    busy = false;
    told.state({ kind: "still" });
  };

  async function run(): Promise<void> {
    const mine = ++asked;
    if (busy) end();
    facts ??= learn();
    const known = await facts;
    if (mine !== asked) return;
    if (!known) { facts = null; return; }
    if (!known.capacity) recount ??= setTimeout(() => void countAgain(), COUNTS_MS);
    if (!worker) {
      worker = new Worker(new URL("../../plan/engine.worker.ts", import.meta.url), { type: "module" });
      worker.addEventListener("message", hear);
      worker.addEventListener("error", () => { end(); told.state({ kind: "still" }); });
      send(worker, { kind: "facts", facts: known });
    }
    busy = true;
    told.state({ kind: "working", done: 0, of: 0 });
    send(worker, { kind: "ask", ask: mine, step, values: valuesIn(form), width: width() });
  }
  async function countAgain(): Promise<void> {
    const fresh = await learn();
    if (left) return;
    if (!fresh?.capacity) { recount = setTimeout(() => void countAgain(), COUNTS_MS); return; }
    facts = Promise.resolve(fresh);
    // The worker knows the old facts: the next one begins with these.
    const stopped = worker === null;
    end();
    if (!stopped) await run();
  }
  const soon = (): void => { ahead = true; clearTimeout(timer); timer = setTimeout(() => void run(), PAUSE_MS); };
  form.addEventListener("input", soon);
  if (ahead) soon();
  return {
    ask: () => void run(),
    stop: () => { clearTimeout(timer); asked++; end(); told.state({ kind: "stopped" }); },
    leave: () => { left = true; clearTimeout(timer); clearTimeout(recount); asked++; end(); form.removeEventListener("input", soon); },
  };
}
