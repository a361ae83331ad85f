import type { Point } from "./point";

export type Segment = readonly [from: Point, to: Point];

/** The point of a segment nearest to p. */
export function nearestOnSegment(p: Point, s: Segment): Point {
  const a = s[0], dx = s[1][0] - a[0], dy = s[1][1] - a[1];
  const n = dx * dx + dy * dy;
  if (n === 0) return a;
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / n));
  return [a[0] + dx * t, a[1] + dy * t];
}

/** Without a point in between: this is asked more often than anything else. */
export function pointSegmentDistance(p: Point, s: Segment): number {
  const ax = s[0][0], ay = s[0][1], dx = s[1][0] - ax, dy = s[1][1] - ay;
  const n = dx * dx + dy * dy;
  const t = n === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - ax) * dx + (p[1] - ay) * dy) / n));
  const x = p[0] - ax - dx * t, y = p[1] - ay - dy * t;
  return Math.sqrt(x * x + y * y);
}

/** True when the open segments cross at one inner point (touching at an end does not count). */
export function segmentsCross(s: Segment, t: Segment): boolean {
  const a = s[0], b = s[1], c = t[0], d = t[1];
  const abx = b[0] - a[0], aby = b[1] - a[1];
  const s1 = abx * (c[1] - a[1]) - aby * (c[0] - a[0]), s2 = abx * (d[1] - a[1]) - aby * (d[0] - a[0]);
  if (!((s1 > 0 && s2 < 0) || (s1 < 0 && s2 > 0))) return false;
  const cdx = d[0] - c[0], cdy = d[1] - c[1];
  const s3 = cdx * (a[1] - c[1]) - cdy * (a[0] - c[0]), s4 = cdx * (b[1] - c[1]) - cdy * (b[0] - c[0]);
  return (s3 > 0 && s4 < 0) || (s3 < 0 && s4 > 0);
}

/** Least distance between two segments; 0 when they cross or touch. */
export function segmentDistance(s: Segment, t: Segment): number {
  if (segmentsCross(s, t)) return 0;
  return Math.min(
    pointSegmentDistance(s[0], t), pointSegmentDistance(s[1], t),
    pointSegmentDistance(t[0], s), pointSegmentDistance(t[1], s),
  );
}
