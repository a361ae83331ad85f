import type { Layout, Scene, Turnover } from "../../layout";
import { areaText } from "../../words/lengths";
import { area } from "../../geometry";
import type { Context } from "./context";
import type { Day } from "./day";
import type { GaveWay } from "./displays";
import { facing } from "./score";

const FORMS: Readonly<Record<string, string>> = {
  u: "A horseshoe", e: "A comb of tables", t: "A T of tables", "hollow-square": "A hollow square", spine: "Rounds about a spine",
};

/** A short name for a layout, from what its tables are and how they stand. */
export function titleOf(day: Day): string {
  const seated = day.meal[0]?.seated;
  if (!seated) return day.plan.ceremony ? "Ceremony and reception" : "Reception";
  const form = FORMS[seated.form];
  if (seated.family === "rounds") return "Round tables";
  if (seated.family === "mixed") return form ?? "Rounds and long tables";
  return form && seated.form !== "spine" ? form : "Long tables";
}

const plural = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** Why this layout: sentences for the couple, the figures taken from the layout itself. */
export function whyOf(ctx: Context, day: Day, scenes: readonly Scene[], turnovers: readonly Turnover[]): readonly string[] {
  const out: string[] = [];
  const name = (id: string): string => ctx.venue.rooms.find((r) => r.id === id)?.name ?? id;
  const meal = scenes.find((s) => s.id === "meal");
  if (meal && day.meal[0]) {
    const comfortable = day.ease.gaps === "comfort" && day.ease.perTable === "comfort";
    const where = day.plan.meal.map(name).join(" and ");
    if (day.short > 0) out.push(`${ctx.demand.guests - day.short} of ${ctx.demand.guests} have a place in the ${where}.`);
    else out.push(comfortable ? `All ${ctx.demand.guests} sit in comfort in the ${where}.` : `All ${ctx.demand.guests} find a place in the ${where}${day.ease.gaps === "most" ? ", at the most the room takes" : day.ease.gaps === "close" ? ", closer than comfort asks" : ", more to a table than comfort asks"}.`);
    const rounds = meal.items.filter((i) => i.role === "dining" && "diameter" in i.shape).length;
    const long = meal.items.filter((i) => i.role === "dining" && !("diameter" in i.shape)).length;
    if (rounds > 0 && long > 0) out.push(`${plural(rounds, "round")} and ${plural(long, "long table")}.`);
    else if (rounds > 0) out.push(`${plural(rounds, "round")}.`);
    else if (long > 0) out.push(`${plural(long, "long table")}.`);
    const sight = facing(ctx, meal);
    if (sight.of > 0) out.push(`${sight.see} of ${sight.of} guests face the couple.`);
  }
  for (const d of ctx.site.drapes) {
    const more = areaText(((ctx.site.rooms.get(d.grows)?.area ?? 0) - area(ctx.site.rooms.get(d.grows)?.outline ?? [])) / 1e6, ctx.venue.lengths);
    out.push(`${d.name} is drawn: the ${name(d.grows)} takes ${more} of the ${name(d.from)}.`);
  }
  const minutes = turnovers.reduce((n, t) => n + t.minutes, 0);
  if (turnovers.length === 0) out.push("No room has to be turned over.");
  else out.push(`Turning over takes ${plural(minutes, "minute")} with a crew of ${turnovers[0]?.crew ?? 0}.`);
  if (day.plan.floor === "apart" && day.plan.dance) out.push(`Dancing is in the ${name(day.plan.dance)}, so the tables stay.`);
  if (day.plan.floor === "beside") out.push("The dance floor lies among the tables all evening.");
  if (day.plan.floor === "struck") out.push("Some tables are struck after the meal to make the dance floor.");
  return out;
}

/** What the layout gives up, one sentence each. */
export function givesUpOf(ctx: Context, day: Day, gaveWay: readonly GaveWay[]): readonly string[] {
  const out: string[] = [];
  const tables = day.meal.flatMap((m) => m.seated.items), rounds = tables.filter((t) => "diameter" in t.shape).length;
  if (ctx.brief.meal.tables === "mixed" && tables.length > 0 && (rounds === 0 || rounds === tables.length))
    out.push(`${rounds === 0 ? "Long tables" : "Rounds"} alone seat everyone here: the brief asks for both kinds.`);
  if (ctx.brief.meal.top === "pair" && day.meal.length > 0 && day.meal.every((m) => m.top.length === 0)) out.push("The couple sit among their guests: a table for two alone would leave some without a place.");
  if (day.ease.gaps !== "comfort") out.push(day.ease.gaps === "most" ? "Gaps between tables are the least, not those of comfort." : "Gaps between tables are half-way between the least and those of comfort.");
  if (day.ease.perTable === "most") out.push("Tables are laid for as many as they take, not for comfort.");
  const gone = ctx.venue.rooms.flatMap((r) => r.standing).filter((s) => day.removed.includes(s.id)).map((s) => s.name);
  for (const name of new Set(gone)) {
    const n = gone.filter((g) => g === name).length;
    out.push(n === 1 ? `${name} is carried out.` : `${name}: ${n} are carried out.`);
  }
  for (const r of day.rehomed) {
    const piece = ctx.venue.rooms.flatMap((x) => x.standing).find((x) => x.id === r.id);
    const room = ctx.venue.rooms.find((x) => x.id === r.room)?.name ?? r.room;
    if (piece) out.push(`${piece.name} moves to a wall of the ${room}: the drape takes its place.`);
  }
  for (const g of gaveWay) {
    const word = g.word.replaceAll("-", " ");
    if (g.why === "combined") out.push(`${word[0]?.toUpperCase()}${word.slice(1)} shares a table with ${g.with ?? "another"}.`);
    if (g.why === "moved") out.push(`${word[0]?.toUpperCase()}${word.slice(1)}: its usual place is taken, so it stands in the ${g.with ?? "next best"}.`);
    if (g.why === "no-room") out.push(`No place was found for: ${word}.`);
  }
  for (const s of day.left) out.push(`No place was found for: ${s.label.toLowerCase()}.`);
  return [...new Set(out)];
}

/** How tables are set, by the name of their form. */
export const FORM_WORDS = {
  otherwise: "set otherwise",
  of: {
    grid: "in rows", even: "in even rows", staggered: "staggered", diagonal: "on the slant", balanced: "balanced about the middle", halves: "in two halves", free: "freely set", fullest: "closely filled", runs: "in long runs",
  } as Readonly<Record<string, string>>,
} as const;

/** Which end of the room the couple sit at, as the plan is drawn. */
function coupleAt(day: Day): string {
  const chief = day.meal[0], room = chief ? day.rooms.get(chief.room) : undefined;
  const top = chief?.top[Math.floor((chief.top.length - 1) / 2)];
  const box = room?.f.floor[0]?.box;
  if (!top || !box) return "";
  const x = (top.at[0] - (box.minX + box.maxX) / 2) / (box.maxX - box.minX), y = (top.at[1] - (box.minY + box.maxY) / 2) / (box.maxY - box.minY);
  const end = Math.abs(x) >= Math.abs(y) ? (x < 0 ? "on the left" : "on the right") : y < 0 ? "at the top" : "at the foot";
  return `couple ${end} of the plan`;
}

/** What tells two layouts of the same tables apart, in a few words each, what matters most to the day first. */
export function apartWords(ctx: Context, day: Day): readonly string[] {
  const name = (id: string | null): string => ctx.venue.rooms.find((r) => r.id === id)?.name ?? "";
  const { plan } = day;
  const floor = { none: "", apart: `dancing in the ${name(plan.dance)}`, beside: "dance floor among the tables", struck: "dance floor after the meal" }[plan.floor];
  const tables = day.meal.flatMap((m) => m.seated.items);
  const rounds = tables.filter((i) => "diameter" in i.shape).length;
  return [
    floor, plan.ceremony ? `ceremony in the ${name(plan.ceremony)}` : "", plan.meal.length > 0 ? `meal in the ${plan.meal.map(name).join(" and ")}` : "",
    plan.drapes.length > 0 ? "drape drawn" : "no drape", plan.buffet ? `buffet in the ${name(plan.buffet)}` : "", FORM_WORDS.of[day.meal[0]?.seated.form ?? ""] ?? "",
    day.ease.gaps === "comfort" ? "wide set" : day.ease.gaps === "close" ? "closer set" : "closest set", day.ease.perTable === "most" ? "full tables" : "roomy tables", coupleAt(day),
    rounds > 0 && rounds < tables.length ? `${plural(rounds, "round")} and ${tables.length - rounds} long` : `${tables.length} tables`,
    plan.bar ? `bar in the ${name(plan.bar)}` : "no bar",
  ];
}

export type Words = Pick<Layout, "title" | "why" | "givesUp">;
