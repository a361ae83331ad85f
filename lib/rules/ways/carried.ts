import type { Point } from "../../geometry";
import { levelOf, type Site } from "../../venue";
import type { Cells } from "./floor";
import { doorPoints, exitsOf, levelLinks } from "./ground";
import type { FloorMap } from "./map";
import { gridOf } from "./walk";

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
export type Outward = { readonly grid: Cells; readonly next: Int32Array; readonly order: readonly number[]; readonly from: (at: Point, open: (to: Point) => boolean) => number };

/**
 * Shortest ways out over cells of a map, by steps along and aslant: for each cell the next one, -1 at a way out and where none is
 * reached. Stairs and lifts count as ways out of a level. Null where the level has no floor or no way out.
 */
export function outward(site: Site, map: FloorMap, level: number): Outward | null {
  const pieces = map.pieces.filter((p) => p.level === level);
  if (pieces.length === 0) return null;
  const grid = gridOf(pieces, CELL, BESIDE), { across, down, marked } = grid, far = new Int32Array(across * down).fill(-1), next = new Int32Array(across * down).fill(-1), settled = new Uint8Array(across * down);
  const order: number[] = [];
  const cellAt = (p: Point): number => { const x = Math.floor((p[0] - grid.x0) / CELL), y = Math.floor((p[1] - grid.y0) / CELL); return x < 0 || y < 0 || x >= across || y >= down ? -1 : y * across + x; };
  // Steps are 5 along and 7 aslant: whole numbers let a wheel of buckets stand for a heap.
  const wheel: number[][] = Array.from({ length: 8 }, () => []);
  let waiting = 0;
  const gates = [...exitsOf(site, "anyone").map((e) => e.gate), ...levelLinks(site, "anyone").flat()].filter((g) => levelOf(site, g.room) === level);
  for (const g of gates) for (const p of doorPoints(g, map.options.width / 2)) for (const step of [0, CELL, 2 * CELL]) {
    const k = cellAt([p[0] + g.inward[0] * step, p[1] + g.inward[1] * step]);
    if (k < 0 || marked[k] === 0 || far[k] === 0) continue;
    far[k] = 0; wheel[0]?.push(k); waiting++;
  }
  if (waiting === 0) return null;
  for (let d = 0; waiting > 0; d++) {
    const now = wheel[d % 8] ?? [];
    wheel[d % 8] = [];
    for (const k of now) {
      waiting--;
      if (far[k] !== d || settled[k] === 1) continue;
      settled[k] = 1; order.push(k);
      const x = k % across, y = (k - x) / across;
      for (let dy = -1; dy <= 1; dy++) for (let dx = -1; dx <= 1; dx++) {
        if ((dx === 0 && dy === 0) || x + dx < 0 || y + dy < 0 || x + dx >= across || y + dy >= down) continue;
        const n = k + dy * across + dx, step = d + (dx !== 0 && dy !== 0 ? 7 : 5), before = far[n] ?? -1;
        if (marked[n] === 0 || (before >= 0 && before <= step)) continue;
        far[n] = step; next[n] = k;
        wheel[step % 8]?.push(n);
        waiting++;
      }
    }
  }
  const from = (at: Point, open: (to: Point) => boolean): number => {
    const cx = Math.floor((at[0] - grid.x0) / CELL), cy = Math.floor((at[1] - grid.y0) / CELL), within = Math.ceil(STEP / CELL);
    let best = Infinity, found = -1;
    for (let y = Math.max(0, cy - within); y <= Math.min(down - 1, cy + within); y++) for (let x = Math.max(0, cx - within); x <= Math.min(across - 1, cx + within); x++) {
      const k = y * across + x, steps = far[k] ?? -1;
      if (steps < 0) continue;
      const m: Point = [grid.x0 + (x + 0.5) * CELL, grid.y0 + (y + 0.5) * CELL], straight = Math.hypot(m[0] - at[0], m[1] - at[1]), walk = straight + (steps * CELL) / 5;
      if (straight > STEP || walk >= best || !open(m)) continue;
      best = walk; found = k;
    }
    return found;
  };
  return { grid, next, order, from };
}
