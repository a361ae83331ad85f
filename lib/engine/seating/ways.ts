import { aroundCircle, minus, offset, pieceContains, pieceDistance, rectangle, regionArea, subtract, union, type Piece, type Point, type Polygon, type Region } from "../../geometry";
import { isRound, type Item } from "../../layout";
import { LINE_OUT, WAY } from "./hall";
import type { SeatingSpace } from "./types";

/** Part of the way from a place at a table that has no least width, mm: IBC 2018 1029.13.1.1, exception (6 ft). */
const FREE_WALK = 1829;
/** Width of an accessible route, mm: 2010 ADA Standards 403.5.1 (36 in). */
export const ROUTE = 914;
/** Kept in hand against the exact check of the ways out, mm. */
const IN_HAND = 2;

const grownTable = (i: Item, by: number): Polygon[] => isRound(i.shape)
  ? [aroundCircle(i.at, i.shape.diameter / 2 + by, 48)]
  : [rectangle(i.at, i.shape.width + 2 * by, i.shape.depth, i.angle), rectangle(i.at, i.shape.width, i.shape.depth + 2 * by, i.angle),
    ...([[1, 1], [1, -1], [-1, 1], [-1, -1]] as const).map(([a, b]) => aroundCircle(cornerOf(i, a, b), by, 24))];

function cornerOf(i: Item, a: number, b: number): Point {
  if (isRound(i.shape)) return i.at;
  const c = rectangle(i.at, i.shape.width, i.shape.depth, i.angle);
  return (c[a < 0 ? (b < 0 ? 0 : 3) : b < 0 ? 1 : 2] ?? i.at);
}

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
  const grown = union(tables.flatMap((i) => grownTable(i, LINE_OUT + width / 2 + IN_HAND)));
  const free = minus(bareWalk(space, width), grown);
  const exits = space.exits ?? [];
  const open = free.filter((p) => exits.some((e) => pieceContains(p, e) || pieceDistance(p, e) < width));
  if (open.length > 0) return open;
  if (exits.length > 0) return [];
  // No door is known: the larger pieces of floor are taken to lead out.
  const most = Math.max(0, ...free.map((p) => regionArea([p])));
  return free.filter((p) => regionArea([p]) > most * 0.3);
}

/** Ids of the tables with a place from which no way out is near enough. */
export function shutIn(space: SeatingSpace, items: readonly Item[]): readonly string[] {
  const open = walkable(space, items, WAY);
  // Nowhere to walk and no door known: nothing can be said.
  if (open.length === 0 && (space.exits ?? []).length === 0) return [];
  return items.filter((i) => i.seats.some((s) => !open.some((p) => pieceDistance(p, [s.x, s.y]) <= FREE_WALK - 60))).map((i) => i.id);
}
