import { ENGINE_VERSION } from "../engine/version";
import type { Works } from "../service/works";
import { makeThread } from "./thread";

export type WorksHandle = { readonly works: Works; readonly close: () => Promise<void> };

/** The works on two threads of their own: while the engine thinks, plans are still drawn, and the pages still answer. */
export function makeWorks(): WorksHandle {
  const engine = makeThread();
  const desk = makeThread();
  return {
    works: {
      engineVersion: ENGINE_VERSION,
      arrange: (...args) => engine.ask("arrange", args),
      capacity: (...args) => desk.ask("capacity", args),
      check: (...args) => desk.ask("check", args),
      quote: (...args) => desk.ask("quote", args),
      planSvg: (...args) => desk.ask("planSvg", args),
      proposalPdf: (...args) => desk.ask("proposalPdf", args),
    },
    close: async () => { await Promise.all([engine.close(), desk.close()]); },
  };
}
