import type { ArrangeResult } from "../layout";
import { arrangements, type Handle } from "../store";

/** One question that the engine is at. */
type Running = {
  readonly answer: Promise<ArrangeResult>;
  /** Bookings that wait for it. */
  readonly askers: Set<string>;
  /** One figure that the engine's thread looks at between attempts: 1 tells it to stop. */
  readonly flag: SharedArrayBuffer;
  progress: { readonly done: number; readonly of: number };
  /** Stopped by a couple that wants to see what there is, or dropped since its booking now asks something else. */
  ended?: "stopped" | "dropped";
};
type Arranging = {
  readonly running: Map<string, Running>;
  /** What was found until a couple stopped the search: held here alone, so that a later start works it out in full. */
  readonly broken: Map<string, ArrangeResult>;
};

// Pages and routes are bundled apart: only globalThis is one and the same to both.
const world: typeof globalThis & { marquetryArranging?: Arranging } = globalThis;
const all = (): Arranging => (world.marquetryArranging ??= { running: new Map(), broken: new Map() });
const MOST_BROKEN = 200;

/** The engine's answer to a question, if there is one: the whole of it, or what a couple stopped at. */
export async function foundFor(db: Handle, key: string): Promise<ArrangeResult | undefined> {
  return all().broken.get(key) ?? arrangements.find(db, key);
}

export const wasStopped = (key: string): boolean => all().broken.has(key);
export const progressOf = (key: string): Running["progress"] | undefined => all().running.get(key)?.progress;

type Start = (watch: { readonly flag: SharedArrayBuffer; readonly onProgress: (progress: Running["progress"]) => void }) => Promise<ArrangeResult>;

type Asking = {
  readonly key: string;
  readonly asker: string;
  /** Looks for an answer that is there already. */
  readonly look: () => Promise<ArrangeResult | undefined>;
  readonly start: Start;
  readonly keep: (result: ArrangeResult) => Promise<void>;
};

/** Asks once for all who ask the same; a booking that asks something new no longer waits for what it asked before. */
export function join({ key, asker, look, start, keep }: Asking): Promise<ArrangeResult> {
  const { running } = all();
  for (const [other, one] of running) {
    if (other === key || !one.askers.delete(asker) || one.askers.size > 0) continue;
    one.ended = "dropped";
    raise(one.flag);
  }
  const under = running.get(key);
  if (under && under.ended !== "dropped") { under.askers.add(asker); return under.answer; }
  const flag = new SharedArrayBuffer(4);
  const own: Running = { askers: new Set([asker]), flag, progress: { done: 0, of: 0 }, answer: Promise.resolve().then(() => work(own, { key, look, start, keep })) };
  running.set(key, own);
  return own.answer;
}

async function work(own: Running, { key, look, start, keep }: Omit<Asking, "asker">): Promise<ArrangeResult> {
  const { running, broken } = all();
  try {
    // Who looked before the answer was kept may come here after the search ended: only a look under this claim is the last word.
    const found = await look();
    if (found) return found;
    const result = await start({ flag: own.flag, onProgress: (progress) => { own.progress = progress; } });
    if (own.ended === "dropped") throw new Error("nobody waits for these layouts any more");
    if (own.ended === undefined) await keep(result);
    else {
      for (const old of broken.keys()) if (broken.size >= MOST_BROKEN) broken.delete(old);
      broken.set(key, result);
    }
    return result;
  } finally {
    if (running.get(key) === own) running.delete(key);
  }
}

/** Ends the search for a question: what has been found is its answer for now. False when nothing was under way. */
export function stop(key: string): boolean {
  const own = all().running.get(key);
  if (!own) return false;
  own.ended = "stopped";
  raise(own.flag);
  return true;
}

/** Forgets what was stopped at: the next look works it out in full. */
export const resume = (key: string): boolean => all().broken.delete(key);

const raise = (flag: SharedArrayBuffer): void => { Atomics.store(new Int32Array(flag), 0, 1); };
