import { add, turn, type Point, type Polygon } from "../../geometry";
import { depthOf, footprintPolygon, isRound, seatPolygon, widthOf, type Item, type Scene } from "../../layout";
import { levelOf, type Site } from "../../venue";
import { quickMap, walkMap, type FloorMap, type WalkMap } from "./map";
import { TABLE_LINE } from "./out";

/** Width of an accessible route, mm: 2010 ADA Standards 403.5.1 (36 in). */
export const ROUTE = 914;
/** Width at doors that still carries the route, mm: the house's reading of 404.2.3 (32 in), as older doors measure. */
export const ROUTE_DOOR = 800;
/** How near the route must come to a bar, buffet or dance floor past touching it, mm. */
const BESIDE = 150;

/** `polygon`, `within`: the floor that the middle of a route must come so near to. */
export type Unreached = { readonly item: string; readonly seat?: number; readonly at: Point; readonly level: number; readonly polygon: Polygon; readonly within: number };
export type Routes = { readonly map: FloorMap; readonly unreached: readonly Unreached[] };

export type RouteValues = { readonly route: number; readonly routeDoor: number; readonly tableLine: number };
const ROUTES: RouteValues = { route: ROUTE, routeDoor: ROUTE_DOOR, tableLine: TABLE_LINE };

export const routeMap = (site: Site, scene: Pick<Scene, "rooms" | "items">, by: RouteValues = ROUTES): WalkMap => walkMap(site, scene, optionsOf(by));
/** The same drawn quickly, and never freer. */
export const quickRoutes = (site: Site, scene: Pick<Scene, "rooms" | "items">, by: RouteValues = ROUTES): FloorMap => quickMap(site, scene, optionsOf(by));
const optionsOf = (by: RouteValues) => ({ width: by.route, tableLine: by.tableLine, doorWidth: by.routeDoor, walker: "wheels" as const });

/** The front of a piece: its edge that faces down the page at angle 0, as a thin strip; all of it where it has no front. */
export function frontOf(item: Item): Polygon {
  return isRound(item.shape) || (item.kind !== "bar" && item.kind !== "dj") ? footprintPolygon(item) : beforeFront(item, [-1, 0]);
}

/** A strip along the front of an oblong piece, between two distances before its edge, mm (under 0 within the piece); at either end so much shorter. */
export function beforeFront(item: Item, [from, to]: readonly [number, number], shorter = 0): Polygon {
  const w = widthOf(item.shape) / 2 - shorter, d = depthOf(item.shape) / 2;
  return ([[-w, d + from], [w, d + from], [w, d + to], [-w, d + to]] as const).map((c) => add(item.at, turn(c, item.angle)));
}

/**
 * Which wheelchair places, and at drinks, meal and dancing which bars, buffets and dance floors, no route of 914 mm (800 mm
 * at doors) reaches from any way out. A wheelchair place is reached where the middle of the route comes within 457 mm of
 * its clear floor; a piece where the route passes within 150 mm of its front or edge.
 */
export function routes(site: Site, scene: Pick<Scene, "id" | "rooms" | "items">, by: RouteValues = ROUTES, map: FloorMap = routeMap(site, scene, by)): Routes {
  const targets = scene.items.flatMap((item): readonly { item: Item; seat?: number; at: Point; polygon: Polygon; within: number }[] => [
    ...item.seats.flatMap((s, seat) => s.place === "wheelchair"
      ? [{ item, seat, at: [s.x, s.y] as const, polygon: seatPolygon(s), within: by.route / 2 }] : []),
    ...(scene.id !== "ceremony" && isServed(item) ? [{ item, at: item.at, polygon: frontOf(item), within: by.route / 2 + BESIDE }] : []),
  ]);
  const unreached = targets.filter(({ item, polygon, within }) => {
    const level = levelOf(site, item.room);
    return !map.reaches(polygon, within, level).some((p) => p.exits.length > 0);
  }).map(({ item, seat, at, polygon, within }) => ({ item: item.id, ...(seat === undefined ? {} : { seat }), at, level: levelOf(site, item.room), polygon, within }));
  return { map, unreached };
}

const isServed = (i: Item): boolean =>
  i.kind === "bar" || i.kind === "buffet" || i.kind === "dance-floor" || (i.kind === "table" && i.role === "buffet");
