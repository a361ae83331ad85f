import { quote } from "../fees";
import type { Finding, Layout } from "../layout";
import { check } from "../rules";
import type { ArrangeOptions } from "./arrange";
import { attempts, forecast, placeKey, signOf } from "./attempts";
import { compared } from "./compare";
import { choose, type Candidate, type Kept } from "./choose";
import { eases, type Context } from "./stages/context";
import { layDay, type Attempt, type Day, type Miss } from "./stages/day";
import { finish, type Finished } from "./stages/finish";
import { missesAsFindings } from "./stages/misses";
import { withWetTwin } from "./wet";
import type { Stopwatch } from "./stopwatch";

/** Attempts in one search: effort is budgeted in steps, never in seconds. */
const ATTEMPTS = 14;
/** Attempts more once a layout is found, for others that differ in kind. */
const MORE = 4;
/** Once something is found, this much more cost is worth another look for a layout of another kind. */
const WORTH = 2.4;
/** Attempts with all the strength there is, where nothing seated everyone. */
const LAST = 3;
/** The share of the guests that an attempt must have seated to be tried again so. */
const NEAR = 0.82;
/** Or so few short of all. */
const TABLEFUL = 8;

export type Found = { readonly layouts: readonly Layout[]; readonly closest: Layout | null; readonly reasons: readonly Finding[]; readonly seated: number | null };

type Search = {
  readonly ctx: Context; readonly options: ArrangeOptions; readonly watch: Stopwatch;
  readonly misses: Miss[]; readonly pool: Candidate[]; readonly kept: Kept[]; readonly short: Day[];
  readonly dead: Set<string>; readonly wheels: Set<string>;
  closest: { readonly layout: Layout; readonly musts: number } | null;
};

/**
 * Looks through the ways of giving rooms to the day, the cheapest for the couple first, until one seats everyone without a must
 * finding; then on among plans of another kind; and with more strength where all fell short.
 */
export function search(ctx: Context, most: number, options: ArrangeOptions, watch: Stopwatch): Found {
  const list = watch.time("assign", () => attempts(ctx));
  const s: Search = { ctx, options, watch, misses: [], pool: [], kept: [], short: [], dead: new Set(), wheels: new Set(), closest: null };
  const guess = forecast(ctx.demand.guests);
  const limit = options.attempts ?? ATTEMPTS;
  const chooseMore = (): void => watch.time("choose", () => choose(ctx, { most, kept: s.kept, pool: s.pool, finishDay: (c) => finishDay(s, c), stop: options.stop }));
  let runs = 0, more = 0;
  const got = new Map<Attempt, number>();
  // The same rooms at the same ease with more furniture carried out, or a lane kept, is no other kind.
  const tried = new Set<string>();
  const easeKey = (a: Attempt): string => JSON.stringify([signOf(a.plan), a.ease]);
  for (const a of list) {
    if (options.stop?.() || runs >= limit || more > MORE) break;
    const first = s.kept[0];
    if (first && kindsOf(s).size > most) chooseMore();
    if (s.kept.length >= most) break;
    // A drape costs a charge: where everyone sits without one, it is no choice worth offering.
    if (first && a.plan.drapes.length > first.day.plan.drapes.length) continue;
    if (first && (most === 1 || a.cost > first.cost + WORTH || tried.has(easeKey(a)))) continue;
    // A lane for wheels is kept only where the same attempt without one left them no place.
    if (a.lane && !s.wheels.has(wheelKey(a))) continue;
    if (s.dead.has(placeKey(a)) || !guess.hopeful(a)) continue;
    options.onProgress?.({ stage: "search", done: runs, of: limit });
    runs++;
    if (first) more++;
    const best = tryOut(s, a);
    if (best >= ctx.demand.guests) tried.add(easeKey(a));
    got.set(a, best);
    if (best < ctx.demand.guests) guess.learn(a, best);
    if (s.kept.length === 0) openFirst(s);
  }
  if (s.kept.length === 0 && limit >= ATTEMPTS) lastTries(s, list, got);
  chooseMore();
  // Nothing seated everyone: the one that came nearest is finished once, to be shown.
  const nearest = [...s.short].sort((a, b) => a.short - b.short)[0];
  if (s.kept.length === 0 && !s.closest && nearest) s.closest = { layout: withQuoteAndFindings(ctx, finish(ctx, nearest)), musts: 1 };
  const reasons = s.closest ? s.closest.layout.findings.filter((f) => f.level === "must") : [];
  return {
    seated: got.size === 0 ? null : Math.max(...got.values()),
    layouts: compared(ctx, s.watch.time("wet", () => s.kept.map((k) => (options.wet === false ? k : { ...k, layout: withWetTwin(ctx, k) })))), closest: s.closest?.layout ?? null,
    reasons: reasons.length > 0 ? reasons : missesAsFindings(ctx, s.misses),
  };
}

/** What there is to choose from, by tables, rooms and floor. */
const kindsOf = (s: Search): ReadonlySet<string> => new Set([...s.kept, ...s.pool].map(({ day: d }) =>
  [d.meal.map((m) => m.seated.family).join(), d.plan.floor, d.plan.dance, d.plan.ceremony, d.plan.meal.join(), d.plan.drapes.join()].join("|")));

/** Lays one attempt's days; the most guests that any of them seats. */
function tryOut(s: Search, a: Attempt): number {
  const laid = s.watch.time("seating", () => layDay(s.ctx, a));
  s.misses.push(...laid.misses);
  // What cannot stand beside the meal, or for the ceremony alone, cannot at any ease of the meal's comfort.
  if (laid.days.length === 0 && laid.misses.every((m) => m.why === "floor" || (m.why === "rows" && a.plan.turnover))) s.dead.add(placeKey(a));
  for (const day of laid.days) if (day.short === 0) s.pool.push({ day, cost: a.cost, attempt: a }); else s.short.push(day);
  const seated = laid.days.map((d) => s.ctx.demand.guests - d.short), missed = laid.misses.flatMap((m) => (m.why === "places" ? [m.got ?? 0] : []));
  return Math.max(0, ...seated, ...missed);
}

/** Finishes candidates in the order they came until one holds. */
function openFirst(s: Search): void {
  while (s.kept.length === 0) {
    const next = s.pool.shift();
    if (!next) return;
    const done = finishDay(s, next);
    if (done) s.kept.push(done);
  }
}

function finishDay(s: Search, c: Candidate): Kept | null {
  const finished = s.watch.time("finish", () => finish(s.ctx, c.day));
  const layout = s.watch.time("check", () => withQuoteAndFindings(s.ctx, finished));
  if (!c.attempt.lane && layout.findings.some((f) => f.code === "wheelchairs-short" || f.code === "route")) s.wheels.add(wheelKey(c.attempt));
  const musts = layout.findings.filter((f) => f.level === "must").length;
  if (musts === 0) return { layout, day: c.day, cost: c.cost };
  if (!s.closest || musts < s.closest.musts) s.closest = { layout, musts };
  return null;
}

/** The plans that came nearest, each once more at its loosest with more walls and more search. */
function lastTries(s: Search, list: readonly Attempt[], got: ReadonlyMap<Attempt, number>): void {
  const ease = eases(s.ctx.brief).at(-1);
  const near = [...got].filter(([, n]) => n >= Math.min(s.ctx.demand.guests * NEAR, s.ctx.demand.guests - TABLEFUL)).sort((a, b) => b[1] - a[1]).map(([a]) => signOf(a.plan));
  for (const sign of [...new Set(near)].slice(0, LAST)) {
    if (s.options.stop?.() || s.kept.length > 0) return;
    const all = list.filter((a) => signOf(a.plan) === sign && a.ease.gaps === ease?.gaps && a.ease.perTable === ease.perTable);
    const loosest = all.sort((a, b) => b.removed.cost - a.removed.cost || Number(a.lane) - Number(b.lane))[0];
    if (!loosest) continue;
    tryOut(s, { ...loosest, hard: true });
    openFirst(s);
    // Two who asked for nothing more than a table of their own sit among their guests rather than leave some out.
    if (s.kept.length === 0 && s.ctx.brief.meal.top === "pair") { tryOut(s, { ...loosest, hard: true, top: false }); openFirst(s); }
    const lane = all.find((a) => a.lane && a.removed === loosest.removed);
    if (s.kept.length === 0 && lane && s.wheels.has(wheelKey(lane))) { tryOut(s, { ...lane, hard: true }); openFirst(s); }
  }
}

const wheelKey = (a: Attempt): string => JSON.stringify([placeKey(a), a.ease]);

function withQuoteAndFindings(ctx: Context, { layout }: Finished): Layout {
  return { ...layout, findings: check(ctx.venue, layout, ctx.brief), quote: quote(ctx.venue, ctx.brief, layout) };
}
