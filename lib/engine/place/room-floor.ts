import { add, boxesNear, boxOf, edges, rectangle, turn, type Box, type Point, type Polygon, type Region, type Segment } from "../../geometry";
import { footprintPolygon, seatPolygon, type Item } from "../../layout";
import { blockedFloor, gatesToKeep, axisOf, type Gate, type Room, type RoomSite, type Site } from "../../venue";
import { meets, within } from "./overlap";

/** Something that stands, with the floor it needs about it to be used. */
export type Placed = { readonly item: Item; readonly body: Polygon; readonly use: Polygon | null; readonly walkable: boolean };

/** One room of one scene, as far as it is furnished. */
export type RoomFloor = {
  readonly id: string;
  readonly room: Room;
  readonly site: RoomSite;
  readonly floor: Region;
  readonly walls: readonly Segment[];
  readonly axis: number;
  readonly gates: readonly Gate[];
  readonly blocked: readonly Polygon[];
  readonly doorFloor: readonly Polygon[];
  readonly placed: readonly Placed[];
};

const known = new WeakMap<Site, Map<string, RoomFloor>>();

/** A room's bare floor; remembered by site, so that what is worked out on it is kept as well. */
export function roomFloor(site: Site, id: string, sceneRooms: readonly string[]): RoomFloor | null {
  const key = JSON.stringify([id, ...sceneRooms]), floors = known.get(site) ?? new Map<string, RoomFloor>();
  known.set(site, floors);
  const found = floors.get(key) ?? bareFloor(site, id, sceneRooms);
  if (found) floors.set(key, found);
  return found;
}

function bareFloor(site: Site, id: string, sceneRooms: readonly string[]): RoomFloor | null {
  const room = site.rooms.get(id);
  if (!room) return null;
  return {
    id, room: room.room, site: room, floor: room.floor,
    walls: room.floor.flatMap((p) => edges(p.outer)),
    axis: axisOf(room.outline),
    gates: room.gates,
    blocked: blockedFloor(room.room),
    doorFloor: gatesToKeep(site, id, sceneRooms).map((g) => g.clear),
    placed: [],
  };
}

/** The floor that a piece needs for use: `front` mm before it, `back` behind, `side` at either end. */
export type Around = { readonly front: number; readonly back: number; readonly side: number };

export function useFloor(at: Point, size: { readonly width: number; readonly depth: number }, angle: number, around: Around): Polygon | null {
  if (around.front + around.back + around.side === 0) return null;
  const w = size.width + 2 * around.side, d = size.depth + around.front + around.back;
  const shift = (around.front - around.back) / 2;
  return rectangle(add(at, turn([0, shift], angle)), w, d, angle);
}

export const placedOf = (item: Item, use: Polygon | null = null): Placed => ({
  item, body: footprintPolygon(item), use, walkable: item.kind === "dance-floor",
});

export type StandOptions = { readonly use?: Polygon | null; readonly doors?: boolean; readonly gap?: number; readonly slackUse?: boolean };

/** Whether a body may stand: in the room, off what is blocked, out of door floors and of what others need. */
export const canStand = (f: RoomFloor, body: Polygon, options: StandOptions = {}): boolean => fitsRoom(f, body, options) && clearOfPlaced(f, body, options);

/** Whether it may stand in the room were it empty. */
export function fitsRoom(f: RoomFloor, body: Polygon, { use = null, doors = true, slackUse }: StandOptions): boolean {
  if (!within(body, f.floor)) return false;
  if (f.blocked.some((b) => meets(body, b))) return false;
  if (doors && f.doorFloor.some((d) => meets(body, d))) return false;
  return !use || slackUse === true || (within(use, f.floor) && !f.blocked.some((b) => meets(use, b)));
}

/** Whether it keeps off what stands in the room, and each off the floor that the other needs. */
export function clearOfPlaced(f: RoomFloor, body: Polygon, { use = null, doors = true, gap = 0 }: StandOptions): boolean {
  const box = boxOf(body);
  for (const p of f.placed) {
    if (meets(body, p.body, gap)) return false;
    // A dance floor may lie in the floor that music or a bar needs before it: people stand on both.
    if (p.use && doors && meets(body, p.use)) return false;
    if (use && !p.walkable && meets(use, p.body)) return false;
    if (seatsOf(p.item).some((s) => boxesNear(s.box, box, 0) && meets(body, s.floor))) return false;
  }
  return true;
}

type SeatFloor = { readonly floor: Polygon; readonly box: Box };
const seatFloors = new WeakMap<Item, readonly SeatFloor[]>();
/** The floor that the seats of an item take, worked out once. */
function seatsOf(item: Item): readonly SeatFloor[] {
  const known = seatFloors.get(item) ?? item.seats.map((s) => { const floor = seatPolygon(s); return { floor, box: boxOf(floor) }; });
  seatFloors.set(item, known);
  return known;
}

export const withPlaced = (f: RoomFloor, ...more: readonly Placed[]): RoomFloor => ({ ...f, placed: [...f.placed, ...more] });
