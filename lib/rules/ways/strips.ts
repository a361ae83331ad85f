import { boxesNear, boxOf, edges, type Point, type Polygon, type Region } from "../../geometry";
import type { Item } from "../../layout";
import type { Ground } from "./ground";
import { grownCoarsely } from "./grow";

/** Floor cut into strips that run along x: all of a span is free for the whole height of its strip. */
export type Strips = {
  /** Strip k lies between at[k] and at[k + 1]. */
  readonly at: Float64Array;
  /** Spans of strip k: from first[k] to before first[k + 1]. */
  readonly first: Int32Array;
  readonly lo: Float64Array;
  readonly hi: Float64Array;
  /** Which connected piece a span belongs to, from 0. */
  readonly piece: Int32Array;
  readonly pieces: number;
};

/** By so much more than their true outline pieces are grown: more than the exact map's arcs are off, mm. */
const IN_HAND = 0.2;
/** Sides of the ground from this length on begin a strip of their own; shorter ones belong to arcs. */
const LONG = 60;
/** Spans narrower and overlaps shorter than this lead nowhere, mm. */
const THIN = 0.05;

/** What bounds or takes floor: the outline of a grown piece, or a side of the ground, asked for its reach along x between two heights. */
type Source = { readonly minY: number; readonly maxY: number; readonly reach: (y0: number, y1: number) => readonly [number, number] | null };


function bodyOf(item: Item, by: number): Source {
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
  return [cx - out, cx + out];
};

function slanted(p: Polygon): Source {
  const box = boxOf(p), sides = edges(p);
  return {
    minY: box.minY, maxY: box.maxY,
    reach: (y0, y1) => {
      let lo = Infinity, hi = -Infinity;
      for (const [a, b] of sides) { const s = clipped(a, b, y0, y1); if (s) { lo = Math.min(lo, s[0]); hi = Math.max(hi, s[1]); } }
      return [lo, hi];
    },
  };
}

/** What a segment covers along x between two heights; null where it is not between them. */
function clipped(a: Point, b: Point, y0: number, y1: number): readonly [number, number] | null {
  const up = a[1] <= b[1], low = up ? a : b, high = up ? b : a;
  if (high[1] < y0 || low[1] > y1) return null;
  const s = low[1] < y0 ? across(low, high, y0) : low[0], t = high[1] > y1 ? across(low, high, y1) : high[0];
  return s <= t ? [s, t] : [t, s];
}

/** Where a segment lies along x at a height. */
function across(low: Point, high: Point, y: number): number {
  const rise = high[1] - low[1];
  return rise === 0 ? low[0] : low[0] + ((high[0] - low[0]) * (y - low[1])) / rise;
}

type Base = { readonly sides: readonly Source[]; readonly ys: readonly number[] };
const bases = new WeakMap<Region, Base>();
function baseOf(region: Region): Base {
  const known = bases.get(region);
  if (known) return known;
  const all = region.flatMap((p) => [p.outer, ...p.holes].flatMap((ring) => [...edges(ring)]));
  const sides = all.map(([a, b]): Source => ({ minY: Math.min(a[1], b[1]), maxY: Math.max(a[1], b[1]), reach: (y0, y1) => clipped(a, b, y0, y1) }));
  const ys = [...all.filter(([a, b]) => Math.hypot(a[0] - b[0], a[1] - b[1]) >= LONG).flatMap(([a, b]) => [a[1], b[1]]), ...region.flatMap((p) => [p.box.minY, p.box.maxY])];
  const base = { sides, ys };
  bases.set(region, base);
  return base;
}

/** Ranges along x that lie in each strip: those of strip k from first[k] on, in order of where they begin. */
type Ranges = { readonly first: Int32Array; readonly lo: Float64Array; readonly hi: Float64Array; readonly crosses: Uint8Array };

/** What each source covers in each strip that it comes into. */
function rangesOf(at: Float64Array, sources: readonly Source[]): Ranges {
  const count = at.length - 1;
  const first = new Int32Array(count + 1), from = new Int32Array(sources.length), to = new Int32Array(sources.length);
  sources.forEach((s, i) => {
    let k = stripAt(at, s.minY);
    // What only touches a strip from outside covers nothing of it.
    while (k < count && (at[k + 1] ?? 0) <= s.minY + 1e-9) k++;
    from[i] = k;
    while (k < count && (at[k] ?? 0) < s.maxY - 1e-9) { first[k + 1] = (first[k + 1] ?? 0) + 1; k++; }
    to[i] = k;
  });
  for (let k = 0; k < count; k++) first[k + 1] = (first[k + 1] ?? 0) + (first[k] ?? 0);
  const n = first[count] ?? 0, lo = new Float64Array(n), hi = new Float64Array(n), crosses = new Uint8Array(n), next = first.slice();
  sources.forEach((s, i) => {
    for (let k = from[i] ?? 0; k < (to[i] ?? 0); k++) {
      const y0 = at[k] ?? 0, y1 = at[k + 1] ?? 0, span = s.reach(y0, y1);
      if (!span) { lo[next[k] ?? 0] = Infinity; hi[next[k] ?? 0] = -Infinity; next[k] = (next[k] ?? 0) + 1; continue; }
      // Sorted as they come: a strip has few.
      let j = next[k] ?? 0;
      const begin = first[k] ?? 0, mid = (y0 + y1) / 2;
      while (j > begin && (lo[j - 1] ?? 0) > span[0]) { lo[j] = lo[j - 1] ?? 0; hi[j] = hi[j - 1] ?? 0; crosses[j] = crosses[j - 1] ?? 0; j--; }
      lo[j] = span[0]; hi[j] = span[1]; crosses[j] = s.minY <= mid && s.maxY > mid ? 1 : 0;
      next[k] = (next[k] ?? 0) + 1;
    }
  });
  return { first, lo, hi, crosses };
}

/** Adds the spans of a strip that lie inside the sides and that no body reaches into. */
function addSpans(k: number, sides: Ranges, bodies: Ranges, out: number[]): void {
  let inside = false, reach = -Infinity, b = bodies.first[k] ?? 0;
  const last = bodies.first[k + 1] ?? 0;
  for (let i = sides.first[k] ?? 0; i < (sides.first[k + 1] ?? 0); i++) {
    const lo = sides.lo[i] ?? 0;
    if (inside && lo > reach) {
      let from = reach;
      for (; b < last && (bodies.lo[b] ?? 0) < lo; b++) {
        if ((bodies.lo[b] ?? 0) - from > THIN) out.push(from, bodies.lo[b] ?? 0);
        from = Math.max(from, bodies.hi[b] ?? 0);
        if (from >= lo) break;
      }
      if (lo - from > THIN) out.push(from, lo);
    }
    reach = Math.max(reach, sides.hi[i] ?? 0);
    if (sides.crosses[i]) inside = !inside;
  }
}

type Layer = { readonly region: Region; readonly bodies: readonly Source[] };

/** The ground of a level less the pieces on it, drawn in by half the walker's width: never freer than the exact map, and quick. */
export function stripsOf(ground: Ground, solid: readonly Item[], by: { readonly radius: number; readonly doorRadius: number; readonly line: (i: Item) => number; readonly high: number }): Strips {
  const layers: Layer[] = [{ region: ground.eroded, bodies: solid.map((i) => bodyOf(i, by.radius + by.line(i))) }];
  if (ground.nearDoors.length > 0) {
    const zone = ground.nearDoors.map((p) => p.box);
    const near = solid.filter((i) => { const far = by.doorRadius + by.line(i) + reachOf(i); return zone.some((z) => boxesNear(z, { minX: i.at[0], maxX: i.at[0], minY: i.at[1], maxY: i.at[1] }, far)); });
    layers.push({ region: ground.nearDoors, bodies: near.map((i) => bodyOf(i, by.doorRadius + by.line(i))) });
  }
  const at = cuts(layers, by.high), count = Math.max(0, at.length - 1);
  const cut = layers.map(({ region, bodies }) => ({ sides: rangesOf(at, baseOf(region).sides), bodies: rangesOf(at, bodies) }));
  const first = new Int32Array(count + 1), ends: number[] = [];
  for (let k = 0; k < count; k++) {
    const before = ends.length;
    for (const c of cut) addSpans(k, c.sides, c.bodies, ends);
    if (cut.length > 1) merge(ends, before);
    first[k + 1] = ends.length / 2;
  }
  return joined(at, first, ends);
}

const reachOf = (i: Item): number => ("diameter" in i.shape ? i.shape.diameter / 2 : Math.hypot(i.shape.width, i.shape.depth) / 2);

/** Heights at which strips begin: wherever a long side or a body begins or ends, and never farther apart than asked. */
function cuts(layers: readonly Layer[], high: number): Float64Array {
  const ys = layers.flatMap(({ region, bodies }) => [...baseOf(region).ys, ...bodies.flatMap((b) => [b.minY, b.maxY])]);
  const boxes = layers.flatMap((l) => l.region.map((p) => p.box));
  const low = Math.min(...boxes.map((b) => b.minY)), top = Math.max(...boxes.map((b) => b.maxY));
  const sorted = ys.filter((y) => y >= low && y <= top).sort((a, b) => a - b);
  const out: number[] = [];
  for (const y of sorted) {
    const last = out.at(-1);
    if (last === undefined) { out.push(y); continue; }
    if (y - last < THIN) continue;
    const parts = Math.ceil((y - last) / high);
    for (let k = 1; k <= parts; k++) out.push(last + ((y - last) * k) / parts);
  }
  return Float64Array.from(out);
}

/** The first strip that reaches to a height or past it. */
export function stripAt(at: Float64Array, y: number): number {
  let lo = 0, hi = at.length - 1;
  while (lo < hi) { const m = (lo + hi) >> 1; if ((at[m + 1] ?? Infinity) >= y) hi = m; else lo = m + 1; }
  return lo;
}

/** Unites the spans of a list from a place on. */
function merge(ends: number[], from: number): void {
  if (ends.length - from < 4) return;
  const list: (readonly [number, number])[] = [];
  for (let i = from; i < ends.length; i += 2) list.push([ends[i] ?? 0, ends[i + 1] ?? 0]);
  list.sort((p, q) => p[0] - q[0]);
  ends.length = from;
  for (const [a, b] of list) {
    const last = ends.at(-1);
    if (ends.length > from && last !== undefined && a <= last) ends[ends.length - 1] = Math.max(last, b); else ends.push(a, b);
  }
}

/** Spans of neighbouring strips that overlap are one piece of floor. */
function joined(at: Float64Array, first: Int32Array, ends: readonly number[]): Strips {
  const n = ends.length / 2, lo = new Float64Array(n), hi = new Float64Array(n), parent = new Int32Array(n);
  for (let i = 0; i < n; i++) { lo[i] = ends[2 * i] ?? 0; hi[i] = ends[2 * i + 1] ?? 0; parent[i] = i; }
  const root = (i: number): number => { let k = i; while ((parent[k] ?? k) !== k) { parent[k] = parent[parent[k] ?? k] ?? k; k = parent[k] ?? k; } return k; };
  for (let k = 0; k + 2 < first.length; k++) {
    let i = first[k] ?? 0, j = first[k + 1] ?? 0;
    const iEnd = j, jEnd = first[k + 2] ?? 0;
    while (i < iEnd && j < jEnd) {
      if (Math.min(hi[i] ?? 0, hi[j] ?? 0) - Math.max(lo[i] ?? 0, lo[j] ?? 0) > THIN) parent[root(i)] = root(j);
      if ((hi[i] ?? 0) < (hi[j] ?? 0)) i++; else j++;
    }
  }
  const names = new Int32Array(n).fill(-1), piece = new Int32Array(n);
  let pieces = 0;
  for (let i = 0; i < n; i++) { const r = root(i); if ((names[r] ?? -1) < 0) names[r] = pieces++; piece[i] = names[r] ?? 0; }
  return { at, first, lo, hi, piece, pieces };
}
