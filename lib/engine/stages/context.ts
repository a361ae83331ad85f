import type { Brief } from "../../brief";
import { chairsOwned, gapsBetween, siteFor, type Gaps, type RuleValues } from "../../rules";
import type { Package, Site, Stock, Venue } from "../../venue";
import type { Effort } from "../effort";
import type { Stopwatch } from "../stopwatch";
import type { Demand } from "./demand";

/** All that may influence one arrangement: nothing else does. */
export type Context = {
  readonly venue: Venue;
  readonly pack: Package;
  readonly brief: Brief;
  readonly site: Site;
  readonly demand: Demand;
  readonly values: RuleValues;
  readonly chair: { readonly width: number; readonly depth: number; readonly stock: string | null; readonly count: number; readonly all: number };
  readonly seed: number;
  /** What stages have worked out in this one arrangement and may ask for again; no result depends on it. */
  readonly known: Map<string, unknown>;
  /** What the stages together may still spend. */
  readonly effort: Effort;
  readonly watch: Stopwatch;
};

/** The value of a pure piece of work, kept for the rest of one arrangement. The key names all that it depends on. */
export function remembered<T>(ctx: Context, key: string, work: () => T): T {
  if (ctx.known.has(key)) return ctx.known.get(key) as T;
  const value = work();
  ctx.known.set(key, value);
  return value;
}

/** The same arrangement with these drapes drawn: another floor, so nothing remembered on the old one holds. */
export const withDrapes = (ctx: Context, drapes: readonly string[]): Context =>
  drapes.length === ctx.site.drapes.length && drapes.every((d) => ctx.site.drapes.some((s) => s.id === d)) ? ctx
    : remembered(ctx, `drapes ${drapes.join(" ")}`, () => ({ ...ctx, site: siteFor(ctx.venue, drapes), known: new Map<string, unknown>() }));

export const CHAIR_TAKEN = { width: 450, depth: 500 } as const;

/** The chair that the venue owns most of, and how many it owns of all kinds together. */
export function chairOf(venue: Venue): Context["chair"] {
  const chairs = venue.stock.filter((s) => s.kind === "chair").sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1));
  const best = chairs[0];
  if (!best) return { ...CHAIR_TAKEN, stock: null, count: 0, all: 0 };
  const size = "diameter" in best.shape ? { width: best.shape.diameter, depth: best.shape.diameter } : { width: best.shape.width, depth: best.shape.depth };
  return { ...size, stock: best.id, count: best.count, all: chairsOwned(venue) };
}

/** Steps by which comfort is let go, in this order: places a table before the gaps between tables. */
export type Ease = { readonly gaps: "comfort" | "close" | "most"; readonly perTable: "comfort" | "most" | number };
export function eases(brief: Brief): readonly Ease[] {
  const per = brief.meal.perTable;
  if (per === "comfort") return [
    { gaps: "comfort", perTable: "comfort" }, { gaps: "comfort", perTable: "most" },
    { gaps: "close", perTable: "comfort" }, { gaps: "close", perTable: "most" }, { gaps: "most", perTable: "comfort" }, { gaps: "most", perTable: "most" },
  ];
  return [{ gaps: "comfort", perTable: per }, { gaps: "close", perTable: per }, { gaps: "most", perTable: per }];
}

/** The gaps of an ease. Close ones stand half-way: at the least a way between tables may be no longer than twelve feet, and a full room takes fewer. */
export const gapsOf = (values: Pick<RuleValues, "comfort" | "most">, gaps: Ease["gaps"]): Gaps => gapsBetween(values, SLACK[gaps]);
const SLACK: Readonly<Record<Ease["gaps"], number>> = { comfort: 1, close: 0.5, most: 0 };

export const familiesOf = (venue: Venue, taken: ReadonlyMap<string, number>): readonly (Stock & { readonly left: number })[] =>
  venue.stock.filter((s) => s.kind === "table" && s.seats && s.seats.most > 1)
    .map((s) => ({ ...s, left: s.count - (taken.get(s.id) ?? 0) }))
    .filter((s) => s.left > 0);
