import type { Clock } from "../base";

/** What an arrangement goes through, in the order in which a day first meets it. */
export const STAGES = [
  "bounds", // proofs that nothing can fit
  "demand", // what must be placed in each part of the day
  "assign", // which part of the day in which room, drapes, turnover
  "anchors", // the big pieces stood jointly: top table, dance floor, music, bar, buffet
  "ways", // lanes kept to them, and the floor that is left for tables
  "seating", // tables
  "rows", // the ceremony's rows
  "finish", // struck floor, standing furniture put back, places that no way serves
  "displays", // small pieces
  "number", // tables numbered
  "turnovers", // what is carried where, by whom, until when
  "explain", // why, what it gives up, how it scores
  "check", // every rule on the finished day, and its fees
  "choose", // layouts that differ in kind
  "wet", // the same day under the roof
  "wishes", // met where no rule is broken by it
] as const;
export type Stage = (typeof STAGES)[number];

export type Stopwatch = { readonly time: <T>(stage: Stage, work: () => T) => T; readonly read: () => { readonly totalMs: number; readonly stages: Record<string, number> } };

/** Times stages by a clock that the caller hands in, each without those that run inside it; without a clock every time is 0. */
export function stopwatch(clock?: Clock): Stopwatch {
  const now = clock ? clock.now : () => 0;
  const start = now();
  const stages: Record<string, number> = {};
  let inner = 0;
  return {
    time: (stage, work) => {
      const from = now(), before = inner;
      inner = 0;
      const value = work();
      const took = now() - from;
      stages[stage] = (stages[stage] ?? 0) + took - inner;
      inner = before + took;
      return value;
    },
    read: () => ({ totalMs: now() - start, stages }),
  };
}
