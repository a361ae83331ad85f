import type { Layout } from "../layout";
import type { Kept } from "./choose";
import { FORM_WORDS, apartWords } from "./stages/explain";
import type { Context } from "./stages/context";

/** A gain worth a word: of the score's 0 to 1, and of minutes. */
const TELLING = { score: 0.04, minutes: 3 } as const;

const minutesOf = (l: Layout): number => l.turnovers.reduce((n, t) => n + t.minutes, 0);
const movesOf = (l: Layout): number => l.turnovers.reduce((n, t) => n + t.moves.length, 0);
const list = (words: readonly string[]): string => (words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`);

/**
 * Layouts side by side: each with a title that no other has, made of the words that tell it apart; a first reason that says what it is
 * best at; and what it gives up against the others.
 */
export function compared(ctx: Context, kept: readonly Kept[]): readonly Layout[] {
  return kept.map((k) => {
    const others = kept.filter((o) => o !== k);
    const reason = reasonOf(ctx, k, others);
    const against = givesUpAgainst(k, others);
    return {
      ...k.layout, title: titleFor(ctx, k, others), why: [...(reason === null ? [] : [reason]), ...k.layout.why],
      ...(against.length > 0 ? { givesUp: [...(k.layout.givesUp ?? []), ...against] } : {}),
    };
  });
}

/** What a layout is best at, of all that are offered. */
function reasonOf(ctx: Context, k: Kept, others: readonly Kept[]): string | null {
  if (others.length === 0) return null;
  const best: string[] = [];
  const score = (o: Kept, part: "comfort" | "sight"): number => o.layout.score?.[part] ?? 0;
  if (others.every((o) => score(k, "comfort") > score(o, "comfort") + TELLING.score)) best.push("most comfort");
  const open = (o: Kept): number => ({ none: 0, beside: 1, struck: 2, apart: 3 })[o.day.plan.floor];
  if (open(k) > 1 && others.every((o) => open(k) > open(o))) best.push("most room to dance");
  if (others.every((o) => minutesOf(k.layout) < minutesOf(o.layout) - TELLING.minutes + 1 || (minutesOf(k.layout) <= minutesOf(o.layout) && movesOf(k.layout) < movesOf(o.layout)))) best.push("fewest moves");
  if (others.every((o) => score(k, "sight") > score(o, "sight") + TELLING.score)) best.push("most guests facing the couple");
  if (best.length > 0) return `Of these layouts it has the ${list(best)}.`;
  if (others.every((o) => o.layout.title !== k.layout.title)) return `What sets it apart: ${k.layout.title.toLowerCase()}.`;
  const words = apartWords(ctx, k.day);
  const own = words.filter((w, i) => w !== "" && others.every((o) => apartWords(ctx, o.day)[i] !== w));
  return own[0] === undefined ? null : `What sets it apart: ${own[0]}.`;
}

function givesUpAgainst(k: Kept, others: readonly Kept[]): readonly string[] {
  const out: string[] = [];
  const least = Math.min(...others.map((o) => minutesOf(o.layout)));
  if (others.length > 0 && minutesOf(k.layout) >= least + TELLING.minutes) {
    const by = minutesOf(k.layout) - least;
    out.push(least === 0 ? `A room is turned over, which another layout here spares.` : `Turning over takes ${by} ${by === 1 ? "minute" : "minutes"} more than in the quickest of these.`);
  }
  const comfort = (l: Layout): number => l.score?.comfort ?? 0;
  if (others.some((o) => comfort(o.layout) > comfort(k.layout) + TELLING.score)) out.push("Another layout here is more comfortable.");
  return out;
}

/** The tables' name, and the fewest words that no layout of the same name shares. */
function titleFor(ctx: Context, k: Kept, others: readonly Kept[]): string {
  const mine = apartWords(ctx, k.day);
  let twins = others.filter((o) => o.layout.title === k.layout.title);
  const said: string[] = [];
  for (const [i, word] of mine.entries()) {
    if (twins.length === 0) break;
    const left = twins.filter((o) => apartWords(ctx, o.day)[i] === word);
    if (word === "" || left.length === twins.length) continue;
    said.push(word);
    twins = left;
  }
  return twins.length > 0 && said.length === 0 ? `${k.layout.title}, ${FORM_WORDS.otherwise}` : [k.layout.title, ...said].join(", ");
}
