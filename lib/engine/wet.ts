import { quote } from "../fees";
import type { Finding, Layout, Told, WetTwin } from "../layout";
import { check, checkWet } from "../rules";
import type { Kept } from "./choose";
import { assign, type Plan } from "./stages/assign";
import { remembered, type Context } from "./stages/context";
import { layDay, type Day } from "./stages/day";
import { finish } from "./stages/finish";
import { tell, telling } from "./tell";
import { refusal } from "./refusal";

/** Plans under the roof that are laid for one layout, at the most. */
const PLANS = 2;

/** The same couple's day with every outdoor room shut. */
function underTheRoof(ctx: Context): Context {
  const dry = (id: string): boolean => ctx.venue.rooms.find((r) => r.id === id)?.outdoor !== true;
  const { ceremony, meal } = ctx.brief;
  const brief = { ...ctx.brief, ceremony: { ...ceremony, room: dry(ceremony.room) ? ceremony.room : "any" }, meal: { ...meal, room: dry(meal.room) ? meal.room : "any" } };
  return { ...ctx, brief, pack: { ...ctx.pack, rooms: ctx.pack.rooms.filter(dry) }, known: new Map() };
}

const outdoors = (ctx: Context, l: Layout): readonly string[] =>
  ctx.venue.rooms.filter((r) => r.outdoor === true && l.scenes.some((s) => s.rooms.includes(r.id))).map((r) => r.id);

/** How far another plan is from the dry day's: what guests would have to be told. */
const apart = (p: Plan, q: Plan): number =>
  (p.meal.join() === q.meal.join() ? 0 : 4) + (p.dance === q.dance && p.floor === q.floor ? 0 : 2) + (p.buffet === q.buffet ? 0 : 1) + (p.bar === q.bar ? 0 : 1) +
  (p.drapes.join() === q.drapes.join() ? 0 : 2) + (p.ceremony === q.ceremony ? 0 : 1);

/**
 * A layout that uses rooms outdoors, with its wet-weather twin: the same day under the roof, as little changed as can be, with its own
 * turnovers and fees. Where none was found a finding says so.
 */
export function withWetTwin(ctx: Context, kept: Kept): Layout {
  const { layout, day } = kept;
  const out = outdoors(ctx, layout);
  if (out.length === 0) return layout;
  const roof = remembered(ctx, "under the roof", () => underTheRoof(ctx));
  const plans = [...assign(ctx.venue, roof.pack, roof.brief, roof.demand)].sort((a, b) => apart(a, day.plan) - apart(b, day.plan) || a.cost - b.cost);
  for (const plan of plans.slice(0, PLANS)) {
    const twin = laid(roof, day, plan);
    if (!twin) continue;
    const twinned: Layout = { ...layout, wet: twin };
    // With a twin the rain is judged there, and no longer on the dry day.
    return telling(ctx.venue, { ...twinned, findings: check(ctx.venue, twinned, ctx.brief) }, { why: [underRoof(day.plan, plan)] });
  }
  const finding: Finding = refusal(ctx.venue, { code: "wet-twin", level: "should", source: "common practice, no source", items: [], data: { rooms: out } });
  return { ...layout, findings: [...layout.findings, finding] };
}

/** Where each part of the day goes that has another room when it rains. */
function underRoof(dry: Plan, wet: Plan): Told {
  return tell("under-the-roof", undefined, [
    ...(dry.ceremony === wet.ceremony ? [] : [tell("wet-ceremony", { room: wet.ceremony ?? "" })]), ...(dry.drinks.join() === wet.drinks.join() ? [] : [tell("wet-drinks", { rooms: wet.drinks })]),
    ...(dry.meal.join() === wet.meal.join() ? [] : [tell("wet-meal", { rooms: wet.meal })]), ...(dry.dance === wet.dance ? [] : [tell("wet-dancing", { room: wet.dance ?? "" })]),
  ]);
}

function laid(roof: Context, dry: Day, plan: Plan): WetTwin | null {
  // Where only the drinks came in, everything else may stand as it stood.
  const same = apart(plan, dry.plan) === 0;
  const days: readonly Day[] = same ? [{ ...dry, plan, rooms: new Map([...dry.rooms].filter(([id]) => roof.pack.rooms.includes(id))) }]
    : layDay(roof, { plan, ease: dry.ease, removed: { ids: new Set(dry.cleared), cost: 1 }, lane: false, hard: false, cost: 0 }).days.filter((d) => d.short === 0);
  const near = [...days].sort((a, b) => Number(tables(b) === tables(dry)) - Number(tables(a) === tables(dry)))[0];
  if (!near) return null;
  const { layout } = finish(roof, near);
  const findings = checkWet(roof.venue, layout, roof.brief);
  if (findings.some((f) => f.level === "must")) return null;
  return { scenes: layout.scenes, turnovers: layout.turnovers, findings, quote: quote(roof.venue, roof.brief, layout) };
}
const tables = (d: Day): string => d.meal.map((m) => `${m.seated.family} ${m.seated.form}`).join();
