import { boxOf, distance, offset, rectangle, subtract, turn, type Box, type Point, type Polygon, type Region } from "../../geometry";
import type { RoomFloor } from "../place";

/** Half of the accessible route, mm: 36 in (2010 ADA 403.5.1), a millimetre added for whole-number pieces. */
const HALF = 458;
const STEP = 150;
/** Arcs as near as a proposal needs, mm. */
const ARCS = 3;

type Node = { readonly key: number; readonly cost: number };

/** Floor on which the middle of a 914 mm route may run. */
export function routeFloor(f: RoomFloor): Region {
  const solid = [...f.blocked.filter((b) => !f.room.keepClear.some((k) => k.outline === b)), ...f.placed.filter((p) => !p.walkable).map((p) => p.body)];
  return offset(subtract(f.floor, solid), -HALF, ARCS);
}

type Grid = { readonly frame: Raster; readonly open: Uint8Array; readonly deep: Uint8Array };
const grids = new WeakMap<RoomFloor, Grid>();
/** The grid of a furnished floor: where a route's middle may run, and where that is well off every wall and piece. */
function gridOf(f: RoomFloor): Grid {
  const known = grids.get(f);
  if (known) return known;
  const free = routeFloor(f);
  const box = boxOf(f.floor.flatMap((p) => p.outer).map((p) => turn(p, -f.axis)));
  const frame: Raster = {
    turned: -f.axis, box, nx: Math.max(1, Math.ceil((box.maxX - box.minX) / STEP)), ny: Math.max(1, Math.ceil((box.maxY - box.minY) / STEP)),
  };
  const grid: Grid = { frame, open: rasterised(free, frame), deep: rasterised(offset(free, -600, ARCS), frame) };
  grids.set(f, grid);
  return grid;
}

/**
 * Lanes 914 mm wide from the room's doors to each target, on a grid true to the room's axis: few turns, rather along walls and
 * doors than through the middle. The grid only proposes; whether a route stands is judged by exact geometry afterwards.
 * Returns null when some target cannot be reached even in the empty room.
 */
export function lanes(f: RoomFloor, targets: readonly Point[], options: { readonly middle: boolean }): readonly Polygon[] | null {
  if (targets.length === 0) return [];
  const { frame, open, deep } = gridOf(f);
  const { box, nx, ny } = frame;
  const at = (k: number): Point => turn([box.minX + ((k % (nx + 1)) * (box.maxX - box.minX)) / nx, box.minY + (Math.floor(k / (nx + 1)) * (box.maxY - box.minY)) / ny], f.axis);
  const rim = Float64Array.from(deep, (d) => ((d === 1) === options.middle ? 1 : 1.35));
  const doors = f.gates.filter((g) => g.width >= 800 && g.door.for.includes("guests") && (g.door.leads !== "back-of-house") && !(g.door.steps && g.door.steps > 0));
  const starts = (doors.length > 0 ? doors : f.gates).map((g): Point => [g.at[0] + g.inward[0] * 600, g.at[1] + g.inward[1] * 600]);
  const nearest = (p: Point): number => {
    let best = -1, d = 1500;
    const [px, py] = turn(p, -f.axis), stepX = (box.maxX - box.minX) / nx, stepY = (box.maxY - box.minY) / ny;
    const near = (v: number, from: number, step: number, most: number): readonly [number, number] => [Math.max(0, Math.ceil((v - 1500 - from) / step)), Math.min(most, Math.floor((v + 1500 - from) / step))];
    const [i0, i1] = near(px, box.minX, stepX, nx), [j0, j1] = near(py, box.minY, stepY, ny);
    for (let j = j0; j <= j1; j++) for (let i = i0; i <= i1; i++) {
      const k = j * (nx + 1) + i;
      if (!open[k]) continue;
      const e = Math.hypot(box.minX + i * stepX - px, box.minY + j * stepY - py);
      if (e < d) { d = e; best = k; }
    }
    return best;
  };
  const sources = new Set(starts.map(nearest).filter((k) => k >= 0));
  if (sources.size === 0) return null;
  const out: Polygon[] = [];
  for (const target of targets) {
    const goal = nearest(target);
    if (goal < 0) return null;
    const path = shortest({ open, rim, nx, ny, sources, goal });
    if (!path) return null;
    out.push(...capsules(corners(path.map(at))));
    for (const k of path) sources.add(k);
  }
  return out;
}

type Raster = { readonly turned: number; readonly box: Box; readonly nx: number; readonly ny: number };

/** Grid points inside a region, row by row from where its rings cross the row: rows x edges, not points x edges. */
function rasterised(region: Region, { turned, box, nx, ny }: Raster): Uint8Array {
  const out = new Uint8Array((nx + 1) * (ny + 1));
  const high = (box.maxY - box.minY) / ny, step = (box.maxX - box.minX) / nx;
  const rows: number[][] = Array.from({ length: ny + 1 }, () => []);
  for (const piece of region) for (const ring of [piece.outer, ...piece.holes]) {
    const points = turned === 0 ? ring : ring.map((q) => turn(q, turned));
    points.forEach((b, i) => {
      const a = points[(i + points.length - 1) % points.length];
      if (!a || a[1] === b[1]) return;
      const lo = Math.max(0, Math.ceil((Math.min(a[1], b[1]) - box.minY) / high - 1e-9)), hi = Math.min(ny, Math.floor((Math.max(a[1], b[1]) - box.minY) / high + 1e-9));
      for (let j = lo; j <= hi; j++) {
        const y = box.minY + j * high;
        if (a[1] > y !== b[1] > y) rows[j]?.push(a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]));
      }
    });
  }
  rows.forEach((xs, j) => {
    xs.sort((p, q) => p - q);
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const from = Math.max(0, Math.ceil((xs[k]! - box.minX) / step)), to = Math.min(nx, Math.floor((xs[k + 1]! - box.minX) / step));
      for (let i = from; i <= to; i++) out[j * (nx + 1) + i] = 1;
    }
  });
  return out;
}

/** Dijkstra with a small price for each turn, so that lanes run straight. */
function shortest(g: { open: Uint8Array; rim: Float64Array; nx: number; ny: number; sources: ReadonlySet<number>; goal: number }): readonly number[] | null {
  const w = g.nx + 1, count = w * (g.ny + 1), best = new Float64Array(count * 4).fill(Infinity), from = new Int32Array(count * 4).fill(-1);
  const heap: Node[] = [];
  const push = (n: Node): void => { heap.push(n); let i = heap.length - 1; while (i > 0) { const p = (i - 1) >> 1; if (heap[p]!.cost <= heap[i]!.cost) break; [heap[p], heap[i]] = [heap[i]!, heap[p]!]; i = p; } };
  const pop = (): Node | undefined => {
    const top = heap[0], last = heap.pop();
    if (!top || !last || heap.length === 0) return top;
    heap[0] = last;
    for (let i = 0; ;) { const l = 2 * i + 1, r = l + 1; let m = i; if (l < heap.length && heap[l]!.cost < heap[m]!.cost) m = l; if (r < heap.length && heap[r]!.cost < heap[m]!.cost) m = r; if (m === i) break; [heap[m], heap[i]] = [heap[i]!, heap[m]!]; i = m; }
    return top;
  };
  for (const s of g.sources) for (let d = 0; d < 4; d++) { best[s * 4 + d] = 0; push({ key: s * 4 + d, cost: 0 }); }
  const steps = [1, w, -1, -w];
  for (let n = pop(); n; n = pop()) {
    if (n.cost > best[n.key]!) continue;
    const cell = n.key >> 2, dir = n.key & 3;
    if (cell === g.goal) {
      const path: number[] = [];
      for (let k = n.key; k >= 0; k = from[k]!) { const c = k >> 2; if (path[path.length - 1] !== c) path.push(c); }
      return path.reverse();
    }
    for (let d = 0; d < 4; d++) {
      const next = cell + steps[d]!;
      const x = cell % w;
      if (next < 0 || next >= count || (d === 0 && x === g.nx) || (d === 2 && x === 0) || !g.open[next]) continue;
      const cost = n.cost + g.rim[next]! + (d === dir ? 0 : 2);
      if (cost < best[next * 4 + d]! - 1e-9) { best[next * 4 + d] = cost; from[next * 4 + d] = n.key; push({ key: next * 4 + d, cost }); }
    }
  }
  return null;
}

function corners(points: readonly Point[]): readonly Point[] {
  return points.filter((p, i) => {
    const a = points[i - 1], b = points[i + 1];
    if (!a || !b) return true;
    return Math.abs((p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0])) > 1;
  });
}

/** The lane as rectangles about each straight stretch, half a lane longer at either end. */
function capsules(points: readonly Point[]): readonly Polygon[] {
  return points.slice(1).map((b, i) => {
    const a = points[i] as Point;
    const angle = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
    return rectangle([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], distance(a, b) + 2 * HALF, 2 * HALF, Math.round(angle * 1000) / 1000);
  });
}
