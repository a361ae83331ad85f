import { boxOf, distance, edges, type Piece, type Point } from "../../geometry";

/** Width of a cell of the floor on which ways are looked for, mm. */
const CELL = 150;

export type Way = { readonly points: readonly Point[]; /** It ends at a way out, not at another way. */ readonly arrives: boolean };
export type Ways = {
  readonly ways: readonly Way[];
  /** How far each start is from the way out that it leads to, mm; null where none is reached. In the order of the starts. */
  readonly lengths: readonly (number | null)[];
};
type Grid = { readonly width: number; readonly height: number; readonly at: (i: number) => Point; readonly near: (p: Point, reach: number) => number; readonly free: Uint8Array };

function gridOf(pieces: readonly Piece[]): Grid {
  const b = boxOf(pieces.flatMap((p) => p.outer));
  const width = Math.max(1, Math.ceil((b.maxX - b.minX) / CELL)), height = Math.max(1, Math.ceil((b.maxY - b.minY) / CELL));
  const at = (i: number): Point => [b.minX + (i % width + 0.5) * CELL, b.minY + (Math.floor(i / width) + 0.5) * CELL];
  const free = new Uint8Array(width * height);
  // Row by row: between each two crossings of the outline with the row's middle lies floor (even-odd, holes with it).
  for (const p of pieces) {
    const sides = [p.outer, ...p.holes].flatMap(edges);
    const first = Math.max(0, Math.floor((p.box.minY - b.minY) / CELL)), last = Math.min(height - 1, Math.floor((p.box.maxY - b.minY) / CELL));
    const rows: number[][] = Array.from({ length: last - first + 1 }, () => []);
    for (const [[ax, ay], [bx, by]] of sides) {
      const lo = Math.max(first, Math.ceil((Math.min(ay, by) - b.minY) / CELL - 0.5)), hi = Math.min(last, Math.floor((Math.max(ay, by) - b.minY) / CELL - 0.5));
      for (let y = lo; y <= hi; y++) {
        const at = b.minY + (y + 0.5) * CELL;
        if (ay > at !== by > at) rows[y - first]?.push(ax + ((at - ay) / (by - ay)) * (bx - ax));
      }
    }
    rows.forEach((xs, k) => {
      xs.sort((u, v) => u - v);
      for (let i = 0; i + 1 < xs.length; i += 2) {
        const from = Math.max(0, Math.ceil(((xs[i] ?? 0) - b.minX) / CELL - 0.5)), to = Math.min(width - 1, Math.floor(((xs[i + 1] ?? 0) - b.minX) / CELL - 0.5));
        for (let x = from; x <= to; x++) free[(k + first) * width + x] = 1;
      }
    });
  }
  const near = (p: Point, reach: number): number => {
    const cx = Math.floor((p[0] - b.minX) / CELL), cy = Math.floor((p[1] - b.minY) / CELL), n = Math.ceil(reach / CELL);
    let best = -1, least = reach;
    for (let y = Math.max(0, cy - n); y <= Math.min(height - 1, cy + n); y++) for (let x = Math.max(0, cx - n); x <= Math.min(width - 1, cx + n); x++) {
      const i = y * width + x;
      if (free[i] === 0) continue;
      const d = distance(at(i), p);
      if (d < least) { least = d; best = i; }
    }
    return best;
  };
  return { width, height, at, near, free };
}

/** Shortest ways over the cells from all sources at once (Dijkstra, with buckets of a tenth of a cell): each cell's next one, and how far it is. */
function towards({ width, height, free }: Grid, sources: readonly number[]): { readonly next: Int32Array; readonly far: Float64Array } {
  const next = new Int32Array(free.length).fill(-1), far = new Float64Array(free.length).fill(Infinity);
  const buckets: number[][] = [];
  const put = (i: number, d: number): void => { (buckets[Math.floor(d * 10)] ??= []).push(i); };
  for (const s of sources) { far[s] = 0; put(s, 0); }
  for (let k = 0; k < buckets.length; k++) for (const i of buckets[k] ?? []) {
    const d = far[i] ?? Infinity;
    if (Math.floor(d * 10) !== k) continue;
    const x = i % width, y = (i - x) / width;
    for (let dy = -1; dy <= 1; dy++) for (let dx = -1; dx <= 1; dx++) {
      const nx = x + dx, ny = y + dy;
      if ((dx === 0 && dy === 0) || nx < 0 || ny < 0 || nx >= width || ny >= height) continue;
      const j = ny * width + nx;
      if (free[j] === 0 || (dx !== 0 && dy !== 0 && (free[y * width + nx] === 0 || free[ny * width + x] === 0))) continue;
      const e = d + (dx !== 0 && dy !== 0 ? Math.SQRT2 : 1);
      if (e < (far[j] ?? Infinity) - 1e-9) { far[j] = e; next[j] = i; put(j, e); }
    }
  }
  return { next, far };
}

/** Pulls a line of cells tight: only the bends are kept that free floor makes it take. */
function tight({ at, free, width }: Grid, cells: readonly number[]): readonly number[] {
  const clear = (a: number, b: number): boolean => {
    const [ax, ay] = [a % width, Math.floor(a / width)], [bx, by] = [b % width, Math.floor(b / width)];
    const n = Math.max(1, Math.ceil(distance(at(a), at(b)) / (CELL / 3)));
    for (let k = 0; k <= n; k++) if (free[Math.round(ay + ((by - ay) * k) / n) * width + Math.round(ax + ((bx - ax) * k) / n)] === 0) return false;
    return true;
  };
  const out: number[] = [];
  let i = 0;
  while (i < cells.length - 1) {
    out.push(cells[i] ?? 0);
    let j = i + 1;
    while (j + 1 < cells.length && clear(cells[i] ?? 0, cells[j + 1] ?? 0)) j++;
    i = j;
  }
  const last = cells.at(-1);
  return last === undefined ? out : [...out, last];
}

/**
 * Ways over free floor from each start to the nearest goal, drawn together: where two meet they go on as one. All points in mm.
 * Starts and goals may lie a little off the floor: the nearest free spot within `reach` is taken.
 */
export function waysOver(pieces: readonly Piece[], { starts, goals, reach }: { readonly starts: readonly Point[]; readonly goals: readonly Point[]; readonly reach: number }): Ways {
  if (pieces.length === 0) return { ways: [], lengths: starts.map(() => null) };
  const grid = gridOf(pieces);
  const sources = goals.map((g) => grid.near(g, reach)).filter((i) => i >= 0);
  const { next, far } = towards(grid, sources);
  const heads = starts.map((s) => grid.near(s, reach * 2)).map((i) => (i >= 0 && Number.isFinite(far[i] ?? Infinity) ? i : -1));
  const used = new Map<number, number>();
  for (const head of new Set(heads)) {
    for (let i = head; i >= 0; i = next[i] ?? -1) {
      const n = used.get(i) ?? 0;
      used.set(i, n + 1);
      if (n > 0) break;
    }
  }
  const begins = new Set(heads.filter((h) => h >= 0));
  for (const [i, n] of used) if (n > 1) begins.add(i);
  const ways = [...begins].flatMap((head): readonly Way[] => {
    const cells = [head];
    let i = next[head] ?? -1;
    for (; i >= 0; i = next[i] ?? -1) { cells.push(i); if (begins.has(i)) break; }
    return cells.length < 2 ? [] : [{ points: tight(grid, cells).map(grid.at), arrives: i < 0 }];
  });
  return { ways, lengths: heads.map((h) => (h < 0 ? null : (far[h] ?? 0) * CELL)) };
}
