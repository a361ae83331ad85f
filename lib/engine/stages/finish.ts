import { distance, middle, type Point } from "../../geometry";
import type { Item, Layout, Scene } from "../../layout";
import { numberTables } from "../number";
import { telling } from "../tell";
import { turnoversOfDay } from "../turnover";
import { withDrapes, type Context } from "./context";
import { withAccess } from "./access";
import type { Day } from "./day";
import { placeDisplays, type GaveWay } from "./displays";
import { givesUpOf, titleOf, whyOf } from "./explain";
import { entryOf } from "./relations";
import { rehomeLent } from "./rehome";
import { restoreStanding } from "./restore";
import { scenesOf } from "./scenes";
import { scoreOf } from "./score";
import { layStruckFloor } from "./struck";
import { placeWorkTable } from "./work-table";

export type Finished = { readonly layout: Layout; readonly day: Day; readonly gaveWay: readonly GaveWay[] };

/** From a day whose tables and rows stand to a whole layout: struck floor, displays, numbers, turnovers, words. */
export function finish(base: Context, start: Day): Finished {
  const ctx = withDrapes(base, start.plan.drapes);
  const struck = layStruckFloor(ctx, start) ?? start;
  const open = withAccess(ctx, restoreStanding(ctx, withRoundTop(ctx, struck)));
  const { time } = ctx.watch;
  const shown = time("displays", () => placeDisplays(ctx, rehomeLent(ctx, open)));
  const worked = time("displays", () => placeWorkTable(ctx, shown.day));
  const day = time("number", () => numbered(worked));
  const scenes = scenesOf(ctx, day).map((s): Scene => ({ ...s, numbers: firstParts(s.items) }));
  const turned = time("turnovers", () => turnoversOfDay(ctx.venue, scenes, (s) => (s.id === "ceremony" ? ctx.demand.ceremonyGuests : ctx.demand.guests)));
  return {
    day, gaveWay: shown.gaveWay,
    layout: time("explain", () => telling(ctx.venue, { id: "a", title: "", why: [], givesUp: [], scenes, turnovers: turned, findings: [], score: scoreOf(ctx, day, scenes, turned, []) }, {
      title: titleOf(day), why: whyOf(ctx, day, scenes, turned), givesUp: givesUpOf(ctx, day, shown.gaveWay),
    })),
  };
}

/**
 * The couple at one of the rounds: of the tables laid, a round where there is one, nearest to the chief room's feature wall, else to
 * the middle of the room, so that most guests have them in sight.
 */
function withRoundTop(ctx: Context, day: Day): Day {
  const id = day.plan.meal[0];
  const room = id ? day.rooms.get(id) : undefined;
  if (!id || !room || ctx.brief.meal.top !== "round") return day;
  const feature = room.f.room.walls.find((w) => w.is === "feature");
  const box = room.f.floor[0]?.box;
  const aim: Point | null = feature ? middle(feature.from, feature.to) : box ? [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] : null;
  if (!aim) return day;
  const rank = (t: Item): number => ("diameter" in t.shape ? 0 : 1e6) + distance(t.at, aim);
  const chosen = [...room.tables].filter((t) => t.role === "dining" && t.seats.length > 1).sort((a, b) => rank(a) - rank(b) || (a.id < b.id ? -1 : 1))[0];
  if (!chosen) return day;
  const tables = room.tables.map((t): Item => (t === chosen ? { ...t, id: "top", role: "top", label: "Couple’s table" } : t));
  return { ...day, rooms: new Map(day.rooms).set(id, { ...room, tables }) };
}

/** The first part of each numbered table: parts of a run share their number. */
function firstParts(items: readonly Item[]): string[] {
  const seen = new Set<string>();
  return items.filter((i) => i.role === "dining").sort((a, b) => numberOf(a) - numberOf(b) || (a.id < b.id ? -1 : 1))
    .filter((i) => { if (seen.has(i.label)) return false; seen.add(i.label); return true; }).map((i) => i.id);
}
const numberOf = (i: Item): number => Number(/\d+/.exec(i.label)?.[0] ?? 0);

/** Tables numbered room by room, in the order a guest meets them. */
function numbered(day: Day): Day {
  const rooms = new Map(day.rooms);
  let from = 1;
  for (const id of day.plan.meal) {
    const room = rooms.get(id);
    if (!room) continue;
    const dining = room.tables.filter((t) => t.role === "dining");
    const top = room.tables.find((t) => t.role === "top");
    const { items, numbers } = numberTables(dining, entryOf(room.f), { start: from, axis: room.f.axis, top });
    from += numbers.length;
    rooms.set(id, { ...room, tables: [...room.tables.filter((t) => t.role !== "dining"), ...items] });
  }
  return { ...day, rooms };
}
