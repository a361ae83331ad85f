import { standingItem } from "../../rules";
import { canStand, placedOf, useFloor, wallSpots, withPlaced, type RoomFloor } from "../place";
import type { Context } from "./context";
import type { Day, RoomDay } from "./day";
import { conflicts } from "./rows";
import { waysHold } from "./displays";
import { drapedRoom } from "./draped";

/** Floor before a seat or a piece that people use, mm (common practice, no source). */
const BEFORE = 450;
/** Spots of one room that are tried before the next room. */
const SPOTS = 8;

/**
 * Standing pieces that a drape's strip has displaced go to a wall of their own room, else of another let for drinks or lounging.
 * Post: `rehomed` names each and its room; what finds no wall stays among `removed`, carried out.
 */
export function rehomeLent(ctx: Context, start: Day): Day {
  let day = start;
  for (const d of ctx.site.drapes) {
    const own = ctx.site.rooms.get(d.from)?.room.standing ?? [], strip = drapedRoom(ctx.site, d.grows)?.standing ?? [];
    for (const piece of own.filter((s) => strip.includes(s) && day.removed.includes(s.id))) {
      const rooms = [...day.rooms.values()].filter((r) => r.f.id !== d.grows && !r.f.room.outdoor && !day.plan.meal.includes(r.f.id) && (r.f.id === d.from || r.f.room.uses.some((u) => u === "lounge" || u === "drinks")))
        .sort((a, b) => Number(b.f.id === d.from) - Number(a.f.id === d.from) || (a.f.id < b.f.id ? -1 : 1));
      for (const room of rooms) {
        const next = atWall(ctx, day, room, piece);
        if (next) { day = next; break; }
      }
    }
  }
  return day;
}

type Piece = RoomDay["f"]["room"]["standing"][number];

function atWall(ctx: Context, day: Day, room: RoomDay, piece: Piece): Day | null {
  const size = "diameter" in piece.shape ? { width: piece.shape.diameter, depth: piece.shape.diameter } : piece.shape;
  const around = { front: BEFORE, back: 0, side: 0 };
  const f: RoomFloor = withPlaced(room.f, ...room.tables.map((t) => placedOf(t)));
  // In a corner first, out of the way of what the room is used for.
  const spots = [...wallSpots(f, size, around, 300)].sort((a, b) => Math.abs(b.along - 0.5) - Math.abs(a.along - 0.5) || a.at[0] - b.at[0] || a.at[1] - b.at[1]);
  for (const s of spots.slice(0, SPOTS)) {
    const item = { ...standingItem(room.f.id, piece), at: s.at, angle: "diameter" in piece.shape ? 0 : s.angle };
    const p = placedOf(item, useFloor(s.at, size, s.angle, around));
    if (!canStand(f, p.body) || (room.rows && conflicts(p, room.rows))) continue;
    const next: Day = {
      ...day, removed: day.removed.filter((id) => id !== piece.id), rehomed: [...day.rehomed, { id: piece.id, room: room.f.id }],
      rooms: new Map(day.rooms).set(room.f.id, { ...room, f: withPlaced(room.f, p), statics: [...room.statics, p] }),
    };
    if (waysHold(ctx, next, room.f.id)) return next;
  }
  return null;
}
