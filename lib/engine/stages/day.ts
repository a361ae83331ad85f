import type { Item } from "../../layout";
import { placedOf, withPlaced, type Placed, type RoomFloor } from "../place";
import { standingItem } from "../../rules";
import type { RowPlan } from "../rows";
import { standAll, type Wanted } from "./anchors";
import { clearsRows, packageRooms, type Plan } from "./assign";
import { remembered, withDrapes, type Context, type Ease } from "./context";
import type { Spec } from "./demand";
import { drapedFloor } from "./draped";
import { layMeal, type MealStand } from "./meal";
import { withSuppliers } from "./suppliers";
import { withRows } from "./rows";

/** Everything that stands in one room through the day. */
export type RoomDay = {
  readonly f: RoomFloor;
  /** Standing furniture kept, and pieces that stand all day. */
  readonly statics: readonly Placed[];
  readonly tables: readonly Item[];
  readonly rows: RowPlan | null;
  /** Pieces that only the meal's half of a turned-over room holds. */
  readonly mealOnly: ReadonlySet<string>;
  /** The rows are taken up after the ceremony: their chairs are carried to the meal. */
  readonly fetched?: true;
};

export type Day = {
  readonly plan: Plan;
  readonly ease: Ease;
  readonly rooms: ReadonlyMap<string, RoomDay>;
  readonly meal: readonly MealStand[];
  readonly struckFloor: Item | null;
  /** Pieces that found no place, by the brief's word. */
  readonly left: readonly Spec[];
  readonly removed: readonly string[];
  /** Standing pieces cleared for the search, some of which may have come back. */
  readonly cleared: readonly string[];
  /** Standing pieces that a drape has displaced, and the room where each stands now. */
  readonly rehomed: readonly { readonly id: string; readonly room: string }[];
  readonly short: number;
};

/** Why a plan came to nothing, for the closest attempt and the words of a refusal. */
export type Miss = {
  readonly plan: Plan; readonly ease: Ease; readonly why: "floor" | "places" | "rows"; readonly got?: number; readonly wanted?: number;
  /** Where it failed, and the pieces that were to stand there, by the brief's words. */
  readonly room?: string; readonly pieces?: readonly string[];
  /** Chairs that were there for the rows. */
  readonly chairs?: number;
};

/** One thing to try: a plan, how much comfort is let go, which standing pieces are carried out, whether a lane is kept for wheels. */
export type Attempt = {
  readonly plan: Plan; readonly ease: Ease; readonly lane: boolean; readonly cost: number;
  readonly removed: { readonly ids: ReadonlySet<string>; readonly cost: number };
  /** With more walls tried and more search: the last tries, where all others fell short. */
  readonly hard: boolean;
  /** False where a table for the couple alone is let go for the sake of the guests' places. */
  readonly top?: boolean;
};

/** The ceremony's rows in a room, where they stay as they were through the day; null where they are taken up, or there are none. */
export const rowsLeft = ({ plan }: Pick<Day, "plan">, room: RoomDay): RowPlan | null =>
  (room.f.id === plan.ceremony && !room.fetched && !clearsRows(plan, room.f.id) ? room.rows : null);

/** The rooms of the package with the standing furniture that stays. */
export function emptyRooms(ctx: Context, removed: ReadonlySet<string>): Map<string, RoomDay> {
  const out = new Map<string, RoomDay>();
  for (const room of packageRooms(ctx.venue, ctx.pack)) {
    const bare = remembered(ctx, `bare ${room.id}`, () => drapedFloor(ctx.site, room.id));
    if (!bare) continue;
    const stays = bare.room.standing.filter((s) => !removed.has(s.id));
    // The same room with the same furniture is one and the same, so that what is worked out on it is found again.
    out.set(room.id, remembered(ctx, `kept ${room.id} ${stays.map((s) => s.id).join(" ")}`, () => {
      const kept = stays.map((s) => placedOf(standingItem(room.id, s)));
      return { f: withPlaced(bare, ...kept), statics: kept, tables: [], rows: null, mealOnly: new Set<string>() };
    }));
  }
  return out;
}

const stand = (ctx: Context, rooms: Map<string, RoomDay>, id: string, wanted: readonly Wanted[]): readonly Spec[] | null => {
  const day = rooms.get(id);
  if (!day) return wanted.map((w) => w.spec);
  const best = ctx.watch.time("anchors", () => standAll(day.f, wanted, { known: ctx.known }))[0];
  if (!best) return null;
  rooms.set(id, { ...day, f: best.f, statics: [...day.statics, ...best.placed] });
  return best.left;
};

/** What each room beside the meal's must hold, in the order of size. */
function besides(ctx: Context, plan: Plan): ReadonlyMap<string, readonly Wanted[]> {
  const out = new Map<string, Wanted[]>();
  const put = (room: string | null, spec: Spec | null, how: Partial<Wanted>): void => {
    if (!room || !spec || plan.meal.includes(room)) return;
    out.set(room, [...(out.get(room) ?? []), { spec, ...how }]);
  };
  if (plan.floor === "apart") {
    put(plan.dance, ctx.demand.floor, { free: true });
    put(plan.dance, ctx.demand.music, { optional: false });
  }
  put(plan.buffet, ctx.demand.buffet, {});
  put(plan.bar, ctx.demand.bar, { optional: true });
  put(plan.bar, ctx.demand.secondBar, { optional: true });
  return out;
}

/**
 * Lays one whole day for a plan: big pieces beside the meal, the meal's rooms, the ceremony's rows.
 * Post: a day seats everyone (`short` 0) or says by how many it falls short; displays are not placed yet.
 */
export function layDay(base: Context, { plan, ease, removed: { ids: removed }, lane, hard, top = true }: Attempt): { readonly days: readonly Day[]; readonly misses: readonly Miss[] } {
  const ctx = withDrapes(base, plan.drapes);
  const misses: Miss[] = [];
  const rooms = emptyRooms(ctx, removed);
  const left: Spec[] = plan.bar === null && ctx.demand.bar ? [ctx.demand.bar, ...(ctx.demand.secondBar ? [ctx.demand.secondBar] : [])] : [];
  for (const [room, wanted] of besides(ctx, plan)) {
    const unplaced = stand(ctx, rooms, room, wanted);
    if (unplaced === null) return { days: [], misses: [{ plan, ease, why: "floor", room, pieces: wanted.filter((w) => w.optional !== true).map((w) => w.spec.word) }] };
    left.push(...unplaced);
  }
  const mealSpecs = (room: string): readonly Spec[] => {
    if (room !== plan.meal[0]) return plan.buffet === room && ctx.demand.buffet ? [ctx.demand.buffet] : [];
    const all = [
      plan.floor === "beside" ? ctx.demand.floor : null,
      plan.floor !== "apart" ? ctx.demand.music : null,
      plan.buffet === room ? ctx.demand.buffet : null,
      plan.bar && plan.meal.includes(plan.bar) ? ctx.demand.bar : null,
      plan.bar && plan.meal.includes(plan.bar) ? ctx.demand.secondBar : null,
    ];
    return all.filter((s): s is Spec => s !== null);
  };
  if (plan.meal.length === 0) {
    const rest = [plan.floor !== "apart" ? ctx.demand.music : null].filter((s): s is Spec => s !== null);
    for (const spec of rest) {
      const where = plan.dance ?? plan.ceremony ?? plan.drinks[0];
      if (where) left.push(...(stand(ctx, rooms, where, [{ spec, optional: true }]) ?? [spec]));
    }
    const done = ctx.watch.time("rows", () => withRows(ctx, plan, rooms, 0));
    return done.rooms ? { days: [{ plan, ease, rooms: done.rooms, meal: [], struckFloor: null, left, removed: [...removed], cleared: [...removed], rehomed: [], short: 0 }], misses } : { days: [], misses: [{ plan, ease, why: "rows", got: done.most, chairs: done.chairs }] };
  }
  const days: Day[] = [];
  const meals = mealOf(ctx, { plan, ease, lane, hard, top }, rooms, mealSpecs);
  if (meals.length === 0) misses.push({ plan, ease, why: "places", got: 0, wanted: ctx.demand.guests, pieces: plan.meal.flatMap((room) => mealSpecs(room).map((s) => s.word)) });
  for (const first of meals) {
    const seatedAll = first.reduce((n, m) => n + m.places, 0);
    const short = Math.max(0, ctx.demand.guests - seatedAll);
    if (short > 0) { misses.push({ plan, ease, why: "places", got: seatedAll, wanted: ctx.demand.guests }); if (days.length > 0) continue; }
    const laid = new Map(rooms);
    for (const m of first) {
      const day = laid.get(m.room);
      if (!day) continue;
      const tables = [...m.top, ...m.seated.items];
      laid.set(m.room, { ...day, f: withPlaced(day.f, ...m.anchors), statics: [...day.statics, ...m.anchors], tables });
    }
    const used = first.reduce((n, m) => n + [...m.top, ...m.seated.items].reduce((k, i) => k + i.seats.filter((s) => s.place === "chair").length, 0), 0);
    const done = ctx.watch.time("rows", () => withRows(ctx, plan, laid, used));
    if (!done.rooms) { misses.push({ plan, ease, why: "rows", got: done.most, chairs: done.chairs }); continue; }
    days.push({ plan, ease, rooms: done.rooms, meal: first, struckFloor: null, left: [...left, ...first.flatMap((m) => m.unplaced)], removed: [...removed], cleared: [...removed], rehomed: [], short });
  }
  return { days: days.sort((a, b) => a.short - b.short), misses };
}

/** The meal in one room, or in two where the first does not seat everyone: each list is one way of laying all of them. */
function mealOf(ctx: Context, { plan, ease, lane, hard, top }: Pick<Attempt, "plan" | "ease" | "lane" | "hard" | "top">, rooms: ReadonlyMap<string, RoomDay>, specs: (room: string) => readonly Spec[]): readonly (readonly MealStand[])[] {
  const [one, two] = plan.meal;
  const a = one ? rooms.get(one) : undefined;
  if (!one || !a) return [];
  const taken = stockTaken(rooms);
  const chairs = ctx.chair.all;
  const ask = { floor: a.f, specs: specs(one), guests: ctx.demand.guests, wheelchairs: ctx.demand.wheelchairs, withTop: top !== false, taken, chairsLeft: chairs, ease, lane, hard };
  const firsts = withSuppliers(ctx, plan, ask) ?? layMeal(ctx, ask);
  const b = two ? rooms.get(two) : undefined;
  if (!two || !b) return differing(firsts).slice(0, 4).map((m) => [m]);
  return firsts.slice(0, 2).flatMap((m) => {
    const rest = ctx.demand.guests - m.places;
    if (rest <= 0) return [];
    // No table is left with one guest, nor a room with a handful.
    const more = stockTakenBy([...m.top, ...m.seated.items, ...m.anchors.map((p) => p.item)], taken);
    const seconds = layMeal(ctx, { ...ask, floor: b.f, specs: specs(two), guests: Math.max(rest, 2), wheelchairs: 0, withTop: false, taken: more, chairsLeft: chairs - m.places });
    return seconds.slice(0, 2).map((s) => [m, namedApart(s)]);
  });
}

/** Tables of a second room, which no table of the first may share its name with until all are numbered. */
const namedApart = (m: MealStand): MealStand => ({ ...m, seated: { ...m.seated, items: m.seated.items.map((i) => ({ ...i, id: `second-${i.id}` })) } });

/** The best of each kind of table and form. */
function differing(stands: readonly MealStand[]): readonly MealStand[] {
  const seen = new Set<string>();
  return stands.filter((m) => { const k = `${m.seated.family} ${m.seated.form}`; if (seen.has(k)) return false; seen.add(k); return true; });
}

export const stockTaken = (rooms: ReadonlyMap<string, RoomDay>): ReadonlyMap<string, number> =>
  stockTakenBy([...rooms.values()].flatMap((r) => [...r.statics.map((p) => p.item), ...r.tables]), new Map());

export function stockTakenBy(items: readonly Item[], start: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const out = new Map(start);
  for (const i of items) if ("stock" in i.from) out.set(i.from.stock, (out.get(i.from.stock) ?? 0) + (i.from.count ?? 1));
  return out;
}
