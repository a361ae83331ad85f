import { pathText, type Path, type Problem } from "../../base";
import {
  area, boundaryDistance, boxOf, contains, cross, distance, dot, edges, isSimple, sub, type Box, type Point, type Polygon,
} from "../../geometry";
import { footprintPolygon } from "../../layout";
import type { Room } from "../schema";
import { ON_WALL, socketAt, THICKEST_WALL, wallOf } from "../site";

/** Narrowest and widest opening that is taken for a door, mm. */
const DOOR_WIDTH = { least: 300, most: 50_000 } as const;
/** Smallest room, square millimetres: below it nobody could turn round. */
const SMALLEST_ROOM = 1_000_000;
/** Words that `leads` and the briefs use for other things than rooms. */
export const TAKEN_WORDS: readonly string[] = ["outside", "back-of-house", "toilets", "any"];

export const problem = (path: Path, message: string): Problem => ({ path: pathText(path), message });

/** Why a polygon cannot bound a floor, or null. */
export function outlineFault(outline: Polygon): string | null {
  const es = edges(outline);
  if (es.some(([a, b]) => distance(a, b) === 0)) return "repeats a point; allowed: each corner once, the first not repeated at the end";
  const folds = es.some(([a, b], i) => {
    const [, c] = es[(i + 1) % es.length] ?? [b, b];
    return cross(sub(b, a), sub(c, b)) === 0 && dot(sub(b, a), sub(c, b)) < 0;
  });
  if (folds || !isSimple(outline)) return "crosses or touches itself; allowed: one outline without crossings";
  return null;
}

/** What is wrong inside one room, whatever the others say. */
export function roomFacts(room: Room, at: Path): readonly Problem[] {
  const fault = outlineFault(room.outline);
  if (fault) return [problem([...at, "outline"], fault)];
  const box = boxOf(room.outline);
  return [
    ...(TAKEN_WORDS.includes(room.id) ? [problem([...at, "id"], `"${room.id}" has a meaning of its own; allowed: any other name`)] : []),
    ...(area(room.outline) < SMALLEST_ROOM ? [problem([...at, "outline"], `encloses ${area(room.outline) / 1e6} m²; allowed: at least 1 m²`)] : []),
    ...room.doors.flatMap((d, i) => jambs(room.outline, d, [...at, "doors", i])),
    ...room.windows.flatMap((w, i) => stretch(room.outline, w, [...at, "windows", i])),
    ...room.walls.flatMap((w, i) => stretch(room.outline, w, [...at, "walls", i])),
    ...room.obstacles.flatMap((o, i) => insideBox(o.outline, box, [...at, "obstacles", i, "outline"])),
    ...room.keepClear.flatMap((k, i) => insideBox(k.outline, box, [...at, "keepClear", i, "outline"])),
    ...room.sockets.flatMap((s, i) => {
      const spot = socketAt(s);
      if (contains(room.outline, spot) || boundaryDistance(room.outline, spot) <= THICKEST_WALL) return [];
      return [problem([...at, "sockets", i, ...("length" in s ? [] : ["at"])], `[${spot.join(", ")}] lies outside the room; allowed: a point inside it or in its walls`)];
    }),
    ...room.standing.flatMap((s, i) => {
      const body = footprintPolygon({ ...STOOD, shape: s.shape, at: s.at, angle: s.angle });
      const out = !contains(room.outline, s.at) || body.some((p) => !inside(p, box, 10));
      return out ? [problem([...at, "standing", i, "at"], `${s.name} stands at [${s.at.join(", ")}], not within the room; allowed: ${boxWords(box)}, with the whole piece inside`)] : [];
    }),
  ];
}

const STOOD = { id: "x", kind: "other", label: "", room: "x", from: { brought: true }, seats: [] } as const;

function jambs(outline: Polygon, door: { readonly from: Point; readonly to: Point }, at: Path): readonly Problem[] {
  const width = distance(door.from, door.to);
  const off = (["from", "to"] as const).filter((k) => boundaryDistance(outline, door[k]) > ON_WALL);
  if (off.length > 0) return off.map((k) => problem([...at, k], `[${door[k].join(", ")}] is not on the room's outline; allowed: a point within ${ON_WALL} mm of it`));
  if (!wallOf(outline, door.from, door.to)) return [problem([...at, "to"], "the two jambs stand on different walls; allowed: both on one straight stretch of the outline")];
  if (width < DOOR_WIDTH.least || width > DOOR_WIDTH.most) {
    return [problem([...at, "to"], `the door is ${Math.round(width)} mm wide; allowed: ${DOOR_WIDTH.least} to ${DOOR_WIDTH.most} mm`)];
  }
  return [];
}

function stretch(outline: Polygon, s: { readonly from: Point; readonly to: Point }, at: Path): readonly Problem[] {
  const off = (["from", "to"] as const).filter((k) => boundaryDistance(outline, s[k]) > ON_WALL);
  if (off.length > 0) return off.map((k) => problem([...at, k], `[${s[k].join(", ")}] is not on the room's outline; allowed: a point within ${ON_WALL} mm of it`));
  if (!wallOf(outline, s.from, s.to)) return [problem([...at, "to"], "the two ends lie on different walls; allowed: both on one straight stretch of the outline")];
  return distance(s.from, s.to) === 0 ? [problem([...at, "to"], "is the same point as from; allowed: another point of the wall")] : [];
}

function insideBox(outline: Polygon, box: Box, at: Path): readonly Problem[] {
  const fault = outlineFault(outline);
  if (fault) return [problem(at, fault)];
  // A pier may reach into the wall that it belongs to.
  const stray = outline.findIndex((p) => !inside(p, box, THICKEST_WALL));
  return stray < 0 ? [] : [problem([...at, stray], `[${outline[stray]?.join(", ")}] lies outside the room; allowed: ${boxWords(box)}`)];
}

const inside = ([x, y]: Point, b: Box, by: number): boolean => x >= b.minX - by && x <= b.maxX + by && y >= b.minY - by && y <= b.maxY + by;
const boxWords = (b: Box): string => `x from ${b.minX} to ${b.maxX}, y from ${b.minY} to ${b.maxY}`;
