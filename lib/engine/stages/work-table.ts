import { distance, type Point } from "../../geometry";
import { footprintPolygon, seatPolygon, type Item } from "../../layout";
import { canStand, placedOf, wallSpots, within, meets, withPlaced, useFloor } from "../place";
import { moveSeats, seatsAround } from "../seating/seats";
import { END_WALL } from "../seating/hall";
import type { Context } from "./context";
import { rowsLeft, stockTakenBy, type Day, type RoomDay } from "./day";
import { waysHold } from "./displays";
import { conflicts } from "./rows";

/** Spots along the walls of one room that are looked at, and those whose ways are judged, how far apart, mm. */
const SPOTS = 40, JUDGED = 6, APART = 600;

/**
 * A table for the people who work that day, who eat too: in a room where no guest dines, from tables and chairs that are left.
 * Where there is none the day stands as it was, and the check says that the suppliers have no table.
 */
export function placeWorkTable(ctx: Context, day: Day): Day {
  const wanted = ctx.brief.guests.suppliers;
  if (wanted === 0 || day.plan.meal.length === 0 || [...day.rooms.values()].some((r) => r.tables.some((t) => t.role === "work"))) return day;
  const taken = stockTakenBy([...day.rooms.values()].flatMap((r) => [...r.statics.map((p) => p.item), ...r.tables]), new Map());
  const stock = ctx.venue.stock.filter((s) => s.kind === "table" && s.seats && s.seats.comfort >= 2 && s.count > (taken.get(s.id) ?? 0))
    .sort((a, b) => Math.abs((a.seats?.comfort ?? 0) - wanted) - Math.abs((b.seats?.comfort ?? 0) - wanted) || (a.id < b.id ? -1 : 1));
  const chairsUsed = [...day.rooms.values()].flatMap((r) => r.tables).reduce((n, t) => n + t.seats.length, 0);
  // Rows that stay where no one dines keep their chairs through the meal.
  const inRows = [...day.rooms.values()].flatMap((r) => rowsLeft(day, r)?.items ?? []).filter((i) => i.kind === "chair").length;
  const chairs = ctx.chair.all - chairsUsed - inRows;
  // A room of their own first; among the guests where there is no other.
  const among = (r: RoomDay): boolean => day.plan.meal.includes(r.f.id) || r.f.id === day.plan.ceremony;
  const rooms = [...day.rooms.values()].filter((r) => !r.f.room.outdoor && r.f.room.uses.length > 0)
    .sort((a, b) => Number(among(a)) - Number(among(b)) || Number(b.f.room.uses.includes("plating")) - Number(a.f.room.uses.includes("plating")) || (a.f.id < b.f.id ? -1 : 1));
  for (const s of stock.slice(0, 2)) for (const room of rooms) {
    const seen: Point[] = [];
    const places = Math.min(wanted, s.seats?.comfort ?? 0, chairs);
    if (places < 1) return day;
    const size = "diameter" in s.shape ? { width: s.shape.diameter, depth: s.shape.diameter } : s.shape;
    // Past the wall gap that places at it need, whatever the profile asks.
    const deep = Math.max(900, ctx.values.most.wallGap + 10);
    const around = { front: deep, back: deep, side: s.ends || "diameter" in s.shape ? deep : END_WALL + 10 };
    const f = withPlaced(room.f, ...room.tables.map((t) => placedOf(t)));
    for (const spot of wallSpots(f, size, around, 400).slice(0, SPOTS)) {
      if (seen.some((o) => distance(o, spot.at) < APART)) continue;
      const bare: Item = { id: "work-table", kind: "table", role: "work", label: "Suppliers", room: room.f.id, from: { stock: s.id }, shape: s.shape, at: spot.at, angle: "diameter" in s.shape ? 0 : spot.angle, seats: [] };
      const item: Item = { ...bare, seats: moveSeats(seatsAround(s.shape, places, { ends: s.ends, chair: ctx.chair }), bare.at, bare.angle) };
      const polys = item.seats.map((seat) => seatPolygon(seat, ctx.chair));
      if (polys.some((p) => !within(p, room.f.floor) || room.f.doorFloor.some((d) => meets(p, d)) || f.placed.some((q) => meets(p, q.body) || q.item.seats.some((s) => meets(p, seatPolygon(s, ctx.chair)))))) continue;
      const p = placedOf(item, useFloor(spot.at, size, spot.angle, around));
      if (!canStand(f, p.body) || room.tables.some((t) => meets(p.body, footprintPolygon(t), ctx.values.most.tableGap + 1))) continue;
      const inRows = room.rows !== null && conflicts(p, room.rows), stay = !day.plan.meal.includes(room.f.id) && day.plan.dance !== room.f.id;
      if (inRows && stay) continue;
      const late = inRows ? { mealOnly: new Set([...room.mealOnly, item.id]) } : {};
      const trial: Day = { ...day, rooms: new Map(day.rooms).set(room.f.id, { ...room, ...late, f: withPlaced(room.f, p), statics: [...room.statics, p] }) };
      if (waysHold(ctx, trial, room.f.id)) return trial;
      // Where ways are lost before it stands, no other spot would mend that.
      if (seen.push(spot.at) >= JUDGED || (seen.length === 1 && !waysHold(ctx, day, room.f.id))) break;
    }
  }
  return day;
}
