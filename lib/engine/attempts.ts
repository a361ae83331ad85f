import { siteFor } from "../rules";
import { assign, type Plan } from "./stages/assign";
import { eases, type Context, type Ease } from "./stages/context";
import type { Attempt } from "./stages/day";
import type { Demand, Spec } from "./stages/demand";
import { drapedRoom } from "./stages/draped";

/** What letting go of comfort weighs against another room, a moved piece or a turnover. */
const EASE_COST: Readonly<Record<Ease["gaps"], number>> = { comfort: 0, close: 1.4, most: 2 };
const FULL_COST: Readonly<Record<Ease["gaps"], number>> = { comfort: 1.1, close: 0.6, most: 0.8 };
/** Most plans that are looked at, the cheapest first. */
const PLANS = 14;

/** Plans by ease of comfort by standing pieces carried out, the cheapest for the couple first. */
export function attempts(ctx: Context): readonly Attempt[] {
  const plans = assign(ctx.venue, ctx.pack, ctx.brief, ctx.demand);
  const out: Attempt[] = [];
  for (const plan of spread(plans)) for (const ease of eases(ctx.brief)) for (const removed of removals(ctx, plan)) {
    for (const lane of plan.meal.length > 0 ? [false, true] : [false])
      out.push({ plan, ease, removed, lane, hard: false, cost: plan.cost + EASE_COST[ease.gaps] + (ease.perTable === "most" && ctx.brief.meal.perTable === "comfort" ? FULL_COST[ease.gaps] : 0) + 0.7 * removed.cost + (lane ? 0.4 : 0) });
  }
  return out.sort((a, b) => a.cost - b.cost);
}

/** The cheapest plans, yet the best of each way of drawing the drapes among them. */
function spread(plans: readonly Plan[]): readonly Plan[] {
  const drapes = [...new Set(plans.map((p) => p.drapes.join(" ")))];
  const first = drapes.flatMap((d) => plans.filter((p) => p.drapes.join(" ") === d).slice(0, 3));
  return [...new Set([...first, ...plans.slice(0, PLANS)])];
}

export type Removed = { readonly ids: ReadonlySet<string>; readonly cost: number };

/** Standing furniture stays; or all of it that may be moved goes from the rooms that need the floor. */
function removals(ctx: Context, plan: Plan): readonly Removed[] {
  const rooms = [...new Set([...plan.meal, plan.dance, plan.ceremony, plan.buffet])].filter((r): r is string => r !== null);
  const site = siteFor(ctx.venue, plan.drapes);
  const movable = rooms.flatMap((id) => drapedRoom(site, id)?.standing ?? []).filter((s) => s.move !== null).map((s) => s.id);
  // What stands where a drape gives floor to a room goes from there in any case, and comes back where the tables leave it its place.
  const lent = site.drapes.flatMap((d) => {
    const own = site.rooms.get(d.grows)?.room.standing ?? [];
    return (drapedRoom(site, d.grows)?.standing ?? []).filter((s) => s.move !== null && !own.includes(s)).map((s) => s.id);
  });
  const all = new Set([...lent, ...movable]);
  return all.size === lent.length ? [{ ids: new Set(lent), cost: 0 }] : [{ ids: new Set(lent), cost: 0 }, { ids: all, cost: 1 }];
}

/** What two attempts have in common that are the same but for the ease of comfort. */
export const placeKey = (a: Attempt): string => JSON.stringify([signOf(a.plan), a.removed.cost]);
/** A plan by its rooms, drapes and floor. */
export const signOf = (p: Plan): string => JSON.stringify([p.ceremony, p.meal, p.dance, p.drinks, p.buffet, p.bar, p.drapes, p.floor]);

/** The big pieces that stand among a plan's tables: the more of them, the fewer tables. */
const among = (p: Plan): ReadonlySet<string> => new Set([
  ...(p.floor === "beside" ? ["floor"] : []), ...(p.floor === "apart" ? [] : ["music"]),
  ...(p.buffet !== null && p.meal.includes(p.buffet) ? ["buffet"] : []), ...(p.bar !== null && p.meal.includes(p.bar) ? ["bar"] : []),
]);
/** Floor, sq m, that a guest at a table takes as a rule: what a piece among the tables costs in places. */
const A_GUEST = 1.6;
/** Places that the pieces of a plan take which the other has elsewhere, as a rule. */
const costIn = (p: Plan, than: Plan, size: Forecast["size"]): number => [...among(p)].filter((w) => !among(than).has(w)).reduce((n, w) => n + (size.get(w) ?? 0) / A_GUEST, 0);
/** Whether a plan lays the meal on the same floor as another with all that stands there in that one, and perhaps more. */
const noRoomier = (p: Plan, than: Plan): boolean => p.meal.join() === than.meal.join() && p.drapes.join() === than.drapes.join() && [...among(than)].every((w) => among(p).has(w));

/** How many more places a looser ease has brought at the most, of rooms tried: a forecast, not a bound. */
const LOOSE: Readonly<Record<Ease["gaps"], number>> = { comfort: 1, close: 1.35, most: 1.42 };
const looseness = (e: Ease): number => LOOSE[e.gaps] * (e.perTable === "most" ? 1.35 : 1);
/** How many more places a looser ease brings as a rule. */
const USUAL: Readonly<Record<Ease["gaps"], number>> = { comfort: 1, close: 1.07, most: 1.12 };
const usual = (e: Ease): number => USUAL[e.gaps] * (e.perTable === "most" ? 1.22 : 1);
/** And what carrying the standing furniture out has brought. */
const CLEARED = 1.25;

export type Forecast = {
  /** Floor under each big piece with what it needs about it, sq m. */
  readonly size: ReadonlyMap<string, number>;
  /** False where what was learnt tells that an attempt cannot seat everyone. */
  readonly hopeful: (a: Attempt) => boolean;
  /** Whether, as a rule, an attempt seats everyone, going by what others in the same rooms have seated; or a share more, where so much is allowed for. */
  readonly likely: (a: Attempt, allowed?: number) => boolean;
  readonly learn: (a: Attempt, got: number) => void;
};

function floorOf(spec: Spec | null): number {
  if (!spec) return 0;
  const { front, back, side } = spec.around, [w, d] = "diameter" in spec.shape ? [spec.shape.diameter, spec.shape.diameter] : [spec.shape.width, spec.shape.depth];
  return ((w + 2 * side) * (d + front + back)) / 1e6;
}

/** Learns from each attempt that fell short which others need not be made. */
export function forecast({ guests, ...demand }: Pick<Demand, "guests" | "floor" | "music" | "buffet" | "bar">): Forecast {
  const size = new Map((["floor", "music", "buffet", "bar"] as const).map((w) => [w, floorOf(demand[w])]));
  const known: { readonly a: Attempt; readonly got: number }[] = [];
  return {
    size,
    likely: (a, allowed = 1) => known.every((k) => (signOf(k.a.plan) !== signOf(a.plan) && !noRoomier(a.plan, k.a.plan)) ||
      (k.got * usual(a.ease)) / usual(k.a.ease) * (a.removed.cost > k.a.removed.cost ? 1.06 : 1) * allowed - costIn(a.plan, k.a.plan, size) >= guests),
    learn: (a, got) => void known.push({ a, got }),
    hopeful: (a) => known.every((k) => {
      // What fell short with less among the tables falls short with more; by the same rooms and pieces much more is known.
      if (signOf(k.a.plan) !== signOf(a.plan) && !noRoomier(a.plan, k.a.plan)) return true;
      if (k.a.lane && !a.lane) return true;
      const cleared = a.removed.cost > k.a.removed.cost, by = looseness(a.ease) / looseness(k.a.ease);
      if (a.removed.cost < k.a.removed.cost) return by > 1;
      // From nothing at all no share tells what the cleared floor will hold.
      if (cleared && k.got === 0) return true;
      return (cleared || by > 1) && k.got * by * (cleared ? CLEARED : 1) >= guests;
    }),
  };
}
