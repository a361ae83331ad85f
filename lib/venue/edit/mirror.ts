import { distance, edges, middle, nearestOnSegment, roundPoint, type Point, type Segment } from "../../geometry";
import type { Door, Room, Venue } from "../schema";
import { gateOf, ON_WALL, THICKEST_WALL } from "../site";

const TURNED: Readonly<Record<Door["swing"], Door["swing"]>> = { in: "out", out: "in", both: "both", none: "none" };

/**
 * A door between two rooms stands in both. Puts the doors of one room on the walls of the rooms that they lead to, takes away those
 * that lead back to doors that are gone, and leaves alone what faces its door already.
 */
export function withDoorsBothSides(venue: Venue, room: Room, before: Room): Venue {
  const rooms = venue.rooms.map((other) => (other.id === room.id || other.level !== room.level ? other : facing(other, room, before)));
  return { ...venue, rooms };
}

function facing(other: Room, room: Room, before: Room): Room {
  const ours = room.doors.filter((d) => d.leads === other.id), theirs = other.doors.filter((d) => d.leads === room.id);
  const unchanged = ours.length === theirs.length && ours.every((d) => before.doors.some((b) => same(b, d)));
  if (unchanged) return other;
  const left = [...theirs];
  const doors = ours.flatMap((door): Door[] => {
    const jambs = opposite(other, room, door);
    const near = left.map((one, i) => ({ one, i, far: distance(middle(one.from, one.to), middle(door.from, door.to)) })).sort((a, b) => a.far - b.far)[0];
    const was = near && near.far <= 3 * THICKEST_WALL ? near.one : undefined;
    if (near && was) left.splice(near.i, 1);
    if (!jambs) return was ? [was] : [];
    return [{ ...(was ?? { id: freeId(other, `${room.id}-door`), leads: room.id, exit: false, for: door.for, steps: door.steps }), swing: TURNED[door.swing], from: jambs[0], to: jambs[1] }];
  });
  return { ...other, doors: [...other.doors.filter((d) => d.leads !== room.id), ...doors] };
}

const same = (a: Door, b: Door): boolean => a.leads === b.leads && a.swing === b.swing && a.from.join() === b.from.join() && a.to.join() === b.to.join();

/** The jambs of a door on the other room's wall: across the wall from ours. Null where no wall of it is so near. */
function opposite(other: Room, room: Room, door: Door): Segment | null {
  const gate = gateOf(room, door);
  if (!gate) return null;
  const across = (wall: Segment): Segment => [roundPoint(nearestOnSegment(door.from, wall)), roundPoint(nearestOnSegment(door.to, wall))];
  const fits = edges(other.outline).map(across).filter(([a, b]) => Math.abs(distance(a, b) - gate.width) <= 2 * ON_WALL && far(a, door.from) && far(b, door.to));
  return fits.sort((a, b) => distance(a[0], door.from) - distance(b[0], door.from))[0] ?? null;
}
const far = (a: Point, b: Point): boolean => distance(a, b) <= THICKEST_WALL + ON_WALL;

function freeId({ doors }: Room, id: string): string {
  for (let n = 1; ; n += 1) {
    const one = n === 1 ? id : `${id}-${n}`;
    if (!doors.some((d) => d.id === one)) return one;
  }
}

/** The venue without a room: the doors that lead there, the drapes that use it and its place in packages go with it. */
export function withoutRoom(venue: Venue, id: string): Venue {
  return {
    ...venue,
    rooms: venue.rooms.filter((r) => r.id !== id).map((r) => ({ ...r, doors: r.doors.filter((d) => d.leads !== id) })),
    drapes: venue.drapes.filter((d) => d.grows !== id && d.from !== id),
    packages: venue.packages.map((p) => ({ ...p, rooms: p.rooms.filter((r) => r !== id) })),
    store: venue.store === id ? undefined : venue.store,
  };
}
