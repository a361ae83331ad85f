import {
  add, aroundCircle, clockwise, offset, pieceDistance, pieceContains, scale, sinCos, subtract, type Point, type Polygon, type Region,
} from "../../geometry";
import type { Gate } from "../../venue";
import { convexSum } from "../seating/hall";
import { linesOf } from "../seating/lines";
import type { RowSpace } from "./types";

/** Half of the path from a place to a way out (305 mm, IBC 2018 1029.13.2), less the millimetre let go. */
const HALF_PATH = 151.5;
/** Half of an accessible route (36 in = 914 mm, 2010 ADA Standards 403.5.1), less the millimetre let go. */
const HALF_ROUTE = 456;
/** Narrowest door on an accessible route, mm. */
const ROUTE_DOOR = 800;

/** Doors by which people leave a room: ways out, and doors to other rooms that may lead to one. */
export const waysOf = (gates: readonly Gate[]): readonly Gate[] =>
  gates.filter((g) => g.door.exit || (g.leadsTo !== null && g.door.for.includes("guests")));

/** The middle of a route keeps off a body by this: corners just outside the true circle, sides just inside it. */
const DISC = aroundCircle([0, 0], HALF_ROUTE * (1 + sinCos(180 / 72).cos) / 2, 72);

const inside = (g: Gate, by: number): Point => add(g.at, scale(g.inward, by));

/** Rectangles grown by a mitre: never less than the true offset, and cheap. */
function grown(p: Polygon, by: number): Polygon {
  const [a, b, c, d] = p;
  if (!a || !b || !c || !d) return p;
  const along = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1, down = Math.hypot(d[0] - a[0], d[1] - a[1]) || 1;
  const x: Point = [((b[0] - a[0]) / along) * by, ((b[1] - a[1]) / along) * by];
  const y: Point = [((d[0] - a[0]) / down) * by, ((d[1] - a[1]) / down) * by];
  return [
    [a[0] - x[0] - y[0], a[1] - x[1] - y[1]], [b[0] + x[0] - y[0], b[1] + x[1] - y[1]],
    [c[0] + x[0] + y[0], c[1] + x[1] + y[1]], [d[0] - x[0] + y[0], d[1] - x[1] + y[1]],
  ];
}

/** The floor without rows, for the centres of paths and of routes: computed once a room. */
export type PathFloors = { readonly path: Region; readonly route: Region };
export function pathFloors(space: RowSpace): PathFloors {
  const bare = subtract(space.floor, space.solids);
  return { path: offset(bare, -HALF_PATH), route: offset(bare, -HALF_ROUTE) };
}

/** How many ways out each place reaches by a path 305 mm wide; `starts` lie in the accessway ahead of the places. */
export function waysReached(space: RowSpace, floors: PathFloors, bodies: readonly Polygon[], starts: readonly Point[]): readonly number[] {
  const floor = subtract(floors.path, bodies.map((b) => grown(b, HALF_PATH)));
  const ways = waysOf(space.gates).filter((g) => g.width > 2 * HALF_PATH);
  const counts = floor.map((piece) => ways.filter((g) => pieceContains(piece, inside(g, HALF_PATH + 2))).length);
  const lines = floor.map((piece) => linesOf([piece]));
  return starts.map(([x, y]) => counts[lines.findIndex((l) => l.at(y).some(([from, to]) => x >= from && x <= to))] ?? 0);
}

/** Which wheelchair places a route 914 mm wide reaches from some way out. */
export function routesReached(space: RowSpace, floors: PathFloors, bodies: readonly Polygon[], places: readonly Polygon[]): readonly boolean[] {
  if (places.length === 0) return [];
  const floor = subtract(floors.route, [...bodies, ...places].map((p) => convexSum(clockwise(p), DISC)));
  const doors = waysOf(space.gates).filter((g) => g.width >= ROUTE_DOOR - 1);
  const open = floor.filter((piece) => doors.some((g) => pieceDistance(piece, inside(g, HALF_ROUTE + 2)) < HALF_ROUTE));
  return places.map((body) => open.some((piece) => body.some((p) => pieceDistance(piece, p) <= HALF_ROUTE + 2)));
}

/** Joins the bodies of a run of chairs into one strip where they stand in line with no path between: fewer shapes to offset. */
export function runs(bodies: readonly { readonly body: Polygon; readonly key: string }[]): readonly Polygon[] {
  const out: Polygon[] = [];
  let last: { key: string; body: Polygon } | null = null;
  for (const b of bodies) {
    if (last && last.key === b.key && b.key !== "") {
      const a: Point | undefined = last.body[0], d: Point | undefined = last.body[3];
      const [, q, r] = b.body;
      if (a && d && q && r) { last = { key: b.key, body: [a, q, r, d] }; continue; }
    }
    if (last) out.push(last.body);
    last = { key: b.key, body: b.body };
  }
  if (last) out.push(last.body);
  return out;
}

