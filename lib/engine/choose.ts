import type { Layout } from "../layout";
import { differInKind } from "./kinds";
import type { Context } from "./stages/context";
import type { Attempt, Day } from "./stages/day";

export type Candidate = { readonly day: Day; readonly cost: number; readonly attempt: Attempt };
export type Kept = { readonly layout: Layout; readonly day: Day; readonly cost: number };

type Choice = {
  readonly most: number;
  /** What is kept already; what is chosen is added. */
  readonly kept: Kept[];
  /** What was laid and not finished yet; what is finished is taken out. */
  readonly pool: Candidate[];
  readonly finishDay: (c: Candidate) => Kept | null;
  /** Nothing that adds less to the choice is finished. */
  readonly least: number;
  /** Days that may still be finished for the sake of choice: `finishDay` counts them, as one that is refused at sight costs little. */
  readonly left: { finishes: number };
  readonly stop?: (() => boolean) | undefined;
};

/** Adds layouts that differ in kind from those kept, the most different and the cheapest first, until there are enough. */
export function choose(ctx: Context, { most, kept, pool, finishDay, least, left, stop }: Choice): void {
  for (; kept.length > 0 && kept.length < most && pool.length > 0 && left.finishes > 0 && !stop?.();) {
    pool.sort((a, b) => worth(b, kept) - worth(a, kept));
    const next = pool[0];
    if (!next || worth(next, kept) <= least) return;
    pool.shift();
    const made = finishDay(next);
    if (made && kept.every((k) => differInKind(ctx.venue, k.layout, made.layout))) kept.push(made);
  }
}

/** How much another day would add to the choice: in how many ways it differs from the nearest that is kept, less what it costs. */
const worth = (c: Candidate, kept: readonly Kept[]): number => Math.min(...kept.map((k) => ways(c.day, k.day))) - 0.4 * Math.max(0, c.cost - (kept[0]?.cost ?? 0));

function ways(a: Day, b: Day): number {
  const p = a.plan, q = b.plan;
  const seated = (d: Day): string => d.meal.map((m) => m.seated.family).join();
  const form = (d: Day): string => d.meal.map((m) => m.seated.form).join();
  return (seated(a) === seated(b) ? 0 : 2) + (p.floor === q.floor && p.dance === q.dance ? 0 : 1.8) + (p.ceremony === q.ceremony && p.turnover === q.turnover ? 0 : 1.4) +
    (p.meal.join() === q.meal.join() ? 0 : 1.4) + (p.drapes.join() === q.drapes.join() ? 0 : 1) + (form(a) === form(b) ? 0 : 0.8);
}
