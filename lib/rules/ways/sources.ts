import { boxOf, edges, type Point, type Polygon, type Region } from "../../geometry";
import type { Item } from "../../layout";
import { grownCoarsely } from "./grow";

/** By so much more than their true outline pieces are grown: more than the exact map's arcs are off, mm. */
const IN_HAND = 0.2;
/** Sides of the ground from this length on begin a strip of their own; shorter ones belong to arcs. */
const LONG = 60;

/**
 * What bounds or takes floor: the outline of a grown piece, or a side of the ground, asked for its reach along x between two heights. The
 * pair is one object that holds until any source is asked again: a map asks tens of thousands of times.
 */
export type Source = { readonly minY: number; readonly maxY: number; readonly reach: (y0: number, y1: number) => readonly [number, number] | null };

const SPAN: [number, number] = [0, 0];
function span(lo: number, hi: number): readonly [number, number] {
  SPAN[0] = lo;
  SPAN[1] = hi;
  return SPAN;
}

const bodies = new WeakMap<Item, Map<number, Source>>();

/** A piece grown by a distance, mm; one object wherever the piece stands, so that what was cut of it is found again. */
export function bodyOf(item: Item, by: number): Source {
  const of = bodies.get(item) ?? new Map<number, Source>(), known = of.get(by) ?? makeBody(item, by);
  bodies.set(item, of);
  of.set(by, known);
  return known;
}

function makeBody(item: Item, by: number): Source {
  const r = by + IN_HAND, [cx, cy] = item.at;
  if ("diameter" in item.shape) {
    const all = item.shape.diameter / 2 + r;
    return { minY: cy - all, maxY: cy + all, reach: rounded(cx, cy, { half: 0, deep: 0, r: all }) };
  }
  const straight = item.angle % 90 === 0, lying = item.angle % 180 === 0;
  if (!straight) return slanted(grownCoarsely(item, r));
  const half = (lying ? item.shape.width : item.shape.depth) / 2, deep = (lying ? item.shape.depth : item.shape.width) / 2;
  return { minY: cy - deep - r, maxY: cy + deep + r, reach: rounded(cx, cy, { half, deep, r }) };
}

type Rounded = { readonly half: number; readonly deep: number; readonly r: number };
const rounded = (cx: number, cy: number, { half, deep, r }: Rounded) => (y0: number, y1: number): readonly [number, number] => {
  const off = Math.max(0, y0 > cy ? y0 - cy - deep : cy - y1 - deep);
  const out = half + Math.sqrt(Math.max(0, r * r - off * off));
  return span(cx - out, cx + out);
};

function slanted(p: Polygon): Source {
  const box = boxOf(p), sides = edges(p);
  return {
    minY: box.minY, maxY: box.maxY,
    reach: (y0, y1) => {
      let lo = Infinity, hi = -Infinity;
      for (const [a, b] of sides) { const s = clipped(a, b, y0, y1); if (s) { lo = Math.min(lo, s[0]); hi = Math.max(hi, s[1]); } }
      return span(lo, hi);
    },
  };
}

/** What a segment covers along x between two heights; null where it is not between them. */
function clipped(a: Point, b: Point, y0: number, y1: number): readonly [number, number] | null {
  const up = a[1] <= b[1], low = up ? a : b, high = up ? b : a;
  if (high[1] < y0 || low[1] > y1) return null;
  const s = low[1] < y0 ? across(low, high, y0) : low[0], t = high[1] > y1 ? across(low, high, y1) : high[0];
  return s <= t ? span(s, t) : span(t, s);
}

/** Where a segment lies along x at a height. */
function across(low: Point, high: Point, y: number): number {
  const rise = high[1] - low[1];
  return rise === 0 ? low[0] : low[0] + ((high[0] - low[0]) * (y - low[1])) / rise;
}

/** The sides of a ground, and the heights at which strips begin for it. */
type Base = { readonly sides: readonly Source[]; readonly ys: readonly number[] };
const bases = new WeakMap<Region, Base>();
export function baseOf(region: Region): Base {
  const known = bases.get(region);
  if (known) return known;
  const all = region.flatMap((p) => [p.outer, ...p.holes].flatMap((ring) => [...edges(ring)]));
  const sides = all.map(([a, b]): Source => ({ minY: Math.min(a[1], b[1]), maxY: Math.max(a[1], b[1]), reach: (y0, y1) => clipped(a, b, y0, y1) }));
  const ys = [...all.filter(([a, b]) => Math.hypot(a[0] - b[0], a[1] - b[1]) >= LONG).flatMap(([a, b]) => [a[1], b[1]]), ...region.flatMap((p) => [p.box.minY, p.box.maxY])];
  const base = { sides, ys };
  bases.set(region, base);
  return base;
}
