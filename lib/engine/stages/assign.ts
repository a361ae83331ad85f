import type { Brief } from "../../brief";
import { area } from "../../geometry";
import type { Package, Room, Use, Venue } from "../../venue";
import type { Demand } from "./demand";

/** Where each part of the day is held, and what must be cleared between. */
export type Plan = {
  readonly ceremony: string | null;
  /** Rooms the meal is laid in, the chief one first. */
  readonly meal: readonly string[];
  readonly dance: string | null;
  readonly drinks: readonly string[];
  readonly buffet: string | null;
  readonly bar: string | null;
  /** The ceremony's room is cleared and laid anew for the meal. */
  readonly turnover: boolean;
  /** The floor lies apart from the tables, beside them, or takes the place of tables struck after the meal. */
  readonly floor: "none" | "apart" | "beside" | "struck";
  readonly atTables: boolean;
  /** Less is tried first. */
  readonly cost: number;
};

export const packageRooms = (venue: Venue, pack: Package): readonly Room[] => venue.rooms.filter((r) => pack.rooms.includes(r.id));
const withUse = (rooms: readonly Room[], use: Use): readonly Room[] =>
  rooms.filter((r) => r.uses.includes(use)).sort((a, b) => area(b.outline) - area(a.outline) || (a.id < b.id ? -1 : 1));

/** Most people a room may hold at drinks or dancing: the larger of its posted figures, and never more than 1 to 0.65 sq m. */
export function holds(room: Room): number {
  const dense = Math.floor(area(room.outline) / 1e6 / 0.65);
  const posted = Math.max(room.posted?.tables ?? -1, room.posted?.standing ?? -1);
  return posted < 0 ? dense : Math.min(posted, dense);
}

export const turnoverAllowed = (pack: Package, brief: Brief): boolean => pack.turnover && brief.turnover !== false;

/**
 * Every sensible way of giving rooms to the parts of the day, the likeliest first. Pre: demand of the same brief.
 * Post: each room named belongs to the package and has the use it is given.
 */
export function assign(venue: Venue, pack: Package, brief: Brief, demand: Demand): readonly Plan[] {
  const rooms = packageRooms(venue, pack);
  const may = turnoverAllowed(pack, brief);
  const named = (use: Use, wanted: string): readonly Room[] => withUse(rooms, use).filter((r) => wanted === "any" || r.id === wanted);
  const mealWanted = brief.meal.service !== "none";
  const ceremonyWanted = brief.ceremony.here;
  const atTables = brief.ceremony.seating === "at-tables";
  const meals: readonly (readonly Room[])[] = mealWanted ? mealChoices(named("dining", brief.meal.room), demand.guests) : [[]];
  const ceremonies: readonly (Room | null)[] = ceremonyWanted ? named("ceremony", brief.ceremony.room) : [null];
  const dances: readonly (Room | null)[] = demand.floor ? withUse(rooms, "dancing") : [null];
  const buffets: readonly (Room | null)[] = demand.buffet && mealWanted ? withUse(rooms, "buffet") : [null];
  const plans: Plan[] = [];
  for (const meal of meals) for (const ceremony of ceremonies) for (const dance of dances) for (const buffet of buffets) {
    const inMeal = (r: Room | null): boolean => r !== null && meal.some((m) => m.id === r.id);
    const same = inMeal(ceremony);
    if (atTables && ceremonyWanted && !same) continue;
    const turnover = same && !atTables;
    if (turnover && !may) continue;
    const floors: readonly Plan["floor"][] = !dance ? ["none"] : !inMeal(dance) ? ["apart"] : may ? ["beside", "struck"] : ["beside"];
    for (const floor of floors) {
      if (floor === "apart" && dance && ceremony && dance.id === ceremony.id && !may) continue;
      const drinks = drinksRooms({ rooms, guests: demand.guests, buffet: buffet?.id ?? null, inMeal }, turnover || (dance?.id === ceremony?.id) ? ceremony?.id ?? null : null);
      const bar = demand.bar ? barRoom(rooms, drinks, dance, meal) : null;
      // A bar among the tables gives way where it would cost guests their places: nobody asked for it outright.
      for (const here of bar !== null && meal.some((m) => m.id === bar) ? [bar, null] : [bar]) plans.push({
        ceremony: ceremony?.id ?? null, meal: meal.map((m) => m.id), dance: dance?.id ?? null, drinks: drinks.map((r) => r.id),
        buffet: buffet?.id ?? null, bar: here, turnover, floor, atTables: atTables && ceremonyWanted,
        cost: cost({ meal, ceremony, dance, buffet, turnover, floor, sameAsCeremony: dance !== null && dance.id === ceremony?.id, inMeal }) + (here === bar ? 0 : 1.2),
      });
    }
  }
  return plans.sort((a, b) => a.cost - b.cost);
}

/** One room for everyone first; two together only where one is small for them (under 1.1 sq m a guest). */
function mealChoices(rooms: readonly Room[], guests: number): readonly (readonly Room[])[] {
  const alone = rooms.map((r) => [r] as const);
  const pairs: (readonly Room[])[] = [];
  for (const a of rooms) for (const b of rooms) if (a !== b && area(a.outline) >= area(b.outline) && area(a.outline) / 1e6 < guests * 1.6) pairs.push([a, b]);
  return [...alone, ...pairs.slice(0, 3)];
}

type DrinksAsk = { readonly rooms: readonly Room[]; readonly guests: number; readonly buffet: string | null; readonly inMeal: (r: Room) => boolean };
function drinksRooms({ rooms, guests, buffet, inMeal }: DrinksAsk, busy: string | null): readonly Room[] {
  const usable = withUse(rooms, "drinks").filter((r) => r.id !== busy)
    .sort((a, b) => Number(inMeal(a)) - Number(inMeal(b)) || Number(a.id === buffet) - Number(b.id === buffet) || Number(a.outdoor ?? false) - Number(b.outdoor ?? false) || area(b.outline) - area(a.outline));
  const out: Room[] = [];
  let room = 0;
  for (const r of usable) {
    if (room >= guests) break;
    out.push(r);
    room += holds(r);
  }
  if (room >= guests) return out;
  // Nowhere else is large enough: everyone stays about the laid room.
  const any = withUse(rooms, "drinks");
  return [...out, ...any.filter((r) => !out.includes(r))];
}

function barRoom(rooms: readonly Room[], drinks: readonly Room[], dance: Room | null, meal: readonly Room[]): string | null {
  const fits = (r: Room): boolean => r.uses.some((u) => u === "drinks" || u === "dancing" || u === "lounge" || u === "dining");
  const order = [...drinks.filter((r) => !r.outdoor), ...(dance ? [dance] : []), ...meal, ...drinks, ...rooms].filter(fits);
  return order[0]?.id ?? null;
}

type Weighed = {
  readonly meal: readonly Room[]; readonly ceremony: Room | null; readonly dance: Room | null; readonly buffet: Room | null;
  readonly turnover: boolean; readonly floor: Plan["floor"]; readonly sameAsCeremony: boolean; readonly inMeal: (r: Room | null) => boolean;
};
function cost(w: Weighed): number {
  const size = (r: Room | null | undefined): number => (r ? area(r.outline) / 1e6 : 0);
  return (
    -0.02 * size(w.meal[0]) + (w.meal.length - 1) * 3 + (w.meal[0]?.outdoor ? 2 : 0) +
    -0.01 * size(w.ceremony) + (w.ceremony?.outdoor ? 1 : 0) + (w.turnover ? 1 : 0) +
    (w.floor === "beside" ? 0.8 : w.floor === "struck" ? 1.4 : 0) + (w.floor === "apart" && w.sameAsCeremony ? 1 : 0) + (w.dance?.outdoor ? 1 : 0) +
    (w.buffet && w.inMeal(w.buffet) ? 0.6 : 0) + (w.buffet && w.dance && w.buffet.id === w.dance.id ? 0.6 : 0) + (w.buffet?.outdoor ? 1 : 0)
  );
}
