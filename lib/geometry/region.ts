import {
  Clipper64, ClipperOffset, ClipType, EndType, FillRule, JoinType, PolyTree64,
  type Path64, type Paths64, type PolyPath64,
} from "clipper2-ts";
import { type Point } from "./point";
import { area, boundaryDistance, boxOf, contains, type Box, type Polygon } from "./polygon";
import { CLIP_SCALE } from "./tolerance";

/** One connected piece of floor: an outer ring and the holes in it. */
export type Piece = { readonly outer: Polygon; readonly holes: readonly Polygon[]; readonly box: Box };
/** A set of floor: connected pieces that do not overlap. */
export type Region = readonly Piece[];

const toPath = (p: Polygon): Path64 => p.map(([x, y]) => ({ x: Math.round(x * CLIP_SCALE), y: Math.round(y * CLIP_SCALE) }));
const fromPath = (p: Path64): Polygon => p.map(({ x, y }) => [x / CLIP_SCALE, y / CLIP_SCALE] as const);

function solve(type: ClipType, subject: Paths64, clip: Paths64): Region {
  const clipper = new Clipper64();
  clipper.addSubject(subject);
  if (clip.length > 0) clipper.addClip(clip);
  const tree = new PolyTree64();
  clipper.execute(type, FillRule.NonZero, tree);
  return pieces(tree);
}

function pieces(tree: PolyPath64): Region {
  const out: Piece[] = [];
  const visitOuter = (node: PolyPath64): void => {
    if (!node.poly) return;
    const holes: Polygon[] = [];
    for (let i = 0; i < node.count; i++) {
      const hole = node.child(i);
      if (hole.poly) holes.push(fromPath(hole.poly));
      for (let k = 0; k < hole.count; k++) visitOuter(hole.child(k));
    }
    const outer = fromPath(node.poly);
    out.push({ outer, holes, box: boxOf(outer) });
  };
  for (let i = 0; i < tree.count; i++) visitOuter(tree.child(i));
  return out;
}

const orient = (p: Path64, positive: boolean): Path64 => {
  let s = 0;
  for (let i = 0, j = p.length - 1; i < p.length; j = i++) s += (p[j]!.x - p[i]!.x) * (p[j]!.y + p[i]!.y);
  return s > 0 === positive ? p : [...p].reverse();
};
const outers = (ps: readonly Polygon[]): Paths64 => ps.map((p) => orient(toPath(p), true));
const paths = (r: Region): Paths64 => r.flatMap((p) => [orient(toPath(p.outer), true), ...p.holes.map((h) => orient(toPath(h), false))]);

/** The union of any polygons. */
export const union = (polygons: readonly Polygon[]): Region => solve(ClipType.Union, outers(polygons), []);
/** What of a region is not covered by any of the polygons. */
export const subtract = (region: Region, polygons: readonly Polygon[]): Region =>
  polygons.length === 0 ? region : solve(ClipType.Difference, paths(region), outers(polygons));
/** What of a region lies within at least one of the polygons. */
export const intersect = (region: Region, polygons: readonly Polygon[]): Region =>
  solve(ClipType.Intersection, paths(region), outers(polygons));
export const unite = (a: Region, b: Region): Region => solve(ClipType.Union, [...paths(a), ...paths(b)], []);
/** The union of any regions. */
export const uniteAll = (regions: readonly Region[]): Region => solve(ClipType.Union, regions.flatMap(paths), []);
export const minus = (a: Region, b: Region): Region => (b.length === 0 ? a : solve(ClipType.Difference, paths(a), paths(b)));

/**
 * A region grown (by > 0) or eroded (by < 0) with round corners: the Minkowski sum or difference with a disc.
 * Arcs are chords within 0.05 mm of the true arc, or as near as asked (mm).
 */
export function offset(region: Region, by: number, arcs = 0.05): Region {
  if (by === 0 || region.length === 0) return region;
  const off = new ClipperOffset(2, arcs * CLIP_SCALE);
  off.addPaths(paths(region), JoinType.Round, EndType.Polygon);
  const tree = new PolyTree64();
  off.execute(by * CLIP_SCALE, tree);
  return pieces(tree);
}

/** Each polygon grown by its own disc, then united. */
export function inflateAll(list: readonly { readonly polygon: Polygon; readonly by: number }[]): Region {
  const byAmount = new Map<number, Polygon[]>();
  for (const { polygon, by } of list) byAmount.set(by, [...(byAmount.get(by) ?? []), polygon]);
  const grown: Paths64 = [];
  for (const [by, ps] of byAmount) {
    if (by <= 0) grown.push(...outers(ps));
    else {
      const off = new ClipperOffset(2, 0.05 * CLIP_SCALE);
      for (const p of outers(ps)) off.addPath(p, JoinType.Round, EndType.Polygon);
      const tree = new PolyTree64();
      off.execute(by * CLIP_SCALE, tree);
      grown.push(...paths(pieces(tree)));
    }
  }
  return solve(ClipType.Union, grown, []);
}

export const pieceContains = (piece: Piece, p: Point): boolean =>
  p[0] >= piece.box.minX && p[0] <= piece.box.maxX && p[1] >= piece.box.minY && p[1] <= piece.box.maxY &&
  contains(piece.outer, p) && !piece.holes.some((h) => contains(h, p));
export const regionContains = (r: Region, p: Point): boolean => r.some((piece) => pieceContains(piece, p));
export const regionArea = (r: Region): number =>
  r.reduce((s, p) => s + area(p.outer) - p.holes.reduce((h, q) => h + area(q), 0), 0);

/** Distance from a point to a piece: 0 inside it. */
export function pieceDistance(piece: Piece, p: Point): number {
  if (pieceContains(piece, p)) return 0;
  return Math.min(boundaryDistance(piece.outer, p), ...piece.holes.map((h) => boundaryDistance(h, p)));
}

/** A region grown (by > 0) or eroded (by < 0) with sharp corners, cut off past four times the distance: what a wall's outer face is to its inner one. */
export function offsetMitred(region: Region, by: number): Region {
  if (by === 0 || region.length === 0) return region;
  const off = new ClipperOffset(4, 0.05 * CLIP_SCALE);
  off.addPaths(paths(region), JoinType.Miter, EndType.Polygon);
  const tree = new PolyTree64();
  off.execute(by * CLIP_SCALE, tree);
  return pieces(tree);
}
