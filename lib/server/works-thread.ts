import { parentPort } from "node:worker_threads";
import type { Works } from "../service/works";
import { bench } from "./bench";

export type Verb = Exclude<keyof Works, "engineVersion">;
export type Job = { readonly id: number; readonly verb: Verb; readonly args: readonly unknown[] };
export type Answer = { readonly id: number; readonly ok: true; readonly value: unknown } | { readonly id: number; readonly ok: false; readonly error: string };

/** One job after another; each gets its answer or the fault that it met. */
parentPort?.on("message", (job: Job) => {
  const work = bench[job.verb] as (...args: readonly unknown[]) => Promise<unknown>;
  work(...job.args).then(
    (value) => parentPort?.postMessage({ id: job.id, ok: true, value } satisfies Answer),
    (error: unknown) => parentPort?.postMessage({ id: job.id, ok: false, error: error instanceof Error ? (error.stack ?? error.message) : String(error) } satisfies Answer),
  );
});
