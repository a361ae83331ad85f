import { contains, middle, type Point } from "../../geometry";
import { blockedFloor, gatesToKeep, roomsFrom, socketAt, type Drape, type Gate, type Package, type Room, type Site, type Venue } from "../../venue";
import type { Brief } from "../../brief";
import { roomFloor, type RoomFloor } from "../place";

/** Which drapes to try drawn, each list one way: none first, unless the brief asks for one. A drape's two rooms must both be hired. */
export function drapeChoices(venue: Venue, pack: Package, brief: Pick<Brief, "drape">): readonly (readonly string[])[] {
  const hired = brief.drape === "no" ? [] : venue.drapes.filter((d) => pack.rooms.includes(d.grows) && pack.rooms.includes(d.from));
  return [...(brief.drape === "yes" ? [] : [[]]), ...hired.map((d) => [d.id])];
}

const within = (d: Drape, p: Point): boolean => contains(d.area, p);
const centre = (list: readonly Point[]): Point => [list.reduce((s, p) => s + p[0], 0) / list.length, list.reduce((s, p) => s + p[1], 0) / list.length];

/** A room as the drapes leave it: what stands, is built or opens in a lent strip belongs to the room that gains the strip. */
export function drapedRoom(site: Site, id: string): Room | null {
  const own = site.rooms.get(id)?.room;
  if (!own) return null;
  const gained = site.drapes.filter((d) => d.grows === id), lent = site.drapes.filter((d) => d.from === id);
  if (gained.length + lent.length === 0) return own;
  const mix = <T>(pick: (r: Room) => readonly T[], spot: (x: T) => Point): readonly T[] => [
    ...pick(own).filter((x) => !lent.some((d) => within(d, spot(x)))),
    ...gained.flatMap((d) => { const from = site.rooms.get(d.from)?.room; return from ? pick(from).filter((x) => within(d, spot(x))) : []; }),
  ];
  return {
    ...own,
    obstacles: mix((r) => r.obstacles, (o) => centre(o.outline)), keepClear: mix((r) => r.keepClear, (k) => centre(k.outline)),
    windows: mix((r) => r.windows, (w) => middle(w.from, w.to)), walls: mix((r) => r.walls, (w) => middle(w.from, w.to)),
    sockets: mix((r) => r.sockets, socketAt), standing: mix((r) => r.standing, (s) => s.at),
  };
}

/** The drape that takes the floor inside a gate from its room. */
const lentBy = (site: Site, g: Gate): Drape | undefined =>
  site.drapes.find((d) => d.from === g.room && (within(d, g.at) || within(d, [g.at[0] + g.inward[0] * 50, g.at[1] + g.inward[1] * 50])));

/** The room whose floor lies behind a gate, with the drapes as they are; null where it leads out of the venue's rooms. */
function beyond(site: Site, g: Gate): string | null {
  if (g.leadsTo === null) return null;
  const passage = site.passages.find((p) => p.doors.some((id, i) => id === g.door.id && p.rooms[i] === g.room));
  const k = passage?.rooms[0] === g.room && passage.doors[0] === g.door.id ? 1 : 0;
  const twin = passage ? site.rooms.get(passage.rooms[k])?.gates.find((o) => o.door.id === passage.doors[k]) : undefined;
  return twin ? lentBy(site, twin)?.grows ?? twin.room : site.rooms.has(g.leadsTo) ? g.leadsTo : null;
}

/** The doors that lead out of a room with the drapes as they are. */
export function openGates(site: Site, id: string): readonly Gate[] {
  const own = (site.rooms.get(id)?.gates ?? []).filter((g) => !lentBy(site, g) && beyond(site, g) !== id);
  const gained = site.drapes.filter((d) => d.grows === id).flatMap((d) => (site.rooms.get(d.from)?.gates ?? []).filter((g) => lentBy(site, g) === d && beyond(site, g) !== id));
  return [...own, ...gained];
}

/** The bare floor of a room as the drapes leave it, with its doors, what is built in, and the floor that doors need. */
export function drapedFloor(site: Site, id: string): RoomFloor | null {
  const bare = roomFloor(site, id, []);
  const room = drapedRoom(site, id);
  if (!bare || !room || site.drapes.length === 0) return bare;
  // An opening onto its own strip is floor; a door there still swings.
  const strips = site.drapes.filter((d) => d.grows === id).map((d) => d.from);
  const kept = [
    ...gatesToKeep(site, id, strips).filter((g) => !lentBy(site, g)),
    ...strips.flatMap((from) => gatesToKeep(site, from, [id]).filter((g) => lentBy(site, g)?.grows === id)),
  ];
  return { ...bare, room, gates: openGates(site, id), blocked: blockedFloor(room), doorFloor: kept.map((g) => g.clear) };
}

/** Rooms that one comes to from others through such doors alone, with the drapes as they are. */
function reached(site: Site, from: Iterable<string>, through: (g: Gate) => boolean): ReadonlySet<string> {
  return roomsFrom(site, from, (at) => openGates(site, at).filter(through).map((g) => beyond(site, g)));
}

/** A door that guests come through, wheels among them. */
const forEveryone = (g: Gate): boolean => g.door.for.includes("guests") && g.width >= 800 && !(g.door.steps && g.door.steps > 0);

/** Rooms that one can walk between by doors and openings, from one room on, with the drapes as they are. */
export const joinedTo = (site: Site, id: string): ReadonlySet<string> => reached(site, [id], () => true);

/** Whether guests, wheels among them, can come into a room at all, with the drapes as they are. */
export const canEnter = (site: Site, id: string): boolean => openGates(site, id).some(forEveryone);

/** Rooms that wheels come to without a step: from a way out without one, on through doors for guests of 800 mm. */
export function withoutSteps(site: Site): ReadonlySet<string> {
  const entered = [...site.rooms.keys()].filter((id) => openGates(site, id).some((g) => forEveryone(g) && g.door.exit && g.leadsTo === null));
  return reached(site, entered, forEveryone);
}
