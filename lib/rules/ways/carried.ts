import type { Point } from "../../geometry";
import type { Site } from "../../venue";
import type { Cells } from "./floor";
import { doorPoints, gatesOut } from "./ground";
import type { FloorMap } from "./map";
import { ALONG, gridOf, openingOf, spread } from "./walk";

/** How far from a place the floor is looked for that its guest steps on to, mm. */
const STEP = 900;
/**
 * Side of a cell, and how far its middle may lie off the floor along either axis, mm: half a cell, so that no lane falls between cells, and
 * less than half a lane's width, so that none leads through a wall.
 */
const CELL = 200, BESIDE = 101;

/**
 * The floor of one level by cells: the next cell on a shortest way out of each (-1 at a way out), the cells in order from the ways out
 * on, and the cell on to which a guest steps from a place, -1 where there is none.
 */
export type Outward = { readonly grid: Cells; readonly next: Int32Array; readonly order: readonly number[]; readonly from: (at: Point, open: (to: Point) => boolean) => number;
  /** How far the walk out is from a place by the cells, mm, null where there is none; and from the farthest floor with the step on to it. */
  readonly walk: (at: Point, open: (to: Point) => boolean) => number | null; readonly farthest: number;
};

/**
 * Shortest ways out over cells of a map, by steps along and aslant: for each cell the next one, -1 at a way out and where none is
 * reached. Stairs and lifts count as ways out of a level. Null where the level has no floor or no way out.
 */
export function outward(site: Site, map: FloorMap, level: number): Outward | null {
  const levels = known.get(map) ?? new Map<number, Outward | null>(), out = levels.has(level) ? levels.get(level) ?? null : outwardOn(site, map, level);
  known.set(map, levels.set(level, out));
  return out;
}
const known = new WeakMap<FloorMap, Map<number, Outward | null>>();

function outwardOn(site: Site, map: FloorMap, level: number): Outward | null {
  const pieces = map.pieces.filter((p) => p.level === level);
  if (pieces.length === 0) return null;
  const grid = gridOf(pieces, CELL, BESIDE), { across, down, marked, x0, y0 } = grid, starts = new Set<number>();
  const cellAt = (p: Point): number => { const x = Math.floor((p[0] - x0) / CELL), y = Math.floor((p[1] - y0) / CELL); return x < 0 || y < 0 || x >= across || y >= down ? -1 : y * across + x; };
  for (const g of gatesOut(site, level)) for (const p of doorPoints(g, map.options.width / 2)) for (const step of [0, CELL, 2 * CELL]) {
    const k = cellAt([p[0] + g.inward[0] * step, p[1] + g.inward[1] * step]);
    if (k >= 0 && marked[k] === 1) starts.add(k);
  }
  if (starts.size === 0) return null;
  const walked = spread(grid, [...starts]), opening = openingOf(grid, walked, { reach: STEP, factor: 1 });
  const last = walked.far[walked.order.at(-1) ?? 0] ?? 0;
  return {
    grid, next: walked.before, order: walked.order, from: (at, open) => opening(at, open)?.cell ?? -1,
    walk: (at, open) => opening(at, open)?.walk ?? null, farthest: STEP + (last * CELL) / ALONG,
  };
}
