import { distance, edges, regionContains, type Point, type Region, type Segment } from "../../geometry";

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
  const middles = new Uint8Array(size); // of cells that an edge passes: 1 inside, 2 outside
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
  const px = new Float64Array(all.length), py = new Float64Array(all.length), qx = new Float64Array(all.length), qy = new Float64Array(all.length);
  all.forEach(([a, b], i) => { px[i] = a[0]; py[i] = a[1]; qx[i] = b[0]; qy[i] = b[1]; });
  // The middles of cells are set off a little, so that they lie on no edge of a tidy room.
  const midX = (cell: number): number => minX + ((cell % cols) + 0.4871) * CELL, midY = (cell: number): number => minY + (Math.floor(cell / cols) + 0.5113) * CELL;
  const holds = (p: Point): boolean => {
    const cell = size === 0 ? -1 : cellOf(p);
    if (cell < 0) return false;
    const mx = midX(cell), my = midY(cell);
    if (state[cell] === 0) state[cell] = regionContains(region, [mx, my]) ? 2 : 3;
    if (state[cell] !== 1) return state[cell] === 2;
    let inside = middles[cell];
    if (inside === 0) inside = middles[cell] = regionContains(region, [mx, my]) ? 1 : 2;
    // From the cell's middle to p: each edge crossed changes sides.
    let odd = false;
    for (const i of near.get(cell) ?? []) {
      const ax = px[i]!, ay = py[i]!, bx = qx[i]!, by = qy[i]!;
      const s1 = (p[0] - mx) * (ay - my) - (p[1] - my) * (ax - mx), s2 = (p[0] - mx) * (by - my) - (p[1] - my) * (bx - mx);
      if (s1 > 0 === s2 > 0) continue;
      const s3 = (bx - ax) * (my - ay) - (by - ay) * (mx - ax), s4 = (bx - ax) * (p[1] - ay) - (by - ay) * (p[0] - ax);
      if (s3 > 0 !== s4 > 0) odd = !odd;
    }
    return (inside === 1) !== odd;
  };
  // One search at a time, so what it holds is kept here: made anew for each of a million points it would cost as much as the search.
  let toX = 0, toY = 0, bx = 0, by = 0, least = Infinity;
  const look = (i: number): void => {
    const ax = px[i]!, ay = py[i]!, dx = qx[i]! - ax, dy = qy[i]! - ay, n = dx * dx + dy * dy;
    const t = n === 0 ? 0 : Math.max(0, Math.min(1, ((toX - ax) * dx + (toY - ay) * dy) / n));
    const x = ax + dx * t, y = ay + dy * t, d = (x - toX) * (x - toX) + (y - toY) * (y - toY);
    if (d < least) { least = d; bx = x; by = y; }
  };
  const pull = (p: Point): Point => {
    if (holds(p)) return p;
    toX = bx = p[0]; toY = by = p[1]; least = Infinity;
    if (all.length <= 16) { for (let i = 0; i < all.length; i++) look(i); return [bx, by]; }
    const c = Math.floor((p[0] - minX) / CELL), r = Math.floor((p[1] - minY) / CELL);
    // Rings of cells outward: once something is found, what lies farther out than it needs no look.
    for (let ring = 0; ring <= 12; ring++) {
      if (least < ((ring - 1) * CELL) ** 2) break;
      for (let y = r - ring; y <= r + ring; y++) {
        if (y < 0 || y >= rows) continue;
        const step = Math.abs(y - r) === ring || ring === 0 ? 1 : 2 * ring;
        for (let x = c - ring; x <= c + ring; x += step) {
          if (x < 0 || x >= cols || state[y * cols + x] !== 1) continue;
          for (const i of near.get(y * cols + x) ?? []) look(i);
        }
      }
    }
    if (least === Infinity) for (let i = 0; i < all.length; i++) look(i);
    return [bx, by];
  };
  return { region, holds, pull, edges: all, corners: region.flatMap((p) => [p.outer, ...p.holes].flat()), box: { minX, minY, maxX, maxY } };
}
