import { add, edges, rectangle, turn, type Point, type Polygon, type Region, type Segment } from "../../geometry";
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

export function roomFloor(site: Site, id: string, sceneRooms: readonly string[]): RoomFloor | null {
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

/** Whether a body may stand: in the room, off what is blocked, out of door floors and of what others need. */
export function canStand(f: RoomFloor, body: Polygon, options: { readonly use?: Polygon | null; readonly doors?: boolean; readonly gap?: number; readonly slackUse?: boolean } = {}): boolean {
  const { use = null, doors = true, gap = 0 } = options;
  if (!within(body, f.floor)) return false;
  if (f.blocked.some((b) => meets(body, b))) return false;
  if (doors && f.doorFloor.some((d) => meets(body, d))) return false;
  for (const p of f.placed) {
    if (meets(body, p.body, gap)) return false;
    // A dance floor may lie in the floor that music or a bar needs before it: people stand on both.
    if (p.use && doors && meets(body, p.use)) return false;
    if (use && !p.walkable && meets(use, p.body)) return false;
    for (const s of p.item.seats) if (meets(body, seatPolygon(s))) return false;
  }
  if (use && !options.slackUse && (!within(use, f.floor) || f.blocked.some((b) => meets(use, b)))) return false;
  return true;
}

export const withPlaced = (f: RoomFloor, ...more: readonly Placed[]): RoomFloor => ({ ...f, placed: [...f.placed, ...more] });
