import { boxesNear, type Region } from "../../geometry";
import type { Item } from "../../layout";
import type { Ground } from "./ground";
import { baseOf, bodyOf, type Source } from "./sources";

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
  /** What it was cut from. */
  readonly layers: readonly Layer[];
};

/** What strips have in common with earlier ones. */
export type Common = {
  /** The piece that each earlier piece is now, and the other way round; -1 where nothing of it lies in strips that both have; null where a piece is two of the other. */
  readonly pieces: { readonly now: Int32Array; readonly then: Int32Array } | null;
  /** Heights between which strips are not the same, in order. */
  readonly anew: readonly (readonly [number, number])[];
};

type Layer = { readonly region: Region; readonly bodies: readonly Source[] };

/** Spans narrower and overlaps shorter than this lead nowhere, mm. */
const THIN = 0.05;
/** What only touches a strip from outside covers nothing of it, mm. */
const TOUCH = 1e-9;
/** Bodies that may differ from an earlier stand for its strips to be worth looking through. */
const FEW = 12;

type Measures = { readonly radius: number; readonly doorRadius: number; readonly line: (i: Item) => number; readonly high: number };

/**
 * The ground of a level less the pieces on it, drawn in by half the walker's width: never freer than the exact map, and quick. Strips of
 * earlier ones of the same ground are taken over where nothing has changed; the outcome is the same as without.
 */
export function stripsOf(ground: Ground, solid: readonly Item[], by: Measures, earlier: Strips | null = null): { readonly strips: Strips; readonly common: Common | null } {
  const layers: Layer[] = [{ region: ground.eroded, bodies: solid.map((i) => bodyOf(i, by.radius + by.line(i))) }];
  if (ground.nearDoors.length > 0) {
    const zone = ground.nearDoors.map((p) => p.box);
    const near = solid.filter((i) => { const far = by.doorRadius + by.line(i) + reachOf(i); return zone.some((z) => boxesNear(z, { minX: i.at[0], maxX: i.at[0], minY: i.at[1], maxY: i.at[1] }, far)); });
    layers.push({ region: ground.nearDoors, bodies: near.map((i) => bodyOf(i, by.doorRadius + by.line(i))) });
  }
  const at = cuts(layers, by.high), count = Math.max(0, at.length - 1), changed = earlier ? changes(earlier.layers, layers) : null;
  const kept = earlier && changed ? stripsKept(earlier.at, at, changed) : null;
  const anew = kept ? anewOf(at, kept) : null, comesIn = (s: Source): boolean => !anew || anew.some(([y0, y1]) => s.minY <= y1 && s.maxY >= y0);
  const sweeps = layers.map((l) => ({ sides: sweep(baseOf(l.region).sides.filter(comesIn)), bodies: sweep(l.bodies.filter(comesIn)) }));
  const first = new Int32Array(count + 1), ends: number[] = [];
  for (let k = 0; k < count; k++) {
    const before = ends.length, was = kept?.[k] ?? -1;
    if (earlier && was >= 0) {
      for (let i = earlier.first[was] ?? 0, to = earlier.first[was + 1] ?? 0; i < to; i++) ends.push(earlier.lo[i] ?? 0, earlier.hi[i] ?? 0);
    } else {
      const y0 = at[k] ?? 0, y1 = at[k + 1] ?? 0;
      for (const s of sweeps) addSpans(s.sides(y0, y1), s.bodies(y0, y1), ends);
      if (sweeps.length > 1) merge(ends, before);
    }
    first[k + 1] = ends.length / 2;
  }
  const strips: Strips = { ...joined(at, first, ends), layers };
  return { strips, common: earlier && kept && anew ? { pieces: paired(earlier, strips, kept), anew } : null };
}

const reachOf = (i: Item): number => ("diameter" in i.shape ? i.shape.diameter / 2 : Math.hypot(i.shape.width, i.shape.depth) / 2);

const sets = new WeakMap<Layer, ReadonlySet<Source>>();
function setOf(layer: Layer): ReadonlySet<Source> {
  const known = sets.get(layer) ?? new Set(layer.bodies);
  sets.set(layer, known);
  return known;
}

/** Bodies that stand in one of two cuttings alone; null where they are many, or the ground is another. */
function changes(then: readonly Layer[], now: readonly Layer[]): readonly Source[] | null {
  const out: Source[] = [];
  for (let i = 0; i < Math.max(then.length, now.length); i++) {
    const a = then[i], b = now[i];
    if (a?.region !== b?.region || !a || !b) return null;
    const had = setOf(a), has = setOf(b);
    for (const s of had) if (!has.has(s)) out.push(s);
    for (const s of has) if (!had.has(s)) out.push(s);
    if (out.length > FEW) return null;
  }
  return out;
}

/** For each strip the earlier strip between the same heights into which nothing comes that has changed; -1 where there is none. */
function stripsKept(then: Float64Array, now: Float64Array, changed: readonly Source[]): Int32Array {
  const kept = new Int32Array(Math.max(0, now.length - 1)).fill(-1);
  for (let k = 0, j = 0; k < kept.length; k++) {
    const y0 = now[k] ?? 0, y1 = now[k + 1] ?? 0;
    while (j + 1 < then.length && (then[j] ?? 0) < y0) j++;
    if (j + 1 < then.length && then[j] === y0 && then[j + 1] === y1 && !changed.some((s) => s.minY <= y1 && s.maxY >= y0)) kept[k] = j;
  }
  return kept;
}

function anewOf(at: Float64Array, kept: Int32Array): readonly (readonly [number, number])[] {
  const out: [number, number][] = [];
  kept.forEach((was, k) => {
    if (was >= 0) return;
    const last = out.at(-1), y0 = at[k] ?? 0, y1 = at[k + 1] ?? 0;
    if (last && last[1] === y0) last[1] = y1; else out.push([y0, y1]);
  });
  return out;
}

/** Which piece of the earlier strips is which of the later, by the strips that both have; null where that is not one to one. */
function paired(then: Strips, strips: Strips, kept: Int32Array): Common["pieces"] {
  const now = new Int32Array(then.pieces).fill(-1), before = new Int32Array(strips.pieces).fill(-1);
  for (let k = 0; k < kept.length; k++) {
    const was = kept[k] ?? -1;
    if (was < 0) continue;
    for (let i = strips.first[k] ?? 0, j = then.first[was] ?? 0; i < (strips.first[k + 1] ?? 0); i++, j++) {
      const p = then.piece[j] ?? 0, q = strips.piece[i] ?? 0;
      if (now[p] === -1 && before[q] === -1) { now[p] = q; before[q] = p; } else if (now[p] !== q || before[q] !== p) return null;
    }
  }
  return { now, then: before };
}

/** What of a list comes into a strip, by the reach of each along x, in order of where it begins; asked for strip after strip. */
type Sweep = (y0: number, y1: number) => Ranges;
type Ranges = { count: number; readonly lo: number[]; readonly hi: number[]; readonly crosses: boolean[] };

function sweep(sources: readonly Source[]): Sweep {
  const waiting = [...sources].sort((a, b) => a.minY - b.minY), active: Source[] = [], r: Ranges = { count: 0, lo: [], hi: [], crosses: [] };
  let next = 0;
  return (y0, y1) => {
    for (let s = waiting[next]; s && s.minY + TOUCH < y1; s = waiting[++next]) active.push(s);
    const mid = (y0 + y1) / 2, { lo, hi, crosses } = r;
    let here = 0, n = 0;
    for (const s of active) {
      if (s.maxY - TOUCH <= y0) continue;
      active[here++] = s;
      const span = s.reach(y0, y1);
      if (!span) continue;
      // Sorted as they come: a strip has few.
      let j = n++;
      while (j > 0 && (lo[j - 1] ?? 0) > span[0]) { lo[j] = lo[j - 1] ?? 0; hi[j] = hi[j - 1] ?? 0; crosses[j] = crosses[j - 1] ?? false; j--; }
      lo[j] = span[0]; hi[j] = span[1]; crosses[j] = s.minY <= mid && s.maxY > mid;
    }
    active.length = here;
    r.count = n;
    return r;
  };
}

/** Adds the spans of a strip that lie inside the sides and that no body reaches into. */
function addSpans(sides: Ranges, bodies: Ranges, out: number[]): void {
  let inside = false, reach = -Infinity, b = 0;
  for (let i = 0; i < sides.count; i++) {
    const lo = sides.lo[i] ?? 0;
    if (inside && lo > reach) {
      let from = reach;
      for (; b < bodies.count && (bodies.lo[b] ?? 0) < lo; b++) {
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

/** Heights at which strips begin: wherever a long side or a body begins or ends, and never farther apart than asked. */
function cuts(layers: readonly Layer[], high: number): Float64Array {
  const ys: number[] = [];
  for (const { region, bodies } of layers) {
    ys.push(...baseOf(region).ys);
    for (const b of bodies) ys.push(b.minY, b.maxY);
  }
  const boxes = layers.flatMap((l) => l.region.map((p) => p.box));
  const low = Math.min(...boxes.map((b) => b.minY)), top = Math.max(...boxes.map((b) => b.maxY));
  // Numbers in a row of their own are put in order without being asked two by two.
  const sorted = Float64Array.from(ys.filter((y) => y >= low && y <= top)).sort();
  const out: number[] = [];
  let last = sorted[0] ?? 0;
  if (sorted.length > 0) out.push(last);
  for (const y of sorted) {
    if (y - last < THIN) continue;
    const parts = Math.ceil((y - last) / high);
    for (let k = 1; k <= parts; k++) out.push(last + ((y - last) * k) / parts);
    last = out[out.length - 1] ?? y;
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
function joined(at: Float64Array, first: Int32Array, ends: readonly number[]): Omit<Strips, "layers"> {
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
