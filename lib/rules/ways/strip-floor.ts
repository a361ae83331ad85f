import { boxOf, boxesNear, contains, edges, pointSegmentDistance, rectangle, segmentDistance, type Box, type Point } from "../../geometry";
import { tried, type Floor } from "./floor";
import { stripAt, type Strips } from "./strips";

/** Spots tried unsorted. */
const SOON = 4;
/** A box about a point: so far along x and y. */
type Reach = { readonly p: Point; readonly x: number; readonly y: number };
type Visit = (lo: number, hi: number, y0: number, y1: number) => boolean;

/** Visits the spans of a piece that lie in a box, those in strips nearest to its middle's height first; stops when `visit` answers true. */
function outward(s: Strips, piece: number, { p, x, y: high }: Reach, visit: Visit): boolean {
  const strips = s.at.length - 1, y = p[1], left = p[0] - x, right = p[0] + x, home = Math.min(strips - 1, stripAt(s.at, y));
  for (let up = home, down = home + 1; ;) {
    const a = up >= 0 && y - (s.at[up + 1] ?? 0) <= high, b = down < strips && (s.at[down] ?? 0) - y <= high;
    if (!a && !b) return false;
    if (a && along(s, up--, { piece, left, right }, visit)) return true;
    if (b && along(s, down++, { piece, left, right }, visit)) return true;
  }
}

/** Visits the spans of a piece in one strip between two places along x. */
function along(s: Strips, k: number, { piece, left, right }: { readonly piece: number; readonly left: number; readonly right: number }, visit: Visit): boolean {
  const end = s.first[k + 1] ?? 0;
  for (let i = s.first[k] ?? 0; i < end; i++) {
    const lo = s.lo[i] ?? 0, hi = s.hi[i] ?? 0;
    if (lo > right) return false;
    if (hi >= left && s.piece[i] === piece && visit(lo, hi, s.at[k] ?? 0, s.at[k + 1] ?? 0)) return true;
  }
  return false;
}

const clamp = (v: number, lo: number, hi: number): number => (v < lo ? lo : v > hi ? hi : v);

/** The pieces of floor that strips make up. */
export function stripFloors(s: Strips): readonly Floor[] {
  const boxes: { minX: number; minY: number; maxX: number; maxY: number }[] = Array.from({ length: s.pieces }, () => ({ minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity }));
  const strips = s.at.length - 1;
  for (let k = 0; k < strips; k++) for (let i = s.first[k] ?? 0; i < (s.first[k + 1] ?? 0); i++) {
    const b = boxes[s.piece[i] ?? 0];
    if (!b) continue;
    b.minX = Math.min(b.minX, s.lo[i] ?? 0); b.maxX = Math.max(b.maxX, s.hi[i] ?? 0);
    b.minY = Math.min(b.minY, s.at[k] ?? 0); b.maxY = Math.max(b.maxY, s.at[k + 1] ?? 0);
  }
  return boxes.map((box, piece) => floorOf(s, piece, box));
}

const beyond = (box: Box, p: Point, by: number): boolean => p[0] < box.minX - by || p[0] > box.maxX + by || p[1] < box.minY - by || p[1] > box.maxY + by;

/** The nearest point of each span within a distance of a point, nearest first; the point alone where it lies on one. */
function spotsNear(s: Strips, piece: number, p: Point, by: number): readonly Point[] {
  const found: { readonly at: Point; readonly d: number }[] = [];
  outward(s, piece, { p, x: by, y: by }, (lo, hi, y0, y1) => {
    const x = clamp(p[0], lo, hi), y = clamp(p[1], y0, y1), d = (x - p[0]) * (x - p[0]) + (y - p[1]) * (y - p[1]);
    if (d <= by * by) found.push({ at: [x, y], d });
    return d === 0;
  });
  return found.sort((a, b) => a.d - b.d).map((f) => f.at);
}

function comesWithin(s: Strips, piece: number, p: Point, by: number): boolean {
  return outward(s, piece, { p, x: by, y: by }, (lo, hi, y0, y1) => {
    const dx = clamp(p[0], lo, hi) - p[0], dy = clamp(p[1], y0, y1) - p[1];
    return dx * dx + dy * dy <= by * by;
  });
}

/** Members are written in place, not named first: a named function costs more than most questions asked of a small piece of floor. */
function floorOf(s: Strips, piece: number, box: Box): Floor {
  const strips = s.at.length - 1;
  return {
    box,
    within: (p, by) => !beyond(box, p, by) && comesWithin(s, piece, p, by),
    near: (p, by) => (beyond(box, p, by) ? [] : spotsNear(s, piece, p, by)),
    has: (p) => !beyond(box, p, 0) && comesWithin(s, piece, p, 0),
    away: (p, most) => {
      // Rings of twice the width each time: most floor is near.
      for (let by = Math.min(500, most); ; by = Math.min(2 * by, most)) {
        const q = beyond(box, p, by) ? undefined : spotsNear(s, piece, p, by)[0];
        if (q) return Math.hypot(q[0] - p[0], q[1] - p[1]);
        if (by >= most) return Infinity;
      }
    },
    some: (p, by, test) => {
      if (beyond(box, p, by)) return false;
      // The first few as they come will mostly do; only then are they put in order.
      let count = 0, found = false;
      outward(s, piece, { p, x: by, y: by }, (lo, hi, y0, y1) => {
        const x = clamp(p[0], lo, hi), y = clamp(p[1], y0, y1);
        if ((x - p[0]) * (x - p[0]) + (y - p[1]) * (y - p[1]) > by * by) return false;
        found = test([x, y]);
        return found || ++count >= SOON;
      });
      return found || (count >= SOON && tried(spotsNear(s, piece, p, by), test));
    },
    mark: ({ x0, y0, cell, across, down, marked }, by) => {
      for (let k = 0; k < strips; k++) {
        // Middles of rows of cells that lie in this strip, or as near as asked.
        const from = Math.max(0, Math.ceil(((s.at[k] ?? 0) - by - y0) / cell - 0.5)), to = Math.min(down - 1, Math.floor(((s.at[k + 1] ?? 0) + by - y0) / cell - 0.5));
        for (let i = s.first[k] ?? 0; from <= to && i < (s.first[k + 1] ?? 0); i++) {
          if (s.piece[i] !== piece) continue;
          const left = Math.max(0, Math.ceil(((s.lo[i] ?? 0) - by - x0) / cell - 0.5)), right = Math.min(across - 1, Math.floor(((s.hi[i] ?? 0) + by - x0) / cell - 0.5));
          for (let j = from; j <= to; j++) marked.fill(1, j * across + left, j * across + right + 1);
        }
      }
    },
    meets: (target, by) => {
      const b = boxOf(target), sides = edges(target), mid: Point = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
      if (!boxesNear(b, box, by)) return false;
      return outward(s, piece, { p: mid, x: (b.maxX - b.minX) / 2 + by, y: (b.maxY - b.minY) / 2 + by }, (lo, hi, y0, y1) => {
        const m: Point = [clamp(mid[0], lo, hi), (y0 + y1) / 2];
        if (contains(target, m) || sides.some((e) => pointSegmentDistance(m, e) <= by)) return true;
        const ring = edges(rectangle([(lo + hi) / 2, (y0 + y1) / 2], hi - lo, y1 - y0, 0));
        return sides.some((e) => ring.some((f) => segmentDistance(e, f) <= by));
      });
    },
  };
}
