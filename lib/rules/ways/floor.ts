import { boxesNear, boxOf, contains, edges, pointSegmentDistance, segmentDistance, type Box, type Piece, type Point, type Polygon } from "../../geometry";
import { eachLine, insideLines, linesOf, nearestPoints } from "./lines";

/** One connected piece of floor on which the middle of a walker may be, and what rules ask of it. Lengths in mm. */
export type Floor = {
  readonly box: Box;
  readonly has: (p: Point) => boolean;
  /** True when it comes within a distance of a point. */
  readonly within: (p: Point, by: number) => boolean;
  /** How far it lies from a point; Infinity where that is more than asked about. */
  readonly away: (p: Point, most: number) => number;
  /** Points of it within a distance of a point, nearest first: the point itself where it lies on it. */
  readonly near: (p: Point, by: number) => readonly Point[];
  /** True when a test holds at some point of it within a distance, of those looked at: a few dozen, the nearest among them. */
  readonly some: (p: Point, by: number, test: (q: Point) => boolean) => boolean;
  /** Marks the cells of a grid whose middles lie on it, or within a distance of it along either axis. */
  readonly mark: (grid: Cells, by: number) => void;
  /** True when it comes within a distance of a polygon. */
  readonly meets: (target: Polygon, by: number) => boolean;
};

/** A grid of square cells, row by row from a corner, each marked or not. */
export type Cells = { readonly x0: number; readonly y0: number; readonly cell: number; readonly across: number; readonly down: number; readonly marked: Uint8Array };

/** Spots tried before floor is given up, and how far apart they lie, mm. */
const TRIES = 40, APART = 60;

/** Asks a test of points in turn, leaving out those that lie beside the last. */
export function tried(points: readonly Point[], test: (q: Point) => boolean): boolean {
  let count = 0;
  let last: Point | null = null;
  for (const q of points) {
    if (last && Math.hypot(q[0] - last[0], q[1] - last[1]) < APART) continue;
    last = q;
    if (count++ >= TRIES) return false;
    if (test(q)) return true;
  }
  return false;
}

/** Floor by its outline. */
export function outlinedFloor(piece: Piece): Floor {
  const lines = linesOf(piece), { box } = piece;
  const has = (p: Point): boolean => insideLines(lines, p);
  const far = (p: Point, by: number): boolean => p[0] < box.minX - by || p[0] > box.maxX + by || p[1] < box.minY - by || p[1] > box.maxY + by;
  const near = (p: Point, by: number): readonly Point[] => (far(p, by) ? [] : has(p) ? [p] : nearestPoints(lines, p, by));
  return {
    box, has, near,
    away: (p, most) => { const q = near(p, most)[0]; return q ? Math.hypot(q[0] - p[0], q[1] - p[1]) : Infinity; },
    some: (p, by, test) => tried(near(p, by), test),
    mark: ({ x0, y0, cell, across, down, marked }, by) => {
      for (let k = 0; k < across * down; k++) {
        const p: Point = [x0 + ((k % across) + 0.5) * cell, y0 + (Math.floor(k / across) + 0.5) * cell];
        if (by === 0 ? has(p) : near(p, by).length > 0) marked[k] = 1;
      }
    },
    within: (p, by) => {
      if (far(p, by)) return false;
      return eachLine(lines, { minX: p[0] - by, minY: p[1] - by, maxX: p[0] + by, maxY: p[1] + by }, (a, b) => pointSegmentDistance(p, [a, b]) <= by) || has(p);
    },
    meets: (target, by) => {
      const b = boxOf(target);
      if (!boxesNear(b, box, by)) return false;
      if (target.some((v) => has(v))) return true;
      const first = piece.outer[0];
      if (first && contains(target, first)) return true;
      const sides = edges(target);
      return eachLine(lines, { minX: b.minX - by, minY: b.minY - by, maxX: b.maxX + by, maxY: b.maxY + by }, (a, c) => sides.some((s) => segmentDistance(s, [a, c]) <= by));
    },
  };
}
