import type { Item, Scene, SceneId } from "../../layout";
import { footprintPolygon } from "../../layout";
import { meets } from "../place";
import { rowPieceIn } from "../rows";
import type { Context } from "./context";
import { rowsLeft, type Day, type RoomDay } from "./day";

const TITLES: Readonly<Record<SceneId, string>> = { ceremony: "Ceremony", drinks: "Drinks", meal: "Meal", dancing: "Dancing" };
/** Displays that guests meet as they come in. */
const ARRIVAL = ["welcome", "cards", "guest-book", "photographs", "seating-plan"];

/** The parts of the day there are, in their order, and the rooms each uses. */
export function sceneRooms(ctx: Context, day: Day): readonly { readonly id: SceneId; readonly rooms: readonly string[] }[] {
  const { plan } = day;
  const holding = (test: (i: Item) => boolean): readonly string[] =>
    [...day.rooms.values()].filter((r) => r.statics.some((p) => test(p.item))).map((r) => r.f.id);
  const added = (i: Item): boolean => !("standing" in i.from) || (i.role !== undefined && i.role !== "");
  const all = holding(added);
  const arrival = holding((i) => i.role !== undefined && ARRIVAL.includes(i.role));
  const unique = (list: readonly (string | null)[]): readonly string[] => [...new Set(list.filter((r): r is string => r !== null))];
  const out: { id: SceneId; rooms: readonly string[] }[] = [];
  if (plan.ceremony) out.push({
    id: "ceremony",
    rooms: plan.atTables ? unique([...plan.meal]) : unique([plan.ceremony, ...arrival.filter((r) => !plan.meal.includes(r) && r !== plan.dance)]),
  });
  const idle = all.filter((r) => r !== plan.ceremony || plan.meal.includes(r));
  if (plan.drinks.length > 0) out.push({ id: "drinks", rooms: unique([...plan.drinks, plan.bar, ...arrival.filter((r) => !plan.meal.includes(r) && r !== plan.ceremony)]) });
  if (plan.meal.length > 0) out.push({ id: "meal", rooms: unique([...plan.meal, plan.buffet, plan.bar, ...idle]) });
  if (plan.dance) out.push({ id: "dancing", rooms: unique([plan.dance, ...plan.meal, plan.bar, ...idle.filter((r) => r !== plan.buffet)]) });
  return out.map(({ id, rooms }) => ({ id, rooms: withLender(ctx, rooms) }));
}

/**
 * The room behind an opening that a drape lends floor from is in use with the grown one: the opening is floor then, not a door.
 * Not so where the authority's figures would be counted apart that are to be added.
 */
function withLender(ctx: Context, rooms: readonly string[]): readonly string[] {
  const more = ctx.site.drapes.filter((d) => rooms.includes(d.grows) && (d.posted !== undefined || [d.grows, d.from].every((r) => ctx.site.rooms.get(r)?.room.posted === undefined))).map((d) => d.from);
  return [...new Set([...rooms, ...more])];
}

/** What stands in a room at a part of the day. */
export function contents(ctx: Context, day: Day, room: RoomDay, scene: SceneId): readonly Item[] {
  const { plan } = day;
  const all = room.statics.map((p) => p.item);
  const id = room.f.id;
  if (scene === "ceremony" && id === plan.ceremony && !plan.atTables) {
    const shared = plan.turnover || plan.meal.includes(id) || plan.dance === id;
    const kept = shared ? all.filter((i) => !room.mealOnly.has(i.id)) : all;
    return [...kept, ...(room.rows?.items ?? [])];
  }
  const tables = plan.meal.includes(id) ? room.tables : [];
  if (scene === "dancing" && plan.floor === "struck" && id === plan.dance && day.struckFloor) {
    const floor = footprintPolygon(day.struckFloor);
    return [...all, day.struckFloor, ...tables.filter((t) => !meetsTable(t, floor))];
  }
  return [...all, ...tables, ...(rowsLeft(day, room)?.items ?? []).map((i) => rowPieceIn(scene, i))];
}

/** A table that the floor would touch, chairs drawn out included (483 mm, IBC 2018 1029.13.1). */
export const meetsTable = (t: Item, floor: readonly (readonly [number, number])[]): boolean => meets(footprintPolygon(t), floor, 914);

const strip = (day: Day, room: string, ids: readonly string[]): readonly Item[] =>
  (day.rooms.get(room)?.statics ?? []).map((p) => p.item).filter((i) => "standing" in i.from && ids.includes(i.from.standing));

export function scenesOf(ctx: Context, day: Day): readonly Scene[] {
  return sceneRooms(ctx, day).map(({ id, rooms }) => {
    const items = rooms.flatMap((r) => { const d = day.rooms.get(r); return d ? contents(ctx, day, d, id) : []; });
    const touched = ctx.site.drapes.filter((d) => rooms.includes(d.grows) || rooms.includes(d.from));
    // Standing pieces in a lent strip are told of wherever their own room is in use.
    for (const d of touched) if (!rooms.includes(d.grows)) items.push(...strip(day, d.grows, ctx.site.rooms.get(d.from)?.room.standing.map((s) => s.id) ?? []));
    return {
      id, title: TITLES[id], rooms, drapes: touched.map((d) => d.id), items, numbers: [],
      seats: items.filter((i) => i.role !== "work").reduce((n, i) => n + i.seats.length, 0),
    };
  });
}
