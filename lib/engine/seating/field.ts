import { distance, edges, nearestOnSegment, regionContains, type Point, type Region, type Segment } from "../../geometry";

/** A region with a raster over it that answers most questions without looking at its edges. */
export type Field = {
  readonly region: Region;
  readonly holds: (p: Point) => boolean;
  /** p itself inside, else the nearest point of the region's edge, drawn in by a hair. */
  readonly pull: (p: Point) => Point;
  readonly corners: readonly Point[];
  readonly edges: readonly Segment[];
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
};

const CELL = 200;

export function fieldOf(region: Region): Field {
  let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
  for (const { box } of region) { minX = Math.min(minX, box.minX); minY = Math.min(minY, box.minY); maxX = Math.max(maxX, box.maxX); maxY = Math.max(maxY, box.maxY); }
  const all: readonly Segment[] = region.flatMap((p) => [p.outer, ...p.holes].flatMap((r) => edges(r)));
  const cols = Math.max(1, Math.ceil((maxX - minX) / CELL) + 1), rows = Math.max(1, Math.ceil((maxY - minY) / CELL) + 1);
  const size = region.length === 0 ? 0 : cols * rows;
  const state = new Uint8Array(size); // 0 unknown, 1 an edge passes, 2 inside, 3 outside
  const near = new Map<number, number[]>();
  all.forEach(([a, b], i) => {
    const n = Math.max(1, Math.ceil(distance(a, b) / CELL));
    for (let k = 0; k < n; k++) {
      const x0 = a[0] + ((b[0] - a[0]) * k) / n, x1 = a[0] + ((b[0] - a[0]) * (k + 1)) / n;
      const y0 = a[1] + ((b[1] - a[1]) * k) / n, y1 = a[1] + ((b[1] - a[1]) * (k + 1)) / n;
      const c0 = Math.floor((Math.min(x0, x1) - minX) / CELL), c1 = Math.floor((Math.max(x0, x1) - minX) / CELL);
      const r0 = Math.floor((Math.min(y0, y1) - minY) / CELL), r1 = Math.floor((Math.max(y0, y1) - minY) / CELL);
      for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) {
        const cell = r * cols + c;
        if (cell < 0 || cell >= size) continue;
        state[cell] = 1;
        const list = near.get(cell);
        if (!list) near.set(cell, [i]); else if (list[list.length - 1] !== i) list.push(i);
      }
    }
  });
  const cellOf = (p: Point): number => {
    const c = Math.floor((p[0] - minX) / CELL), r = Math.floor((p[1] - minY) / CELL);
    return c < 0 || r < 0 || c >= cols || r >= rows ? -1 : r * cols + c;
  };
  const holds = (p: Point): boolean => {
    const cell = size === 0 ? -1 : cellOf(p);
    if (cell < 0) return false;
    if (state[cell] === 0) {
      const c: Point = [minX + ((cell % cols) + 0.5) * CELL, minY + (Math.floor(cell / cols) + 0.5) * CELL];
      state[cell] = regionContains(region, c) ? 2 : 3;
    }
    return state[cell] === 1 ? regionContains(region, p) : state[cell] === 2;
  };
  const pull = (p: Point): Point => {
    if (holds(p)) return p;
    let best: Point = p, least = Infinity;
    const look = (i: number): void => {
      const e = all[i];
      if (!e) return;
      const q = nearestOnSegment(p, e), d = (q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2;
      if (d < least) { least = d; best = q; }
    };
    const c = Math.floor((p[0] - minX) / CELL), r = Math.floor((p[1] - minY) / CELL);
    // Rings of cells outward: once something is found, what lies farther out than it needs no look.
    for (let ring = 0; ring <= 12; ring++) {
      if (least < ((ring - 1) * CELL) ** 2) break;
      for (let y = r - ring; y <= r + ring; y++) for (let x = c - ring; x <= c + ring; x++) {
        if (Math.max(Math.abs(y - r), Math.abs(x - c)) !== ring || x < 0 || y < 0 || x >= cols || y >= rows) continue;
        for (const i of near.get(y * cols + x) ?? []) look(i);
      }
    }
    if (least === Infinity) for (let i = 0; i < all.length; i++) look(i);
    return best;
  };
  return { region, holds, pull, edges: all, corners: region.flatMap((p) => [p.outer, ...p.holes].flat()), box: { minX, minY, maxX, maxY } };
}
