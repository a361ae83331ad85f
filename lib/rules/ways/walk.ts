import type { Point } from "../../geometry";
import type { Cells } from "./floor";
import type { FloorMap, FloorPiece } from "./map";

/** Side of a cell, mm. */
const CELL = 150;
/** A walk by cells is longer than one across them by a factor of at most this (octagons for circles). */
const ZIGZAG = 1.0824;

/** A walker so much narrower that every cell which a true way crosses has its middle free for him: a cell's diagonal either side. */
export const narrower = (width: number): number => Math.max(1, width - 2 * CELL * Math.SQRT1_2);

/** The square cells about some pieces of floor, those marked whose middles lie on it, or within a distance of it along either axis; mm. */
export function gridOf(pieces: readonly FloorPiece[], cell = CELL, by = 0): Cells {
  const x0 = Math.min(...pieces.map((p) => p.floor.box.minX)), y0 = Math.min(...pieces.map((p) => p.floor.box.minY));
  const across = Math.max(1, Math.ceil((Math.max(...pieces.map((p) => p.floor.box.maxX)) - x0) / cell)), down = Math.max(1, Math.ceil((Math.max(...pieces.map((p) => p.floor.box.maxY)) - y0) / cell));
  const grid: Cells = { x0, y0, cell, across, down, marked: new Uint8Array(across * down) };
  for (const p of pieces) p.floor.mark(grid, by);
  return grid;
}

/** The first `reach` mm of a way may lie off the map, straight to a cell that is `open`; a walk of `enough` need not be looked at more closely. */
type Ask = { readonly reach: number; readonly enough: number; readonly open: (to: Point) => boolean };

/** How far off the goal the middle of a cell may lie and still count as on it, mm: half a cell's diagonal. */
const BESIDE = 110;

/**
 * How far one must walk at least, mm, from a point to floor of the goal: over cells of the map, shortened by what cells make a walk
 * longer. Infinity where there is no way.
 */
export function leastWalk(map: FloorMap, level: number, goal: readonly FloorPiece[]): (at: Point, ask: Ask) => number {
  const pieces = map.pieces.filter((p) => p.level === level);
  if (pieces.length === 0) return () => Infinity;
  const g = gridOf(pieces), far = new Float64Array(g.across * g.down).fill(Infinity);
  // Steps are 5 along and 7 aslant, in fifths of a cell: whole numbers let a wheel of buckets stand for a heap.
  const wheel: number[][] = Array.from({ length: 8 }, () => []);
  let waiting = 0;
  const there: Cells = { ...g, marked: new Uint8Array(far.length) };
  for (const p of goal) if (p.level === level) p.floor.mark(there, BESIDE);
  const inner = (k: number): boolean => there.marked[k - 1] === 1 && there.marked[k + 1] === 1 && there.marked[k - g.across] === 1 && there.marked[k + g.across] === 1;
  for (let k = 0; k < far.length; k++) if (g.marked[k] === 1 && there.marked[k] === 1) {
    far[k] = 0;
    // Floor of the goal with more of it all about leads to nothing new.
    if (!inner(k)) { wheel[0]?.push(k); waiting++; }
  }
  for (let d = 0; waiting > 0; d++) {
    const now = wheel[d % 8] ?? [];
    wheel[d % 8] = [];
    for (const k of now) {
      waiting--;
      if (far[k] !== d) continue;
      const x = k % g.across, y = Math.floor(k / g.across);
      for (let dy = -1; dy <= 1; dy++) for (let dx = -1; dx <= 1; dx++) {
        const nx = x + dx, ny = y + dy, n = ny * g.across + nx, step = dx !== 0 && dy !== 0 ? 7 : 5;
        if (step === 5 && dx === 0 && dy === 0) continue;
        if (nx < 0 || ny < 0 || nx >= g.across || ny >= g.down || g.marked[n] === 0 || (far[n] ?? 0) <= d + step) continue;
        far[n] = d + step;
        wheel[(d + step) % 8]?.push(n);
        waiting++;
      }
    }
  }
  return (at, { reach, enough, open }) => {
    let best = Infinity;
    const within = Math.ceil(reach / CELL), cx = Math.floor((at[0] - g.x0) / CELL), cy = Math.floor((at[1] - g.y0) / CELL);
    for (let y = Math.max(0, cy - within); y <= Math.min(g.down - 1, cy + within); y++) for (let x = Math.max(0, cx - within); x <= Math.min(g.across - 1, cx + within); x++) {
      const k = y * g.across + x, steps = far[k] ?? Infinity;
      if (steps === Infinity) continue;
      const m: Point = [g.x0 + (x + 0.5) * CELL, g.y0 + (y + 0.5) * CELL], straight = Math.hypot(m[0] - at[0], m[1] - at[1]);
      const walk = straight + (steps * CELL) / 5 / ZIGZAG;
      if (straight > reach || walk >= best || !open(m)) continue;
      best = walk;
      if (best <= enough) return Math.max(0, best - CELL);
    }
    return Math.max(0, best - CELL);
  };
}
