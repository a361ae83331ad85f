import { add, bearing, boxOf, distance, inwardNormal, rectangle, roundPoint, scale, signedArea, turn, unit, sub, type Point, type Polygon, type Segment } from "../../geometry";
import { clearOfPlaced, fitsRoom, useFloor, type Around, type RoomFloor } from "./room-floor";

export type Size = { readonly width: number; readonly depth: number };
/** A place where a piece may stand; `wall` is the wall at its back, when it has one. */
export type Spot = { readonly at: Point; readonly angle: number; readonly body: Polygon; readonly use: Polygon | null; readonly wall: Segment | null; readonly along: number };

const tidyAngle = (d: number): number => { const r = Math.round(((d % 360) + 360) % 360 * 1000) / 1000; return r === 360 ? 0 : r; };

/** The walls of a room with the inside on their right, whichever way its rings run. */
export function wallsOf(f: RoomFloor): readonly Segment[] {
  return f.floor.flatMap((piece) => {
    const ring = signedArea(piece.outer) < 0 ? [...piece.outer].reverse() : piece.outer;
    return ring.map((a, i) => [a, ring[(i + 1) % ring.length] as Point] as const);
  }).filter(([a, b]) => distance(a, b) >= 300);
}

const known = new WeakMap<RoomFloor["doorFloor"], Map<string, readonly Spot[]>>();
/** Spots of the empty room, remembered by the room: the same pieces are stood in it again and again. */
function remembered(f: RoomFloor, key: unknown, work: () => readonly Spot[]): readonly Spot[] {
  const spots = known.get(f.doorFloor) ?? new Map<string, readonly Spot[]>(), name = JSON.stringify(key);
  known.set(f.doorFloor, spots);
  const found = spots.get(name) ?? work();
  spots.set(name, found);
  return found;
}

/** Every place along the walls where the piece and the floor it needs are free, `step` mm apart and at the middles. */
export function wallSpots(f: RoomFloor, size: Size, around: Around, step = 200, standOff = 0): readonly Spot[] {
  return remembered(f, ["wall", f.id, size, around, step, standOff], () => bareWallSpots(f, size, { around, step, standOff })).filter((s) => clearOfPlaced(f, s.body, { use: s.use }));
}

type Along = { readonly around: Around; readonly step: number; readonly standOff: number };
function bareWallSpots(f: RoomFloor, size: Size, { around, step, standOff }: Along): readonly Spot[] {
  const out: Spot[] = [];
  for (const wall of wallsOf(f)) {
    const n = inwardNormal(wall), t = unit(sub(wall[1], wall[0])), long = distance(wall[0], wall[1]);
    const room = long - size.width;
    if (room < 0) continue;
    const angle = tidyAngle(bearing(n) - 90);
    const steps = Math.floor(room / step);
    const starts = new Set<number>([room / 2, 0, room]);
    for (let i = 0; i <= steps; i++) starts.add(room / 2 + (i - Math.floor(steps / 2)) * step);
    for (const s of [...starts].filter((x) => x >= 0 && x <= room).sort((a, b) => a - b)) {
      const at = roundPoint(add(add(wall[0], scale(t, s + size.width / 2)), scale(n, around.back + standOff + size.depth / 2 + 1)));
      const body = rectangle(at, size.width, size.depth, angle);
      const use = useFloor(at, size, angle, { ...around, back: Math.max(0, around.back - 1) });
      if (fitsRoom(f, body, { use })) out.push({ at, angle, body, use, wall, along: (s + size.width / 2) / long });
    }
  }
  return out;
}

/** Every place on a grid of the floor, true to the room's axis, either way round. */
export function floorSpots(f: RoomFloor, size: Size, around: Around, options: { readonly step?: number; readonly doors?: boolean; readonly turns?: readonly number[] } = {}): readonly Spot[] {
  const { step = 300, doors = true, turns = [0, 90] } = options;
  return remembered(f, ["floor", f.id, size, around, step, doors, turns], () => bareFloorSpots(f, size, { around, step, doors, turns })).filter((s) => clearOfPlaced(f, s.body, { use: s.use, doors }));
}

type Over = { readonly around: Around; readonly step: number; readonly doors: boolean; readonly turns: readonly number[] };
function bareFloorSpots(f: RoomFloor, size: Size, { around, step, doors, turns }: Over): readonly Spot[] {
  const out: Spot[] = [];
  const local = f.floor.flatMap((p) => p.outer).map((p) => turn(p, -f.axis));
  const box = boxOf(local);
  const middleX = (box.minX + box.maxX) / 2, middleY = (box.minY + box.maxY) / 2;
  const nx = Math.floor((box.maxX - box.minX) / 2 / step), ny = Math.floor((box.maxY - box.minY) / 2 / step);
  for (const more of turns) {
    const angle = tidyAngle(f.axis + more);
    for (let i = -nx; i <= nx; i++) for (let j = -ny; j <= ny; j++) {
      const at = roundPoint(turn([middleX + i * step, middleY + j * step], f.axis));
      const body = rectangle(at, size.width, size.depth, angle);
      const use = useFloor(at, size, angle, around);
      if (fitsRoom(f, body, { use, doors })) out.push({ at, angle, body, use, wall: null, along: 0.5 });
    }
  }
  return out;
}
