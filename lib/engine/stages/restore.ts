import { footprintPolygon } from "../../layout";
import { canStand, meets, placedOf, withPlaced } from "../place";
import { standingItem } from "../../rules";
import { gapsOf, type Context } from "./context";
import type { Day, RoomDay } from "./day";
import { conflicts } from "./rows";
import { waysHold } from "./displays";

/**
 * Standing furniture that was cleared for the search goes back where the tables leave it its place: what need not be carried
 * out is not charged. Post: `removed` holds only pieces whose place is taken, or whose standing there would close a way.
 */
export function restoreStanding(ctx: Context, start: Day): Day {
  let day = start;
  const back = new Set<string>();
  for (const id of start.removed) for (const [room, r] of day.rooms) {
    const piece = r.f.room.standing.find((s) => s.id === id);
    if (!piece) continue;
    const p = placedOf(standingItem(room, piece));
    const gap = Math.max(gapsOf(ctx.values, day.ease.gaps).wallGap, piece.kind === "table" ? ctx.values.most.tableGap : 0) + 1;
    const crowded = withPlaced(r.f, ...r.tables.map((t) => placedOf(t)));
    if (!canStand(crowded, p.body) || r.tables.some((t) => t.seats.length > 0 && meets(p.body, footprintPolygon(t), gap))) continue;
    const rowsStay = r.rows !== null && !(day.plan.meal.includes(room) || day.plan.dance === room);
    if (rowsStay && r.rows && conflicts(p, r.rows)) continue;
    const late = r.rows !== null && !rowsStay && conflicts(p, r.rows);
    const next: RoomDay = { ...r, f: withPlaced(r.f, p), statics: [...r.statics, p], mealOnly: late ? new Set([...r.mealOnly, id]) : r.mealOnly };
    day = { ...day, rooms: new Map(day.rooms).set(room, next) };
    back.add(id);
  }
  if (back.size === 0) return start;
  const done: Day = { ...day, removed: start.removed.filter((id) => !back.has(id)) };
  return waysHold(ctx, done, null) || !waysHold(ctx, start, null) ? done : start;
}
