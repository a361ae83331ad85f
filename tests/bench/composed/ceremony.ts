import type { Brief } from "../../../lib/brief";
import {
  add, area, convexHull, dot, intersect, middle, pointSegmentDistance, regionArea, scale, segmentDistance, sinCos, subtract, union, type Point, type Polygon, type Region, type Segment,
} from "../../../lib/geometry";
import { depthOf, footprintPolygon, widthOf, type Item, type Layout, type Scene } from "../../../lib/layout";
import { blockedFloor, siteOf, type RoomSite, type Venue } from "../../../lib/venue";

/** What an eye that lays ceremonies finds wrong with the chairs of one (common practice, no source). */
export type CeremonyFault = "rows wrapped round a piece" | "couple before a door" | "block to one side" | "more on one side of the aisle";

/** Share of a piece's floor that must lie among the chairs for them to be wrapped round it. */
const AMONG = 0.25;
/** Half of the floor that a couple takes, mm; how far before the first row a door is still behind them; the depth they stand in. */
const BESIDE = 1000, BEHIND = 6000, STAND = 1829;
/** Off the middle of the free floor by so much, mm, a block stands to one side; an axis is met within so much. */
const OFF = 1000, ON_AXIS = 150;
/** Share of the places that have none for their like across the aisle. */
const UNLIKE = 0.3;
/** Chairs of straight rows lie in one row that are as far back to this, mm. */
const ROW = 100;

/** The rows seen from behind: `look` towards the couple, `side` to the right of it; depths along `look`, the aisle's middle along `side`. */
type Rows = { readonly look: Point; readonly side: Point; readonly seats: readonly Item[]; readonly bodies: readonly Polygon[]; readonly front: number; readonly aisle: number };

function rowsOf(scene: Scene): Rows | null {
  const seats = scene.items.filter((i) => i.role === "row-seat" || i.role === "wheelchair-space");
  const chairs = seats.filter((i) => i.role === "row-seat");
  if (chairs.length === 0) return null;
  const sum = chairs.reduce<Point>((s, i) => { const { sin, cos } = sinCos(i.seats[0]?.facing ?? 0); return add(s, [cos, sin]); }, [0, 0]);
  const long = Math.hypot(sum[0], sum[1]) || 1;
  const look: Point = [sum[0] / long, sum[1] / long], side: Point = [-look[1], look[0]];
  const bodies = seats.map(footprintPolygon);
  const front = Math.max(...chairs.map((i) => dot(i.at, look) + depthOf(i.shape) / 2));
  return { look, side, seats, bodies, front, aisle: aisleOf(chairs, side) };
}

/** The middle of the widest gap between chairs that runs through all rows, else of the chairs; along `side`, mm. */
function aisleOf(chairs: readonly Item[], side: Point): number {
  const spans = chairs.map((i) => { const m = dot(i.at, side), w = widthOf(i.shape) / 2; return [m - w, m + w] as const; }).sort((a, b) => a[0] - b[0]);
  const first = spans[0]?.[0] ?? 0;
  let reach = first, best = { width: 600, at: NaN };
  for (const [from, to] of spans) {
    if (from - reach > best.width) best = { width: from - reach, at: (from + reach) / 2 };
    reach = Math.max(reach, to);
  }
  return Number.isNaN(best.at) ? (first + reach) / 2 : best.at;
}

const wallsOf = (room: RoomSite): readonly Segment[] =>
  room.floor.flatMap(({ outer, holes }) => [outer, ...holes].flatMap((ring) => ring.map((a, i): Segment => [a, ring[(i + 1) % ring.length] ?? a])));

/** The wall that the middle of the rows looks at. */
function wallAhead(r: Rows, room: RoomSite): Segment | null {
  const from = add(scale(r.look, r.front), scale(r.side, r.aisle));
  const met = (depth: number): Segment | undefined => wallsOf(room).find((w) => segmentDistance(w, [from, add(from, scale(r.look, depth))]) === 0);
  for (let depth = 0; depth <= BEHIND; depth += 50) { const wall = met(depth); if (wall) return wall; }
  return null;
}

/** A quarter or more of a piece's floor lies within the hull of all chairs: rows go round it, or are broken or shortened by it. Columns are the house's. */
const wrapped = (r: Rows, items: readonly Item[], room: string): boolean => {
  const hull = convexHull(r.bodies.flat());
  return items.some((i) => i.room === room && !r.seats.includes(i) && i.kind !== "dance-floor" && i.kind !== "arch" && i.kind !== "backdrop" && among(footprintPolygon(i), hull));
};
const among = (body: Polygon, hull: Polygon): boolean => regionArea(intersect(union([body]), [hull])) >= AMONG * area(body);

/** A door opens in the wall that the rows look at, within a metre to either side of their middle: all eyes meet whoever comes late. */
function beforeDoor(r: Rows, room: RoomSite): boolean {
  const wall = wallAhead(r, room);
  return wall !== null && room.gates.some((g) => {
    if (pointSegmentDistance(g.at, wall) > 60) return false;
    const [a, b] = [dot(g.from, r.side) - r.aisle, dot(g.to, r.side) - r.aisle];
    return Math.min(a, b) < BESIDE && Math.max(a, b) > -BESIDE;
  });
}

/**
 * All chairs and the couple's floor could move sideways by over a metre to the middle of the free floor between what stands beside
 * them, and stand before neither the room's middle nor the wall's, nor a feature or a window.
 */
function aside(r: Rows, room: RoomSite, items: readonly Item[]): boolean {
  const free = subtract(room.floor, [
    ...blockedFloor(room.room), ...room.gates.map((g) => g.clear), ...room.room.keepClear.map((k) => k.outline),
    ...items.filter((i) => i.room === room.room.id && !r.seats.includes(i) && i.kind !== "dance-floor").map(footprintPolygon),
  ]);
  const corner = (u: number, d: number): Point => add(scale(r.side, r.aisle + u), scale(r.look, r.front + d));
  const shapes: readonly Polygon[] = [convexHull(r.bodies.flat()), [corner(-BESIDE, 50), corner(BESIDE, 50), corner(BESIDE, STAND - 50), corner(-BESIDE, STAND - 50)]];
  const stands = (by: number): boolean => shapes.every((p) => liesIn(p.map((q) => add(q, scale(r.side, by))), free));
  if (!stands(0)) return false;
  const reach = (way: number): number => { let k = 0; while (k < 30_000 && stands(way * (k + 100))) k += 100; return k; };
  const off = (reach(1) - reach(-1)) / 2;
  return Math.abs(off) > OFF && !axesOf(r, room).some(([from, to]) => r.aisle >= from - ON_AXIS && r.aisle <= to + ON_AXIS);
}
const liesIn = (p: Polygon, free: Region): boolean => regionArea(intersect(free, [p])) >= area(p) - 2_000;

/**
 * Where an aisle runs up the middle, three places in ten or more have none for their like on its other side: row by row, those that one
 * side has more than the other.
 */
function uneven(r: Rows): boolean {
  const chairs = r.seats.filter((i) => i.role === "row-seat").map((i) => ({ depth: dot(i.at, r.look), right: Math.sign(dot(i.at, r.side) - r.aisle) })).sort((a, b) => b.depth - a.depth);
  let unlike = 0, more = 0;
  for (const [k, c] of chairs.entries()) {
    const before = chairs[k - 1];
    if (before && before.depth - c.depth > ROW) { unlike += Math.abs(more); more = 0; }
    more += c.right;
  }
  return unlike + Math.abs(more) >= UNLIKE * chairs.length;
}

/** Where the middle of a block may stand for a reason, along `side`, mm: the room's middle, the wall's, anywhere before a feature or a window. */
function axesOf(r: Rows, room: RoomSite): readonly (readonly [number, number])[] {
  const wall = wallAhead(r, room);
  const across = room.outline.map((p) => dot(p, r.side));
  const ahead = [...room.room.walls.filter((w) => w.is === "feature"), ...room.room.windows].filter((w) => wall !== null && pointSegmentDistance(middle(w.from, w.to), wall) <= 60);
  const middles = [(Math.min(...across) + Math.max(...across)) / 2, ...(wall ? [dot(middle(...wall), r.side)] : [])];
  const stretches = ahead.map((w) => [dot(w.from, r.side), dot(w.to, r.side)] as const);
  return [...middles.map((u) => [u, u] as const), ...stretches.map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const)];
}

/** The faults of a day's ceremony in rows, each once; none where there are no rows. */
export function ceremonyFaults(venue: Venue, brief: Brief, layout: Layout): readonly CeremonyFault[] {
  const scene = layout.scenes.find((s) => s.id === "ceremony");
  const r = scene ? rowsOf(scene) : null;
  const room = scene && r?.seats[0] ? siteOf(venue, scene.drapes).rooms.get(r.seats[0].room) : undefined;
  if (!scene || !r || !room) return [];
  return [
    ...(wrapped(r, scene.items, room.room.id) ? ["rows wrapped round a piece" as const] : []),
    ...(beforeDoor(r, room) ? ["couple before a door" as const] : []),
    ...(aside(r, room, scene.items) ? ["block to one side" as const] : []),
    ...(brief.ceremony.seating === "rows" && brief.ceremony.aisle === "centre" && uneven(r) ? ["more on one side of the aisle" as const] : []),
  ];
}
