import { boxOf, type Point, type Polygon } from "../../geometry";
import type { Venue } from "../schema";
import type { Row, Shown } from "./form";
import { exampleLength, shownLength, typedLength } from "./lengths";

type Speech = Pick<Venue, "lengths">;

/** The corner that a room's lengths are counted from: the upper left of the box about its outline. */
export const cornerOf = (outline: Polygon): Point => { const b = boxOf(outline); return [b.minX, b.minY]; };

export const isRectangle = (p: Polygon): boolean => {
  const { minX, minY, maxX, maxY } = boxOf(p);
  return p.length === 4 && p.every(([x, y], i) => (x === minX || x === maxX) && (y === minY || y === maxY) && p.every((q, k) => k === i || q[0] !== x || q[1] !== y));
};

export const shownCorners = (p: Polygon, from: Point, venue: Speech): string =>
  p.map(([x, y]) => `${shownLength(x - from[0], venue)}, ${shownLength(y - from[1], venue)}`).join("\n");

/** One corner: two lengths with a comma, a semicolon or a space between. */
function readCorner(line: string, venue: Speech): Point | null {
  const ways = [line.split(";"), line.split(/,\s+/), line.split(","), line.trim().split(/\s+/)];
  for (const parts of ways) {
    if (parts.length !== 2) continue;
    const [x, y] = parts.map((one) => typedLength(one, venue));
    if (x !== undefined && y !== undefined) return [x, y];
  }
  return null;
}

/** Corners typed one a line, or with bars between; a line that cannot be read is told. */
export function readCorners(row: Row, name: string, venue: Speech): Polygon {
  const lines = row.raw(name).split(/[\r\n|]+/).map((one) => one.trim()).filter((one) => one !== "");
  const read = lines.map((one) => readCorner(one, venue));
  const wrong = read.findIndex((one) => one === null);
  if (wrong >= 0) row.amiss(name, `line ${wrong + 1} is not two lengths. Type how far to the right and how far down, such as "${exampleLength(venue)}; ${exampleLength(venue)}".`);
  else if (read.length < 3) row.amiss(name, "type three corners at the least, one a line.");
  return read.filter((one): one is Point => one !== null);
}

export const rectangleFrom = ([x, y]: Point, width: number, depth: number): Polygon => [[x, y], [x + width, y], [x + width, y + depth], [x, y + depth]];

/** A thing's floor as fields: a box by its middle and two sides, or its corners. */
export function shownFloor(p: Polygon, from: Point, venue: Speech): Shown {
  const b = boxOf(p);
  const middle = { left: shownLength((b.minX + b.maxX) / 2 - from[0], venue), top: shownLength((b.minY + b.maxY) / 2 - from[1], venue) };
  const even = (b.maxX - b.minX) % 2 === 0 && (b.maxY - b.minY) % 2 === 0;
  if (isRectangle(p) && even) return { ...middle, width: shownLength(b.maxX - b.minX, venue), depth: shownLength(b.maxY - b.minY, venue), corners: "" };
  return { left: "", top: "", width: "", depth: "", corners: shownCorners(p, from, venue).replaceAll("\n", " | ") };
}

/** The floor of a thing from its row: its corners where they are typed, else a box about its middle. `was` is kept where nothing changed. */
export function readFloor(row: Row, from: Point, venue: Speech): Polygon {
  if (row.raw("corners") !== "") return readCorners(row, "corners", venue).map(([x, y]): Point => [x + from[0], y + from[1]]);
  const [left, top, width, depth] = [row.length("left"), row.length("top"), row.length("width", 10), row.length("depth", 10)];
  const x = Math.round(left - width / 2), y = Math.round(top - depth / 2);
  return rectangleFrom([x + from[0], y + from[1]], width, depth);
}
