import { add, cross, distance, dot, scale, sub, type Point } from "./point";

export type Segment = readonly [from: Point, to: Point];

/** The point of a segment nearest to p. */
export function nearestOnSegment(p: Point, [a, b]: Segment): Point {
  const d = sub(b, a);
  const n = dot(d, d);
  if (n === 0) return a;
  const t = Math.max(0, Math.min(1, dot(sub(p, a), d) / n));
  return add(a, scale(d, t));
}

export const pointSegmentDistance = (p: Point, s: Segment): number => distance(p, nearestOnSegment(p, s));

/** True when the open segments cross at one inner point (touching at an end does not count). */
export function segmentsCross([a, b]: Segment, [c, d]: Segment): boolean {
  const ab = sub(b, a), cd = sub(d, c);
  const s1 = cross(ab, sub(c, a)), s2 = cross(ab, sub(d, a));
  const s3 = cross(cd, sub(a, c)), s4 = cross(cd, sub(b, c));
  return ((s1 > 0 && s2 < 0) || (s1 < 0 && s2 > 0)) && ((s3 > 0 && s4 < 0) || (s3 < 0 && s4 > 0));
}

/** Least distance between two segments; 0 when they cross or touch. */
export function segmentDistance(s: Segment, t: Segment): number {
  if (segmentsCross(s, t)) return 0;
  return Math.min(
    pointSegmentDistance(s[0], t), pointSegmentDistance(s[1], t),
    pointSegmentDistance(t[0], s), pointSegmentDistance(t[1], s),
  );
}
