import {
  boundaryDistance, boxesNear, clearance, clockwise, contains, cross, edges, minus, regionArea, segmentClearance, segmentsCross, shapesOverlap, sub,
  union, insideBy, aroundCircle, type Box, type Piece, type Point, type Polygon, type Region, type Shape,
} from "../geometry";

/** True where a polygon turns one way only. */
export function isConvex(p: Polygon): boolean {
  const c = clockwise(p);
  return c.every((b, i) => {
    const a = c[(i + c.length - 1) % c.length] ?? b, d = c[(i + 1) % c.length] ?? b;
    return cross(sub(b, a), sub(d, b)) >= -1e-6;
  });
}

const outlineOf = (s: Shape): Polygon => (s.kind === "disc" ? aroundCircle(s.at, s.radius, 96) : s.points);

/**
 * Clearance of a body from any simple polygon: distance, or minus the depth to which they overlap (mm). For a polygon that
 * is not convex the depth is that of the body's corners, at least 1 mm where they overlap at all.
 */
export function clearOf(shape: Shape, polygon: Polygon): number {
  if (isConvex(polygon)) return clearance(shape, { kind: "polygon", points: polygon, box: boundsOf(polygon) });
  const body = outlineOf(shape);
  const first = polygon[0];
  const crossing = edges(body).some((e) => edges(polygon).some((f) => segmentsCross(e, f)));
  const inside = body.filter((p) => contains(polygon, p));
  if (!crossing && inside.length === 0 && !(first && contains(body, first))) {
    return edges(polygon).reduce((d, e) => Math.min(d, segmentClearance(shape, e)), Infinity);
  }
  return -Math.max(1, ...inside.map((p) => boundaryDistance(polygon, p)));
}

const boundsOf = (p: Polygon) => {
  const xs = p.map((q) => q[0]), ys = p.map((q) => q[1]);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
};

/** True when two bodies, each already drawn in by the millimetre let go, share floor. */
export const share = (a: Shape, b: Shape): boolean => boxesNear(a.box, b.box, 0) && shapesOverlap(a, b);

/** True when a body drawn in by the millimetre let go shares floor with a polygon. */
export function shareWith(slim: Shape, polygon: Polygon): boolean {
  return boxesNear(slim.box, boundsOf(polygon), 0) && clearOf(slim, polygon) < 0;
}

/** True where no side of a piece of floor comes into a box that lies on it. */
export function wellInside(box: Box, { outer, holes, box: around }: Piece): boolean {
  if (box.minX <= around.minX || box.maxX >= around.maxX || box.minY <= around.minY || box.maxY >= around.maxY) return false;
  return !comesInto(outer, box) && !holes.some((h) => comesInto(h, box)) && contains(outer, [box.minX, box.minY]) && !holes.some((h) => contains(h, [box.minX, box.minY]));
}

/** True where a side of a ring may come into a box: false only where each lies wholly beyond one of its edges. */
function comesInto(ring: Polygon, box: Box): boolean {
  let a = ring[ring.length - 1];
  for (const b of ring) {
    if (a && !((a[0] < box.minX && b[0] < box.minX) || (a[0] > box.maxX && b[0] > box.maxX) || (a[1] < box.minY && b[1] < box.minY) || (a[1] > box.maxY && b[1] > box.maxY))) return true;
    a = b;
  }
  return false;
}

/** By how much a body sticks out of a region, mm; 0 when it lies inside. */
export function sticksOut(shape: Shape, slim: () => Shape, region: Region): number {
  // Clear of every wall and with a point inside: inside.
  if (region.some((p) => wellInside(shape.box, p))) return 0;
  for (const p of region) if (p.holes.length === 0 && insideBy(shape, p.outer) > 0) return 0;
  // Near a wall the exact answer is whether any of the slim body is left outside.
  const left = minus(union([outlineOf(slim())]), region);
  if (regionArea(left) < 2) return 0;
  const outs = outlineOf(shape).filter((q) => !region.some((p) => contains(p.outer, q)));
  const depth = outs.map((q: Point) => Math.min(...region.map((p) => boundaryDistance(p.outer, q))));
  return Math.max(1, ...depth);
}
