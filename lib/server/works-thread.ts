import { setPriority } from "node:os";
import { parentPort } from "node:worker_threads";
import type { Works } from "../service/works";
import { bench } from "./bench";

export type Verb = Exclude<keyof Works, "engineVersion">;
export type Job = { readonly id: number; readonly verb: Verb; readonly args: readonly unknown[] };
export type Answer = { readonly id: number; readonly ok: true; readonly value: unknown } | { readonly id: number; readonly ok: false; readonly error: string };

export type Progress = { readonly id: number; readonly progress: { readonly done: number; readonly of: number } };

function withProgress({ id, args }: Job): readonly unknown[] {
  const [venue, brief, ask] = args;
  const onProgress = ({ done, of }: Progress["progress"]): void => { parentPort?.postMessage({ id, progress: { done, of } } satisfies Progress); };
  return [venue, brief, { ...(typeof ask === "object" ? ask : {}), onProgress }];
}

/** What may take long gives way to the threads that answer pages and draw plans. On Linux a priority is a thread's own; elsewhere it is the whole process's, and is left alone. */
const LONG: ReadonlySet<Verb> = new Set(["arrange", "capacity", "change", "repair"]);
const GIVES_WAY = 5;

/** One job after another; each gets its answer or the fault that it met. */
parentPort?.on("message", (job: Job) => {
  if (process.platform === "linux" && LONG.has(job.verb)) setPriority(0, GIVES_WAY);
  // The engine alone tells how far it is.
  const args = job.verb === "arrange" ? withProgress(job) : job.args;
  const work = bench[job.verb] as (...args: readonly unknown[]) => Promise<unknown>;
  work(...args).then(
    (value) => parentPort?.postMessage({ id: job.id, ok: true, value } satisfies Answer),
    (error: unknown) => parentPort?.postMessage({ id: job.id, ok: false, error: error instanceof Error ? (error.stack ?? error.message) : String(error) } satisfies Answer),
  );
});
