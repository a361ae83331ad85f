import {
  add, boundaryDistance, boxesNear, boxOf, contains, edges, scale, segmentsCross, subtract, type Box, type Point, type Polygon, type Region, type Segment,
} from "../../geometry";
import type { RowSpace } from "./types";

type Ring = { readonly outline: Polygon; readonly box: Box; readonly sides: readonly { readonly s: Segment; readonly box: Box }[] };
type Area = { readonly outer: Ring; readonly holes: readonly Ring[] };
/** Squares of a room, each with how far its middle is from the nearest edge once somebody asked: above 0 inside, below 0 outside. */
type Squares = { readonly x: number; readonly y: number; readonly across: number; readonly down: number; readonly depth: Float64Array };
type Open = { readonly areas: readonly Area[]; readonly squares: Squares };

const HAIR = 0.01;
/** Side of a square, mm: most chairs' floor lies wholly within reach of one. */
const SQUARE = 300;

/** The floor of a room made ready for many small questions. */
export type Ground = {
  readonly floor: Open;
  /** Less what stands there. */
  readonly bare: Open;
  /** Less what stands there and what must be kept clear. */
  readonly free: Open;
};

const ring = (outline: Polygon): Ring => ({
  outline, box: boxOf(outline), sides: edges(outline).map((s) => ({ s, box: boxOf(s) })),
});
const open = (r: Region): Open => {
  const areas = r.map((p): Area => ({ outer: ring(p.outer), holes: p.holes.map(ring) }));
  const { minX, minY, maxX, maxY } = boxOf(areas.flatMap((a) => a.outer.outline));
  const across = areas.length > 0 ? Math.ceil((maxX - minX) / SQUARE) + 1 : 0, down = areas.length > 0 ? Math.ceil((maxY - minY) / SQUARE) + 1 : 0;
  return { areas, squares: { x: minX, y: minY, across, down, depth: new Float64Array(across * down).fill(NaN) } };
};

export const groundOf = (space: RowSpace): Ground => {
  const bare = subtract(space.floor, space.solids);
  return { floor: open(space.floor), bare: open(bare), free: open(subtract(bare, space.zones)) };
};

/** How far a point is from the nearest edge: above 0 inside, below 0 outside. */
function depthOf({ areas }: Open, at: Point): number {
  let least = Infinity, inside = false;
  for (const { outer, holes } of areas) {
    least = Math.min(least, boundaryDistance(outer.outline, at));
    for (const h of holes) least = Math.min(least, boundaryDistance(h.outline, at));
    inside ||= contains(outer.outline, at) && !holes.some((h) => contains(h.outline, at));
  }
  return inside ? least : -least;
}

/** Whether all that is within `reach` of a point lies on the floor (true), or the point itself lies off it (false); null where that takes a closer look. */
export function surelyIn(where: Open, x: number, y: number, reach: number): boolean | null {
  const q = where.squares, i = Math.floor((x - q.x) / SQUARE), j = Math.floor((y - q.y) / SQUARE);
  if (i < 0 || j < 0 || i >= q.across || j >= q.down) return false;
  const mx = q.x + (i + 0.5) * SQUARE, my = q.y + (j + 0.5) * SQUARE, k = j * q.across + i;
  let depth = q.depth[k] as number;
  if (Number.isNaN(depth)) depth = q.depth[k] = depthOf(where, [mx, my]);
  const off = Math.sqrt((x - mx) * (x - mx) + (y - my) * (y - my)) + HAIR;
  return depth > off + reach ? true : -depth > off ? false : null;
}

/** Strictly inside a convex polygon, by more than a hair; either winding. */
function deepIn(poly: Polygon, [x, y]: Point): boolean {
  let sign = 0;
  for (let i = 0; i < poly.length; i++) {
    const a = poly[i], b = poly[(i + 1) % poly.length];
    if (!a || !b) return false;
    const dx = b[0] - a[0], dy = b[1] - a[1];
    const c = (dx * (y - a[1]) - dy * (x - a[0])) / (Math.abs(dx) + Math.abs(dy) || 1);
    if (Math.abs(c) < HAIR) return false;
    if (sign === 0) sign = Math.sign(c);
    else if (Math.sign(c) !== sign) return false;
  }
  return true;
}

function cut(r: Ring, poly: Polygon, box: Box): boolean {
  let mine: readonly Segment[] | null = null;
  for (const side of r.sides) {
    if (side.box.minX > box.maxX || side.box.maxX < box.minX || side.box.minY > box.maxY || side.box.maxY < box.minY) continue;
    mine ??= edges(poly);
    if (deepIn(poly, side.s[0])) return true;
    for (const e of mine) if (segmentsCross(e, side.s)) return true;
  }
  return false;
}

/** True when a rectangle lies in one piece of the floor; touching its edge is lying in it. */
export function liesIn(where: Open, poly: Polygon): boolean {
  const first = poly[0], third = poly[2];
  if (!first || !third) return false;
  const centre: Point = [(first[0] + third[0]) / 2, (first[1] + third[1]) / 2];
  const sure = surelyIn(where, centre[0], centre[1], Math.hypot(first[0] - centre[0], first[1] - centre[1]));
  if (sure !== null) return sure;
  const box = boxOf(poly);
  for (const { outer, holes } of where.areas) {
    if (box.minX < outer.box.minX - HAIR || box.maxX > outer.box.maxX + HAIR || box.minY < outer.box.minY - HAIR || box.maxY > outer.box.maxY + HAIR) continue;
    if (!contains(outer.outline, centre) || cut(outer, poly, box)) continue;
    if (holes.every((h) => !boxesNear(h.box, box, 0) || !(cut(h, poly, box) || contains(h.outline, centre)))) return true;
  }
  return false;
}

/** A place to look from: origin on the wall, `across` to the right of one who looks at the front, `back` away from it. */
export type Frame = { readonly origin: Point; readonly across: Point; readonly back: Point };
export const place = (f: Frame, u: number, d: number): Point => [
  f.origin[0] + f.across[0] * u + f.back[0] * d, f.origin[1] + f.across[1] * u + f.back[1] * d,
];
/** So far across and back, from wherever one stands. */
export const along = (f: Frame, [u, d]: Point): Point => add(scale(f.across, u), scale(f.back, d));
/** A rectangle of the frame: u0..u1 across, d0..d1 back. */
export const block = (f: Frame, u0: number, u1: number, d0: number, d1: number): Polygon => [
  place(f, u0, d0), place(f, u1, d0), place(f, u1, d1), place(f, u0, d1),
];
