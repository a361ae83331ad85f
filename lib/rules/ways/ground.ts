import {
  add, boxOf, boxesNear, distance, intersect, minus, offset, scale, subtract, sub, union, unit, unite, type Polygon, type Region,
} from "../../geometry";
import { levelOf, type Gate, type Passage, type RoomSite, type Site } from "../../venue";
import { grownPolygons } from "./grow";

/** Floors are drawn in by this much, mm, so that rooms that share a wall line stay two rooms. */
const WALL = 0.05;
/** How far a doorway's strip reaches into the floors on either side, mm. */
const LAP = 1;
/** Depth outside an exit that a walker needs to have passed it, mm. */
const OUTSIDE = 520;

/** A way out: a door with `exit`, or the pair of doors of one passage. */
export type Exit = { readonly id: string; readonly gate: Gate; readonly level: number };

/** Which doors a walk may use. */
export type Walker = "anyone" | "wheels";

export type Ground = {
  readonly level: number;
  /** Where the centre of a disc of the asked width may be with nothing standing on the floor. */
  readonly eroded: Region;
  /** The same for the narrower width that doors may have, only near doors; empty where no door needs it. */
  readonly nearDoors: Region;
  /** The floor itself: rooms and doorways, walls left out. */
  readonly floor: Region;
};

const pushed = (gate: Gate, by: number): Polygon => [add(gate.from, scale(gate.inward, by)), add(gate.to, scale(gate.inward, by))];

const doorway = (site: Site, p: Passage, lap: number): Polygon | null => {
  const [a, b] = p.doors.map((id, i) => site.rooms.get(p.rooms[i] ?? "")?.gates.find((g) => g.door.id === id));
  if (!a || !b) return null;
  return [...pushed(a, lap), ...pushed(b, lap)];
};

const forWheels = (gate: Gate): boolean => (gate.door.steps ?? 0) === 0 && gate.door.for.includes("guests");
const gateOfDoor = (site: Site, room: string, door: string): Gate | undefined =>
  site.rooms.get(room)?.gates.find((g) => g.door.id === door);

export function passagesFor(site: Site, walker: Walker): readonly Passage[] {
  return site.passages.filter((p) => levelOf(site, p.rooms[0]) === levelOf(site, p.rooms[1]) &&
    (walker === "anyone" || p.doors.every((d, i) => { const g = gateOfDoor(site, p.rooms[i] ?? "", d); return g !== undefined && forWheels(g); })));
}

/** Pairs of doors on different levels that lead to each other's rooms: a stair or a lift between. */
export function levelLinks(site: Site, walker: Walker): readonly (readonly [Gate, Gate])[] {
  const gates = [...site.rooms.values()].flatMap((r) => r.gates).filter((g) => walker === "anyone" || forWheels(g));
  const out: (readonly [Gate, Gate])[] = [];
  gates.forEach((a, i) => gates.slice(i + 1).forEach((b) => {
    if (a.leadsTo === b.room && b.leadsTo === a.room && levelOf(site, a.room) !== levelOf(site, b.room)) out.push([a, b]);
  }));
  return out;
}

/** All ways out of the venue; the two doors of one passage are one way out. */
export function exitsOf(site: Site, walker: Walker): readonly Exit[] {
  const seen = new Map<string, Exit>();
  for (const { gates, room } of site.rooms.values()) for (const gate of gates) {
    if (!gate.door.exit || (walker === "wheels" && (gate.door.steps ?? 0) > 0)) continue;
    const pair = site.passages.find((p) => p.doors.some((d, i) => d === gate.door.id && p.rooms[i] === gate.room));
    const id = pair ? `${pair.rooms[0]}/${pair.doors[0]}` : `${gate.room}/${gate.door.id}`;
    if (!seen.has(id)) seen.set(id, { id, gate, level: room.level });
  }
  return [...seen.values()];
}

/** The doors by which people walk out of a level: its ways out, and the stairs and lifts that lead from it. */
export const gatesOut = (site: Site, level: number): readonly Gate[] =>
  [...exitsOf(site, "anyone").map((e) => e.gate), ...levelLinks(site, "anyone").flat()].filter((g) => levelOf(site, g.room) === level);

/** Floors as separate cells: a drape hangs like a wall, and what it lends joins its room through the doorway alone. */
function cellsOf(site: Site, level: number): readonly Region[] {
  const out: Region[] = [];
  const rooms = [...site.rooms.values()].filter((r) => r.room.level === level);
  for (const r of rooms) {
    const lent = site.drapes.filter((d) => d.from === r.room.id).map((d) => d.area);
    const gained = site.drapes.filter((d) => d.grows === r.room.id);
    const through = (from: string): boolean => site.passages.some((p) => p.rooms.includes(from) && p.rooms.includes(r.room.id));
    const merged = gained.filter((d) => !through(d.from)).map((d) => d.area);
    out.push(subtract(union([r.outline, ...merged]), lent));
    for (const d of gained) if (through(d.from)) out.push(union([d.area]));
  }
  return out;
}

function outsideStrip(exit: Exit, cells: readonly Region[]): Region {
  const far = pushed(exit.gate, -OUTSIDE);
  const strip: Polygon = [...pushed(exit.gate, LAP), far[1] ?? exit.gate.to, far[0] ?? exit.gate.from];
  const beyond: Polygon = [exit.gate.from, exit.gate.to, far[1] ?? exit.gate.to, far[0] ?? exit.gate.from];
  const box = boxOf(beyond);
  const foreign = cells.flat().filter((c) => boxesNear(c.box, box, -2)).map((c) => c.outer);
  if (foreign.length === 0) return union([strip]);
  return unite(subtract(union([beyond]), foreign), union([[...pushed(exit.gate, LAP), ...[...pushed(exit.gate, -LAP)].reverse()]]));
}

const hasPassage = (site: Site, gate: Gate): boolean =>
  site.passages.some((p) => p.doors.some((d, i) => d === gate.door.id && p.rooms[i] === gate.room));

type GroundKey = { readonly width: number; readonly doorWidth: number; readonly walker: Walker };
const cache = new WeakMap<Site, Map<string, readonly Ground[]>>();

/** The ground of each level for a walker of some width, with nothing standing on it but what is built in. Remembered by site. */
export function groundsOf(site: Site, key: GroundKey): readonly Ground[] {
  const name = `${key.width}/${key.doorWidth}/${key.walker}`;
  const known = cache.get(site)?.get(name);
  if (known) return known;
  const grounds = [...new Set([...site.rooms.values()].map((r) => r.room.level))].sort((a, b) => a - b).map((l) => groundOf(site, l, key));
  cache.set(site, (cache.get(site) ?? new Map<string, readonly Ground[]>()).set(name, grounds));
  return grounds;
}

function groundOf(site: Site, level: number, { width, doorWidth, walker }: GroundKey): Ground {
  const rooms: readonly RoomSite[] = [...site.rooms.values()].filter((r) => r.room.level === level);
  const cells = cellsOf(site, level);
  const passages = passagesFor(site, walker).filter((p) => levelOf(site, p.rooms[0]) === level);
  const exits = exitsOf(site, walker).filter((e) => e.level === level);
  const outer = exits.filter((e) => !hasPassage(site, e.gate));
  let floor: Region = cells.flatMap((c) => offset(c, -WALL));
  for (const p of passages) { const d = doorway(site, p, LAP); if (d) floor = unite(floor, union([d])); }
  for (const e of outer) floor = unite(floor, outsideStrip(e, cells));
  const built = rooms.flatMap((r) => r.room.obstacles.map((o) => o.outline));
  const radius = (width - 0.5) / 2, doorRadius = (doorWidth - 0.5) / 2;
  const open = minus(offset(floor, -radius), grownPolygons(built, radius));
  const zones = [
    ...passages.filter((p) => p.width < width).map((p) => doorway(site, p, radius + 10)).filter((z): z is Polygon => z !== null),
    ...outer.filter((e) => e.gate.width < width).map((e): Polygon => [...pushed(e.gate, radius + 10), ...[...pushed(e.gate, -OUTSIDE)].reverse()]),
  ];
  const nearDoors = zones.length === 0 || doorWidth >= width ? [] : minus(
    intersect(offset(floor, -doorRadius), zones), grownPolygons(built, doorRadius));
  return { level, eroded: open, nearDoors, floor };
}

/** Points across a doorway where a disc of the radius has room. */
export function doorPoints(gate: Gate, radius: number) {
  const along = unit(sub(gate.to, gate.from));
  const play = Math.max(0, distance(gate.from, gate.to) / 2 - radius - 0.5);
  return [0, -0.5, 0.5, -1, 1].map((k) => add(gate.at, scale(along, k * play)));
}
