import { seeded } from "../../base";
import { boxOf, type Point } from "../../geometry";
import { alikeDrafts } from "./alike";
import { freeRounds } from "./balance";
import { centred } from "./centre";
import { diagonalDrafts } from "./diagonal";
import { composed, fullest, isRoundFamily, type Draft, type Known, type Work } from "./drafts";
import type { Item } from "../../layout";
import { FORMS, formDrafts } from "./forms";
import { hallOf, type Hall } from "./hall";
import { groupsIn, itemsOf, totalPlaces, trimTo } from "./items";
import { inLines, linedUp } from "./line-up";
import { mixedDrafts } from "./mixed";
import { LOOSE_FORMS, type Family, type Laid, type Seated, type SeatingAsk, type SeatingOptions, type SeatingSpace, type TableKind } from "./types";
import { placesAt } from "./units";
import { straightened } from "./straight";
import { shutIn } from "./ways";
import { placeWheelchairs } from "./wheelchairs";

/** Steps of search at an effort of 1: some hundred milliseconds. */
const STEPS = 20_000_000;
/** Joined forms are offered unasked up to this many places: common practice, no source. */
const SMALL_PARTY = 60;

/** The share of the number that the fullest floor must hold before composed mixtures are looked for. */
const COMPOSABLE = 0.94;
/** A grid that looks less composed than this is held against a free arrangement. */
const PLAIN = 1;

/**
 * Dining tables for a room: up to six arrangements that differ in kind. Those that seat `ask.places` come first, the
 * most composed leading; then the fullest. Deterministic: effort is counted in steps.
 */
export function seatTables(space: SeatingSpace, ask: SeatingAsk, options: SeatingOptions = {}): readonly Seated[] {
  const hall = hallOf(space, ask);
  if (hall.floor.length === 0) return [];
  const work: Work = { hall, ask, random: seeded(options.seed ?? 1), steps: Math.round((options.effort ?? 1) * STEPS) };
  const families = ask.families.filter((f) => f.count > 0 && placesAt(f, ask, ask.chair) > 0);
  const rounds = families.filter(isRoundFamily), longs = families.filter((f) => !isRoundFamily(f));
  const wants = (k: TableKind): boolean => ask.tables === "any" || ask.tables === k;
  const drafts: Draft[] = [];
  const number = ask.places === "most" ? null : ask.places;
  const form = FORMS.find((f) => f === ask.form);
  for (const one of form ? [form] : ask.form === "any" && work.steps > 0 && number !== null && number <= SMALL_PARTY ? FORMS : [])
    if (wants("long")) for (const f of longs) drafts.push(...formDrafts(work, f, one, number));
  if (form) return ranked(work, drafts, options);
  const slant = number === null || (ask.form !== "diagonal" && ask.form !== "any") ? [] : families.filter((f) => wants(isRoundFamily(f) ? "rounds" : "long")).flatMap((f) => diagonalDrafts(work, f, number));
  if (ask.form === "diagonal" && number !== null) return ranked(work, slant, options);
  drafts.push(...slant);
  const known: Known = new Map(), bothKinds = rounds.length > 0 && longs.length > 0;
  if (number !== null) {
    const grids = wants("rounds") ? rounds.map((f) => ({ f, drafts: composed(work, f, number) })) : [];
    if (wants("long")) for (const f of longs) drafts.push(...composed(work, f, number));
    if (wants("rounds") && grids.every((g) => g.drafts.length === 0)) drafts.push(...alikeDrafts(work, rounds, number));
    if (wants("long") && !drafts.some((d) => d.kind === "long")) drafts.push(...alikeDrafts(work, longs, number));
    // Where no grid holds the number, the floor at its fullest tells whether anything composed can: both kinds after one another hold what each holds.
    if (ask.tables === "any" && bothKinds && drafts.length === 0 && grids.every((g) => g.drafts.length === 0)) {
      const full = fullest(work, [...byDensity(rounds, ask), ...byDensity(longs, ask)], "mixed", known);
      if (full.every((d) => totalPlaces(d.laid) < number * COMPOSABLE)) return ranked(work, full, options);
      // One kind alone holds no more than both: only a composed mixture may still do.
      if (full.every((d) => totalPlaces(d.laid) < number)) return ranked(work, [...full, ...mixedDrafts(work, [...byDensity(rounds, ask), ...byDensity(longs, ask)], number)], options);
    }
    for (const g of grids) drafts.push(...g.drafts, ...((g.drafts[0]?.score ?? -9) < PLAIN ? freeRounds(work, g.f, number) : []));
  }
  const held = (k: TableKind): boolean => number !== null && drafts.some((d) => d.kind === k && totalPlaces(d.laid) >= number);
  if (wants("rounds") && rounds.length > 0 && !held("rounds")) drafts.push(...fullest(work, byDensity(rounds, ask), "rounds", known));
  if (wants("long") && longs.length > 0 && !held("long")) drafts.push(...fullest(work, byDensity(longs, ask), "long", known));
  if (wants("mixed") && bothKinds) {
    const both = [...byDensity(rounds, ask), ...byDensity(longs, ask)];
    const roomy = held("rounds") || held("long"), full = roomy ? [] : fullest(work, both, "mixed", known);
    // Composed mixtures are looked for only where the floor holds nearly the number at its fullest.
    if (number !== null && (roomy || full.some((d) => totalPlaces(d.laid) >= number * COMPOSABLE))) drafts.push(...mixedDrafts(work, both, number));
    if (!held("mixed")) drafts.push(...(roomy ? fullest(work, both, "mixed", known) : full));
  }
  return ranked(work, drafts, options);
}

/** Up to six that differ in kind: those with places enough first, the most composed leading, then the fullest. */
function ranked(work: Work, drafts: readonly Draft[], options: SeatingOptions): readonly Seated[] {
  const { places } = work.ask;
  const enough = (n: number): boolean => places !== "most" && n >= places;
  const order = drafts.flatMap((d) => (enough(totalPlaces(d.laid)) ? withLines(work, d) : [d])).map((d) => ({ d, n: totalPlaces(d.laid) }))
    .sort((a, b) => Number(enough(b.n)) - Number(enough(a.n)) || (enough(a.n) ? Number(loose(a.d)) - Number(loose(b.d)) || b.d.score - a.d.score : b.n - a.n));
  const kept = new Map<string, Finished>();
  const tries = new Map<string, number>();
  for (const { d, n } of order) {
    const key = `${d.kind} ${d.form}`, before = kept.get(key), tried = tries.get(key) ?? 0;
    // A kind is tried again only while its first arrangements lost places to the ways out.
    if (before && (!enough(n) || enough(before.places) || tried >= 3)) continue;
    // Of arrangements that seat too few only the fullest is wanted.
    if (!enough(n) && [...kept.values()].some((k) => k.places >= n || enough(k.places))) continue;
    tries.set(key, tried + 1);
    // Straight first; where that shuts a table in that was open, as it was laid.
    const straight = enough(n) ? inLine(work, d) : d;
    const first = finish(work, straight, options), s = straight === d || (first && enough(first.places)) ? first : finish(work, d, options);
    if (s && (!before || s.places > before.places)) kept.set(key, s);
  }
  return [...kept.values()]
    .sort((a, b) => Number(enough(b.places)) - Number(enough(a.places)) || b.wheelchairs - a.wheelchairs || (enough(a.places) ? Number(b.composed) - Number(a.composed) || b.score - a.score : b.places - a.places))
    .slice(0, 6).map(({ score: _, ...rest }) => rest);
}

/** The tables of a draft that it needs for the places asked. */
function needed({ hall, ask }: Work, { laid }: Draft): readonly Laid[] {
  const kept = ask.places === "most" ? laid : trimTo(laid, Math.min(ask.places, ask.chairsLeft + ask.wheelchairs), focusOf(hall));
  return laid.filter((l) => kept.some((m) => m.at[0] === l.at[0] && m.at[1] === l.at[1]));
}

/** The draft with tables that stand a hand's breadth off a line brought onto it, and all of them to the middle of the free floor. */
function inLine(work: Work, draft: Draft): Draft {
  const stays = needed(work, draft), laid = centred(work.hall, straightened(work.hall, stays));
  return laid === stays ? draft : { ...draft, laid };
}

/** A draft whose tables stand wherever they went, and before it the same in rows and columns, where it can be brought into them: those may leave no way out. */
function withLines(work: Work, draft: Draft): readonly Draft[] {
  if (!loose(draft)) return [draft];
  const stays = needed(work, draft), laid = linedUp(work.hall, stays);
  return laid === stays ? [draft] : [{ ...draft, laid, form: "lined" }, draft];
}

const focusOf = (hall: Hall): Point => {
  if (hall.focus) return hall.focus;
  const box = boxOf(hall.floor.flatMap((p) => p.outer));
  return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
};

type Finished = Seated & { readonly score: number };
const loose = (d: Draft): boolean => LOOSE_FORMS.has(d.form);

const byDensity = (list: readonly Family[], ask: SeatingAsk): readonly Family[] => [...list].sort((a, b) => density(b, ask) - density(a, ask));
function density(f: Family, ask: SeatingAsk): number {
  const s = f.shape, g = ask.gaps.tableGap;
  return placesAt(f, ask, ask.chair) / ("diameter" in s ? (s.diameter + g) ** 2 : (s.width + g) * (s.depth + g));
}

/** A draft with its places cut to the number asked, ways out kept open, and places for wheelchairs. */
function finish(work: Work, draft: Draft, options: SeatingOptions): Finished | null {
  const { hall, ask } = work;
  const focus = focusOf(hall);
  const limit = Math.min(ask.places === "most" ? Infinity : ask.places, ask.chairsLeft + ask.wheelchairs);
  let laid: readonly Laid[] = trimTo(draft.laid, limit, focus);
  let items = itemsOf(hall, laid);
  const drop = (ids: readonly string[]): void => {
    if (ids.length === 0) return;
    // Taken out of the full draft, so that the tables left may take the places again.
    const gone = new Set(laid.filter((_, i) => ids.includes(`t-${i + 1}`)).map((l) => `${l.at[0]} ${l.at[1]}`));
    laid = trimTo(draft.laid.filter((l) => laid.some((m) => m.at[0] === l.at[0] && m.at[1] === l.at[1]) && !gone.has(`${l.at[0]} ${l.at[1]}`)), limit, focus);
    items = itemsOf(hall, laid);
  };
  for (let round = 0; round < 3 && items.length > 0; round++) {
    const shut = shutIn(hall.space, items);
    if (shut.length === 0) break;
    drop(draft.kind === "rounds" ? shut : oneGroup(laid, shut));
  }
  if (options.verify && items.length > 0) drop(options.verify(items));
  if (items.length === 0) return null;
  const axis = hall.space.axis;
  let wheels = placeWheelchairs(hall.space, items, { count: ask.wheelchairs, chair: hall.chair, axis, spare: 0 });
  if (wheels.placed < ask.wheelchairs) {
    // A wheelchair may cost its neighbour: lay one more place a wheelchair where tables can take them.
    const wider = itemsOf(hall, trimTo(draft.laid.filter((l) => laid.some((m) => m.at[0] === l.at[0] && m.at[1] === l.at[1])), Math.min(limit + ask.wheelchairs, ask.chairsLeft + ask.wheelchairs), focus));
    const again = placeWheelchairs(hall.space, wider, { count: ask.wheelchairs, chair: hall.chair, axis, spare: ask.places === "most" ? Infinity : Math.max(0, wider.reduce((n, i) => n + i.seats.length, 0) - limit) });
    if (again.placed > wheels.placed) wheels = { ...again, items: giveBack(again.items, limit) };
  }
  items = wheels.items;
  const chairs = items.reduce((n, i) => n + i.seats.length, 0);
  return { items, places: chairs, wheelchairs: wheels.placed, form: draft.form, family: draft.kind, runs: groupsIn(laid).length, score: draft.score, composed: !loose(draft), lined: draft.form === "lined" && inLines(laid) };
}

/** Takes the places laid beyond the number back, from the fullest tables. */
function giveBack(items: readonly Item[], limit: number): readonly Item[] {
  const out = [...items];
  for (let over = out.reduce((n, i) => n + i.seats.length, 0) - limit; over > 0; over--) {
    const at = out.reduce((best, i, k) => (i.seats.length > (out[best]?.seats.length ?? 0) ? k : best), 0);
    const item = out[at];
    if (!item) break;
    const last = item.seats.map((s) => s.place).lastIndexOf("chair");
    out[at] = { ...item, seats: item.seats.filter((_, k) => k !== last) };
  }
  return out;
}

/** Of shut-in tables, those of the first group alone: with it gone the others may be open again. */
function oneGroup(laid: readonly Laid[], ids: readonly string[]): readonly string[] {
  const first = laid[Number((ids[0] ?? "t-1").slice(2)) - 1];
  return ids.filter((id) => laid[Number(id.slice(2)) - 1]?.group === first?.group);
}
