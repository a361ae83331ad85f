import { add, cross, distance, dot, edges, pointSegmentDistance, roundPoint, scale, sub, unit, type Point, type Polygon, type Segment } from "../../geometry";
import { ON_WALL, wallOf } from "../site";

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
/** A wall's letter, by its place in the outline: A from the first corner to the second, and so on; after Z come AA, AB. */
export const wallName = (i: number): string => (i < 26 ? LETTERS.charAt(i) : `${LETTERS.charAt(Math.floor(i / 26) - 1)}${LETTERS.charAt(i % 26)}`);
export const wallIndex = (outline: Polygon, name: string): number => outline.findIndex((_, i) => wallName(i) === name.trim().toUpperCase());

export type Stretch = { readonly from: Point; readonly to: Point };
export type OnWall = { readonly wall: string; /** From the wall's first corner, mm. */ readonly start: number; readonly width: number };

/** A stretch of an outline as wall, distance from the wall's first corner, and width. Null where it lies on no wall. */
export function onWall(outline: Polygon, { from, to }: Stretch): OnWall | null {
  const wall = wallOf(outline, from, to) ?? lineOf(outline, { from, to });
  if (!wall) return null;
  const i = edges(outline).findIndex(([a, b]) => a === wall[0] && b === wall[1]);
  const along = unit(sub(wall[1], wall[0]));
  const [s, e] = [dot(sub(from, wall[0]), along), dot(sub(to, wall[0]), along)];
  return { wall: wallName(i), start: Math.round(Math.min(s, e)), width: Math.round(Math.abs(e - s)) };
}

/** The wall whose line a stretch lies on, though it reaches past its end: so a draft may hold it. */
function lineOf(outline: Polygon, { from, to }: Stretch): Segment | undefined {
  const off = ([a, b]: Segment, p: Point): number => Math.abs(cross(unit(sub(b, a)), sub(p, a)));
  return edges(outline).filter((e) => distance(e[0], e[1]) > 0 && off(e, from) <= ON_WALL && off(e, to) <= ON_WALL).sort((a, b) => pointSegmentDistance(from, a) - pointSegmentDistance(from, b))[0];
}

export const wallLength = (outline: Polygon, i: number): number => { const e = edges(outline)[i]; return e ? distance(e[0], e[1]) : 0; };

/** The ends of a stretch on a wall, rounded to whole millimetres; from the wall's first corner on. */
export function stretchOn(outline: Polygon, { wall, start, width }: OnWall): Stretch | null {
  const edge = edges(outline)[wallIndex(outline, wall)];
  if (!edge) return null;
  const along = unit(sub(edge[1], edge[0]));
  return { from: roundPoint(add(edge[0], scale(along, start))), to: roundPoint(add(edge[0], scale(along, start + width))) };
}

/** Does a stretch reach past either end of its wall? */
export const reachesPast = (outline: Polygon, { wall, start, width }: OnWall): boolean => start < -ON_WALL || start + width > wallLength(outline, wallIndex(outline, wall)) + ON_WALL;
