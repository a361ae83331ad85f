import { quote } from "../fees";
import type { Finding, Layout } from "../layout";
import { check, contextOf, judge } from "../rules";
import type { ArrangeOptions } from "./arrange";
import { attempts, forecast, placeKey, signOf } from "./attempts";
import { compared } from "./compare";
import { choose, type Candidate, type Kept } from "./choose";
import { spend, spent, STEPS } from "./effort";
import { eases, withDrapes, type Context } from "./stages/context";
import { layDay, type Attempt, type Day, type Miss } from "./stages/day";
import { finish, type Finished } from "./stages/finish";
import { missesAsFindings } from "./stages/misses";
import { scenesOf } from "./stages/scenes";
import { withWetTwin } from "./wet";
import type { Stopwatch } from "./stopwatch";

/** Attempts in one search: effort is budgeted in steps, never in seconds. */
const ATTEMPTS = 14;
/** Attempts more once a layout is found, for others that differ in kind; while it is the only one; before small differences count; whole days finished for the sake of choice. */
const MORE = 7, ALONE = 8, PATIENCE = 3, FINISHED = 6;
/** What adds so much to the choice is finished at once; what adds less waits until nothing better came. */
const TELLING = 1;
/** What an attempt in the rooms of a layout that is kept, one that will hardly seat everyone, and one with a drape drawn that others do without, is put back by. */
const ALIKE = 0.9, UNLIKELY = 1.5, DRAPED = 1;
/** By so much a forecast may be short of the guests before the first layout is found, and the attempt is made in its turn all the same. */
const DOUBT = 1.05;
/** Once something is found, this much more cost is worth another look for a layout of another kind. */
const WORTH = 2.4;
/** What tables that stand wherever they went weigh against rows elsewhere: more than a bar among the tables, less than another room's moves. */
const LOOSE = 1.3;
/** And the same brought into rows and columns. */
const LINED = 0.6;
/** Attempts more for rows where the one layout wanted stands loosely. */
const LOOKS = 4;
/** Attempts with all the strength there is, where nothing seated everyone. */
const LAST = 3;
/** Attempts that may fail before any table is laid, and are not counted. */
const IDLE = 60;
/** The share of the guests that an attempt must have seated to be tried again so. */
const NEAR = 0.82;
/** Or so few short of all. */
const TABLEFUL = 8;

export type Found = { readonly layouts: readonly Layout[]; readonly closest: Layout | null; readonly reasons: readonly Finding[]; readonly seated: number | null };

type Search = {
  readonly ctx: Context; readonly options: ArrangeOptions; readonly watch: Stopwatch;
  readonly misses: Miss[]; readonly pool: Candidate[]; readonly kept: Kept[]; readonly short: Day[];
  readonly dead: Set<string>; readonly wheels: Set<string>; readonly refused: Set<Attempt>; readonly spoilt: Candidate[]; readonly left: { finishes: number };
  closest: { readonly layout: Layout; readonly musts: number } | null;
};

/**
 * Looks through the ways of giving rooms to the day, the cheapest for the couple first, until one seats everyone without a must
 * finding; then on among plans of another kind; and with more strength where all fell short.
 */
export function search(ctx: Context, most: number, options: ArrangeOptions, watch: Stopwatch): Found {
  const list = watch.time("assign", () => attempts(ctx));
  const s: Search = { ctx, options, watch, misses: [], pool: [], kept: [], short: [], dead: new Set(), wheels: new Set(), refused: new Set(), spoilt: [], left: { finishes: FINISHED }, closest: null };
  const guess = forecast(ctx.demand);
  const limit = options.attempts ?? ATTEMPTS;
  const chooseMore = (least: number): void => watch.time("choose", () => choose(ctx, { most, kept: s.kept, pool: s.pool, finishDay: (c) => finishDay(s, c), least, left: s.left, stop: () => over(s) }));
  let runs = 0, idle = 0;
  const got = new Map<Attempt, number>();
  // A lane is kept only where the same attempt without one left places that none reaches.
  const open = (a: Attempt): boolean => !got.has(a) && (!a.lane || s.wheels.has(wheelKey(a))) && !s.dead.has(placeKey(a)) && guess.hopeful(a);
  const run = (a: Attempt): void => {
    options.onProgress?.({ stage: "search", done: runs, of: limit });
    const { best, begun } = tryOut(s, a);
    // What found no room beside the tables cost next to nothing: many plans may fail so before the first that does not.
    if (begun || ++idle > IDLE) runs++;
    got.set(a, best);
    if (begun && best < ctx.demand.guests) guess.learn(a, best);
  };
  // The cheapest first; what will hardly seat everyone, going by what has been tried, after others that cost little more.
  while (!over(s) && runs < limit && s.kept.length === 0) {
    const next = firstOf(list, open, (a) => a.cost + (guess.likely(a, DOUBT) ? 0 : UNLIKELY));
    if (!next) break;
    run(next);
    openFirst(s);
  }
  const first = s.kept[0];
  // One layout is wanted, and its tables stand wherever they went: rows elsewhere are worth a few looks.
  if (first && most === 1 && limit >= ATTEMPTS && loose(first.day)) {
    const rows = list.filter((a) => a.cost < first.cost && (a.plan.bar !== null || first.day.plan.bar === null));
    for (let looks = LOOKS; looks > 0 && s.kept[0] === first && !over(s); looks--) {
      const next = rows.find((a) => open(a) && !settled(s, got, a));
      if (!next) break;
      s.pool.length = 0;
      run(next);
      for (const c of s.pool.filter((o) => o.cost < first.cost).sort((x, y) => x.cost - y.cost)) {
        const done = finishDay(s, c);
        if (done) { s.kept[0] = done; break; }
      }
    }
  }
  if (first && most > 1) {
    const near = list.filter((a) => a.cost <= first.cost + WORTH);
    // A drape costs a charge: where everyone sits without one, it is looked at last.
    const draped = (a: Attempt): number => (a.plan.drapes.length > first.day.plan.drapes.length ? DRAPED : 0);
    const back = (a: Attempt): number => a.cost + draped(a) + (s.kept.some((k) => signOf(k.day.plan) === signOf(a.plan)) ? ALIKE : 0) + (guess.likely(a) ? 0 : UNLIKELY);
    chooseMore(TELLING);
    for (let more = 0; more < (s.kept.length === 1 ? ALONE : MORE) && s.kept.length < most && !over(s); more++) {
      const next = firstOf(near, (a) => open(a) && !settled(s, got, a), back);
      if (!next) break;
      run(next);
      // With one layout alone in hand, what differs little is looked at as well: where the check refuses it, a lane or cleared furniture may mend it.
      chooseMore(s.kept.length === 1 && more >= PATIENCE ? 0 : TELLING);
    }
  }
  if (s.kept.length === 0 && limit >= ATTEMPTS && !spent(ctx.effort)) lastTries(s, list, got);
  chooseMore(0);
  if (s.kept.length === 0 && !s.closest) for (const c of s.spoilt.slice(0, SPOILT)) { const done = finishWhole(s, c); if (done) s.kept.push(done); }
  // Nothing seated everyone: the one that came nearest is finished once, to be shown.
  const nearest = [...s.short].sort((a, b) => a.short - b.short)[0];
  if (s.kept.length === 0 && !s.closest && nearest) s.closest = { layout: withQuoteAndFindings(ctx, finish(ctx, nearest)), musts: 1 };
  // What is handsomest for its cost leads.
  s.kept.sort((a, b) => a.cost - b.cost);
  const reasons = s.closest ? lacking(s, s.closest.layout) : [];
  return {
    seated: got.size === 0 ? null : Math.max(...got.values()),
    layouts: compared(ctx, s.watch.time("wet", () => s.kept.map((k) => (options.wet === false ? k : { ...k, layout: withWetTwin(ctx, k) })))), closest: s.closest?.layout ?? null,
    reasons: reasons.length > 0 ? reasons : missesAsFindings(ctx, s.misses),
  };
}

/** What the closest attempt lacks, each sentence once; how many have no place is told of the search, not of that one plan. */
function lacking({ ctx, misses }: Search, { findings }: Layout): readonly Finding[] {
  const short = (f: Finding): boolean => f.code === "places-short" && (f.scene === "meal" || (f.scene === "ceremony" && ctx.brief.ceremony.seating === "at-tables"));
  const places = findings.some(short) ? missesAsFindings(ctx, misses.filter((m) => m.why === "places")) : [];
  const rest = findings.filter((f) => f.level === "must" && !short(f));
  return [...places, ...rest.filter((f, i) => rest.slice(0, i).every((o) => o.text !== f.text))];
}

/** Of attempts in the order of their costs, the one that may be made and at which a measure is least, which is never below its cost; of equals the first. */
function firstOf(list: readonly Attempt[], may: (a: Attempt) => boolean, at: (a: Attempt) => number): Attempt | undefined {
  let first: Attempt | undefined, least = Infinity;
  for (const a of list) {
    if (a.cost >= least) break;
    const n = may(a) ? at(a) : Infinity;
    if (n < least) { first = a; least = n; }
  }
  return first;
}

const loose = (day: Day): boolean => day.meal.some((m) => !m.seated.composed && !m.seated.lined);

/** Stopped from without, or all that one arrangement may spend is spent. */
const over = (s: Search): boolean => s.options.stop?.() === true || spent(s.ctx.effort);

/** The same rooms at the same ease with more furniture carried out, or a lane kept, is no other kind; unless the check refused what it laid. */
const settled = (s: Search, got: ReadonlyMap<Attempt, number>, a: Attempt): boolean => [...got].some(([g, n]) =>
  n >= s.ctx.demand.guests && !s.refused.has(g) && signOf(g.plan) === signOf(a.plan) && g.ease.gaps === a.ease.gaps && g.ease.perTable === a.ease.perTable);

/** Lays one attempt's days; the most guests that any of them seats, and whether it got as far as the tables or rows. */
function tryOut(s: Search, a: Attempt): { readonly best: number; readonly begun: boolean } {
  const laid = s.watch.time("seating", () => layDay(s.ctx, a));
  s.misses.push(...laid.misses);
  // What cannot stand beside the meal, or for the ceremony alone, cannot at any ease of the meal's comfort.
  if (laid.days.length === 0 && laid.misses.every((m) => m.why === "floor" || (m.why === "rows" && a.plan.turnover))) s.dead.add(placeKey(a));
  for (const day of laid.days) if (day.short === 0) s.pool.push({ day, cost: a.cost + (loose(day) ? LOOSE : day.meal.every((m) => m.seated.composed) ? 0 : LINED), attempt: a }); else s.short.push(day);
  const seated = laid.days.map((d) => s.ctx.demand.guests - d.short), missed = laid.misses.flatMap((m) => (m.why === "places" ? [m.got ?? 0] : []));
  return { best: Math.max(0, ...seated, ...missed), begun: laid.days.length > 0 || laid.misses.some((m) => m.why !== "floor") };
}

/** Finishes candidates in the order they came until one holds. */
function openFirst(s: Search): void {
  while (s.kept.length === 0 && !over(s)) {
    const next = s.pool.shift();
    if (!next) return;
    const done = finishDay(s, next);
    if (done) s.kept.push(done);
  }
}

/** What the check may have against a meal that a lane into the room mends. */
const LANE_MENDS: ReadonlySet<string> = new Set(["wheelchairs-short", "route", "accessway", "common-path", "way-out"]);

/** Rules that the bare tables may break already, and that no piece put in after them mends. */
const EARLY = ["commonPath", "accessway"] as const;
/** Days refused so early that are finished after all where nothing stands, so that the closest of them is shown. */
const SPOILT = 3;

function spoilt(base: Context, day: Day): boolean {
  const scenes = scenesOf(withDrapes(base, day.plan.drapes), day).filter((s) => s.id === "meal");
  spend(base.effort, STEPS.exact(piecesOf(day)));
  const rules = contextOf(base.venue, { id: "a", title: "", why: [], scenes, turnovers: [], findings: [] }, base.brief);
  return rules.scenes.some((v) => judge(rules, v, EARLY).some((f) => f.level === "must"));
}

function finishDay(s: Search, c: Candidate): Kept | null {
  if (s.watch.time("check", () => spoilt(s.ctx, c.day))) {
    if (!c.attempt.lane) s.wheels.add(wheelKey(c.attempt));
    s.refused.add(c.attempt);
    s.spoilt.push(c);
    return null;
  }
  return finishWhole(s, c);
}

function finishWhole(s: Search, c: Candidate): Kept | null {
  if (s.kept.length > 0) s.left.finishes--;
  spend(s.ctx.effort, STEPS.whole(piecesOf(c.day)));
  const finished = s.watch.time("finish", () => finish(s.ctx, c.day));
  const layout = s.watch.time("check", () => withQuoteAndFindings(s.ctx, finished));
  if (!c.attempt.lane && layout.findings.some((f) => f.level === "must" && LANE_MENDS.has(f.code))) s.wheels.add(wheelKey(c.attempt));
  const musts = layout.findings.filter((f) => f.level === "must").length;
  if (musts === 0) return { layout, day: c.day, cost: c.cost };
  s.refused.add(c.attempt);
  if (!s.closest || musts < s.closest.musts) s.closest = { layout, musts };
  return null;
}

/** The plans that came nearest, each once more at its loosest with more walls and more search. */
function lastTries(s: Search, list: readonly Attempt[], got: ReadonlyMap<Attempt, number>): void {
  const ease = eases(s.ctx.brief).at(-1);
  const near = [...got].filter(([, n]) => n >= Math.min(s.ctx.demand.guests * NEAR, s.ctx.demand.guests - TABLEFUL)).sort((a, b) => b[1] - a[1]).map(([a]) => signOf(a.plan));
  for (const sign of [...new Set(near)].slice(0, LAST)) {
    if (over(s) || s.kept.length > 0) return;
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

/** Chairs of rows are many and alike: a row weighs as a piece. */
const piecesOf = (day: Day): number => [...day.rooms.values()].reduce((n, r) => n + r.statics.length + r.tables.length + (r.rows?.rows ?? 0), 0);

const wheelKey = (a: Attempt): string => JSON.stringify([placeKey(a), a.ease]);

function withQuoteAndFindings(ctx: Context, { layout }: Finished): Layout {
  return { ...layout, findings: check(ctx.venue, layout, ctx.brief), quote: quote(ctx.venue, ctx.brief, layout) };
}
