import {
  boxesNear, boxOf, contains, edges, segmentsCross, subtract, type Box, type Point, type Polygon, type Region, type Segment,
} from "../../geometry";
import type { RowSpace } from "./types";

type Ring = { readonly outline: Polygon; readonly box: Box; readonly sides: readonly { readonly s: Segment; readonly box: Box }[] };
type Area = { readonly outer: Ring; readonly holes: readonly Ring[] };

const HAIR = 0.01;

/** The floor of a room made ready for many small questions. */
export type Ground = {
  readonly floor: readonly Area[];
  /** Less what stands there. */
  readonly bare: readonly Area[];
  /** Less what stands there and what must be kept clear. */
  readonly free: readonly Area[];
};

const ring = (outline: Polygon): Ring => ({
  outline, box: boxOf(outline), sides: edges(outline).map((s) => ({ s, box: boxOf(s) })),
});
const areas = (r: Region): readonly Area[] => r.map((p) => ({ outer: ring(p.outer), holes: p.holes.map(ring) }));

export const groundOf = (space: RowSpace): Ground => {
  const bare = subtract(space.floor, space.solids);
  return { floor: areas(space.floor), bare: areas(bare), free: areas(subtract(bare, space.zones)) };
};

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

/** True when a convex polygon lies in one piece of the floor; touching its edge is lying in it. */
export function liesIn(where: readonly Area[], poly: Polygon): boolean {
  const box = boxOf(poly);
  const first = poly[0], third = poly[Math.floor(poly.length / 2)];
  if (!first || !third) return false;
  const centre: Point = [(first[0] + third[0]) / 2, (first[1] + third[1]) / 2];
  for (const { outer, holes } of where) {
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
/** A rectangle of the frame: u0..u1 across, d0..d1 back. */
export const block = (f: Frame, u0: number, u1: number, d0: number, d1: number): Polygon => [
  place(f, u0, d0), place(f, u1, d0), place(f, u1, d1), place(f, u0, d1),
];
