import { fail, ok, type Result } from "../base";
import { add, boxOf, clockwise, edges, roundPoint, turn, type Box, type Point, type Polygon } from "../geometry";
import { isRound, type Item } from "../layout";
import { axisOf, type Room } from "../venue";

/** The four walls as they are called on a plan. */
export const WALLS = ["left", "right", "upper", "lower"] as const;
export type Wall = (typeof WALLS)[number];
export const isWall = (text: string): text is Wall => WALLS.some((w) => w === text);
export const facing = (a: Wall, b: Wall): boolean => a === b || (sideways(a) && sideways(b)) || (!sideways(a) && !sideways(b));
export const sideways = (w: Wall): boolean => w === "left" || w === "right";

/** A room seen along its own axes: every point turned back by the room's tilt about the venue's origin. */
export type RoomFrame = { readonly tilt: number; readonly outline: Polygon; readonly box: Box };
const frames = new WeakMap<Room, RoomFrame>();

export function frameOf(room: Room): RoomFrame {
  const known = frames.get(room);
  if (known) return known;
  const axis = axisOf(clockwise(room.outline)), tilt = axis > 45 ? axis - 90 : axis;
  const outline = room.outline.map((p) => turn(p, -tilt));
  const made = { tilt, outline, box: boxOf(outline) };
  frames.set(room, made);
  return made;
}
export const intoFrame = (f: RoomFrame, p: Point): Point => turn(p, -f.tilt);
export const outOfFrame = (f: RoomFrame, p: Point): Point => turn(p, f.tilt);

/** The least box along the room's axes that holds the piece itself, its chairs left out. */
export function extentOf(f: RoomFrame, item: Pick<Item, "shape" | "at" | "angle">): Box {
  const [x, y] = intoFrame(f, item.at);
  if (isRound(item.shape)) { const r = item.shape.diameter / 2; return { minX: x - r, maxX: x + r, minY: y - r, maxY: y + r }; }
  const { width: w, depth: d } = item.shape;
  return boxOf(([[-w / 2, -d / 2], [w / 2, -d / 2], [w / 2, d / 2], [-w / 2, d / 2]] as const).map((p) => add([x, y], turn(p, item.angle - f.tilt))));
}

/** An edge shared with the band by less than this is no wall in the piece's way, mm. */
const SLIVER = 1;

/** Where the wall stands that the piece would meet if it were pushed that way; null where there is none. */
function wallAt(f: RoomFrame, box: Box, wall: Wall): number | null {
  const across = sideways(wall) ? 1 : 0, along = 1 - across;
  const [lo, hi] = across === 1 ? [box.minY + SLIVER, box.maxY - SLIVER] : [box.minX + SLIVER, box.maxX - SLIVER];
  const middle = along === 0 ? (box.minX + box.maxX) / 2 : (box.minY + box.maxY) / 2;
  const low = wall === "left" || wall === "upper";
  let best: number | null = null;
  for (const [a, b] of edges(f.outline)) {
    const [ca, cb] = [a[across] ?? 0, b[across] ?? 0];
    if (Math.max(ca, cb) <= lo || Math.min(ca, cb) >= hi) continue;
    for (const c of [Math.max(lo, Math.min(ca, cb)), Math.min(hi, Math.max(ca, cb))]) {
      const t = ca === cb ? 0 : (c - ca) / (cb - ca);
      for (const s of ca === cb ? [0, 1] : [t]) {
        const v = (a[along] ?? 0) + ((b[along] ?? 0) - (a[along] ?? 0)) * s;
        if (low ? v <= middle && (best === null || v > best) : v >= middle && (best === null || v < best)) best = v;
      }
    }
  }
  return best;
}

/** Clear floor from a piece's edge to one wall along the room's own axes, mm; null where no wall stands that way. Negative where it sticks out. */
export function wallGap(room: Room, item: Pick<Item, "shape" | "at" | "angle">, wall: Wall): number | null {
  const f = frameOf(room), box = extentOf(f, item), at = wallAt(f, box, wall);
  if (at === null) return null;
  switch (wall) {
    case "left": return box.minX - at;
    case "right": return at - box.maxX;
    case "upper": return box.minY - at;
    case "lower": return at - box.maxY;
  }
}

export type FromWall = { readonly wall: Wall; readonly mm: number };

/** The nearer of each two facing walls, with the clear floor to it. */
export function nearWalls(room: Room, item: Pick<Item, "shape" | "at" | "angle">): readonly FromWall[] {
  return ([["left", "right"], ["upper", "lower"]] as const).flatMap((pair): readonly FromWall[] => {
    const both = pair.flatMap((wall) => { const mm = wallGap(room, item, wall); return mm === null ? [] : [{ wall, mm }]; });
    // On floor that a drape lends, beyond the room's own wall, the distance to that wall tells nothing.
    const nearer = both.sort((a, b) => Number(a.mm < 0) - Number(b.mm < 0) || a.mm - b.mm)[0];
    return nearer ? [nearer] : [];
  });
}

/** How often a spot is put right: the wall in a piece's way may be another once it has moved. */
const PASSES = 4;

/** Where a piece stands whose edge is so far from one wall, or from two that meet, mm; the way that no wall decides stays as it is. */
export function spotByWalls(room: Room, item: Pick<Item, "shape" | "at" | "angle">, walls: readonly FromWall[]): Result<Point, { readonly code: "walls" }> {
  const [one, two] = walls;
  if (!one || walls.length > 2 || (two && facing(one.wall, two.wall))) return fail({ code: "walls" });
  const f = frameOf(room);
  let at = item.at;
  for (let pass = 0; pass < PASSES; pass++) {
    let [x, y] = intoFrame(f, at);
    for (const { wall, mm } of walls) {
      const gap = wallGap(room, { ...item, at: outOfFrame(f, [x, y]) }, wall);
      if (gap === null) return fail({ code: "walls" });
      const by = mm - gap;
      if (wall === "left") x += by; else if (wall === "right") x -= by; else if (wall === "upper") y += by; else y -= by;
    }
    at = outOfFrame(f, [x, y]);
  }
  return ok(roundPoint(at));
}
