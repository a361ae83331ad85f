import { area } from "../../geometry";
import { footprintPolygon, type Item, type Scene } from "../../layout";
import { quickRoutes, quickWays, routes, waysOut } from "../../rules";
import type { Stock } from "../../venue";
import { canStand, floorSpots, meets, placedOf, useFloor, withPlaced, type Placed, type RoomFloor, type Spot } from "../place";
import { itemOf, placeIndex, rankedSpots, sizeOf, surroundings } from "./anchors";
import { spend, spent, STEPS } from "../effort";
import type { Context } from "./context";
import { stockTakenBy, type Day, type RoomDay } from "./day";
import { conflicts } from "./rows";
import type { Spec } from "./demand";
import { displayTables } from "./demand";
import { scenesOf } from "./scenes";

/** What gave way, and why: one line of the result each. */
export type GaveWay = { readonly word: string; readonly why: "no-room" | "no-stock" | "combined" | "moved"; readonly with?: string };
export type Shown = { readonly day: Day; readonly gaveWay: readonly GaveWay[] };

const ARRIVAL = new Set(["welcome", "cards", "guest-book", "photographs"]);
/** Spots of one room whose ways are judged exactly before the next room is tried, and those for all the pieces of a day. */
const SPOTS_JUDGED = 6, DAY_JUDGED = 60;

/**
 * Places the small pieces, each in its order of rooms, where no way out and no route is lost by it.
 * Pre: the day's tables and rows stand. Post: every spec stands, or is carried by another piece, or is named in `gaveWay`.
 */
export function placeDisplays(ctx: Context, start: Day): Shown {
  // Ways are seldom lost to a table at a wall: judge all of them once, and one by one only where that fails.
  const quick = placeAll(ctx, start, null);
  // Where ways are lost before any small piece stands, no place of theirs would mend that.
  return waysHold(ctx, quick.day, null) || !waysHold(ctx, start, null) ? quick : placeAll(ctx, start, { left: DAY_JUDGED });
}

/** Judgings that are left; null where spots are taken unjudged. */
type Judge = { left: number } | null;

function placeAll(ctx: Context, start: Day, judge: Judge): Shown {
  let day = start;
  const gaveWay: GaveWay[] = [];
  for (const spec of ctx.demand.displays) {
    const usual = usualPiece(ctx, day, spec);
    if (usual) { day = usual; continue; }
    const placed = placeOne(ctx, day, spec, judge);
    if (placed) { day = placed; gaveWay.push(...movedFrom(day, spec)); continue; }
    const shared = shareTable(day, spec);
    if (shared) { day = shared.day; gaveWay.push({ word: spec.word, why: "combined", with: shared.host }); continue; }
    gaveWay.push({ word: spec.word, why: "no-room" });
  }
  return { day, gaveWay };
}

/** Told where a piece stands elsewhere than at the first place that the venue has for it. */
function movedFrom(day: Day, spec: Spec): readonly GaveWay[] {
  if ((spec.places ?? []).length === 0) return [];
  for (const r of day.rooms.values()) {
    const stands = r.statics.find((p) => p.item.id === spec.id);
    if (stands) return placeIndex(r.f, spec, stands.item.at) === 0 ? [] : [{ word: spec.word, why: "moved", with: r.f.room.name }];
  }
  return [];
}

/** A standing piece that the venue names as a display's usual place carries it, where it still stands. */
function usualPiece(ctx: Context, day: Day, spec: Spec): Day | null {
  if (!spec.role) return null;
  const spots = ctx.venue.places?.[spec.role] ?? [];
  for (const spot of spots) {
    if (!("at" in spot)) continue;
    for (const [id, room] of day.rooms) {
      if (spot.room && spot.room !== id) continue;
      const piece = room.statics.find((p) => "standing" in p.item.from && Math.hypot(p.item.at[0] - spot.at[0], p.item.at[1] - spot.at[1]) < 400);
      if (!piece) continue;
      const item: Item = { ...piece.item, kind: "table", role: spec.role, ...(spec.also ? { also: [...spec.also] } : {}), label: `${spec.label}, ${piece.item.label.toLowerCase()}` };
      return replaceStatic(day, id, piece, { ...piece, item });
    }
  }
  return null;
}

function replaceStatic(day: Day, room: string, was: Placed, now: Placed): Day {
  const r = day.rooms.get(room);
  if (!r) return day;
  const swap = (list: readonly Placed[]): readonly Placed[] => list.map((p) => (p === was ? now : p));
  return { ...day, rooms: new Map(day.rooms).set(room, { ...r, statics: swap(r.statics), f: { ...r.f, placed: swap(r.f.placed) } }) };
}

/** Rooms for a display: those its uses name, then any; on the way in for what guests meet first. */
function roomOrder(day: Day, spec: Spec): readonly RoomDay[] {
  const { plan } = day;
  const named = (r: RoomDay): number => { const k = (spec.places ?? []).findIndex((p) => p.room === r.f.id); return k < 0 ? 0 : k - 40; };
  const rank = (r: RoomDay): number => named(r) + plain(r);
  const plain = (r: RoomDay): number => {
    const uses = r.f.room.uses;
    const outside = r.f.gates.some((g) => g.door.leads === "outside" && g.door.for.includes("guests"));
    const busy = plan.meal.includes(r.f.id) ? 2 : plan.dance === r.f.id || plan.drinks.includes(r.f.id) ? 1 : 0;
    const storey = day.rooms.get(plan.meal[0] ?? plan.ceremony ?? "")?.f.room.level ?? r.f.room.level;
    if (r.f.room.level !== storey) return 50;
    if (ARRIVAL.has(spec.word)) return (outside ? 0 : 4) + busy * 1.5 + (r.f.room.outdoor ? 3 : 0) - (uses.length === 0 ? 2 : 0) + area(r.f.room.outline) / 1e9;
    if (spec.kind === "cocktail-table") {
      // Spread over the rooms where people stand with a glass.
      const there = r.statics.filter((p) => p.item.kind === "cocktail-table").length;
      return (day.plan.drinks.includes(r.f.id) && !day.plan.meal.includes(r.f.id) ? 0 : 20) + there + (day.plan.buffet === r.f.id ? 10 : 0);
    }
    const k = spec.uses.findIndex((u) => uses.includes(u));
    return (k < 0 ? 10 : k) + (r.f.room.outdoor ? 4 : 0) + (inPlay(day, r) ? 0 : 3) + area(r.f.room.outline) / 1e10;
  };
  return [...day.rooms.values()].sort((a, b) => rank(a) - rank(b) || (a.f.id < b.f.id ? -1 : 1));
}
const inPlay = (day: Day, r: RoomDay): boolean =>
  day.plan.meal.includes(r.f.id) || day.plan.dance === r.f.id || day.plan.drinks.includes(r.f.id) || day.plan.bar === r.f.id;

/** The stock a display may be laid on now: its own first, then any table that nobody sits at. */
function offers(ctx: Context, day: Day, spec: Spec): readonly Spec[] {
  if (spec.others.length === 0 || !("stock" in spec.from)) return [spec];
  const taken = stockTakenBy([...day.rooms.values()].flatMap((r) => [...r.statics.map((p) => p.item), ...r.tables]), new Map());
  const free = (s: Stock): boolean => (taken.get(s.id) ?? 0) < s.count;
  const tables = spec.role === "cake" ? [...displayTables(ctx.venue)].sort((a, b) => cakeRank(a) - cakeRank(b)) : spec.others;
  const own = tables.filter(free).map((s): Spec => ({ ...spec, from: { stock: s.id }, shape: s.shape }));
  return own.slice(0, 3);
}
/** A cake stands on something compact: 48 in round or a small oblong (rental trade). */
const cakeRank = (s: Stock): number => {
  const w = "diameter" in s.shape ? s.shape.diameter : s.shape.width, d = "diameter" in s.shape ? s.shape.diameter : s.shape.depth;
  return Math.abs(w - 1200) + (d < 600 ? 400 : 0) + (s.seats && s.seats.most > 6 ? 600 : 0);
};

function placeOne(ctx: Context, day: Day, spec: Spec, judge: Judge): Day | null {
  for (const offer of offers(ctx, day, spec)) for (const room of roomOrder(day, spec)) {
    const found = spotIn(ctx, day, room, { spec: offer, judge });
    if (found) return found;
  }
  return null;
}

/** The floor a display must keep out of: tables and rows stand there at some part of the day. */
function crowded(room: RoomDay, day: Day): RoomFloor {
  const rowsStay = room.rows !== null && !(day.plan.meal.includes(room.f.id) || day.plan.dance === room.f.id);
  const more = [...room.tables, ...(rowsStay && room.rows ? room.rows.items : [])].map((i) => placedOf(i));
  const struck = day.plan.dance === room.f.id && day.struckFloor ? [{ ...placedOf(day.struckFloor), walkable: false }] : [];
  return withPlaced(room.f, ...more, ...struck);
}

function spotIn(ctx: Context, day: Day, room: RoomDay, { spec, judge }: { readonly spec: Spec; readonly judge: Judge }): Day | null {
  const f = crowded(room, day);
  const free = spec.kind === "cocktail-table";
  const spots = free ? freeSpots(f, spec) : rankedSpots(f, { spec });
  const rowsStay = room.rows !== null && !(day.plan.meal.includes(room.f.id) || day.plan.dance === room.f.id);
  let judged = 0;
  const seen: Spot[] = [];
  for (const s of spots) {
    if (judged >= SPOTS_JUDGED || (judge !== null && (judge.left === 0 || spent(ctx.effort)))) return null;
    if (seen.some((o) => Math.hypot(o.at[0] - s.at[0], o.at[1] - s.at[1]) < 600)) continue;
    const use = useFloor(s.at, sizeOf(spec), s.angle, spec.around);
    const p = placedOf(itemOf(spec, f.id, s), use);
    if (rowsStay && room.rows && conflicts(p, room.rows)) continue;
    // A table is a table to the guest who faces it: the gap of two tables holds.
    if (spec.kind === "table" && room.tables.some((t) => meets(p.body, footprintPolygon(t), ctx.values.most.tableGap + 1))) continue;
    const late = room.rows !== null && !rowsStay && conflicts(p, room.rows);
    const next: RoomDay = {
      ...room, f: withPlaced(room.f, p), statics: [...room.statics, p], mealOnly: late ? new Set([...room.mealOnly, spec.id]) : room.mealOnly,
    };
    const trial: Day = { ...day, rooms: new Map(day.rooms).set(f.id, next) };
    if (!judge || waysHold(ctx, trial, f.id)) return trial;
    judge.left--;
    judged++;
    seen.push(s);
  }
  return null;
}

/** Whether each place still reaches its ways out, and each route still stands, in the parts of the day that use the room. */
export function waysHold(ctx: Context, day: Day, room: string | null): boolean {
  const scenes = scenesOf(ctx, day).filter((s) => room === null || s.rooms.includes(room));
  // Two parts of the day with the same rooms and pieces are judged once.
  const key = (s: Scene): string => JSON.stringify([[...s.rooms].sort(), s.id === "ceremony", s.items.map((i) => `${i.id}@${i.room}`).sort()]);
  const distinct = scenes.filter((s, i) => scenes.findIndex((o) => key(o) === key(s)) === i);
  return distinct.every((s) => {
    const guests = s.id === "ceremony" ? ctx.demand.ceremonyGuests : ctx.demand.guests;
    return everyWayOut(ctx, s, guests) && everyRoute(ctx, s);
  });
}

/** Asked of the quick map first, which is never freer than the exact one. */
function quickFirst(ctx: Context, s: Scene, holds: (exact: boolean) => boolean): boolean {
  const pieces = s.items.filter((i) => i.kind !== "chair").length;
  spend(ctx.effort, STEPS.quick(pieces));
  if (holds(false)) return true;
  spend(ctx.effort, STEPS.exact(pieces));
  return holds(true);
}
const everyWayOut = (ctx: Context, s: Scene, guests: number): boolean =>
  quickFirst(ctx, s, (exact) => waysOut(ctx.site, s, guests, undefined, exact ? undefined : quickWays(ctx.site, s)).unserved.length === 0);
const everyRoute = (ctx: Context, s: Scene): boolean =>
  quickFirst(ctx, s, (exact) => routes(ctx.site, s, undefined, exact ? undefined : quickRoutes(ctx.site, s)).unreached.length === 0);

/** High tables stand free, off everything by 500 mm and spread over the floor that is left (common practice, no source). */
function freeSpots(f: RoomFloor, spec: Spec): readonly (Spot & { readonly score: number })[] {
  const a = surroundings(f);
  const others = f.placed.filter((p) => p.item.kind === "cocktail-table").map((p) => p.item.at);
  const bar = a.bar;
  const score = (s: Spot): number =>
    Math.min(4000, ...others.map((o) => Math.hypot(o[0] - s.at[0], o[1] - s.at[1]))) / 1000 +
    (bar && Math.hypot(s.at[0] - bar[0], s.at[1] - bar[1]) < 2200 ? -1 : 0) - wallTouch(f, s);
  return floorSpots(f, sizeOf(spec), { front: 0, back: 0, side: 0 }, { step: 500, turns: [0] })
    .filter((s) => canStand(f, s.body, { gap: 500 }) && others.every((o) => Math.hypot(o[0] - s.at[0], o[1] - s.at[1]) >= 1600))
    .map((s) => ({ ...s, score: score(s) }))
    .sort((x, y) => y.score - x.score || x.at[0] - y.at[0] || x.at[1] - y.at[1]);
}
const wallTouch = (f: RoomFloor, s: Spot): number => (f.doorFloor.some((d) => meets(s.body, d, 600)) ? 2 : 0);

/** The last resort of a small display: it shares a table with another. */
function shareTable(day: Day, spec: Spec): { readonly day: Day; readonly host: string } | null {
  if (spec.kind !== "table" || !spec.role || spec.role === "cake" || spec.role === "appetisers") return null;
  for (const [id, room] of day.rooms) {
    const host = room.statics.find((p) => p.item.kind === "table" && p.item.role !== undefined && ["welcome", "cards", "guest-book", "photographs", "favours"].includes(p.item.role) && (p.item.also?.length ?? 0) < 3);
    if (!host) continue;
    const item: Item = { ...host.item, also: [...(host.item.also ?? []), spec.role, ...(spec.also ?? [])], label: `${host.item.label}, ${spec.label.toLowerCase()}` };
    return { day: replaceStatic(day, id, host, { ...host, item }), host: host.item.label };
  }
  return null;
}

