import { area } from "../../geometry";
import { bringsChairs, type Scene, type Told, type Turnover } from "../../layout";
import type { ToldCode } from "../../words/engine";
import { tell } from "../tell";
import type { Context } from "./context";
import type { Day } from "./day";
import type { GaveWay } from "./displays";
import { honoured } from "./honour";
import { facing } from "./score";

const FORMS: Readonly<Record<string, ToldCode>> = { u: "form-u", e: "form-e", t: "form-t", "hollow-square": "form-hollow-square", spine: "form-spine" };

/** A short name for a layout, from what its tables are and how they stand. */
export function titleOf(day: Day): Told {
  const seated = day.meal[0]?.seated;
  if (!seated) return tell(day.plan.ceremony ? "ceremony-and-reception" : "reception");
  const form = FORMS[seated.form];
  if (seated.family === "rounds") return tell("round-tables");
  if (seated.family === "mixed") return tell(form ?? "rounds-and-long");
  return tell(form && seated.form !== "spine" ? form : "long-tables");
}

/** Why this layout, the figures taken from the layout itself. */
export function whyOf(ctx: Context, day: Day, scenes: readonly Scene[], turnovers: readonly Turnover[]): readonly Told[] {
  const out: Told[] = [];
  const meal = scenes.find((s) => s.id === "meal");
  if (meal && day.meal[0]) {
    const comfortable = day.ease.gaps === "comfort" && day.ease.perTable === "comfort";
    const { guests } = ctx.demand, rooms = day.plan.meal;
    if (day.short > 0) out.push(tell("some-placed", { placed: guests - day.short, guests, rooms }));
    else out.push(comfortable ? tell("all-in-comfort", { guests, rooms }) : tell("all-placed", { guests, rooms, ease: day.ease.gaps === "comfort" ? "full" : day.ease.gaps }));
    const dining = meal.items.filter((i) => i.role === "dining"), rounds = dining.filter((i) => "diameter" in i.shape).length;
    if (dining.length > 0) out.push(tell("tables-laid", { rounds, long: dining.length - rounds }));
    const sight = facing(ctx, meal);
    if (sight.of > 0) out.push(tell("facing-couple", { see: sight.see, of: sight.of }));
    const honour = (ctx.brief.meal.familyTables ?? 0) > 1 ? honoured(ctx, meal) : null;
    if (honour) out.push(tell(honour.alike ? "families-alike" : "families-unlike", { first: honour.tables[0].number, second: honour.tables[1].number, by: honour.by }));
  }
  for (const d of ctx.site.drapes) {
    const m2 = ((ctx.site.rooms.get(d.grows)?.area ?? 0) - area(ctx.site.rooms.get(d.grows)?.outline ?? [])) / 1e6;
    out.push(tell("drape-gives", { name: d.name, grows: d.grows, from: d.from, m2 }));
  }
  const minutes = turnovers.reduce((n, t) => n + t.minutes, 0);
  out.push(turnovers.length === 0 ? tell("no-turnover") : tell("turnover", { minutes, crew: turnovers[0]?.crew ?? 0 }));
  for (const t of turnovers.filter((one) => bringsChairs(scenes, one))) out.push(tell("chairs-over", { n: t.moves.length, from: day.plan.ceremony ?? "", to: t.room ?? "" }));
  if (day.plan.floor === "apart" && day.plan.dance) out.push(tell("dancing-apart", { room: day.plan.dance }));
  if (day.plan.floor === "beside") out.push(tell("dancing-beside"));
  if (day.plan.floor === "struck") out.push(tell("dancing-struck"));
  return out;
}

/** What the layout gives up, each once. */
export function givesUpOf(ctx: Context, day: Day, gaveWay: readonly GaveWay[]): readonly Told[] {
  const out: Told[] = [];
  const tables = day.meal.flatMap((m) => m.seated.items), rounds = tables.filter((t) => "diameter" in t.shape).length;
  if (ctx.brief.meal.tables === "mixed" && tables.length > 0 && (rounds === 0 || rounds === tables.length)) out.push(tell("one-kind", { kind: rounds === 0 ? "long" : "rounds" }));
  if (ctx.brief.meal.top === "pair" && day.meal.length > 0 && day.meal.every((m) => m.top.length === 0)) out.push(tell("no-table-for-two"));
  if (day.ease.gaps !== "comfort") out.push(tell(day.ease.gaps === "most" ? "gaps-least" : "gaps-half-way"));
  if (day.ease.perTable === "most") out.push(tell("tables-full"));
  const gone = ctx.venue.rooms.flatMap((r) => r.standing).filter((s) => day.removed.includes(s.id)).map((s) => s.name);
  for (const name of new Set(gone)) out.push(tell("carried-out", { name, n: gone.filter((g) => g === name).length }));
  for (const r of day.rehomed) {
    const piece = ctx.venue.rooms.flatMap((x) => x.standing).find((x) => x.id === r.id);
    if (piece) out.push(tell("moves-for-drape", { name: piece.name, room: r.room }));
  }
  for (const { word: what, why, with: other = "" } of gaveWay) {
    if (why === "combined") out.push(tell("shares-table", { what, with: other }));
    if (why === "moved") out.push(tell("stands-elsewhere", { what, with: other }));
    if (why === "no-room") out.push(tell("no-place-for", { what }));
  }
  for (const s of day.left) out.push(tell("no-place-for", { what: s.word.startsWith("brought-") ? s.label.toLowerCase() : s.word }));
  return out.filter((one, i) => out.findIndex((other) => sameTold(one, other)) === i);
}

/** Whether two things told are one. */
export const sameTold = (a: Told | null, b: Told | null): boolean => JSON.stringify(a) === JSON.stringify(b);

const SET: Readonly<Record<string, ToldCode>> = {
  grid: "set-grid", even: "set-even", staggered: "set-staggered", diagonal: "set-diagonal", balanced: "set-balanced", halves: "set-halves", free: "set-free", fullest: "set-fullest", runs: "set-runs",
};

/** Which end of the room the couple sit at, as the plan is drawn. */
function coupleAt(day: Day): Told | null {
  const chief = day.meal[0], room = chief ? day.rooms.get(chief.room) : undefined;
  const top = chief?.top[Math.floor((chief.top.length - 1) / 2)];
  const box = room?.f.floor[0]?.box;
  if (!top || !box) return null;
  const x = (top.at[0] - (box.minX + box.maxX) / 2) / (box.maxX - box.minX), y = (top.at[1] - (box.minY + box.maxY) / 2) / (box.maxY - box.minY);
  return tell(Math.abs(x) >= Math.abs(y) ? (x < 0 ? "couple-left" : "couple-right") : y < 0 ? "couple-top" : "couple-foot");
}

/** What tells two layouts of the same tables apart, what matters most to the day first; null where there is nothing to tell. Each place of the list tells of one thing. */
export function apartOf(day: Day): readonly (Told | null)[] {
  const { plan } = day, set = SET[day.meal[0]?.seated.form ?? ""];
  const floor = { none: null, apart: tell("dance-in", { room: plan.dance ?? "" }), beside: tell("floor-among"), struck: tell("floor-after") }[plan.floor];
  const tables = day.meal.flatMap((m) => m.seated.items), rounds = tables.filter((i) => "diameter" in i.shape).length;
  return [
    floor, plan.ceremony ? tell("ceremony-in", { room: plan.ceremony }) : null, plan.meal.length > 0 ? tell("meal-in", { rooms: plan.meal }) : null,
    tell(plan.drapes.length > 0 ? "drape-drawn" : "no-drape"), plan.buffet ? tell("buffet-in", { room: plan.buffet }) : null, set ? tell(set) : null,
    tell(day.ease.gaps === "comfort" ? "set-wide" : day.ease.gaps === "close" ? "set-closer" : "set-closest"), tell(day.ease.perTable === "most" ? "full-tables" : "roomy-tables"), coupleAt(day),
    tell("so-many-tables", { rounds, long: tables.length - rounds }), plan.bar ? tell("bar-in", { room: plan.bar }) : tell("no-bar"),
  ];
}
