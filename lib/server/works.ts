import { Worker } from "node:worker_threads";
import type { Works } from "../service/works";
import { ENGINE_VERSION } from "../engine";
import type { Answer, Job, Verb } from "./works-thread";

export type WorksHandle = { readonly works: Works; readonly close: () => Promise<void> };
type Waiting = { readonly resolve: (value: never) => void; readonly reject: (error: Error) => void };

/** The works on a thread of their own: while the engine thinks, the pages still answer. The thread starts with the first job. */
export function makeWorks(): WorksHandle {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | undefined;
  let last = 0;

  const start = (): Worker => {
    const fresh = new Worker(new URL("./works-thread.mjs", import.meta.url), { execArgv: [] });
    fresh.on("message", (answer: Answer) => {
      const asked = waiting.get(answer.id);
      waiting.delete(answer.id);
      if (answer.ok) asked?.resolve(answer.value as never);
      else asked?.reject(new Error(answer.error));
    });
    const ended = (error: Error): void => {
      if (worker === fresh) worker = undefined;
      for (const asked of waiting.values()) asked.reject(error);
      waiting.clear();
    };
    fresh.on("error", ended);
    fresh.on("exit", (code) => ended(new Error(`the works' thread ended (${code})`)));
    fresh.unref();
    return fresh;
  };

  function ask<V extends Verb>(verb: V, args: Parameters<Works[V]>): ReturnType<Works[V]> {
    worker ??= start();
    const thread = worker;
    const id = ++last;
    const job: Job = { id, verb, args };
    const answer = new Promise((resolve: (value: never) => void, reject) => {
      waiting.set(id, { resolve, reject });
      // Referenced while it works, so that a command does not end before its answer.
      thread.ref();
      thread.postMessage(job);
    });
    return answer.finally(() => { if (waiting.size === 0) thread.unref(); }) as ReturnType<Works[V]>;
  }

  return {
    works: {
      engineVersion: ENGINE_VERSION,
      arrange: (...args) => ask("arrange", args), capacity: (...args) => ask("capacity", args), check: (...args) => ask("check", args),
      quote: (...args) => ask("quote", args), planSvg: (...args) => ask("planSvg", args), proposalPdf: (...args) => ask("proposalPdf", args),
    },
    close: async () => { await worker?.terminate(); },
  };
}
