import { boxOf, type Box, type Point, type Polygon, type Region } from "../../geometry";

export type Interval = readonly [from: number, to: number];

/** Level lines through a region: where each lies inside it. */
export type Lines = {
  readonly at: (y: number) => readonly Interval[];
  readonly minX: number; readonly maxX: number; readonly minY: number; readonly maxY: number;
  /** Heights at which floor begins or ends: where rows that fit snugly lie, the ones below and the others above. */
  readonly begins: readonly number[];
  readonly ends: readonly number[];
};

/** Edges are looked up by bands of height, so that a line meets few of them. */
const BANDS = 64;

export function linesOf(region: Region): Lines {
  let minX = Infinity, maxX = -Infinity, minY = Infinity, maxY = -Infinity;
  const ax: number[] = [], ay: number[] = [], bx: number[] = [], by: number[] = [];
  for (const piece of region) {
    minX = Math.min(minX, piece.box.minX); maxX = Math.max(maxX, piece.box.maxX);
    minY = Math.min(minY, piece.box.minY); maxY = Math.max(maxY, piece.box.maxY);
    for (const ring of [piece.outer, ...piece.holes]) for (let i = 0; i < ring.length; i++) {
      const a = ring[i] as Point, b = ring[(i + 1) % ring.length] as Point;
      if (a[1] === b[1]) continue;
      ax.push(a[0]); ay.push(a[1]); bx.push(b[0]); by.push(b[1]);
    }
  }
  const high = Math.max(1e-9, maxY - minY) / BANDS;
  const bandOf = (y: number): number => Math.max(0, Math.min(BANDS - 1, Math.floor((y - minY) / high)));
  const bands: number[][] = Array.from({ length: ax.length === 0 ? 0 : BANDS }, () => []);
  ay.forEach((y0, i) => {
    const y1 = by[i] as number;
    for (let b = bandOf(Math.min(y0, y1)), last = bandOf(Math.max(y0, y1)); b <= last; b++) bands[b]?.push(i);
  });
  const at = (y: number): readonly Interval[] => {
    if (!(y >= minY && y <= maxY)) return [];
    const xs: number[] = [], band = bands[bandOf(y)] ?? [];
    for (let k = 0; k < band.length; k++) {
      const i = band[k] as number, y0 = ay[i] as number, y1 = by[i] as number;
      if (y0 > y === y1 > y) continue;
      const x = (ax[i] as number) + ((y - y0) / (y1 - y0)) * ((bx[i] as number) - (ax[i] as number));
      // Two to a handful: put in their order as they come.
      let j = xs.length;
      while (j > 0 && (xs[j - 1] as number) > x) { xs[j] = xs[j - 1] as number; j--; }
      xs[j] = x;
    }
    const out: Interval[] = [];
    for (let i = 0; i + 1 < xs.length; i += 2) out.push([xs[i] as number, xs[i + 1] as number]);
    return out;
  };
  const turns = [...new Set(region.flatMap((p) => [p.outer, ...p.holes].flatMap(turning)))];
  return { at: memoised(at), minX, maxX, minY, maxY, begins: turns, ends: turns };
}

/** Heights at which a ring turns from going up the page to going down, or the other way: not every corner of an arc. */
function turning(ring: Polygon): number[] {
  return ring.flatMap((p, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point, b = ring[(i + 1) % ring.length] as Point;
    return (p[1] - a[1]) * (b[1] - p[1]) > 0 ? [] : [p[1]];
  });
}

/** Lines are asked for again and again at the same heights. */
function memoised(at: (y: number) => readonly Interval[]): (y: number) => readonly Interval[] {
  const memo = new Map<number, readonly Interval[]>();
  return (y) => {
    const known = memo.get(y);
    if (known) return known;
    const fresh = at(y);
    memo.set(y, fresh);
    return fresh;
  };
}

/** How far within a polygon a line must run to be cut by it, mm: what only touches stays. */
const TOUCH = 1e-6;

/** A convex polygon to be cut out; one of many corners as its two sides from the top of the page down, so that a level line is found by halving. */
type Cutter = { readonly box: Box; readonly p: Polygon; readonly square: boolean; readonly sides: readonly [Side, Side] | null };
type Side = readonly Point[];
/** From so many corners on the sides are worth working out. */
const MANY = 10;

const isSquare = (p: Polygon): boolean => p.every((a, i) => { const b = p[(i + 1) % p.length] as Point; return a[0] === b[0] || a[1] === b[1]; });

function cutterOf(p: Polygon): Cutter {
  const box = boxOf(p);
  if (p.length < MANY) return { box, p, square: p.length < 6 && isSquare(p), sides: null };
  let top = 0;
  p.forEach((q, i) => { if (q[1] < (p[top] as Point)[1]) top = i; });
  return { box, p, square: false, sides: [sideOf(p, top, 1), sideOf(p, top, -1)] };
}

/** From the topmost corner one way round until the ring turns up again. */
function sideOf(p: Polygon, top: number, way: 1 | -1): Side {
  const n = p.length, out: Point[] = [];
  for (let k = 0, i = top, last = -Infinity; k < n; k++, i = (i + way + n) % n) {
    const q = p[i] as Point;
    if (q[1] < last) break;
    out.push(q);
    last = q[1];
  }
  return out;
}

/** Where a side stands at a height that lies between its ends. */
function sideX(side: Side, y: number): number {
  let lo = 0, hi = side.length - 1;
  while (hi - lo > 1) { const mid = (lo + hi) >> 1; if ((side[mid] as Point)[1] <= y) lo = mid; else hi = mid; }
  const a = side[lo] as Point, b = side[hi] as Point;
  return b[1] === a[1] ? a[0] : a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
}

/** The list less what a cutter takes of it at a height. */
function cutBy(list: readonly Interval[], { box, p, square, sides }: Cutter, y: number): readonly Interval[] {
  if (y <= box.minY + TOUCH || y >= box.maxY - TOUCH) return list;
  if (square) return cut(list, box.minX, box.maxX);
  if (sides) { const a = sideX(sides[0], y), b = sideX(sides[1], y); return a === b ? list : cut(list, Math.min(a, b), Math.max(a, b)); }
  let lo = Infinity, hi = -Infinity;
  for (let i = 0, j = p.length - 1; i < p.length; j = i++) {
    const a = p[j] as Point, b = p[i] as Point;
    if (a[1] > y === b[1] > y) continue;
    const x = a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
    if (x < lo) lo = x;
    if (x > hi) hi = x;
  }
  return hi > lo ? cut(list, lo, hi) : list;
}

/** The intervals less what lies between two points. */
export function cut(list: readonly Interval[], lo: number, hi: number): readonly Interval[] {
  let meets = false;
  for (const on of list) if (hi > on[0] && lo < on[1]) { meets = true; break; }
  if (!meets) return list;
  const out: Interval[] = [];
  for (const on of list) {
    if (hi <= on[0] || lo >= on[1]) { out.push(on); continue; }
    if (lo >= on[0]) out.push([on[0], lo]);
    if (hi <= on[1]) out.push([hi, on[1]]);
  }
  return out;
}

const isConvex = (p: Polygon): boolean => {
  let sign = 0;
  for (let i = 0; i < p.length; i++) {
    const a = p[i] as Point, b = p[(i + 1) % p.length] as Point, c = p[(i + 2) % p.length] as Point;
    const turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    if (Math.abs(turn) < 1e-6) continue;
    if (sign !== 0 && turn > 0 !== sign > 0) return false;
    sign = turn;
  }
  return true;
};

/** From so many cutters on they are looked up by bands of height. */
const BANDED = 12;

/** The cutters that may take something at a height; those that lie beside the floor are left out. */
function cuttersNear({ minX, maxX, minY, maxY }: Lines, all: readonly Cutter[]): (y: number) => readonly Cutter[] {
  const own = all.filter(({ box }) => box.maxY > minY && box.minY < maxY && box.maxX > minX && box.minX < maxX);
  if (own.length < BANDED) return () => own;
  const high = Math.max(1e-9, maxY - minY) / BANDS, bands: Cutter[][] = Array.from({ length: BANDS }, () => []);
  const bandOf = (y: number): number => Math.max(0, Math.min(BANDS - 1, Math.floor((y - minY) / high)));
  for (const c of own) for (let b = bandOf(c.box.minY), last = bandOf(c.box.maxY); b <= last; b++) bands[b]?.push(c);
  return (y) => bands[bandOf(y)] ?? [];
}

/** The lines of a floor with polygons taken out of it: no new outline is worked out. */
export function without(lines: Lines, gone: readonly Polygon[]): Lines {
  if (gone.length === 0) return lines;
  const cutters = gone.filter(isConvex).map(cutterOf), others = gone.filter((p) => !isConvex(p)).map((outer) => linesOf([{ outer, holes: [], box: boxOf(outer) }]));
  const boxes = [...cutters.map((c) => c.box), ...others];
  const near = cuttersNear(lines, cutters);
  const at = (y: number): readonly Interval[] => {
    let list = lines.at(y);
    if (list.length === 0) return list;
    const here = near(y);
    for (let k = 0; k < here.length && list.length > 0; k++) list = cutBy(list, here[k] as Cutter, y);
    for (const o of others) for (const [a, b] of o.at(y)) list = cut(list, a, b);
    return list;
  };
  return { ...lines, begins: [...lines.begins, ...boxes.map((b) => b.maxY)], ends: [...lines.ends, ...boxes.map((b) => b.minY)], at: memoised(at) };
}

/** The part of the lines within a box. */
export function clipped(lines: Lines, box: Box): Lines {
  const minX = Math.max(lines.minX, box.minX), maxX = Math.min(lines.maxX, box.maxX), minY = Math.max(lines.minY, box.minY), maxY = Math.min(lines.maxY, box.maxY);
  return {
    minX, maxX, minY, maxY, begins: [...lines.begins.filter((y) => y > minY && y < maxY), minY], ends: [...lines.ends.filter((y) => y > minY && y < maxY), maxY],
    at: memoised((y) => (y < minY || y > maxY ? [] : lines.at(y).flatMap(([l, r]): Interval[] => { const a = Math.max(l, minX), b = Math.min(r, maxX); return b >= a ? [[a, b]] : []; }))),
  };
}

/** The lines of a region with x and y exchanged. */
export const uprightLines = (region: Region): Lines => linesOf(flipRegion(region));
export const flipRegion = (region: Region): Region => region.map((p) => ({
  outer: p.outer.map(([x, y]) => [y, x] as const), holes: p.holes.map((h) => h.map(([x, y]) => [y, x] as const)),
  box: { minX: p.box.minY, minY: p.box.minX, maxX: p.box.maxY, maxY: p.box.maxX },
}));

/** How many of x0 + k * pitch lie in the intervals. */
export function countOn(line: readonly Interval[], x0: number, pitch: number): number {
  let n = 0;
  for (const [l, r] of line) n += Math.max(0, Math.floor((r - x0) / pitch + 1e-9) - Math.ceil((l - x0) / pitch - 1e-9) + 1);
  return n;
}

export function pointsOn(line: readonly Interval[], y: number, x0: number, pitch: number): Point[] {
  const out: Point[] = [];
  for (const [l, r] of line) for (let k = Math.ceil((l - x0) / pitch - 1e-9); x0 + k * pitch <= r + 1e-6; k++) out.push([x0 + k * pitch, y]);
  return out;
}
