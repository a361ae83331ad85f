import { ENGINE_VERSION } from "../engine/version";
import type { Works } from "../service/works";
import type { Metrics } from "./metrics";
import { makeThread } from "./thread";

export type WorksHandle = { readonly works: Works; readonly close: () => Promise<void> };

/** The engine makes and throws away much: with the usual 48 MB a fifth of its time goes into clearing up. Drawing and printing do with those. */
const ENGINE = { young: 192 }, DRAWING = { young: 48 };
/** Counting is done when a venue is new or changed, and then hardly again. */
const COUNTING = { young: 192, idle: 30_000 };

/** The works on threads of their own, each started by its first job: while the engine thinks, plans are still drawn, and the pages still answer. */
export function makeWorks(working?: Metrics["working"]): WorksHandle {
  const engine = makeThread({ ...ENGINE, working }), counting = makeThread({ ...COUNTING, working }), desk = makeThread({ ...DRAWING, working });
  return {
    works: {
      engineVersion: ENGINE_VERSION,
      // A function does not pass between threads: how far the engine is comes as messages.
      arrange: (venue, brief, { onProgress, ...ask }) => engine.ask("arrange", [venue, brief, ask], onProgress),
      capacity: (...args) => counting.ask("capacity", args),
      check: (...args) => desk.ask("check", args),
      quote: (...args) => desk.ask("quote", args),
      settle: (...args) => desk.ask("settle", args),
      change: (...args) => engine.ask("change", args),
      repair: (...args) => engine.ask("repair", args),
      planSvg: (...args) => desk.ask("planSvg", args),
      planDrawing: (...args) => desk.ask("planDrawing", args),
      proposalPdf: (...args) => desk.ask("proposalPdf", args),
      calendar: (...args) => desk.ask("calendar", args),
      sheetsPdf: (...args) => desk.ask("sheetsPdf", args),
    },
    close: async () => { await Promise.all([engine, counting, desk].map((one) => one.close())); },
  };
}
