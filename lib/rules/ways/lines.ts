import { edges, nearestOnSegment, type Piece, type Point } from "../../geometry";

/** Lines of one chunk share a box, so that most of a boundary is passed over at a glance. */
const CHUNK = 24;

/** The boundary of a piece of floor, kept for quick search: x1, y1, x2, y2 …, and a box for every 24 lines. */
export type Lines = { readonly at: Float64Array; readonly boxes: Float64Array };

export function linesOf(piece: Piece): Lines {
  const all = [piece.outer, ...piece.holes].flatMap((ring) => [...edges(ring)]);
  const at = new Float64Array(all.length * 4);
  const boxes = new Float64Array(Math.ceil(all.length / CHUNK) * 4);
  all.forEach(([a, b], i) => {
    at[4 * i] = a[0]; at[4 * i + 1] = a[1]; at[4 * i + 2] = b[0]; at[4 * i + 3] = b[1];
    const c = Math.floor(i / CHUNK) * 4, fresh = i % CHUNK === 0;
    boxes[c] = Math.min(fresh ? Infinity : (boxes[c] ?? 0), a[0], b[0]);
    boxes[c + 1] = Math.min(fresh ? Infinity : (boxes[c + 1] ?? 0), a[1], b[1]);
    boxes[c + 2] = Math.max(fresh ? -Infinity : (boxes[c + 2] ?? 0), a[0], b[0]);
    boxes[c + 3] = Math.max(fresh ? -Infinity : (boxes[c + 3] ?? 0), a[1], b[1]);
  });
  return { at, boxes };
}

/** Calls `visit` for each line whose own box, grown by `by`, meets the box given. Stops when it answers true; tells whether it did. */
export function eachLine(lines: Lines, box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }, visit: (a: Point, b: Point) => boolean): boolean {
  const { at, boxes } = lines;
  for (let c = 0; c < boxes.length; c += 4) {
    if ((boxes[c] ?? 0) > box.maxX || (boxes[c + 1] ?? 0) > box.maxY || (boxes[c + 2] ?? 0) < box.minX || (boxes[c + 3] ?? 0) < box.minY) continue;
    const end = Math.min(at.length, (c + 4) * CHUNK);
    for (let i = c * CHUNK; i < end; i += 4) {
      const x1 = at[i] ?? 0, y1 = at[i + 1] ?? 0, x2 = at[i + 2] ?? 0, y2 = at[i + 3] ?? 0;
      if ((x1 < box.minX && x2 < box.minX) || (x1 > box.maxX && x2 > box.maxX) || (y1 < box.minY && y2 < box.minY) || (y1 > box.maxY && y2 > box.maxY)) continue;
      if (visit([x1, y1], [x2, y2])) return true;
    }
  }
  return false;
}

/** Even-odd test over all rings of the piece. */
export function insideLines(lines: Lines, [x, y]: Point): boolean {
  let inside = false;
  eachLine(lines, { minX: x, maxX: Infinity, minY: y, maxY: y }, (a, b) => {
    if (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside;
    return false;
  });
  return inside;
}

/** The nearest point of every line within a distance of a point, nearest first. */
export function nearestPoints(lines: Lines, at: Point, within: number): readonly Point[] {
  const near: { readonly at: Point; readonly d: number }[] = [];
  eachLine(lines, { minX: at[0] - within, maxX: at[0] + within, minY: at[1] - within, maxY: at[1] + within }, (a, b) => {
    const q = nearestOnSegment(at, [a, b]);
    const d = Math.hypot(q[0] - at[0], q[1] - at[1]);
    if (d <= within) near.push({ at: q, d });
    return false;
  });
  return near.sort((a, b) => a.d - b.d).map((n) => n.at);
}
