import { segmentDistance, type Point, type Segment } from "../../geometry";
import type { Item, Scene } from "../../layout";
import { levelOf, type Site } from "../../venue";
import { answersOn } from "./asked";
import { quickMap, walkMap, type FloorMap, type FloorPiece, type WalkMap } from "./map";
import type { Ground } from "./ground";
import { eachLine, linesOf, type Lines } from "./lines";
import { bodiesOf, inTheWay, isRowChair, isWheelchairSpace, piecesOnFloor } from "./solids";

/** Width of a path from a place, mm: IBC 2018 1029.13.1.1 (12 in). */
export const PATH = 305;
/** The line of seated chairs out from a table's edge, mm: IBC 2018 1029.13.1 (19 in). */
export const TABLE_LINE = 483;
/** The first part of the way from a place at a table that has no least width, mm: IBC 2018 1029.13.1.1, exception (6 ft). */
export const FREE_WALK = 1829;
/** People from which a place needs two ways out: IBC 2018 Table 1006.2.1. */
export const TWO_WAYS_FROM = 50;

export type Unserved = { readonly item: string; readonly seat: number; readonly at: Point; readonly exits: readonly string[] };
export type WaysOut = {
  readonly map: FloorMap;
  readonly needed: 1 | 2;
  readonly unserved: readonly Unserved[];
  /** Ways out reached from a place, as ids "room/door". */
  readonly exitsOf: (item: Item, seat: number) => readonly string[];
};

const countSeats = (items: readonly Item[]): number => items.reduce((n, i) => n + i.seats.length, 0);

export type WaysValues = { readonly path: number; readonly tableLine: number; readonly freeWalk: number };
const WAYS: WaysValues = { path: PATH, tableLine: TABLE_LINE, freeWalk: FREE_WALK };

/** The free floor for ways out: 305 mm between the lines of the tables. */
export const waysMap = (site: Site, scene: Pick<Scene, "rooms" | "items">, by: WaysValues = WAYS): WalkMap => walkMap(site, scene, optionsOf(by));
/** The same drawn quickly, and never freer. */
export const quickWays = (site: Site, scene: Pick<Scene, "rooms" | "items">, by: WaysValues = WAYS): FloorMap => quickMap(site, scene, optionsOf(by));
const optionsOf = (by: WaysValues) => ({ width: by.path, tableLine: by.tableLine });

/**
 * From each place: which ways out a path of 305 mm reaches. A place at a table may first walk 1829 mm of any width, straight,
 * past no piece and through no wall; a place in a row must stand beside the path. `people` decides whether one way out is
 * enough (fewer than 50); the number of places when left out.
 */
export function waysOut(site: Site, scene: Pick<Scene, "rooms" | "items">, people?: number, by: WaysValues = WAYS, map: FloorMap = waysMap(site, scene, by)): WaysOut {
  const items = piecesOnFloor(site, scene);
  const meets = wayFor(items);
  const walls = map.grounds.map((g) => ({ level: g.level, lines: wallsOf(g) }));
  const needed = (people ?? countSeats(scene.items)) < TWO_WAYS_FROM ? 1 : 2;
  const exitsOf = (item: Item, seat: number): readonly string[] => {
    const s = item.seats[seat];
    if (!s) return [];
    const level = levelOf(site, item.room);
    return exitsFrom({ map, meets, walls: walls.find((w) => w.level === level)?.lines ?? [], level, item, at: [s.x, s.y], enough: needed, by });
  };
  const known = asked(map, `${needed} ${by.freeWalk} ${by.path}`);
  const soon = map.quick ? new Set(waysOut(site, scene, people, by, map.quick()).unserved.map((u) => u.item)) : null;
  const unserved = scene.items.flatMap((item): readonly Unserved[] => (item.seats.length === 0 || soon?.has(item.id) === false ? NONE
    : known(item, { level: levelOf(site, item.room), reach: reachOf(item, by) }, () => item.seats.flatMap((s, seat): readonly Unserved[] => {
      const exits = exitsOf(item, seat);
      return exits.length < needed ? [{ item: item.id, seat, at: [s.x, s.y], exits }] : NONE;
    }))));
  return { map, needed, unserved, exitsOf };
}

const NONE: readonly Unserved[] = [];
const asked = answersOn<Unserved>();

type Search = {
  readonly map: FloorMap; readonly meets: ReturnType<typeof inTheWay>; readonly walls: readonly Lines[]; readonly level: number;
  readonly item: Item; readonly at: Point; readonly enough: number; readonly by: WaysValues;
};

function exitsFrom(s: Search): readonly string[] {
  const within = reachOf(s.item, s.by);
  const exits = new Set<string>();
  for (const piece of s.map.pieces) {
    if (piece.level !== s.level || piece.exits.every((e) => exits.has(e))) continue;
    if (walkable(s, piece, within)) piece.exits.forEach((e) => exits.add(e));
    if (exits.size >= s.enough) break;
  }
  return [...exits].sort();
}

const inWays = new WeakMap<readonly Item[], ReturnType<typeof inTheWay>>();
function wayFor(items: readonly Item[]): ReturnType<typeof inTheWay> {
  const known = inWays.get(items) ?? inTheWay(bodiesOf(items));
  inWays.set(items, known);
  return known;
}

const wallLines = new WeakMap<Ground, readonly Lines[]>();
function wallsOf(g: Ground): readonly Lines[] {
  const known = wallLines.get(g) ?? g.floor.map(linesOf);
  wallLines.set(g, known);
  return known;
}

/** True when a straight walk meets a wall. */
function throughWall(walls: readonly Lines[], walk: Segment): boolean {
  const [[ax, ay], [bx, by]] = walk;
  const box = { minX: Math.min(ax, bx), maxX: Math.max(ax, bx), minY: Math.min(ay, by), maxY: Math.max(ay, by) };
  return walls.some((w) => eachLine(w, box, (a, b) => segmentDistance([a, b], walk) === 0));
}

/** Whether one may walk straight from a place to a point: past no piece but its own and through no wall. */
export function straightWalk(site: Site, scene: Pick<Scene, "rooms" | "items">, map: FloorMap): (item: Item, from: Point, to: Point) => boolean {
  const meets = wayFor(piecesOnFloor(site, scene)), walls = new Map(map.grounds.map((g) => [g.level, wallsOf(g)]));
  return (item, from, to) => !meets([from, to], isRowChair(item) || isWheelchairSpace(item) ? item : null) &&
    !throughWall(walls.get(levelOf(site, item.room)) ?? [], [from, to]);
}

/** How far the centre of the path may be from the middle of a place, mm. */
function reachOf(item: Item, by: WaysValues): number {
  if (!isRowChair(item) && !isWheelchairSpace(item)) return by.freeWalk;
  const half = "diameter" in item.shape ? item.shape.diameter / 2 : Math.max(item.shape.width, item.shape.depth) / 2;
  return half + by.path / 2 + 50;
}

/** Search goes out in rings, as most places stand close to the free floor. */
const RINGS = [500, 1000] as const;

function walkable(s: Search, piece: FloorPiece, within: number): boolean {
  const { box } = piece.floor;
  if (s.at[0] < box.minX - within || s.at[0] > box.maxX + within || s.at[1] < box.minY - within || s.at[1] > box.maxY + within) return false;
  const own = isRowChair(s.item) || isWheelchairSpace(s.item) ? s.item : null;
  if (piece.floor.has(s.at)) return true;
  const open = (to: Point): boolean => !s.meets([s.at, to], own) && !throughWall(s.walls, [s.at, to]);
  return RINGS.some((r) => r < within && piece.floor.some(s.at, r, open)) || piece.floor.some(s.at, within, open);
}
