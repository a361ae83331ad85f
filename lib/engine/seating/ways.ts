import { aroundCircle, distance, edges, offset, pieceContains, pieceDistance, rectangle, regionArea, subtract, type Piece, type Point, type Polygon, type Region } from "../../geometry";
import { isRound, type Item } from "../../layout";
import { convexSum, LINE_OUT, WAY } from "./hall";
import type { SeatingSpace } from "./types";

/** Part of the way from a place at a table that has no least width, mm: IBC 2018 1029.13.1.1, exception (6 ft). */
const FREE_WALK = 1829;
/** Width of an accessible route, mm: 2010 ADA Standards 403.5.1 (36 in). */
export const ROUTE = 914;
/** Kept in hand against the exact check of the ways out, mm. */
const IN_HAND = 2;

/** A table grown all round by a distance, never by less: corners as arcs drawn from outside. */
const grownTable = (i: Item, by: number): Polygon => isRound(i.shape)
  ? aroundCircle(i.at, i.shape.diameter / 2 + by, 48)
  : convexSum(rectangle(i.at, i.shape.width, i.shape.depth, i.angle), aroundCircle([0, 0], by, 24));

const bare = new WeakMap<SeatingSpace, Map<number, Region>>();
/** The floor where the middle of a walker of some width may be with no tables standing. */
function bareWalk(space: SeatingSpace, width: number): Region {
  const known = bare.get(space) ?? new Map<number, Region>();
  bare.set(space, known);
  const found = known.get(width) ?? offset(subtract(space.floor, space.solids), -width / 2);
  known.set(width, found);
  return found;
}

/** The pieces of floor from which a walker of some width gets out, between lines 483 mm out from the tables. */
export function walkable(space: SeatingSpace, items: readonly Item[], width: number): readonly Piece[] {
  const tables = [...items, ...(space.fixed ?? [])].filter((i) => i.seats.length > 0);
  const free = subtract(bareWalk(space, width), tables.map((i) => grownTable(i, LINE_OUT + width / 2 + IN_HAND)));
  const exits = space.exits ?? [];
  const open = free.filter((p) => exits.some((e) => pieceContains(p, e) || pieceDistance(p, e) < width));
  if (open.length > 0) return open;
  if (exits.length > 0) return [];
  // No door is known: the larger pieces of floor are taken to lead out.
  const most = Math.max(0, ...free.map((p) => regionArea([p])));
  return free.filter((p) => regionArea([p]) > most * 0.3);
}

/** Whether points lie within a distance of a piece of floor: most are answered by a corner of it that is near. */
function nearPiece(piece: Piece, by: number): (p: Point) => boolean {
  const corners = [piece.outer, ...piece.holes].flat();
  let last: Point | undefined;
  const close = (c: Point, p: Point): boolean => (c[0] - p[0]) ** 2 + (c[1] - p[1]) ** 2 <= by * by;
  return (p) => {
    if (last && close(last, p)) return true;
    if (p[0] < piece.box.minX - by || p[0] > piece.box.maxX + by || p[1] < piece.box.minY - by || p[1] > piece.box.maxY + by) return false;
    const hit = corners.find((c) => close(c, p));
    if (hit) { last = hit; return true; }
    return pieceDistance(piece, p) <= by;
  };
}

/** Ids of the tables with a place from which no way out is near enough. */
export function shutIn(space: SeatingSpace, items: readonly Item[]): readonly string[] {
  const open = walkable(space, items, WAY);
  // Nowhere to walk and no door known: nothing can be said.
  if (open.length === 0 && (space.exits ?? []).length === 0) return [];
  const near = open.map((p) => nearPiece(p, FREE_WALK - 60));
  return items.filter((i) => i.seats.some((s) => !near.some((n) => n([s.x, s.y])))).map((i) => i.id);
}

/** How near a route comes to what guests are served from past touching it, mm: as the rule on routes has it; how closely an outline is looked at. */
const BESIDE = 150, ALONG = 250;

/** Whether a route gets between the tables to each of these fronts. Judged at points of their outlines: never freer than the exact rule. */
export function reached(space: SeatingSpace, items: readonly Item[], fronts: readonly Polygon[]): boolean {
  if (fronts.length === 0) return true;
  const open = walkable(space, items, ROUTE), by = ROUTE / 2 + BESIDE - IN_HAND;
  return fronts.every((front) => edges(front).some(([a, b]) => {
    const n = Math.max(1, Math.ceil(distance(a, b) / ALONG));
    return Array.from({ length: n }, (_, i): Point => [a[0] + ((b[0] - a[0]) * i) / n, a[1] + ((b[1] - a[1]) * i) / n]).some((p) => open.some((o) => pieceDistance(o, p) <= by));
  }));
}
