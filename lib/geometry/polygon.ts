import { add, cross, distance, scale, sinCos, sub, turn, type Point } from "./point";
import { segmentDistance, segmentsCross, type Segment } from "./segment";

/** A simple polygon, not closed by repeating its first point, either winding. */
export type Polygon = readonly Point[];
export type Box = { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };

/** Polygons are never changed once made, so what follows from one is remembered with it: the engine asks millions of times. */
const edgesOf = new WeakMap<Polygon, readonly Segment[]>();
const boxesOf = new WeakMap<readonly Point[], Box>();

export function edges(p: Polygon): readonly Segment[] {
  const [a, b, c, d] = p;
  // Rectangles come and go by the million: made anew they cost less than to look up and to forget.
  if (p.length === 4 && a && b && c && d) return [[a, b], [b, c], [c, d], [d, a]];
  const known = edgesOf.get(p);
  if (known) return known;
  const out = p.map((a, i) => [a, p[(i + 1) % p.length] as Point] as const);
  edgesOf.set(p, out);
  return out;
}

/** Twice-signed area halved: positive for clockwise on the page (y down). */
export function signedArea(p: Polygon): number {
  let s = 0;
  for (const [a, b] of edges(p)) s += cross(a, b);
  return s / 2;
}
export const area = (p: Polygon): number => Math.abs(signedArea(p));
export const perimeter = (p: Polygon): number => edges(p).reduce((s, [a, b]) => s + distance(a, b), 0);
/** The same polygon, clockwise on the page: the inside lies to the right of each edge as one walks it. */
export const clockwise = (p: Polygon): Polygon => (signedArea(p) < 0 ? [...p].reverse() : p);

/** Outlines of so few points are measured anew sooner than looked up. */
const FEW = 12;

export function boxOf(points: readonly Point[]): Box {
  if (points.length <= FEW) return measureBox(points);
  const known = boxesOf.get(points);
  if (known) return known;
  const box = measureBox(points);
  boxesOf.set(points, box);
  return box;
}

function measureBox(points: readonly Point[]): Box {
  let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
  for (let i = 0; i < points.length; i++) {
    const p = points[i] as Point, x = p[0], y = p[1];
    if (x < minX) minX = x;
    if (y < minY) minY = y;
    if (x > maxX) maxX = x;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}
export const boxesNear = (a: Box, b: Box, gap: number): boolean =>
  a.minX - gap <= b.maxX && b.minX - gap <= a.maxX && a.minY - gap <= b.maxY && b.minY - gap <= a.maxY;

export function centroid(p: Polygon): Point {
  let s = 0, x = 0, y = 0;
  for (const [a, b] of edges(p)) {
    const c = cross(a, b);
    s += c;
    x += (a[0] + b[0]) * c;
    y += (a[1] + b[1]) * c;
  }
  return s === 0 ? (p[0] as Point) : [x / (3 * s), y / (3 * s)];
}

/** Even-odd test; a point on the boundary may fall either way: ask `boundaryDistance` where it matters. */
export function contains(p: Polygon, q: Point): boolean {
  const x = q[0], y = q[1];
  let inside = false;
  let b = p[p.length - 1];
  for (let i = 0; i < p.length; i++) {
    const a = p[i] as Point;
    if (b && a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside;
    b = a;
  }
  return inside;
}

export function boundaryDistance(p: Polygon, q: Point): number {
  let least = Infinity;
  let a = p[p.length - 1];
  for (const b of p) {
    if (a) {
      const dx = b[0] - a[0], dy = b[1] - a[1], px = q[0] - a[0], py = q[1] - a[1], n = dx * dx + dy * dy;
      const t = n === 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / n));
      const x = px - dx * t, y = py - dy * t, d = x * x + y * y;
      if (d < least) least = d;
    }
    a = b;
  }
  return Math.sqrt(least);
}

/** True when no two edges that are not neighbours meet, and no neighbours cross. Swept by x: n log n for outlines that are no combs. */
export function isSimple(p: Polygon): boolean {
  const last = p.length - 1;
  const spans = edges(p).map((edge, i) => ({ edge, i, from: Math.min(edge[0][0], edge[1][0]), to: Math.max(edge[0][0], edge[1][0]) }))
    .sort((s, t) => s.from - t.from);
  for (const [k, s] of spans.entries()) for (let m = k + 1; m < spans.length; m++) {
    const t = spans[m];
    if (!t || t.from > s.to) break;
    const apart = Math.abs(s.i - t.i);
    if (apart === 1 || apart === last) { if (segmentsCross(s.edge, t.edge)) return false; }
    else if (segmentDistance(s.edge, t.edge) === 0) return false;
  }
  return area(p) > 0;
}

/** A rectangle, width along its own x and depth along its own y, turned by angle about its centre. */
export function rectangle(at: Point, width: number, depth: number, angle: number): Polygon {
  const w = width / 2, d = depth / 2, { sin, cos } = sinCos(angle);
  // Written out: asked for every chair of every layout that is looked at.
  return [
    [at[0] + (-w * cos - -d * sin), at[1] + (-w * sin + -d * cos)], [at[0] + (w * cos - -d * sin), at[1] + (w * sin + -d * cos)],
    [at[0] + (w * cos - d * sin), at[1] + (w * sin + d * cos)], [at[0] + (-w * cos - d * sin), at[1] + (-w * sin + d * cos)],
  ];
}

/** Regular polygon whose sides touch the circle from outside: a conservative stand-in for it. */
export function aroundCircle(at: Point, radius: number, sides = 48): Polygon {
  const r = radius / sinCos(180 / sides).cos;
  return Array.from({ length: sides }, (_, i) => add(at, scale(turn([1, 0], ((i + 0.5) * 360) / sides), r)));
}

/** Inward unit normal of an edge of a clockwise polygon. */
export function inwardNormal([a, b]: Segment): Point {
  const d = sub(b, a);
  const n = Math.hypot(d[0], d[1]) || 1;
  return [-d[1] / n, d[0] / n];
}

/** Convex hull by the monotone chain (Andrew 1979), clockwise on the page; fewer than three points come back sorted. */
export function convexHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const chain = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const p of list) {
      for (;;) {
        const a = out[out.length - 2], b = out[out.length - 1];
        if (!a || !b || (b[0] - a[0]) * (p[1] - b[1]) - (b[1] - a[1]) * (p[0] - b[0]) > 0) break;
        out.pop();
      }
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}
