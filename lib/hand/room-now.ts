import { contains, type Point } from "../geometry";
import { siteFor } from "../rules/context";
import type { Room, Site, Venue } from "../venue";

const rooms = new WeakMap<Site, Map<string, readonly Room[]>>();

/**
 * A room as the drapes of a part of the day leave it: its outline goes round the floor about a point, with what the next room lends it and
 * without what it lends. A drape that is drawn stands like a wall. The room itself where no drape concerns it.
 */
export function roomNow(venue: Venue, drapes: readonly string[], room: Room, at: Point): Room {
  if (!venue.drapes.some((d) => drapes.includes(d.id) && (d.grows === room.id || d.from === room.id))) return room;
  const site = siteFor(venue, drapes), of = rooms.get(site) ?? new Map<string, readonly Room[]>();
  rooms.set(site, of);
  const floors = of.get(room.id) ?? (site.rooms.get(room.id)?.floor ?? []).map((p): Room => ({ ...room, outline: p.outer.map(([x, y]) => [x, y]) }));
  of.set(room.id, floors);
  return floors.find((f) => contains(f.outline, at)) ?? room;
}
