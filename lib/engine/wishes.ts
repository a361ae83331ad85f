import type { Wish } from "../brief";
import type { Layout } from "../layout";
import { benchOf } from "./repair/judge";
import { sealed } from "./repair/seal";
import type { Context } from "./stages/context";
import { honour, whereOf } from "./wishes/honour";
import { quickXplain } from "./wishes/quickxplain";

export { quickXplain } from "./wishes/quickxplain";

/** Parts of the day judged for the sake of wishes, at the most; and for telling which of them conflict. */
const BUDGET = 160, EXPLAIN = 120;

const words = (w: string): string => w.replaceAll("-", " ");
const A: Readonly<Record<string, string>> = { window: "a window", door: "a door", wall: "a wall", feature: "a feature wall", terrace: "the terrace" };
const wishText = (w: Wish): string => `${words(w.put)} ${"near" in w ? "near" : "away-from" in w ? "away from" : "in sight of"} ${A[whereOf(w)] ?? `the ${words(whereOf(w))}`}`;

/** Which wishes do not go together, as a sentence; the last of the couple's order gives way. */
function conflictText(conflict: readonly Wish[], gives: Wish): string {
  const [only] = conflict;
  if (conflict.length <= 1) return `No spot was found for: ${wishText(only ?? gives)}.`;
  return `These wishes were not found to go together: ${conflict.map(wishText).join("; ")}. What comes last in your order gives way: ${wishText(gives)}.`;
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
    return conflictText(conflict.length === 0 ? [wish] : conflict, wish);
  });
  const whole = best === layout ? layout : sealed(bench, ctx, best);
  if (whole.findings.some((f) => f.level === "must")) return { ...layout, givesUp: [...(layout.givesUp ?? []), ...told] };
  return { ...whole, givesUp: [...(whole.givesUp ?? []), ...told] };
}
