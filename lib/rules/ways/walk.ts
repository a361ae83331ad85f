import type { Point } from "../../geometry";
import type { Cells } from "./floor";
import type { FloorMap, FloorPiece } from "./map";

/** Side of a cell, mm. */
const CELL = 150;
/** A walk by cells is longer than one across them by a factor of at most this (octagons for circles). */
export const ZIGZAG = 1.0824;

/** A walker so much narrower that every cell which a true way crosses has its middle free for him: a cell's diagonal either side. */
export const narrower = (width: number): number => Math.max(1, width - 2 * CELL * Math.SQRT1_2);

/**
 * The square cells about some pieces of floor, those marked whose middles lie on it, or within a distance of it along either axis; mm. A
 * border of cells about them all is never marked, so that a walk over marked cells need not look where the grid ends.
 */
export function gridOf(pieces: readonly FloorPiece[], cell = CELL, by = 0): Cells {
  const box = pieces.reduce((b, { floor: { box: o } }) => ({ minX: Math.min(b.minX, o.minX), minY: Math.min(b.minY, o.minY), maxX: Math.max(b.maxX, o.maxX), maxY: Math.max(b.maxY, o.maxY) }), { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity });
  const across = Math.max(1, Math.ceil((box.maxX - box.minX) / cell)) + 2, down = Math.max(1, Math.ceil((box.maxY - box.minY) / cell)) + 2;
  const grid: Cells = { x0: box.minX - cell, y0: box.minY - cell, cell, across, down, marked: new Uint8Array(across * down) }, { marked } = grid;
  for (const p of pieces) p.floor.mark(grid, by);
  marked.fill(0, 0, across);
  marked.fill(0, marked.length - across);
  for (let k = 0; k < marked.length; k += across) { marked[k] = 0; marked[k + across - 1] = 0; }
  return grid;
}

/** Steps along and aslant, in fifths of a cell: whole numbers let a wheel of buckets stand for a heap. */
export const ALONG = 5;
const ASLANT = 7;
const BUCKETS = 8;

/** What a step to each of the cells about a cell costs, row by row. */
const COSTS = Int32Array.of(ASLANT, ALONG, ASLANT, ALONG, ALONG, ASLANT, ALONG, ASLANT);
const stepsOn = (across: number): Int32Array => Int32Array.of(-across - 1, -across, -across + 1, -1, 1, across - 1, across, across + 1);

/** How far cells are from where a walk began, in fifths of a cell, -1 where none leads; the cell before each on its way; and all in order of how far they are. */
export type Spread = { readonly far: Int32Array; readonly before: Int32Array; readonly order: readonly number[] };

/** Walks over the marked cells of a grid from some. What `far` is given for others stands: nothing is looked for from those, and no way leads through them. */
export function spread({ across, marked }: Cells, from: readonly number[], far = new Int32Array(marked.length).fill(-1)): Spread {
  const before = new Int32Array(marked.length).fill(-1), settled = new Uint8Array(marked.length), order: number[] = [];
  for (const k of from) far[k] = 0;
  const steps = stepsOn(across), wheel: number[][] = Array.from({ length: BUCKETS }, () => []);
  wheel[0] = [...from];
  let waiting = from.length;
  for (let d = 0; waiting > 0; d++) {
    const now = wheel[d % BUCKETS] ?? [];
    wheel[d % BUCKETS] = [];
    waiting -= now.length;
    for (const k of now) {
      if (far[k] !== d || settled[k] === 1) continue;
      settled[k] = 1;
      order.push(k);
      for (let i = 0; i < steps.length; i++) {
        const n = k + (steps[i] ?? 0);
        if (marked[n] === 0) continue;
        const there = d + (COSTS[i] ?? 0), known = far[n] ?? -1;
        if (known >= 0 && known <= there) continue;
        far[n] = there;
        before[n] = k;
        wheel[there % BUCKETS]?.push(n);
        waiting++;
      }
    }
  }
  return { far, before, order };
}

/** How long the straight beginning of a way may be, mm, how much the walk over cells counts, and a length, mm, below which one way is as good as another. */
type Beginning = { readonly reach: number; readonly factor: number; readonly enough?: number };

/** A way that begins with a straight walk to the middle of a cell, mm: the shortest whose beginning is open, or, where it is short enough, the one that begins nearest. */
export function openingOf({ x0, y0, cell, across, down }: Cells, { far }: Spread, by: Beginning): (at: Point, open: (to: Point) => boolean) => { readonly cell: number; readonly walk: number } | null {
  const walks: number[] = [], cells: number[] = [], within = Math.ceil(by.reach / cell), fifth = (cell / ALONG) * by.factor, enough = by.enough ?? 0;
  const middle = (k: number): Point => { const x = k % across; return [x0 + (x + 0.5) * cell, y0 + ((k - x) / across + 0.5) * cell]; };
  /** Calls with each cell near enough to a place, how long its way is, and how long the straight beginning; cells whose way must be longer than `most()` are left out. */
  const each = ([px, py]: Point, most: () => number, look: (k: number, walk: number, straight: number) => void): void => {
    const cx = Math.floor((px - x0) / cell), cy = Math.floor((py - y0) / cell);
    for (let y = Math.max(0, cy - within); y <= Math.min(down - 1, cy + within); y++) for (let x = Math.max(0, cx - within); x <= Math.min(across - 1, cx + within); x++) {
      const k = y * across + x, steps = far[k] ?? -1;
      if (steps < 0 || steps * fifth >= most()) continue;
      const dx = x0 + (x + 0.5) * cell - px, dy = y0 + (y + 0.5) * cell - py, straight = Math.sqrt(dx * dx + dy * dy);
      if (straight <= by.reach) look(k, straight + steps * fifth, straight);
    }
  };
  /** The others, the shortest first, where neither of the first two was open. */
  const others = (at: Point, open: (to: Point) => boolean, shut: readonly number[]): { readonly cell: number; readonly walk: number } | null => {
    let n = 0;
    each(at, () => Infinity, (k, walk) => { if (!shut.includes(k)) { walks[n] = walk; cells[n++] = k; } });
    for (let asked = 0; asked < n; asked++) {
      let best = 0;
      for (let i = 1; i < n; i++) if ((walks[i] ?? Infinity) < (walks[best] ?? Infinity)) best = i;
      const k = cells[best] ?? 0, walk = walks[best] ?? Infinity;
      if (open(middle(k))) return { cell: k, walk };
      walks[best] = Infinity;
    }
    return null;
  };
  return (at, open) => {
    let best = -1, least = Infinity, near = -1, nearest = Infinity, nearWalk = 0;
    each(at, () => Math.max(least, enough), (k, walk, straight) => {
      if (walk < least) { best = k; least = walk; }
      if (walk < enough && straight < nearest) { near = k; nearest = straight; nearWalk = walk; }
    });
    if (near >= 0 && open(middle(near))) return { cell: near, walk: nearWalk };
    // Mostly the shortest is open, and no other need be asked.
    if (best < 0) return null;
    return best !== near && open(middle(best)) ? { cell: best, walk: least } : others(at, open, [near, best]);
  };
}

/** How far off the goal the middle of a cell may lie and still count as on it, mm: half a cell's diagonal. */
const BESIDE = 110;

/** How far from a place a walk may begin, mm, each that will be asked; how far off the floor, along either axis, the middle of a cell may lie; and below what length any walk will do. */
type WalkAsk = { readonly reaches: readonly number[]; readonly beside?: number; readonly enough?: number };
/** Half a cell and a hair: no lane falls between cells, and what lies so near to floor for a way out is free for the narrower walker. */
export const HALF_CELL = CELL / 2 + 1;

/**
 * How far one must walk at least, mm, from a point to floor of the goal: over cells of the map, shortened by what cells make a walk
 * longer. The first `reach` mm of the way may lie off the map, straight to a cell that is `open`. Infinity where there is no way.
 */
export function leastWalk(map: FloorMap, level: number, goal: readonly FloorPiece[], { reaches, beside = 0, enough = 0 }: WalkAsk): (at: Point, reach: number, open: (to: Point) => boolean) => number {
  const pieces = map.pieces.filter((p) => p.level === level);
  if (pieces.length === 0) return () => Infinity;
  const g = gridOf(pieces, CELL, beside), { marked, across } = g, there = new Uint8Array(marked.length), far = new Int32Array(marked.length).fill(-1), from: number[] = [];
  for (const p of goal) if (p.level === level) p.floor.mark({ ...g, marked: there }, BESIDE);
  for (let k = 0; k < marked.length; k++) {
    if (marked[k] === 0 || there[k] === 0) continue;
    far[k] = 0;
    // Floor of the goal with more of it all about leads to nothing new.
    if (there[k - 1] === 0 || there[k + 1] === 0 || there[k - across] === 0 || there[k + across] === 0) from.push(k);
  }
  const walked = spread(g, from, far), openings = new Map(reaches.map((reach) => [reach, openingOf(g, walked, { reach, factor: 1 / ZIGZAG, enough: enough > 0 ? enough + CELL : 0 })]));
  return (at, reach, open) => { const best = openings.get(reach)?.(at, open); return best ? Math.max(0, best.walk - CELL) : Infinity; };
}
