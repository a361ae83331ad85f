import type { Paper } from "../display";

export type Rect = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/**
 * The sheet as small cells, each free or taken, and of which room. Words are placed by asking it: cheap, the same on every
 * machine, and true for any outline. A cell is taken as soon as a shape touches its middle or an edge passes through it.
 */
export type Ground = {
  readonly cell: number;
  readonly take: (polygon: readonly Paper[]) => void;
  readonly takeRect: (r: Rect) => void;
  readonly takeLine: (a: Paper, b: Paper) => void;
  readonly mark: (polygon: readonly Paper[], room: number) => void;
  /** Free of marks; with a room, all of it within that room; with -1, none of it in any room. */
  readonly free: (r: Rect, room?: number) => boolean;
  /** `free` within a room as it is now, for many questions about one part of the paper: each costs the same, however large the box. */
  readonly survey: (within: Rect, room: number) => (r: Rect) => boolean;
};

export function createGround(width: number, height: number, cell: number): Ground {
  const nx = Math.ceil(width / cell), ny = Math.ceil(height / cell);
  const taken = new Uint8Array(nx * ny);
  const rooms = new Int16Array(nx * ny).fill(-1);
  const column = (x: number): number => Math.floor(x / cell);

  /** Spans of cells within a polygon: `put` is given the first of them and the one past the last. */
  const scan = (polygon: readonly Paper[], put: (from: number, past: number) => void): void => {
    let minY = Infinity, maxY = -Infinity;
    for (const [, y] of polygon) { if (y < minY) minY = y; if (y > maxY) maxY = y; }
    const xs: number[] = [];
    for (let j = Math.max(0, column(minY)); j <= Math.min(ny - 1, column(maxY)); j++) {
      const y = (j + 0.5) * cell;
      xs.length = 0;
      for (let i = 0, k = polygon.length - 1; i < polygon.length; k = i++) {
        const a = polygon[i], b = polygon[k];
        if (a && b && a[1] > y !== b[1] > y) xs.push(a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
      }
      xs.sort((p, q) => p - q);
      for (let i = 0; i + 1 < xs.length; i += 2) {
        const from = Math.max(0, Math.ceil((xs[i] ?? 0) / cell - 0.5)), to = Math.min(nx - 1, Math.floor((xs[i + 1] ?? 0) / cell - 0.5));
        if (to >= from) put(j * nx + from, j * nx + to + 1);
      }
    }
  };
  const takeLine = (a: Paper, b: Paper): void => {
    const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / (cell / 2)));
    for (let i = 0; i <= n; i++) {
      const x = column(a[0] + ((b[0] - a[0]) * i) / n), y = column(a[1] + ((b[1] - a[1]) * i) / n);
      if (x >= 0 && y >= 0 && x < nx && y < ny) taken[y * nx + x] = 1;
    }
  };
  const take = (polygon: readonly Paper[]): void => {
    scan(polygon, (from, past) => { taken.fill(1, from, past); });
    polygon.forEach((p, i) => takeLine(p, polygon[(i + 1) % polygon.length] ?? p));
  };
  const takeRect = (r: Rect): void => {
    const x0 = Math.max(0, column(r.x)), x1 = Math.min(nx - 1, column(r.x + r.width));
    const y0 = Math.max(0, column(r.y)), y1 = Math.min(ny - 1, column(r.y + r.height));
    for (let y = y0; x0 <= x1 && y <= y1; y++) taken.fill(1, y * nx + x0, y * nx + x1 + 1);
  };
  const free = (r: Rect, room?: number): boolean => {
    const x0 = column(r.x), x1 = column(r.x + r.width), y0 = column(r.y), y1 = column(r.y + r.height);
    if (x0 < 0 || y0 < 0 || x1 >= nx || y1 >= ny) return false;
    for (let y = y0; y <= y1; y++) for (let x = x0; x <= x1; x++) {
      const i = y * nx + x;
      if (taken[i] !== 0 || (room !== undefined && rooms[i] !== room)) return false;
    }
    return true;
  };
  const survey = (within: Rect, room: number): ((r: Rect) => boolean) => {
    const x0 = Math.max(0, column(within.x)), y0 = Math.max(0, column(within.y));
    const w = Math.max(0, Math.min(nx - 1, column(within.x + within.width)) - x0 + 1), h = Math.max(0, Math.min(ny - 1, column(within.y + within.height)) - y0 + 1);
    // A summed-area table: how many cells up and to the left cannot be written on.
    const sums = new Uint32Array((w + 1) * (h + 1));
    for (let y = 0; y < h; y++) {
      let row = 0;
      for (let x = 0; x < w; x++) {
        const i = (y + y0) * nx + x + x0;
        if (taken[i] !== 0 || rooms[i] !== room) row++;
        const here = (y + 1) * (w + 1) + x + 1;
        sums[here] = (sums[here - w - 1] ?? 0) + row;
      }
    }
    const upTo = (x: number, y: number): number => sums[y * (w + 1) + x] ?? 0;
    return (r) => {
      const a = column(r.x) - x0, b = column(r.x + r.width) - x0 + 1, c = column(r.y) - y0, d = column(r.y + r.height) - y0 + 1;
      return a >= 0 && c >= 0 && b <= w && d <= h && upTo(b, d) - upTo(a, d) - upTo(b, c) + upTo(a, c) === 0;
    };
  };
  return { cell, survey, take, takeRect, takeLine, mark: (polygon, room) => scan(polygon, (from, past) => { rooms.fill(room, from, past); }), free };
}
