import { clearance, distance, type Point } from "../../geometry";
import { footprint, type Item } from "../../layout";
import type { Plan } from "./assign";
import { packageRooms } from "./assign";
import type { Context } from "./context";
import { layMeal, type MealAsk, type MealStand } from "./meal";

/** Tables nearer than this stand end to end, mm. */
const JOINED = 100;

/**
 * Where the people who work that day have no other room to eat in, a table more is laid among the guests and kept for them: the one
 * farthest from the couple. Null where they have a room, or where no table more is found with everyone seated.
 */
export function withSuppliers(ctx: Context, plan: Plan, ask: MealAsk): readonly MealStand[] | null {
  const wanted = ctx.brief.guests.suppliers;
  const others = packageRooms(ctx.venue, ctx.pack).filter((r) => !plan.meal.includes(r.id) && r.id !== plan.ceremony && r.outdoor !== true && r.uses.length > 0);
  if (wanted === 0 || others.length > 0 || ask.hard || !ask.withTop) return null;
  const most = Math.max(0, ...ctx.venue.stock.map((s) => (s.kind === "table" && s.count > 0 ? s.seats?.[ask.ease.perTable === "most" ? "most" : "comfort"] ?? 0 : 0)));
  const kept = layMeal(ctx, { ...ask, guests: ask.guests + Math.max(most, wanted) }).flatMap((m): readonly MealStand[] => {
    const made = keepOne(m, ask.guests, wanted);
    return made ? [made] : [];
  });
  return kept.length > 0 ? kept : null;
}

function keepOne(m: MealStand, guests: number, wanted: number): MealStand | null {
  const { items } = m.seated;
  const couple: Point = m.top[0]?.at ?? items[0]?.at ?? [0, 0];
  const alone = (t: Item): boolean => items.every((o) => o === t || clearance(footprint(o), footprint(t)) > JOINED);
  const table = items.filter((t) => m.places - t.seats.length >= guests && t.seats.every((s) => s.place === "chair") && alone(t))
    .sort((a, b) => Math.min(b.seats.length, wanted) - Math.min(a.seats.length, wanted) || distance(b.at, couple) - distance(a.at, couple) || (a.id < b.id ? -1 : 1))[0];
  if (!table) return null;
  const every = Math.max(1, Math.floor(table.seats.length / Math.max(1, wanted)));
  const work: Item = { ...table, id: "work-table", role: "work", label: "Suppliers", seats: table.seats.filter((_, k) => k % every === 0).slice(0, wanted) };
  return { ...m, places: m.places - table.seats.length, seated: { ...m.seated, items: items.map((t) => (t === table ? work : t)), places: m.seated.places - table.seats.length } };
}
