import { Worker } from "node:worker_threads";
import type { Works } from "../service/works";
import type { Answer, Job, Progress, Verb } from "./works-thread";

/** One thread at the bench; it starts with its first job, and anew after one that broke it. */
export type Thread = {
  readonly ask: <V extends Verb>(verb: V, args: Parameters<Works[V]>, onProgress?: OnProgress) => ReturnType<Works[V]>;
  readonly close: () => Promise<void>;
};
type OnProgress = (progress: Progress["progress"]) => void;
type Waiting = { readonly onProgress?: OnProgress; readonly resolve: (value: never) => void; readonly reject: (error: Error) => void };

/** Room for what the engine makes and throws away at once, MB: with the usual 48 a fifth of its time goes into clearing up. */
const YOUNG = 192;

export function makeThread(): Thread {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | undefined;
  let last = 0;

  const start = (): Worker => {
    const fresh = new Worker(new URL("./works-thread.mjs", import.meta.url), { execArgv: [], resourceLimits: { maxYoungGenerationSizeMb: YOUNG } });
    fresh.on("message", (answer: Answer | Progress) => {
      const asked = waiting.get(answer.id);
      if ("progress" in answer) { asked?.onProgress?.(answer.progress); return; }
      waiting.delete(answer.id);
      if (answer.ok) asked?.resolve(answer.value as never);
      else asked?.reject(new Error(answer.error));
    });
    const ended = (error: Error): void => {
      if (worker !== fresh) return;
      worker = undefined;
      for (const asked of waiting.values()) asked.reject(error);
      waiting.clear();
    };
    fresh.on("error", ended);
    fresh.on("exit", (code) => ended(new Error(`the works' thread ended (${code})`)));
    return fresh;
  };

  function ask<V extends Verb>(verb: V, args: Parameters<Works[V]>, onProgress?: OnProgress): ReturnType<Works[V]> {
    worker ??= start();
    const thread = worker;
    const id = ++last;
    const job: Job = { id, verb, args };
    const answer = new Promise((resolve: (value: never) => void, reject) => {
      waiting.set(id, { resolve, reject, onProgress });
      // Referenced while it works, so that a command does not end before its answer.
      thread.ref();
      thread.postMessage(job);
    });
    // The answer's type goes with the verb; the thread gives back what `Works` says it does.
    return answer.finally(() => { if (waiting.size === 0) thread.unref(); }) as ReturnType<Works[V]>;
  }

  const close = async (): Promise<void> => {
    const thread = worker;
    worker = undefined;
    for (const asked of waiting.values()) asked.reject(new Error("the works are closed"));
    waiting.clear();
    await thread?.terminate();
  };
  return { ask, close };
}
