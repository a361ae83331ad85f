import type { Clock } from "../base";

export type Stopwatch = { readonly time: <T>(stage: string, work: () => T) => T; readonly read: () => { readonly totalMs: number; readonly stages: Record<string, number> } };

/** Times stages by a clock that the caller hands in; without one every time is 0. */
export function stopwatch(clock?: Clock): Stopwatch {
  const now = clock ? clock.now : () => 0;
  const start = now();
  const stages: Record<string, number> = {};
  return {
    time: (stage, work) => {
      const from = now();
      const value = work();
      stages[stage] = (stages[stage] ?? 0) + now() - from;
      return value;
    },
    read: () => ({ totalMs: now() - start, stages }),
  };
}
