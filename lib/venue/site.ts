import {
  add, area, clockwise, distance, edges, inwardNormal, middle, pointSegmentDistance, regionArea, scale, sub,
  subtract, union, unit, type Point, type Polygon, type Region, type Segment,
} from "../geometry";
import type { Door, Drape, Room, Venue } from "./schema";

/** How far off a wall line a jamb may stand and still be on it, mm. */
export const ON_WALL = 2;
/** Thickest wall that two doors of neighbouring rooms may face each other across, mm (contract: up to 800). */
export const THICKEST_WALL = 800;
/** Least depth of the clear floor at any door, mm (contract). */
export const DOOR_CLEAR = 900;

/** A door as the rooms see it. Jambs run so that the room lies to the right of from -> to. */
export type Gate = {
  readonly door: Door;
  readonly room: string;
  readonly from: Point;
  readonly to: Point;
  readonly at: Point;
  /** Unit vector into the room. */
  readonly inward: Point;
  readonly width: number;
  /** Depth of the leaf: half the width where two leaves must share it (over 1200 mm). */
  readonly leaf: number;
  /** The floor inside that must stay clear. */
  readonly clear: Polygon;
  /** The room this door leads to, when the venue has it. */
  readonly leadsTo: string | null;
};

/** The strip of floor between the doors of two rooms. */
export type Passage = {
  readonly rooms: readonly [string, string];
  readonly doors: readonly [string, string];
  readonly polygon: Polygon;
  readonly width: number;
};

export type RoomSite = {
  readonly room: Room;
  /** The outline as the venue gives it, clockwise on the page. */
  readonly outline: Polygon;
  /** Floor to stand things on with the drapes as they are: the outline, plus what is gained, less what is lent. */
  readonly floor: Region;
  readonly gates: readonly Gate[];
  readonly area: number;
};

export type Site = {
  readonly venue: Venue;
  readonly drapes: readonly Drape[];
  readonly rooms: ReadonlyMap<string, RoomSite>;
  readonly passages: readonly Passage[];
};

/** Depth of the clear floor inside a door: its leaf where it swings in or is a way out, and never under 900 mm. */
export function clearDepth(door: Door, width: number): number {
  const leaf = width > 1200 ? width / 2 : width;
  const deep = door.exit || door.swing === "in" || door.swing === "both";
  return deep ? Math.max(leaf, DOOR_CLEAR) : DOOR_CLEAR;
}

/** The outline edge that both jambs lie on, or null. */
export function wallOf(outline: Polygon, from: Point, to: Point): Segment | null {
  return edges(outline).find((e) => pointSegmentDistance(from, e) <= ON_WALL && pointSegmentDistance(to, e) <= ON_WALL) ?? null;
}

export function gateOf(room: Room, door: Door): Gate | null {
  const wall = wallOf(clockwise(room.outline), door.from, door.to);
  if (!wall) return null;
  const inward = inwardNormal(wall);
  const along = unit(sub(wall[1], wall[0]));
  const forward = (door.to[0] - door.from[0]) * along[0] + (door.to[1] - door.from[1]) * along[1] >= 0;
  const [from, to] = forward ? [door.from, door.to] : [door.to, door.from];
  const width = distance(from, to);
  const depth = clearDepth(door, width);
  const deep = scale(inward, depth);
  return {
    door, room: room.id, from, to, at: middle(from, to), inward, width, leaf: width > 1200 ? width / 2 : width,
    clear: [from, to, add(to, deep), add(from, deep)],
    leadsTo: ["outside", "back-of-house", "toilets"].includes(door.leads) ? null : door.leads,
  };
}

function passagesOf(gates: readonly Gate[]): readonly Passage[] {
  const out: Passage[] = [];
  for (let i = 0; i < gates.length; i++) for (let j = i + 1; j < gates.length; j++) {
    const a = gates[i] as Gate, b = gates[j] as Gate;
    if (a.leadsTo !== b.room || b.leadsTo !== a.room) continue;
    // Facing each other: opposite normals, within a wall of each other, jambs side by side.
    if (a.inward[0] * b.inward[0] + a.inward[1] * b.inward[1] > -0.9) continue;
    const off = sub(b.at, a.at);
    const across = Math.abs(off[0] * a.inward[0] + off[1] * a.inward[1]);
    const beside = Math.abs(off[0] * a.inward[1] - off[1] * a.inward[0]);
    if (across > THICKEST_WALL + ON_WALL || beside > (a.width + b.width) / 2) continue;
    out.push({
      rooms: [a.room, b.room], doors: [a.door.id, b.door.id],
      polygon: [a.from, a.to, b.from, b.to], width: Math.min(a.width, b.width),
    });
  }
  return out;
}

/** What of a venue the rules and the engine stand on, with the given drapes drawn. Unknown drape ids are left out. */
export function siteOf(venue: Venue, drapeIds: readonly string[] = []): Site {
  const drapes = venue.drapes.filter((d) => drapeIds.includes(d.id));
  const all = venue.rooms.map((room) => ({
    room, outline: clockwise(room.outline),
    gates: room.doors.map((d) => gateOf(room, d)).filter((g): g is Gate => g !== null),
  }));
  const passages = passagesOf(all.flatMap((r) => r.gates));
  const rooms = new Map<string, RoomSite>();
  for (const r of all) {
    const gained = drapes.filter((d) => d.grows === r.room.id);
    const lent = drapes.filter((d) => d.from === r.room.id);
    const joins = passages.filter((p) => gained.some((d) => p.rooms.includes(d.from)) && p.rooms.includes(r.room.id)).map((p) => p.polygon);
    let floor = union([r.outline, ...gained.map((d) => d.area), ...joins]);
    if (lent.length > 0) floor = subtract(floor, lent.map((d) => d.area));
    rooms.set(r.room.id, { ...r, floor, area: regionArea(floor) });
  }
  return { venue, drapes, rooms, passages };
}

/** The level that a room lies on; 0 for one that is not there. */
export const levelOf = (site: Site, room: string): number => site.rooms.get(room)?.room.level ?? 0;

/** Rooms that one comes to from others, where `next` names those that lead on from a room; the ones begun with among them. */
export function roomsFrom(site: Site, from: Iterable<string>, next: (room: string) => Iterable<string | null>): ReadonlySet<string> {
  const seen = new Set(from);
  // A set is gone through to the end of what is added meanwhile.
  for (const at of seen) for (const to of next(at)) if (to !== null && site.rooms.has(to)) seen.add(to);
  return seen;
}

/** Floor that nothing may stand on in a room: obstacles and keep-clear zones (doors apart, which depend on the scene). */
export const blockedFloor = (room: Room): readonly Polygon[] => [
  ...room.obstacles.map((o) => o.outline), ...room.keepClear.map((k) => k.outline),
];

/** The doors of a room whose floor must be clear in a scene: an opening between two rooms of the scene needs none. */
export const gatesToKeep = (site: Site, roomId: string, sceneRooms: readonly string[]): readonly Gate[] =>
  (site.rooms.get(roomId)?.gates ?? []).filter(
    (g) => !(g.door.swing === "none" && g.leadsTo !== null && sceneRooms.includes(g.leadsTo)),
  );

/** The length that decides the loudest axis of a room: its longest wall's direction, degrees in [0, 90). */
export function axisOf(outline: Polygon): number {
  const weight = new Map<number, number>();
  for (const [a, b] of edges(outline)) {
    const d = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
    const key = Math.round((((d % 90) + 90) % 90) * 100) / 100 % 90;
    weight.set(key, (weight.get(key) ?? 0) + distance(a, b));
  }
  return [...weight].sort((x, y) => y[1] - x[1] || x[0] - y[0])[0]?.[0] ?? 0;
}

export const roomArea = (room: Room): number => area(room.outline);

/** Where a socket is. (A list has a method `at` of its own: "at" in socket tells nothing.) */
export const socketAt = (socket: Room["sockets"][number]): Point => ("length" in socket ? socket : socket.at);
