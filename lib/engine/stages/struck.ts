import { footprintPolygon } from "../../layout";
import { floorSpots, meets } from "../place";
import { itemOf, KEPT_OFF, sizeOf } from "./anchors";
import type { Context } from "./context";
import type { Day } from "./day";
import { inTheWay } from "./relations";
import { meetsTable } from "./scenes";

/** What it costs, in tables struck, that the floor lies where guests come in; up against the couple's table costs one. */
const IN_THE_WAY = 1.5;

/**
 * Where the floor is laid once the meal is over: the spot that strikes the fewest tables, nearest to the music.
 * Returns the day with that floor, or null where no spot is free of what stands all day.
 */
export function layStruckFloor(ctx: Context, day: Day): Day | null {
  const spec = ctx.demand.floor, id = day.plan.dance;
  const room = id ? day.rooms.get(id) : undefined;
  if (!spec || !room || day.plan.floor !== "struck") return day;
  const music = room.statics.find((p) => p.item.kind === "dj" || p.item.kind === "band")?.item.at;
  const size = sizeOf(spec);
  const weighed = floorSpots(room.f, size, spec.around, { step: 300, doors: false, turns: size.width === size.depth ? [0] : [0, 90] }).map((s) => {
    const struck = room.tables.filter((t) => meetsTable(t, s.body));
    const tops = struck.filter((t) => t.role === "top").length;
    const far = music ? Math.hypot(s.at[0] - music[0], s.at[1] - music[1]) / 1000 : 0;
    const close = room.tables.some((t) => t.role === "top" && meets(footprintPolygon(t), s.body, KEPT_OFF)) ? 1 : 0;
    return { s, cost: struck.length + 6 * tops + close + (inTheWay(s.body, room.f) ? IN_THE_WAY : 0) + 0.4 * far };
  }).sort((a, b) => a.cost - b.cost || a.s.at[0] - b.s.at[0] || a.s.at[1] - b.s.at[1]);
  const best = weighed[0];
  if (!best) return null;
  const item = itemOf(spec, room.f.id, best.s);
  return { ...day, struckFloor: item };
}
