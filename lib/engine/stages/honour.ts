import { clearance } from "../../geometry";
import { footprint, type Item, type Scene } from "../../layout";
import { facing } from "./score";
import type { Context } from "./context";

/** Two tables of honour: their numbers, how far each stands from the couple's table, mm, and how many of its guests face the couple. */
export type Honour = {
  readonly alike: boolean;
  /** What the first ranks before the second by, where they are not alike. */
  readonly by: "near" | "sight" | "places";
  readonly tables: readonly [Honoured, Honoured];
};
export type Honoured = { readonly number: number; readonly apart: number; readonly see: number; readonly of: number };

/** Tables are alike in rank within so much of the way to the couple, mm, and of the share of guests who face them (common practice, no source). */
const AS_NEAR = 100, AS_MANY = 0.05;
/** So much farther, mm, two tables alike are taken before the two nearest. */
const RATHER = 2_000;
/** So many of the nearest tables are weighed against one another. */
const WEIGHED = 10;

const numberOf = (i: Item): number => Number(/\d+/.exec(i.label)?.[0] ?? 0);

/**
 * The two tables for two families: equally near the couple's table, equally large and with as many guests who face it; where no such two
 * stand near, the two nearest, the nearer first. Null without a table of the couple's own or a second table in its room.
 */
export function honoured(ctx: Pick<Context, "venue">, meal: Scene): Honour | null {
  const tops = meal.items.filter((i) => i.role === "top"), first = tops[0];
  if (!first) return null;
  const dining = meal.items.filter((i) => i.role === "dining" && i.room === first.room);
  const near = [...new Set(dining.map(numberOf))].map((number): Honoured => {
    const parts = dining.filter((i) => numberOf(i) === number);
    const apart = Math.round(Math.min(...parts.flatMap((p) => tops.map((t) => clearance(footprint(p), footprint(t))))));
    return { number, apart, ...facing(ctx, { ...meal, items: [...tops, ...parts] }) };
  }).sort((a, b) => a.apart - b.apart || a.number - b.number).slice(0, WEIGHED);
  const share = (t: Honoured): number => t.see / Math.max(1, t.of);
  const pairs = near.flatMap((a, i) => near.slice(i + 1).map((b): Honour => {
    const by = Math.abs(a.apart - b.apart) > AS_NEAR ? "near" : Math.abs(share(a) - share(b)) > AS_MANY ? "sight" : "places";
    const before = by === "near" ? b.apart - a.apart : by === "sight" ? share(a) - share(b) : a.of - b.of;
    return { alike: by === "places" && Math.abs(a.of - b.of) <= 1, by, tables: before >= 0 ? [a, b] : [b, a] };
  }));
  const cost = (p: Honour): number => Math.max(p.tables[0].apart, p.tables[1].apart) + (p.alike ? 0 : RATHER);
  return pairs.sort((x, y) => cost(x) - cost(y))[0] ?? null;
}
