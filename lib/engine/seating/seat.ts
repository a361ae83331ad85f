import { seeded } from "../../base";
import { boxesNear, boxOf, clearance, polygonShape, type Point } from "../../geometry";
import { composed, fullest, isRoundFamily, type Draft, type Work } from "./drafts";
import { FORMS, formDrafts } from "./forms";
import { hallOf } from "./hall";
import { itemsOf, standingOf, totalPlaces, trimTo } from "./items";
import { mixedDrafts } from "./mixed";
import type { Family, Laid, Seated, SeatingAsk, SeatingOptions, SeatingSpace, TableKind } from "./types";
import { placesAt } from "./units";

/** Joined forms are offered unasked up to this many places: common practice, no source. */
const SMALL_PARTY = 60;

/**
 * Dining tables for a room: up to six arrangements that differ in kind. Those that seat `ask.places` come first, the
 * most composed leading; then the fullest. Deterministic: effort is counted in steps.
 */
export function seatTables(space: SeatingSpace, ask: SeatingAsk, options: SeatingOptions = {}): readonly Seated[] {
  const hall = hallOf(space, ask);
  if (hall.floor.length === 0) return [];
  const work: Work = { hall, ask, random: seeded(options.seed ?? 1), steps: Math.round((options.effort ?? 1) * 1_500_000) };
  const families = ask.families.filter((f) => f.count > 0 && placesAt(f, ask, ask.chair) > 0);
  const rounds = families.filter(isRoundFamily), longs = families.filter((f) => !isRoundFamily(f));
  const wants = (k: TableKind): boolean => ask.tables === "any" || ask.tables === k;
  const drafts: Draft[] = [];
  const number = ask.places === "most" ? null : ask.places;
  const form = FORMS.find((f) => f === ask.form);
  for (const one of form ? [form] : ask.form === "any" && number !== null && number <= SMALL_PARTY ? FORMS : [])
    if (wants("long")) for (const f of longs) drafts.push(...formDrafts(work, f, one, number));
  if (form) return ranked(work, drafts, options);
  if (number !== null) {
    if (wants("rounds")) for (const f of rounds) drafts.push(...composed(work, f, number));
    if (wants("long")) for (const f of longs) drafts.push(...composed(work, f, number));
  }
  if (number !== null && wants("mixed") && rounds.length > 0 && longs.length > 0) drafts.push(...mixedDrafts(work, [...byDensity(rounds, ask), ...byDensity(longs, ask)], number));
  const held = (k: TableKind): boolean => number !== null && drafts.some((d) => d.kind === k && totalPlaces(d.laid) >= number);
  if (wants("rounds") && rounds.length > 0 && !held("rounds")) drafts.push(...fullest(work, byDensity(rounds, ask), "rounds"));
  if (wants("long") && longs.length > 0 && !held("long")) drafts.push(...fullest(work, byDensity(longs, ask), "long"));
  if (wants("mixed") && rounds.length > 0 && longs.length > 0 && !held("mixed")) drafts.push(...fullest(work, [...byDensity(rounds, ask), ...byDensity(longs, ask)], "mixed"));
  return ranked(work, drafts, options);
}

/** Up to six that differ in kind: those with places enough first, the most composed leading, then the fullest. */
function ranked(work: Work, drafts: readonly Draft[], options: SeatingOptions): readonly Seated[] {
  const number = work.ask.places === "most" ? null : work.ask.places;
  const done = drafts.map((d) => finish(work, d, options)).filter((s): s is Seated & { score: number } => s !== null);
  const enough = (s: Seated): boolean => number !== null && s.places >= number;
  done.sort((a, b) => Number(enough(b)) - Number(enough(a)) || (enough(a) ? b.score - a.score : b.places - a.places));
  const kept: Seated[] = [];
  for (const s of done) {
    if (kept.filter((k) => k.family === s.family && k.form === s.form).length > 0 || kept.length >= 6) continue;
    const { score: _, ...rest } = s;
    kept.push(rest);
  }
  return kept;
}

const byDensity = (list: readonly Family[], ask: SeatingAsk): readonly Family[] => [...list].sort((a, b) => density(b, ask) - density(a, ask));
function density(f: Family, ask: SeatingAsk): number {
  const s = f.shape, g = ask.gaps.tableGap;
  return placesAt(f, ask, ask.chair) / ("diameter" in s ? (s.diameter + g) ** 2 : (s.width + g) * (s.depth + g));
}

function finish(work: Work, draft: Draft, options: SeatingOptions): (Seated & { readonly score: number }) | null {
  const { hall, ask } = work;
  const box = boxOf(hall.floor.flatMap((p) => p.outer));
  const focus: Point = hall.focus ?? [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const limit = Math.min(ask.places === "most" ? Infinity : ask.places, ask.chairsLeft + ask.wheelchairs);
  let laid: readonly Laid[] = trimTo(draft.laid, limit, focus);
  let items = itemsOf(hall, laid);
  const bad = options.verify ? new Set(options.verify(items)) : new Set<string>();
  if (bad.size > 0) {
    laid = laid.filter((_, i) => !bad.has(`t-${i + 1}`));
    items = itemsOf(hall, laid);
  }
  if (items.length === 0) return null;
  return {
    items, places: items.reduce((s, i) => s + i.seats.length, 0), wheelchairs: 0, form: draft.form, family: draft.kind,
    runs: groupsOf(laid), score: draft.score,
  };
}

/** Groups of tables that stand end to end. */
function groupsOf(laid: readonly Laid[]): number {
  const shapes = laid.map((l) => (isRoundFamily(l.family) ? null : polygonShape(standingOf(l).polygon)));
  const of = laid.map((_, i) => i);
  shapes.forEach((a, i) => shapes.forEach((b, j) => {
    if (!a || !b || j <= i || of[i] === of[j] || !boxesNear(a.box, b.box, 3) || clearance(a, b) > 3) return;
    const [x, y] = [of[i], of[j]];
    of.forEach((g, k) => { if (g === y) of[k] = x as number; });
  }));
  return new Set(of).size;
}
