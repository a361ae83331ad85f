import { type Point, type Region } from "../../geometry";

export type Interval = readonly [from: number, to: number];

/** Level lines through a region: where each lies inside it. */
export type Lines = { readonly at: (y: number) => readonly Interval[]; readonly minX: number; readonly maxX: number; readonly minY: number; readonly maxY: number };

export function linesOf(region: Region): Lines {
  let minX = Infinity, maxX = -Infinity, minY = Infinity, maxY = -Infinity;
  const ax: number[] = [], ay: number[] = [], bx: number[] = [], by: number[] = [];
  for (const piece of region) {
    minX = Math.min(minX, piece.box.minX); maxX = Math.max(maxX, piece.box.maxX);
    minY = Math.min(minY, piece.box.minY); maxY = Math.max(maxY, piece.box.maxY);
    for (const ring of [piece.outer, ...piece.holes]) for (let i = 0; i < ring.length; i++) {
      const a = ring[i] as Point, b = ring[(i + 1) % ring.length] as Point;
      if (a[1] === b[1]) continue;
      ax.push(a[0]); ay.push(a[1]); bx.push(b[0]); by.push(b[1]);
    }
  }
  const memo = new Map<number, readonly Interval[]>();
  const at = (y: number): readonly Interval[] => {
    const known = memo.get(y);
    if (known) return known;
    const xs: number[] = [];
    for (let i = 0; i < ax.length; i++) {
      const y0 = ay[i] as number, y1 = by[i] as number;
      if (y0 > y === y1 > y) continue;
      xs.push((ax[i] as number) + ((y - y0) / (y1 - y0)) * ((bx[i] as number) - (ax[i] as number)));
    }
    xs.sort((p, q) => p - q);
    const out: Interval[] = [];
    for (let i = 0; i + 1 < xs.length; i += 2) out.push([xs[i] as number, xs[i + 1] as number]);
    memo.set(y, out);
    return out;
  };
  return { at, minX, maxX, minY, maxY };
}

/** The lines of a region with x and y exchanged. */
export const uprightLines = (region: Region): Lines => linesOf(flipRegion(region));
export const flipRegion = (region: Region): Region => region.map((p) => ({
  outer: p.outer.map(([x, y]) => [y, x] as const), holes: p.holes.map((h) => h.map(([x, y]) => [y, x] as const)),
  box: { minX: p.box.minY, minY: p.box.minX, maxX: p.box.maxY, maxY: p.box.maxX },
}));

/** How many of x0 + k * pitch lie in the intervals. */
export function countOn(line: readonly Interval[], x0: number, pitch: number): number {
  let n = 0;
  for (const [l, r] of line) n += Math.max(0, Math.floor((r - x0) / pitch + 1e-9) - Math.ceil((l - x0) / pitch - 1e-9) + 1);
  return n;
}

export function pointsOn(line: readonly Interval[], y: number, x0: number, pitch: number): Point[] {
  const out: Point[] = [];
  for (const [l, r] of line) for (let k = Math.ceil((l - x0) / pitch - 1e-9); x0 + k * pitch <= r + 1e-6; k++) out.push([x0 + k * pitch, y]);
  return out;
}
