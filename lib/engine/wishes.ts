import type { Wish } from "../brief";
import type { Layout, Told } from "../layout";
import { benchOf } from "./repair/judge";
import { sealed } from "./repair/seal";
import type { Context } from "./stages/context";
import { tell, telling } from "./tell";
import { honour, whereOf } from "./wishes/honour";
import { quickXplain } from "./wishes/quickxplain";

export { quickXplain } from "./wishes/quickxplain";

/** Parts of the day judged for the sake of wishes, at the most; and for telling which of them conflict. */
const BUDGET = 160, EXPLAIN = 120;

const wishTold = (w: Wish): Told => tell("wish", { put: w.put, how: "near" in w ? "near" : "away-from" in w ? "away-from" : "in-sight-of", where: whereOf(w) });

/** Which wishes do not go together; the last of the couple's order gives way. */
function conflictTold(conflict: readonly Wish[], gives: Wish): Told {
  if (conflict.length <= 1) return tell("no-spot-for-wish", undefined, [wishTold(conflict[0] ?? gives)]);
  return tell("wishes-conflict", undefined, [gives, ...conflict].map(wishTold));
}

/**
 * The couple's wishes on a finished layout: those that are not met yet are met by moving the pieces they speak of, in the couple's
 * order of importance, where no must comes of it. What is given up is told, with the smallest set of wishes that conflict.
 */
export function withWishes(ctx: Context, layout: Layout): Layout {
  const { wishes } = ctx.brief;
  if (wishes.length === 0) return layout;
  const bench = benchOf(ctx.venue, ctx.brief, [], BUDGET);
  let best = layout;
  const kept: Wish[] = [], given: Wish[] = [];
  for (const wish of wishes) {
    const next = honour(bench, best, [...kept, wish]);
    if (next) { best = next; kept.push(wish); } else given.push(wish);
  }
  if (given.length === 0 && best === layout) return layout;
  const explain = benchOf(ctx.venue, ctx.brief, [], EXPLAIN);
  const told = given.map((wish) => {
    const conflict = quickXplain([...kept, wish], (set) => explain.budget.left > 0 && honour(explain, layout, set) !== null) ?? [wish];
    return conflictTold(conflict.length === 0 ? [wish] : conflict, wish);
  });
  const whole = best === layout ? layout : sealed(bench, ctx, best);
  if (whole.findings.some((f) => f.level === "must")) return telling(ctx.venue, layout, { givesUp: told });
  return telling(ctx.venue, whole, { givesUp: told });
}
