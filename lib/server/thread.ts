import { existsSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type { Works } from "../service/works";
import { isBuilt, threadFile } from "./build";
import type { Metrics } from "./metrics";
import type { Answer, Job, Progress, Verb } from "./works-thread";

/** One thread at the bench; it starts with its first job, and anew after one that broke it. */
export type Thread = {
  readonly ask: <V extends Verb>(verb: V, args: Parameters<Works[V]>, onProgress?: OnProgress) => ReturnType<Works[V]>;
  readonly close: () => Promise<void>;
};
type OnProgress = (progress: Progress["progress"]) => void;
type Waiting = { readonly onProgress?: OnProgress; readonly resolve: (value: never) => void; readonly reject: (error: Error) => void };

/** A thread that needs more than this to keep, MB, has run away: it ends with a fault of its own, and the server goes on. */
const OLD = 768;
type How = {
  /** Room for what is made and thrown away at once, MB. */
  readonly young: number;
  /** Ends itself, and gives its memory back, when nothing was asked of it for so long, ms. Left out: it stays. */
  readonly idle?: number;
  /** Hears of each job that is begun, and by what it gives back of its end. */
  readonly working?: Metrics["working"];
};

const DIR = join(import.meta.dirname, "../..");
let found: string | undefined;
/** The thread in one file where it was built and nothing changed since, else from the sources; looked up once, since a rested thread starts anew while pages are answered. */
const threadAt = (): string => (found ??= isBuilt(DIR) && existsSync(threadFile(DIR)) ? threadFile(DIR) : join(import.meta.dirname, "works-thread.mjs"));

export function makeThread({ young, idle, working }: How): Thread {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | undefined;
  let resting: NodeJS.Timeout | undefined;
  let last = 0;

  const rest = (thread: Worker): void => {
    if (waiting.size > 0) return;
    thread.unref();
    if (idle !== undefined) resting = setTimeout(() => { if (worker === thread) worker = undefined; void thread.terminate(); }, idle).unref();
  };

  const start = (): Worker => {
    const fresh = new Worker(threadAt(), { execArgv: [], resourceLimits: { maxYoungGenerationSizeMb: young, maxOldGenerationSizeMb: OLD } });
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
    clearTimeout(resting);
    worker ??= start();
    const thread = worker;
    const id = ++last;
    const job: Job = { id, verb, args };
    const ended = working?.(verb);
    const answer = new Promise((resolve: (value: never) => void, reject) => {
      waiting.set(id, { resolve, reject, onProgress });
      // Referenced while it works, so that a command does not end before its answer.
      thread.ref();
      thread.postMessage(job);
    });
    answer.then(() => ended?.("well"), () => ended?.("badly"));
    // The answer's type goes with the verb; the thread gives back what `Works` says it does.
    return answer.finally(() => { rest(thread); }) as ReturnType<Works[V]>;
  }

  const close = async (): Promise<void> => {
    const thread = worker;
    worker = undefined;
    clearTimeout(resting);
    for (const asked of waiting.values()) asked.reject(new Error("the works are closed"));
    waiting.clear();
    await thread?.terminate();
  };
  return { ask, close };
}
