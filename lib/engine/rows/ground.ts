import {
  boxesNear, boxOf, contains, edges, segmentsCross, subtract, type Box, type Point, type Polygon, type Region, type Segment,
} from "../../geometry";
import type { RowSpace } from "./types";

type Ring = { readonly outline: Polygon; readonly box: Box; readonly sides: readonly { readonly s: Segment; readonly box: Box }[] };
type Area = { readonly outer: Ring; readonly holes: readonly Ring[] };

/** The floor of a room made ready for many small questions. */
export type Ground = { readonly floor: readonly Area[]; readonly free: readonly Area[] };

const ring = (outline: Polygon): Ring => ({
  outline, box: boxOf(outline), sides: edges(outline).map((s) => ({ s, box: boxOf(s) })),
});
const areas = (r: Region): readonly Area[] => r.map((p) => ({ outer: ring(p.outer), holes: p.holes.map(ring) }));

export const groundOf = (space: RowSpace): Ground => ({
  floor: areas(space.floor), free: areas(subtract(space.floor, [...space.solids, ...space.zones])),
});

const cut = (r: Ring, poly: Polygon, box: Box): boolean => {
  const mine = edges(poly);
  return r.sides.some((side) => boxesNear(side.box, box, 0) && mine.some((e) => segmentsCross(e, side.s) || contains(poly, side.s[0])));
};

/** True when a convex polygon lies in one piece of the floor. Exact but for touching, which callers keep off by a margin. */
export function liesIn(where: readonly Area[], poly: Polygon): boolean {
  const box = boxOf(poly);
  return where.some(({ outer, holes }) => {
    if (box.minX < outer.box.minX || box.maxX > outer.box.maxX || box.minY < outer.box.minY || box.maxY > outer.box.maxY) return false;
    if (!poly.every((p) => contains(outer.outline, p)) || cut(outer, poly, box)) return false;
    return holes.every((h) => !boxesNear(h.box, box, 0) || !(cut(h, poly, box) || poly.some((p) => contains(h.outline, p))));
  });
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
