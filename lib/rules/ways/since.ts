import type { FloorMap } from "./map";
import type { Common } from "./strips";

/** Heights of each level between which a map is not as the one before it. */
type Since = { readonly map: FloorMap; readonly anew: ReadonlyMap<number, Common["anew"]> };
const sinces = new WeakMap<FloorMap, Since>();

type Level = { readonly level: number; readonly common: Common; readonly first: { readonly now: number; readonly then: number } };

/**
 * Notes what a map has in common with an earlier one, where each piece of floor in what they share leads to the same ways out. `first`
 * is where the pieces of a level begin in the two maps.
 */
export function noteSince(map: FloorMap, earlier: FloorMap, levels: readonly Level[]): void {
  // What has been asked of the earlier map is found there; what it had from its own forerunner is let go, or all would be held.
  sinces.delete(earlier);
  const alike = levels.every(({ common: { pieces }, first }) => pieces !== null && [...pieces.now].every((q, p) => {
    const was = earlier.pieces[first.then + p], is = map.pieces[first.now + q];
    return q < 0 || (was !== undefined && is !== undefined && was.exits.length === is.exits.length && was.exits.every((e, k) => e === is.exits[k]));
  }));
  if (alike) sinces.set(map, { map: earlier, anew: new Map(levels.map((l) => [l.level, l.common.anew])) });
}

/** The earlier map where all floor of a level between two heights, and what stands on it, is as on that; else null. */
export function asBefore(map: FloorMap, level: number, { minY, maxY }: { readonly minY: number; readonly maxY: number }): FloorMap | null {
  const since = sinces.get(map), anew = since?.anew.get(level);
  return since && anew && !anew.some(([y0, y1]) => y0 <= maxY && y1 >= minY) ? since.map : null;
}
