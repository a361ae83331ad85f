import type { Clock } from "../base";
import { briefSchema, type Brief } from "../brief";
import { quote } from "../fees";
import type { ArrangeResult, Finding, Instead, Layout } from "../layout";
import { check, ruleValues } from "../rules";
import { siteOf, type Package, type Venue } from "../venue";
import { proofs } from "./bounds";
import { insteadOf } from "./instead";
import { assign, packageRooms, type Plan } from "./stages/assign";
import { chairOf, eases, type Context } from "./stages/context";
import { layDay, type Attempt, type Day, type Miss } from "./stages/day";
import { demandOf } from "./stages/demand";
import { apartWords } from "./stages/explain";
import { finish, type Finished } from "./stages/finish";
import { missesAsFindings } from "./stages/misses";
import { stopwatch, type Stopwatch } from "./stopwatch";
import { ENGINE_VERSION } from "./version";

export type ArrangeOptions = {
  readonly seed?: number;
  /** Most layouts returned (default 3). */
  readonly layouts?: number;
  /** For `timing` alone; without it all times are 0. */
  readonly clock?: Clock;
  readonly onProgress?: (step: { readonly stage: string; readonly done: number; readonly of: number }) => void;
  /** Asked between attempts; true ends the search with what has been found. */
  readonly stop?: () => boolean;
  /** Ways of laying the day that are tried, at the most (default 10). */
  readonly attempts?: number;
  /** Whether to look for smaller changes that would help, when the answer is no (default true). */
  readonly instead?: boolean;
};

/** Attempts in one search: effort is budgeted in steps, never in seconds. */
const ATTEMPTS = 10;
/** Fewer where a smaller change of the brief is only tried out. */
const TRIED_OUT = 6;
/** Once something is found, this much more cost is worth another look for a layout of another kind. */
const WORTH = 1.6;

export const packageOf = (venue: Venue, brief: Brief): Package | undefined => venue.packages.find((p) => p.id === brief.package);

export function contextOf(venue: Venue, pack: Package, brief: Brief, seed: number): Context {
  return { known: new Map(), venue, pack, brief, seed, site: siteOf(venue), demand: demandOf(venue, pack, brief), values: ruleValues(venue), chair: chairOf(venue) };
}

/**
 * Arranges a day: up to K layouts that pass every `must` of `check`, or a proof that none can be, or an honest not-found with
 * the closest attempt. The same venue, brief and seed give the same answer on every machine.
 * @throws when the brief names a package that the venue lacks: `briefAgainstVenue` refuses that at the edge.
 */
export function arrange(venue: Venue, brief: Brief, options: ArrangeOptions = {}): ArrangeResult {
  const { seed = 1, layouts: most = 3 } = options;
  const watch = stopwatch(options.clock);
  const pack = packageOf(venue, brief);
  if (!pack) throw new Error(`package ${brief.package} is not among ${venue.packages.map((p) => p.id).join(", ")}`);
  const ctx = contextOf(venue, pack, brief, seed);
  const done = (answer: Pick<ArrangeResult, "status" | "reasons" | "instead" | "layouts"> & { readonly closest?: Layout }): ArrangeResult => ({
    format: "marquetry.result/1", engine: { version: ENGINE_VERSION, seed }, ...answer, taken: takenFrom(brief), timing: watch.read(),
  });
  const proved = watch.time("bounds", () => [...proofs(venue, brief), ...panelProof(ctx), ...buffetProof(ctx)]);
  if (proved.length > 0) return done({ status: "impossible", reasons: proved, instead: help(venue, brief, options), layouts: [] });
  const found = search(ctx, most, options, watch);
  if (found.layouts.length > 0) return done({ status: "arranged", reasons: [], instead: [], layouts: found.layouts });
  return done({
    status: "not-found", reasons: found.reasons, instead: help(venue, brief, options), layouts: [], ...(found.closest ? { closest: found.closest } : {}),
  });
}

/** The venue's panels laid side by side are smaller than the floor asked for (4.5 sq ft a dancer, rental trade). */
function panelProof(ctx: Context): readonly Finding[] {
  const short = ctx.demand.floorShort;
  if (!short) return [];
  const [owned, needed] = [Math.floor(short.owned * 100) / 100, Math.ceil(short.needed * 100) / 100];
  return [{
    code: "bound-dance-panels", level: "must", source: "the venue's stock; 4.5 sq ft a dancer, five rental houses", scene: "dancing", items: [],
    measured: owned, limit: needed, unit: "m2", data: { owned, needed },
    text: `The dancers need ${needed} m² of floor; all the venue's panels laid together make a floor of at most ${owned} m².`,
  }];
}

/** Rooms are used each for its uses alone: without one let for a buffet there is none. */
function buffetProof(ctx: Context): readonly Finding[] {
  if (!ctx.demand.buffet || packageRooms(ctx.venue, ctx.pack).some((r) => r.uses.includes("buffet"))) return [];
  return [{
    code: "bound-buffet", level: "must", source: "the venue's rooms and their uses", scene: "meal", items: [], measured: 0, limit: 1, unit: "rooms",
    data: { package: ctx.pack.id }, text: `No room of ${ctx.pack.name} is let for a buffet or food stations.`,
  }];
}

const help = (venue: Venue, brief: Brief, options: ArrangeOptions): readonly Instead[] =>
  options.instead === false ? [] : insteadOf(venue, brief, (b) => arrange(venue, b, { ...options, clock: undefined, layouts: 1, instead: false, attempts: TRIED_OUT }));

/** What letting go of comfort weighs against another room, a moved piece or a turnover. */
const EASE_COST = [0, 1.1, 2, 2.8];

/** Plans by ease of comfort by standing pieces carried out, the cheapest for the couple first. */
function attempts(ctx: Context): readonly Attempt[] {
  const plans = assign(ctx.venue, ctx.pack, ctx.brief, ctx.demand);
  const out: Attempt[] = [];
  for (const plan of plans.slice(0, 10)) for (const [i, ease] of eases(ctx.brief).entries()) for (const removed of removals(ctx, plan)) {
    for (const lane of ctx.demand.wheelchairs > 0 ? [false, true] : [false])
      out.push({ plan, ease, removed, lane, cost: plan.cost + (EASE_COST[i] ?? 3) + (removed.size > 0 ? 0.7 : 0) + (lane ? 0.4 : 0) });
  }
  return out.sort((a, b) => a.cost - b.cost);
}

/** Standing furniture stays; or all of it that may be moved goes from the rooms that need the floor. */
function removals(ctx: Context, plan: Plan): readonly ReadonlySet<string>[] {
  const rooms = new Set([...plan.meal, plan.dance, plan.ceremony]);
  const movable = ctx.venue.rooms.filter((r) => rooms.has(r.id)).flatMap((r) => r.standing.filter((s) => s.move !== null).map((s) => s.id));
  return movable.length === 0 ? [new Set()] : [new Set(), new Set(movable)];
}

type Found = { readonly layouts: readonly Layout[]; readonly closest: Layout | null; readonly reasons: readonly Finding[] };

function search(ctx: Context, most: number, options: ArrangeOptions, watch: Stopwatch): Found {
  const list = watch.time("assign", () => attempts(ctx));
  const kept = new Map<string, { readonly layout: Layout; readonly day: Day; readonly cost: number }>();
  let closest: { readonly layout: Layout; readonly musts: number } | null = null;
  const misses: Miss[] = [];
  let best = Infinity;
  let nearest: Day | null = null;
  const wheels = new Set<string>(), dead = new Set<string>();
  let runs = 0;
  for (const a of list) {
    if (options.stop?.() || runs >= (options.attempts ?? ATTEMPTS) || kept.size >= most || a.cost > best + WORTH) break;
    // A lane for wheels is kept only where the same attempt without one left them no place.
    if (a.lane && !wheels.has(keyOf(a))) continue;
    if (dead.has(JSON.stringify([a.plan, a.removed.size]))) continue;
    options.onProgress?.({ stage: "search", done: runs, of: Math.min(list.length, ATTEMPTS) });
    runs++;
    const laid = watch.time("seating", () => layDay(ctx, a));
    misses.push(...laid.misses);
    // What cannot stand beside the meal, or for the ceremony alone, cannot at any ease of the meal's comfort.
    if (laid.days.length === 0 && laid.misses.every((m) => m.why === "floor" || (m.why === "rows" && a.plan.turnover))) dead.add(JSON.stringify([a.plan, a.removed.size]));
    const short = laid.days.find((d) => d.short > 0);
    if (short && (!nearest || short.short < nearest.short)) nearest = short;
    for (const day of distinct(laid.days.filter((d) => d.short === 0)).slice(0, 2)) {
      if (kept.has(kindOf(day)) || kept.size >= most) continue;
      const finished: Finished = watch.time("finish", () => finish(ctx, day));
      const layout = withQuoteAndFindings(ctx, finished);
      if (!a.lane && layout.findings.some((f) => f.code === "wheelchairs-short" || f.code === "route")) wheels.add(keyOf(a));
      const musts = layout.findings.filter((f) => f.level === "must").length;
      if (musts === 0) { kept.set(kindOf(day), { layout, day, cost: a.cost }); best = Math.min(best, a.cost); }
      else if (!closest || musts < closest.musts) closest = { layout, musts };
    }
  }
  // Nothing seated everyone: the one that came nearest is finished once, to be shown.
  if (kept.size === 0 && !closest && nearest) closest = { layout: withQuoteAndFindings(ctx, finish(ctx, nearest)), musts: 1 };
  const layouts = namedApart(ctx, [...kept.values()]).map((layout, i): Layout => ({ ...layout, id: "abcdefgh"[i] ?? `l${i + 1}` }));
  const reasons = closest ? closest.layout.findings.filter((f) => f.level === "must") : [];
  return { layouts, closest: closest?.layout ?? null, reasons: reasons.length > 0 ? reasons : missesAsFindings(ctx, misses) };
}

/** Layouts of the same name get the first words that tell each from the others. */
function namedApart(ctx: Context, list: readonly { readonly layout: Layout; readonly day: Day }[]): readonly Layout[] {
  return list.map(({ layout, day }) => {
    const twins = list.filter((o) => o.day !== day && o.layout.title === layout.title);
    if (twins.length === 0) return layout;
    const mine = apartWords(ctx, day);
    const k = mine.findIndex((w, i) => w !== "" && twins.every((o) => apartWords(ctx, o.day)[i] !== w));
    return { ...layout, title: `${layout.title}, ${k < 0 ? `no. ${list.findIndex((o) => o.day === day) + 1}` : mine[k]}` };
  });
}

const keyOf = (a: Attempt): string => JSON.stringify([a.plan, a.ease, a.removed.size]);

/** Days of one attempt that differ in kind, those that seat everyone first. */
function distinct(days: readonly Day[]): readonly Day[] {
  const seen = new Set<string>();
  return days.filter((d) => { const k = kindOf(d); if (seen.has(k)) return false; seen.add(k); return true; });
}
const kindOf = (d: Day): string =>
  [d.meal.map((m) => `${m.room}:${m.seated.family}:${m.seated.form}`).join("+"), d.plan.ceremony, d.plan.floor === "none" ? "" : `${d.plan.dance}:${d.plan.floor}`].join("|");

function withQuoteAndFindings(ctx: Context, { layout }: Finished): Layout {
  return { ...layout, findings: check(ctx.venue, layout, ctx.brief), quote: quote(ctx.venue, ctx.brief, layout) };
}

/** What was taken where the brief leaves a field out. */
function takenFrom(brief: Brief): ArrangeResult["taken"] {
  const bare = briefSchema.parse({ format: brief.format, package: brief.package, date: brief.date, guests: { adults: brief.guests.adults } });
  const out: { field: string; value: unknown }[] = [];
  for (const part of ["ceremony", "meal", "music"] as const) for (const [field, value] of Object.entries(bare[part])) {
    if (JSON.stringify((brief[part] as Record<string, unknown>)[field]) === JSON.stringify(value)) out.push({ field: `${part}.${field}`, value });
  }
  return out;
}
