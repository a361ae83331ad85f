import { distance, type Point } from "./point";
import { boundaryDistance, boxOf, contains, edges, type Box, type Polygon } from "./polygon";
import { pointSegmentDistance, segmentDistance } from "./segment";

/** What stands on a floor: a disc or a convex polygon. */
export type Shape =
  | { readonly kind: "disc"; readonly at: Point; readonly radius: number; readonly box: Box }
  | { readonly kind: "polygon"; readonly points: Polygon; readonly box: Box };

export const disc = (at: Point, radius: number): Shape => ({
  kind: "disc", at, radius,
  box: { minX: at[0] - radius, minY: at[1] - radius, maxX: at[0] + radius, maxY: at[1] + radius },
});
export const polygonShape = (points: Polygon): Shape => ({ kind: "polygon", points, box: boxOf(points) });

/**
 * Signed clearance between two shapes: the least distance of their edges, or minus the depth to which they overlap
 * (the least of the two ways out of each other for convex shapes).
 */
export function clearance(a: Shape, b: Shape): number {
  if (a.kind === "disc" && b.kind === "disc") return distance(a.at, b.at) - a.radius - b.radius;
  if (a.kind === "disc" && b.kind === "polygon") return pointClearance(a.at, b.points) - a.radius;
  if (a.kind === "polygon" && b.kind === "disc") return pointClearance(b.at, a.points) - b.radius;
  if (a.kind === "polygon" && b.kind === "polygon") return polygonClearance(a.points, b.points);
  return 0;
}

/** True where two shapes overlap: their clearance is negative. Without working out by how much, or how far apart they are. */
export function shapesOverlap(a: Shape, b: Shape): boolean {
  if (a.kind === "polygon" && b.kind === "polygon") return depthAlong(a.points, a.points, b.points) > 0 && depthAlong(b.points, a.points, b.points) > 0;
  return clearance(a, b) < 0;
}

/** Distance from a point to a polygon, negative inside it. */
export function pointClearance(p: Point, poly: Polygon): number {
  const d = boundaryDistance(poly, p);
  return contains(poly, p) ? -d : d;
}

/** Distance of two polygons; for overlapping convex ones minus the least depth over all edge normals (separating axes). */
export function polygonClearance(a: Polygon, b: Polygon): number {
  const depth = overlapDepth(a, b);
  if (depth > 0) return -depth;
  let d = Infinity;
  for (let i = 0, j = a.length - 1; i < a.length; j = i++) for (let k = 0, m = b.length - 1; k < b.length; m = k++) {
    const p = a[j], q = a[i], r = b[m], s = b[k];
    if (p && q && r && s) d = Math.min(d, segmentDistance([p, q], [r, s]));
  }
  return d;
}

/** How deep two convex polygons overlap, mm: the shortest way that parts them; 0 or less where they do not. */
export const overlapDepth = (a: Polygon, b: Polygon): number => Math.min(depthAlong(a, a, b), depthAlong(b, a, b));

/** Least overlap of two polygons seen along the normals of a third's edges; 0 or less where one of them parts the two. */
function depthAlong(of: Polygon, a: Polygon, b: Polygon): number {
  let depth = Infinity;
  for (let i = 0, j = of.length - 1; i < of.length; j = i++) {
    const p = of[j], q = of[i];
    if (!p || !q) continue;
    const nx = q[1] - p[1], ny = p[0] - q[0];
    const n = Math.sqrt(nx * nx + ny * ny);
    if (n === 0) continue;
    let aMin = Infinity, aMax = -Infinity, bMin = Infinity, bMax = -Infinity;
    for (const [x, y] of a) { const s = (x * nx + y * ny) / n; if (s < aMin) aMin = s; if (s > aMax) aMax = s; }
    for (const [x, y] of b) { const s = (x * nx + y * ny) / n; if (s < bMin) bMin = s; if (s > bMax) bMax = s; }
    const overlap = Math.min(aMax - bMin, bMax - aMin);
    if (overlap <= 0) return 0;
    if (overlap < depth) depth = overlap;
  }
  return depth;
}

/** Least distance from a shape to the boundary of the region it stands in; negative by how far it sticks out. */
export function insideBy(shape: Shape, region: Polygon): number {
  if (shape.kind === "disc") {
    const d = boundaryDistance(region, shape.at);
    return (contains(region, shape.at) ? d : -d) - shape.radius;
  }
  let least = Infinity;
  for (const p of shape.points) {
    const d = boundaryDistance(region, p);
    least = Math.min(least, contains(region, p) ? d : -d);
  }
  if (least < 0) return least;
  for (const p of region) if (contains(shape.points, p)) least = Math.min(least, -boundaryDistance(shape.points, p));
  if (least < 0) return least;
  for (const e of edges(shape.points)) for (const f of edges(region)) least = Math.min(least, segmentDistance(e, f));
  return least;
}

/** Distance from a shape to a segment; 0 when they touch or overlap. */
export function segmentClearance(shape: Shape, s: readonly [Point, Point]): number {
  if (shape.kind === "disc") return Math.max(0, pointSegmentDistance(shape.at, s) - shape.radius);
  if (contains(shape.points, s[0]) || contains(shape.points, s[1])) return 0;
  return edges(shape.points).reduce((d, e) => Math.min(d, segmentDistance(e, s)), Infinity);
}
