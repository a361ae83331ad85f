import type { Brief } from "../../brief";
import { loadKinds, peopleOf, postedFor, siteFor } from "../../rules";
import type { Package, Room, Site, Use, Venue } from "../../venue";
import type { Demand } from "./demand";
import { canEnter, drapeChoices, joinedTo, withoutSteps } from "./draped";

/** Where each part of the day is held, and what must be cleared between. */
export type Plan = {
  readonly ceremony: string | null;
  /** Rooms the meal is laid in, the chief one first. */
  readonly meal: readonly string[];
  readonly dance: string | null;
  readonly drinks: readonly string[];
  readonly buffet: string | null;
  readonly bar: string | null;
  /** Drapes drawn all day. */
  readonly drapes: readonly string[];
  /** The ceremony's room is cleared and laid anew for the meal. */
  readonly turnover: boolean;
  /** The floor lies apart from the tables, beside them, or takes the place of tables struck after the meal. */
  readonly floor: "none" | "apart" | "beside" | "struck";
  readonly atTables: boolean;
  /** Less is tried first. */
  readonly cost: number;
};

export const packageRooms = (venue: Venue, pack: Package): readonly Room[] => venue.rooms.filter((r) => pack.rooms.includes(r.id));

export const turnoverAllowed = (pack: Package, brief: Brief): boolean => pack.turnover && brief.turnover !== false;

/** The ceremony's rows are taken up where the meal is laid or the dancing begins. */
export const clearsRows = (plan: Plan, room: string): boolean => plan.meal.includes(room) || (plan.dance === room && plan.floor === "apart");

/** Drawing a drape costs a charge and a crew's time: it is tried after the same day without it. */
const DRAPE_COST = 1.6;
/** A room that is reached only from outdoors is nobody's first choice for bar or dancing. */
const CUT_OFF_COST = 1.5;
/** Guests who have no other room while theirs is turned over. */
const NO_ROOM_COST = 2.5;

/** What the assignment asks of one way of drawing the drapes. */
type Floor = {
  readonly site: Site;
  readonly rooms: readonly Room[];
  /** Where guests come in wheelchairs: the rooms that they come to without a step. */
  readonly level: ReadonlySet<string> | null;
  readonly brief: Brief;
  readonly size: (r: Room | null | undefined) => number;
};

/** Rooms let for a use that guests can come into, the largest first; those that everyone reaches, if there are any. */
function withUse(f: Floor, use: Use): readonly Room[] {
  const open = f.rooms.filter((r) => r.uses.includes(use) && (f.site.drapes.length === 0 || canEnter(f.site, r.id)));
  const level = open.filter((r) => f.level?.has(r.id) ?? true);
  return (level.length > 0 ? level : [...open]).sort((a, b) => f.size(b) - f.size(a) || (a.id < b.id ? -1 : 1));
}

/** Most guests that a room may hold at a part of the day, by the figures that govern it. */
function holds(f: Floor, room: Room, scene: "ceremony" | "drinks" | "meal"): number {
  const load = postedFor(f.site, { id: scene, rooms: [room.id] }, f.brief);
  return Math.min(load.total, load.densest);
}

/**
 * Every sensible way of giving rooms to the parts of the day, the likeliest first. Pre: demand of the same brief.
 * Post: each room named belongs to the package, has the use it is given, and by its posted figure may hold who is meant for it.
 */
export function assign(venue: Venue, pack: Package, brief: Brief, demand: Demand): readonly Plan[] {
  return drapeChoices(venue, pack, brief).flatMap((drapes) => plansFor(venue, pack, { brief, demand, drapes })).sort((a, b) => a.cost - b.cost);
}

type Ask = { readonly brief: Brief; readonly demand: Demand; readonly drapes: readonly string[] };

function plansFor(venue: Venue, pack: Package, { brief, demand, drapes }: Ask): readonly Plan[] {
  const site = siteFor(venue, drapes);
  const rooms = packageRooms(venue, pack);
  const f: Floor = {
    site, rooms, level: demand.wheelchairs > 0 ? withoutSteps(site) : null, brief, size: (r) => (r ? (site.rooms.get(r.id)?.area ?? 0) / 1e6 : 0),
  };
  const may = turnoverAllowed(pack, brief);
  const named = (use: Use, wanted: string): readonly Room[] => withUse(f, use).filter((r) => wanted === "any" || r.id === wanted);
  const ceremonyGuests = peopleOf(brief, "ceremony").guests;
  const atTables = brief.ceremony.seating === "at-tables";
  const meals: readonly (readonly Room[])[] = brief.meal.service === "none" ? [[]] : mealChoices(f, named("dining", brief.meal.room), demand.guests);
  const ceremonies: readonly (Room | null)[] = brief.ceremony.here
    ? named("ceremony", brief.ceremony.room).filter((r) => loadKinds("ceremony", brief.ceremony.seating)[0] === "tables" || holds(f, r, "ceremony") >= ceremonyGuests) : [null];
  const dances: readonly (Room | null)[] = demand.floor ? withUse(f, "dancing") : [null];
  const buffets: readonly (Room | null)[] = demand.buffet && brief.meal.service !== "none" ? withUse(f, "buffet") : [null];
  const grown = site.drapes.map((d) => d.grows);
  const plans: Plan[] = [];
  for (const meal of meals) for (const ceremony of ceremonies) for (const dance of dances) for (const buffet of buffets) {
    const inMeal = (r: Room | null): boolean => r !== null && meal.some((m) => m.id === r.id);
    // A drape that grows no room where people sit is drawn for nothing.
    if (grown.some((g) => !meal.some((m) => m.id === g) && ceremony?.id !== g && !(brief.drape === "yes" && dance?.id === g))) continue;
    const same = inMeal(ceremony);
    if (atTables && brief.ceremony.here && !same) continue;
    const turnover = same && !atTables;
    if (turnover && !may) continue;
    const near = joinedTo(site, (meal[0] ?? ceremony ?? dance)?.id ?? "");
    const floors: readonly Plan["floor"][] = !dance ? ["none"] : !inMeal(dance) ? ["apart"] : may ? ["beside", "struck"] : ["beside"];
    for (const floor of floors) {
      if (floor === "apart" && dance && ceremony && dance.id === ceremony.id && !may) continue;
      const busy = turnover || (dance?.id === ceremony?.id) ? ceremony?.id ?? null : null;
      const drinks = drinksRooms(f, { guests: demand.guests, buffet: buffet?.id ?? null, inMeal, near }, busy);
      const waiting = drinks.filter((r) => r.id !== ceremony?.id).reduce((n, r) => n + holds(f, r, "drinks"), 0);
      const bar = demand.bar ? barRoom(f, { drinks, dance, meal, near }) : null;
      const away = [dance, rooms.find((r) => r.id === bar) ?? null].filter((r) => r !== null && !near.has(r.id)).length;
      // A bar among the tables, or beside rows that stay, gives way where it would cost guests their places: nobody asked for it outright.
      const among = bar !== null && (meal.some((m) => m.id === bar) || (ceremony?.id === bar && !turnover));
      for (const here of among ? [bar, null] : [bar]) plans.push({
        ceremony: ceremony?.id ?? null, meal: meal.map((m) => m.id), dance: dance?.id ?? null, drinks: drinks.map((r) => r.id),
        buffet: buffet?.id ?? null, bar: here, drapes, turnover, floor, atTables: atTables && brief.ceremony.here,
        cost: cost(f, { meal, ceremony, dance, buffet, turnover, floor, sameAsCeremony: dance !== null && dance.id === ceremony?.id, inMeal }) +
          (here === bar ? 0 : 1.2) + (turnover && waiting < demand.guests ? NO_ROOM_COST : 0) + drapes.length * DRAPE_COST + away * CUT_OFF_COST,
      });
    }
  }
  return plans;
}

/** One room for everyone first; two together only where one is small for them (under 1.6 sq m a guest). */
function mealChoices(f: Floor, rooms: readonly Room[], guests: number): readonly (readonly Room[])[] {
  const most = new Map(rooms.map((r) => [r.id, holds(f, r, "meal")]));
  const alone = rooms.filter((r) => (most.get(r.id) ?? 0) >= guests).map((r) => [r] as const);
  const pairs: (readonly Room[])[] = [];
  for (const a of rooms) for (const b of rooms) {
    if (a === b || f.size(a) < f.size(b) || (f.size(a) === f.size(b) && a.id > b.id) || f.size(a) >= guests * 1.6) continue;
    if ((most.get(a.id) ?? 0) + (most.get(b.id) ?? 0) >= guests) pairs.push([a, b]);
  }
  return [...alone, ...pairs.slice(0, 3)];
}

type DrinksAsk = { readonly guests: number; readonly buffet: string | null; readonly inMeal: (r: Room) => boolean; readonly near: ReadonlySet<string> };
function drinksRooms(f: Floor, { guests, buffet, inMeal, near }: DrinksAsk, busy: string | null): readonly Room[] {
  const usable = withUse(f, "drinks").filter((r) => r.id !== busy)
    .sort((a, b) => Number(inMeal(a)) - Number(inMeal(b)) || Number(!near.has(a.id)) - Number(!near.has(b.id)) || Number(a.id === buffet) - Number(b.id === buffet) ||
      Number(a.outdoor ?? false) - Number(b.outdoor ?? false) || f.size(b) - f.size(a));
  const out: Room[] = [];
  let room = 0;
  for (const r of usable) {
    if (room >= guests) break;
    out.push(r);
    room += holds(f, r, "drinks");
  }
  if (room >= guests) return out;
  // Nowhere else is large enough: everyone stays about the laid room.
  const any = withUse(f, "drinks");
  return [...out, ...any.filter((r) => !out.includes(r))];
}

type BarAsk = { readonly drinks: readonly Room[]; readonly dance: Room | null; readonly meal: readonly Room[]; readonly near: ReadonlySet<string> };
function barRoom(f: Floor, { drinks, dance, meal, near }: BarAsk): string | null {
  const open = withUse(f, "drinks");
  const order = [...drinks.filter((r) => !r.outdoor), ...(dance ? [dance] : []), ...meal, ...drinks, ...f.rooms].filter((r) => open.includes(r));
  return (order.find((r) => near.has(r.id)) ?? order[0])?.id ?? null;
}

type Weighed = {
  readonly meal: readonly Room[]; readonly ceremony: Room | null; readonly dance: Room | null; readonly buffet: Room | null;
  readonly turnover: boolean; readonly floor: Plan["floor"]; readonly sameAsCeremony: boolean; readonly inMeal: (r: Room | null) => boolean;
};
function cost({ size }: Floor, w: Weighed): number {
  return (
    -0.02 * size(w.meal[0]) + (w.meal.length - 1) * 3 + (w.meal[0]?.outdoor ? 2 : 0) +
    -0.01 * size(w.ceremony) + (w.ceremony?.outdoor ? 1 : 0) + (w.turnover ? 1 : 0) +
    (w.floor === "beside" ? 0.8 : w.floor === "struck" ? 1.4 : 0) + (w.floor === "apart" && w.sameAsCeremony ? 1 : 0) + (w.dance?.outdoor ? 1 : 0) +
    (w.buffet && w.inMeal(w.buffet) ? 0.6 : 0) + (w.buffet && w.dance && w.buffet.id === w.dance.id ? 0.6 : 0) + (w.buffet?.outdoor ? 1 : 0)
  );
}
