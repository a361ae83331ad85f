import { add, boundaryDistance, distance, scale, turn, type Point, type Polygon } from "../../geometry";
import { footprintPolygon, seatPolygon, type Item, type Scene, type Seat } from "../../layout";
import { quickRoutes, quickWays, routeMap, routes, waysOut } from "../../rules";
import { meets, within } from "../place";
import type { Context } from "./context";
import type { Day, RoomDay } from "./day";
import { scenesOf } from "./scenes";

/** Centre of a wheelchair's clear floor off the table's edge, mm: 1220 / 2 less the 17 in that reach beneath (2010 ADA 306.2). */
const UNDER = 1220 / 2 - 432;

/**
 * Mends the meal's places where they can spare it: places that no way out serves are taken away, and wheelchair places are made
 * where the accessible route comes by. Post: never fewer places than guests by what is done here.
 */
export function withAccess(ctx: Context, day: Day): Day {
  if (day.plan.meal.length === 0) return day;
  return withWheelchairs(ctx, withoutUnserved(ctx, day));
}

const mealScene = (ctx: Context, day: Day): Scene | undefined => scenesOf(ctx, day).find((s) => s.id === "meal");
const placesOf = (day: Day): number =>
  day.plan.meal.reduce((n, id) => n + (day.rooms.get(id)?.tables ?? []).filter((t) => t.role !== "work").reduce((k, t) => k + t.seats.length, 0), 0);

function mapTables(day: Day, change: (t: Item, room: RoomDay) => Item | null): Day {
  const rooms = new Map(day.rooms);
  for (const id of day.plan.meal) {
    const room = rooms.get(id);
    if (room) rooms.set(id, { ...room, tables: room.tables.flatMap((t) => { const c = change(t, room); return c ? [c] : []; }) });
  }
  return { ...day, rooms };
}

function withoutUnserved(ctx: Context, day: Day): Day {
  const scene = mealScene(ctx, day);
  if (!scene) return day;
  // The quick map is never freer than the exact one: where it serves all, so does that.
  if (waysOut(ctx.site, scene, ctx.demand.guests, undefined, quickWays(ctx.site, scene)).unserved.length === 0) return day;
  const bad = waysOut(ctx.site, scene, ctx.demand.guests).unserved;
  if (bad.length === 0 || bad.length > placesOf(day) - ctx.demand.guests) return day;
  const gone = new Set(bad.map((u) => `${u.item}#${u.seat}`));
  return mapTables(day, (t) => {
    const seats = t.seats.filter((_, k) => !gone.has(`${t.id}#${k}`));
    return seats.length === t.seats.length ? t : seats.length < 2 && t.role === "dining" ? null : { ...t, seats };
  });
}

type Offer = { readonly table: string; readonly seat: Seat; readonly drop: ReadonlySet<number>; readonly cost: number; readonly at: Point; readonly holds: () => boolean };

/** Turns chairs into wheelchair places, one at a time, spread over the tables, until as many are reached as are asked for. */
function withWheelchairs(ctx: Context, start: Day): Day {
  let day = start;
  const wanted = ctx.demand.wheelchairs;
  for (let tries = 0; tries < wanted + 4; tries++) {
    const scene = mealScene(ctx, day);
    if (!scene) return day;
    const coarse = routes(ctx.site, scene, undefined, quickRoutes(ctx.site, scene)).unreached;
    const lost = new Set((coarse.length === 0 ? coarse : routes(ctx.site, scene).unreached).filter((u) => u.seat !== undefined).map((u) => `${u.item}#${u.seat}`));
    // A place that no route reaches is an ordinary chair's again.
    if (lost.size > 0) day = mapTables(day, (t) => (t.seats.some((_, k) => lost.has(`${t.id}#${k}`)) ? { ...t, seats: t.seats.map((s, k) => (lost.has(`${t.id}#${k}`) ? backToChair(t, s) : s)) } : t));
    const have = tablesOf(day).reduce((n, t) => n + t.seats.filter((s) => s.place === "wheelchair").length, 0);
    if (have >= wanted) return day;
    const offer = bestOffer(ctx, day, placesOf(day) - ctx.demand.guests);
    if (!offer) return day;
    day = mapTables(day, (t) => (t.id === offer.table ? { ...t, seats: [...t.seats.filter((_, k) => !offer.drop.has(k)), offer.seat] } : t));
  }
  return day;
}

const tablesOf = (day: Day): readonly Item[] => day.plan.meal.flatMap((id) => day.rooms.get(id)?.tables ?? []);

const outward = (s: Seat): Point => turn([-1, 0], s.facing);
const edgeOff = (t: Item, s: Seat): number => ("diameter" in t.shape ? distance(t.at, [s.x, s.y]) - t.shape.diameter / 2 : boundaryDistance(footprintPolygon(t), [s.x, s.y]));

function wheelSeat(t: Item, s: Seat): Seat {
  const at = add([s.x, s.y], scale(outward(s), UNDER - edgeOff(t, s)));
  return { x: Math.round(at[0]), y: Math.round(at[1]), facing: s.facing, place: "wheelchair" };
}
function backToChair(t: Item, s: Seat): Seat {
  const at = add([s.x, s.y], scale(outward(s), 130 - edgeOff(t, s)));
  return { x: Math.round(at[0]), y: Math.round(at[1]), facing: s.facing, place: "chair" };
}

function bestOffer(ctx: Context, day: Day, spare: number): Offer | null {
  const scene = mealScene(ctx, day);
  if (!scene) return null;
  const map = routeMap(ctx.site, scene);
  const offers: Offer[] = [];
  for (const id of day.plan.meal) {
    const room = day.rooms.get(id);
    if (!room) continue;
    const level = room.f.room.level;
    for (const t of room.tables) {
      if (t.role !== "dining" || t.seats.some((s) => s.place === "wheelchair")) continue;
      t.seats.forEach((s, k) => {
        const seat = wheelSeat(t, s), poly = seatPolygon(seat);
        const drop = new Set([k, ...t.seats.flatMap((o, j) => (j !== k && meets(poly, seatPolygon(o, ctx.chair)) ? [j] : []))]);
        const cost = drop.size - 1;
        if (cost > spare || drop.size > 3 || t.seats.length - drop.size < 1) return;
        offers.push({ table: t.id, seat, drop, cost, at: t.at, holds: () => freeFor(room, t, poly) && map.reaches(poly, 440, level).some((p) => p.exits.length > 0) });
      });
    }
  }
  const taken = tablesOf(day).filter((t) => t.seats.some((s) => s.place === "wheelchair")).map((t) => t.at);
  // Spread: far from the wheelchair places there are.
  const spread = (o: Offer): number => (taken.length === 0 ? 0 : Math.min(...taken.map((p) => distance(p, o.at))) / 1000);
  return offers.sort((a, b) => a.cost - b.cost || spread(b) - spread(a) || a.at[0] - b.at[0] || a.at[1] - b.at[1]).find((o) => o.holds()) ?? null;
}

function freeFor(room: RoomDay, table: Item, poly: Polygon): boolean {
  const f = room.f;
  if (!within(poly, f.floor) || f.blocked.some((b) => meets(poly, b)) || f.doorFloor.some((d) => meets(poly, d))) return false;
  if (room.statics.some((p) => meets(poly, p.body) || p.item.seats.some((s) => meets(poly, seatPolygon(s))))) return false;
  return room.tables.every((t) => t.id === table.id || (!meets(poly, footprintPolygon(t)) && t.seats.every((s) => !meets(poly, seatPolygon(s)))));
}
