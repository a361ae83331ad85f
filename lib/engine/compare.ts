import type { Layout, Told } from "../layout";
import type { Kept } from "./choose";
import { apartOf, sameTold, titleOf } from "./stages/explain";
import type { Context } from "./stages/context";
import { tell, telling } from "./tell";

/** A gain worth a word: of the score's 0 to 1, and of minutes. */
const TELLING = { score: 0.04, minutes: 3 } as const;

const minutesOf = (l: Layout): number => l.turnovers.reduce((n, t) => n + t.minutes, 0);
const movesOf = (l: Layout): number => l.turnovers.reduce((n, t) => n + t.moves.length, 0);

/**
 * Layouts side by side: each with a title that no other has, made of the words that tell it apart; a first reason that says what it is
 * best at; and what it gives up against the others.
 */
export function compared(ctx: Context, kept: readonly Kept[]): readonly Layout[] {
  return kept.map((k) => {
    const others = kept.filter((o) => o !== k);
    const reason = reasonOf(k, others);
    return telling(ctx.venue, k.layout, { title: titleFor(k, others), first: reason === null ? [] : [reason], givesUp: givesUpAgainst(k, others) });
  });
}

/** What a layout is best at, of all that are offered. */
function reasonOf(k: Kept, others: readonly Kept[]): Told | null {
  if (others.length === 0) return null;
  const best: Told[] = [];
  const score = (o: Kept, part: "comfort" | "sight"): number => o.layout.score?.[part] ?? 0;
  if (others.every((o) => score(k, "comfort") > score(o, "comfort") + TELLING.score)) best.push(tell("best-comfort"));
  const open = (o: Kept): number => ({ none: 0, beside: 1, struck: 2, apart: 3 })[o.day.plan.floor];
  if (open(k) > 1 && others.every((o) => open(k) > open(o))) best.push(tell("best-dancing"));
  if (others.every((o) => minutesOf(k.layout) < minutesOf(o.layout) - TELLING.minutes + 1 || (minutesOf(k.layout) <= minutesOf(o.layout) && movesOf(k.layout) < movesOf(o.layout)))) best.push(tell("best-moves"));
  if (others.every((o) => score(k, "sight") > score(o, "sight") + TELLING.score)) best.push(tell("best-sight"));
  if (best.length > 0) return tell("best-of-these", undefined, best);
  if (others.every((o) => o.layout.title !== k.layout.title)) return tell("set-apart-by", undefined, [titleOf(k.day)]);
  const own = apartOf(k.day).find((one, i) => one !== null && others.every((o) => !sameTold(apartOf(o.day)[i] ?? null, one)));
  return own ? tell("set-apart-by", undefined, [own]) : null;
}

function givesUpAgainst(k: Kept, others: readonly Kept[]): readonly Told[] {
  const out: Told[] = [];
  const least = Math.min(...others.map((o) => minutesOf(o.layout)));
  if (others.length > 0 && minutesOf(k.layout) >= least + TELLING.minutes) {
    const by = minutesOf(k.layout) - least;
    out.push(least === 0 ? tell("room-turned") : tell("slower-turn", { by }));
  }
  const comfort = (l: Layout): number => l.score?.comfort ?? 0;
  if (others.some((o) => comfort(o.layout) > comfort(k.layout) + TELLING.score)) out.push(tell("less-comfort"));
  return out;
}

/** The tables' name, and the fewest words that no layout of the same name shares. */
function titleFor(k: Kept, others: readonly Kept[]): Told {
  let twins = others.filter((o) => o.layout.title === k.layout.title);
  const said: Told[] = [];
  for (const [i, one] of apartOf(k.day).entries()) {
    if (twins.length === 0) break;
    const left = twins.filter((o) => sameTold(apartOf(o.day)[i] ?? null, one));
    if (one === null || left.length === twins.length) continue;
    said.push(one);
    twins = left;
  }
  return tell("title", undefined, [titleOf(k.day), ...(twins.length > 0 && said.length === 0 ? [tell("set-otherwise")] : said)]);
}
