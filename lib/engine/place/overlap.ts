import {
  boundaryDistance, boxesNear, boxOf, contains, edges, segmentDistance, segmentsCross, type Box, type Polygon, type Region, type Segment,
} from "../../geometry";

/** True when two simple polygons, convex or not, come nearer than gap; with gap 0 touching edges are let be. */
export function meets(a: Polygon, b: Polygon, gap = 0): boolean {
  if (!boxesNear(boxOf(a), boxOf(b), gap)) return false;
  const first = a[0], other = b[0];
  if (!first || !other) return false;
  if (gap > 0) {
    if (contains(b, first) || contains(a, other)) return true;
    const others = edges(b);
    return edges(a).some((e) => others.some((f) => segmentDistance(e, f) < gap - 1e-6));
  }
  const mine = edges(a), others = edges(b);
  for (const e of mine) for (const f of others) if (segmentsCross(e, f)) return true;
  return deepInside(a, mine, b) || deepInside(b, others, a);
}

/** A vertex or an edge's middle of a lies inside b by more than a hair. */
function deepInside(a: Polygon, sides: readonly Segment[], b: Polygon): boolean {
  let sumX = 0, sumY = 0;
  for (const p of a) { sumX += p[0]; sumY += p[1]; }
  const cx = sumX / a.length, cy = sumY / a.length;
  // Drawn a hair towards the middle, so that a shared edge is not an overlap.
  const holds = (x: number, y: number): boolean => contains(b, [x + (cx - x) * 1e-4, y + (cy - y) * 1e-4]);
  for (const p of a) if (holds(p[0], p[1])) return true;
  for (const [p, q] of sides) if (holds((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)) return true;
  return false;
}

/** True when a convex polygon lies wholly in one piece of a region, holes kept out. */
export function within(a: Polygon, region: Region): boolean {
  const box = boxOf(a);
  return region.some((piece) => {
    if (box.minX < piece.box.minX - 0.5 || box.maxX > piece.box.maxX + 0.5 || box.minY < piece.box.minY - 0.5 || box.maxY > piece.box.maxY + 0.5) return false;
    if (!a.every((p) => contains(piece.outer, p) || boundaryDistance(piece.outer, p) <= 0.5)) return false;
    return !crossesRing(a, box, piece.outer) && !piece.holes.some((h) => meets(a, h));
  });
}

/** True when an edge of the ring crosses the polygon; edges that do not come near its box are passed over. */
function crossesRing(a: Polygon, box: Box, ring: Polygon): boolean {
  let p = ring[ring.length - 1];
  for (const q of ring) {
    if (p && Math.max(p[0], q[0]) >= box.minX && Math.min(p[0], q[0]) <= box.maxX && Math.max(p[1], q[1]) >= box.minY && Math.min(p[1], q[1]) <= box.maxY) {
      const f: Segment = [p, q];
      if (edges(a).some((e) => segmentsCross(e, f) && !grazes(e, f))) return true;
    }
    p = q;
  }
  return false;
}

/** A crossing by less than half a millimetre at an end is rounding, not an overlap. */
const grazes = (e: Segment, f: Segment): boolean =>
  [e[0], e[1]].some((p) => segmentDistance([p, p], f) <= 0.5) || [f[0], f[1]].some((p) => segmentDistance([p, p], e) <= 0.5);
