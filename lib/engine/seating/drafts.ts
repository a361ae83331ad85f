import type { Random } from "../../base";
import { boxOf, type Point } from "../../geometry";
import { isRound } from "../../layout";
import { evenRows } from "./even-rows";
import { fieldOf } from "./field";
import { composedGrids } from "./grids";
import { groundFor, placesFor, type Hall } from "./hall";
import { hallWith, joined, totalPlaces } from "./items";
import { packEqual } from "./pack";
import { fullestRows } from "./rows";
import type { Family, Laid, SeatingAsk, TableKind } from "./types";
import { layUnit, placesAt, roundUnit, runUnit, type Unit } from "./units";

/** An arrangement before its places are cut to the number asked. */
export type Draft = { readonly laid: readonly Laid[]; readonly kind: TableKind; readonly form: string; readonly score: number };
export type Work = { readonly hall: Hall; readonly ask: SeatingAsk; readonly random: Random; readonly steps: number };

export const isRoundFamily = (f: Family): boolean => isRound(f.shape);
/** Longest run of tables end to end, mm: common practice, no source (service and conversation break up beyond it). */
const LONGEST_RUN = 7_600;

/** A unit laid at each of the points, each a group of its own. */
export const lay = (unit: Unit, points: readonly Point[], first = 0): Laid[] => points.flatMap((p, i) => layUnit(unit, p, first + i));

export function runLengths(f: Family): readonly number[] {
  if (isRound(f.shape) || !f.joins) return [1];
  const most = Math.max(1, Math.min(f.count, Math.floor(LONGEST_RUN / f.shape.width)));
  return Array.from({ length: most }, (_, i) => i + 1);
}

/** Units of a family in both directions. */
export function unitsOf(work: Work, f: Family, lengths = runLengths(f), endWalls: readonly number[] = [790, 0]): readonly Unit[] {
  const per = placesAt(f, work.ask, work.ask.chair);
  if (isRound(f.shape)) { const u = roundUnit(work.hall, f, per); return u ? [u] : []; }
  return lengths.flatMap((tables) => [false, true].flatMap((upright) => endWalls.flatMap((endWall) => {
    const u = runUnit(work.hall, f, { tables, perTable: per, upright, endWall });
    return u ? [u] : [];
  })));
}

/** Composed arrangements of one family that hold the places wanted: with a way behind the ends of runs, and where none is so, close to the wall. */
export function composed(work: Work, f: Family, places: number, keep = 3): readonly Draft[] {
  const open = composedWith(work, f, { places, keep, endWalls: [790] });
  return open.length > 0 || isRoundFamily(f) ? open : composedWith(work, f, { places, keep, endWalls: [0] });
}

/** The floor has its mirror image as good as wholly. */
const MIRRORED = 0.8;
const mirrored = (hall: Hall): boolean => (hall.mirrorX !== null || hall.mirrorY !== null) && hall.even > MIRRORED;

type ComposedAsk = { readonly places: number; readonly keep: number; readonly endWalls: readonly number[] };
function composedWith(work: Work, f: Family, { places, keep, endWalls }: ComposedAsk): readonly Draft[] {
  const kind: TableKind = isRoundFamily(f) ? "rounds" : "long";
  const out: Draft[] = [];
  for (const unit of unitsOf(work, f, runLengths(f), endWalls)) {
    const n = Math.ceil(places / unit.places);
    if (n * unit.count > f.count) continue;
    const ground = groundFor(work.hall, unit.footing);
    const put = (units: number): readonly Draft[] => {
      const extra = units * unit.count - Math.ceil(places / (unit.places / unit.count)), less = 0.2 * extra - (unit.count > 1 ? 0.15 : 0);
      return [
        ...composedGrids(work.hall, unit, ground, units, { keep }).map((s): Draft => ({ laid: lay(unit, s.points), kind, form: s.grid.staggered ? "staggered" : unit.count > 1 ? "runs" : "grid", score: s.score - less })),
        ...evenRows(work.hall, unit, ground, units).map((s): Draft => ({ laid: lay(unit, s.points), kind, form: unit.count > 1 ? "runs" : "even", score: s.score - less })),
      ];
    };
    const found = put(n);
    out.push(...found);
    // An odd table where each could have its image: one more is laid, and all of them for fewer.
    if (n % 2 === 1 && unit.count === 1 && n < f.count && mirrored(work.hall)) out.push(...put(n + 1));
  }
  // The best of each form, so that there is a choice of more than one.
  const best = out.sort((a, b) => b.score - a.score);
  return [...new Set([...best.filter((d, i) => best.findIndex((o) => o.form === d.form) === i), ...best.slice(0, keep)])];
}

/** As many rounds of one family as go, at most `count`. */
export function fullestRounds(work: Work, f: Family, count: number): readonly Laid[] {
  const unit = roundUnit(work.hall, f, placesAt(f, work.ask, work.ask.chair));
  if (!unit || count < 1) return [];
  const region = placesFor(work.hall, unit.footing);
  if (region.length === 0) return [];
  return lay(unit, packEqual(fieldOf(region), unit.px, { angles: [0, 90, 45, ...wallAngles(work.hall)], steps: work.steps, random: work.random, ceiling: count }));
}

/** Directions of long walls that are not the main axis, degrees in (0, 90). */
export function wallAngles(hall: Hall): readonly number[] {
  const weight = new Map<number, number>();
  for (const { outer } of hall.floor) outer.forEach((a, i) => {
    const b = outer[(i + 1) % outer.length] as Point;
    const d = Math.round(((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI + 360) * 10) / 10 % 90;
    if (d > 1 && d < 89) weight.set(d, (weight.get(d) ?? 0) + Math.hypot(b[0] - a[0], b[1] - a[1]));
  });
  return [...weight].filter(([, w]) => w > 3_000).sort((a, b) => b[1] - a[1]).slice(0, 2).map(([d]) => d);
}

/** Ways of beginning that are filled up, those with the most places first. */
const STARTS = 2;

/** As many long tables of one family as go, in runs of equal length, then single ones in what is left; no more once `enough` places stand. */
export function fullestLong(work: Work, f: Family, count: number, enough = Infinity): readonly Laid[] {
  const begin = (unit: Unit) => {
    const spots = fullestRows(unit, groundFor(work.hall, unit.footing)).slice(0, Math.floor(count / unit.count));
    return { unit, spots, places: spots.length * unit.places };
  };
  const best = (list: readonly ReturnType<typeof begin>[]) => [...list].sort((a, b) => b.places - a.places || a.unit.count - b.unit.count).slice(0, STARTS);
  // With a way behind their ends first; then the likeliest close to the wall as well.
  const open = best(unitsOf(work, f, runLengths(f), [790]).map(begin));
  const tight = unitsOf(work, f, [...new Set(open.map((o) => o.unit.count))], [0]).map(begin);
  let most: readonly Laid[] = [];
  for (const { unit, spots } of best([...open, ...tight])) {
    const start = lay(unit, spots);
    const full = addMore(work, start, f, { most: count - start.length, enough });
    if (totalPlaces(full) > totalPlaces(most)) most = full;
    if (totalPlaces(most) >= enough) break;
  }
  return relaid(work, most, f, { most: count, enough });
}

/** Steps of search that one clearing counts for; how far about its middle tables are taken up, mm; clearings in a row without a gain. */
const CLEARING = 200_000, CLEARED: readonly number[] = [2_200, 3_400, 5_000], FRUITLESS = 60;

/**
 * Takes up the tables about a point and fills the floor anew, again and again; what holds as many is kept as well, so that the search
 * wanders (ruin and recreate: Schrimpf and others, Journal of Computational Physics 159, 2000, 139-171). The dice are the work's own.
 */
function relaid(work: Work, start: readonly Laid[], f: Family, { most, enough }: More): readonly Laid[] {
  let best = start, now = start, budget = Math.floor(work.steps / CLEARING), dull = 0;
  const box = boxOf(work.hall.floor.flatMap((p) => p.outer));
  while (budget-- > 0 && dull++ < FRUITLESS && totalPlaces(best) < enough && best.length < most) {
    const at: Point = [box.minX + work.random() * (box.maxX - box.minX), box.minY + work.random() * (box.maxY - box.minY)];
    const reach = CLEARED[Math.floor(work.random() * CLEARED.length)] ?? 0;
    const gone = new Set(now.filter((l) => Math.hypot(l.at[0] - at[0], l.at[1] - at[1]) < reach).map((l) => l.group));
    if (gone.size === 0) continue;
    const left = now.filter((l) => !gone.has(l.group));
    const next = addMore(work, left, f, { most: most - left.length, enough });
    if (totalPlaces(next) < totalPlaces(now)) continue;
    if (totalPlaces(next) > totalPlaces(best)) { best = next; dull = 0; }
    now = next;
  }
  return best;
}

type More = { readonly most: number; readonly enough: number };
type Open = { readonly unit: Unit; readonly spots: readonly Point[]; readonly places: number; readonly seen: number };

/**
 * Adds tables of a family where they still fit, at most so many: always the runs that bring the most places. What a run brought
 * before it brings at the most now, so that those behind the best need no new look.
 */
function addMore(work: Work, start: readonly Laid[], f: Family, { most, enough }: More): readonly Laid[] {
  const out = [...start];
  let hall = hallWith(work.hall, out), left = most;
  const look = (unit: Unit, seen: number): Open => {
    const spots = unit.count > left ? [] : fullestRows(unit, groundFor(hall, unit.footing)).slice(0, Math.floor(left / unit.count));
    return { unit, spots, places: spots.length * unit.places, seen };
  };
  if (left < 1 || totalPlaces(out) >= enough) return out;
  // Runs as well as single tables where there is time to search.
  let open = unitsOf(work, f, work.steps > 0 ? runLengths(f) : [1], [0]).map((u) => look(u, 0));
  for (let round = 0; round < 12 && left > 0 && totalPlaces(out) < enough;) {
    open = open.filter((t) => t.places > 0).sort((a, b) => b.places - a.places || b.unit.count - a.unit.count);
    const best = open[0];
    if (!best) break;
    if (best.seen < round) { open[0] = look(best.unit, round); continue; }
    const more = lay(best.unit, best.spots, 1_000 + out.length);
    out.push(...more);
    hall = hallWith(hall, more);
    left -= more.length;
    round++;
  }
  return out;
}

/** What is laid fullest, by the families in turn: orders share their beginnings. */
export type Known = Map<string, { readonly laid: readonly Laid[]; readonly hall: Hall }>;

function inTurn(work: Work, order: readonly Family[], known: Known): { readonly laid: readonly Laid[]; readonly hall: Hall } {
  const f = order[order.length - 1];
  if (!f) return { laid: [], hall: work.hall };
  const key = order.map((o) => o.stock).join(" "), found = known.get(key);
  if (found) return found;
  const { laid: before, hall } = inTurn(work, order.slice(0, -1), known);
  const wanted = (work.ask.places === "most" ? Infinity : work.ask.places) - totalPlaces(before);
  const w = { ...work, hall };
  const more = wanted <= 0 ? [] : isRoundFamily(f) ? fullestRounds(w, f, f.count) : fullestLong(w, f, f.count, wanted);
  // While they are searched for, runs may share a number, and are then taken up together; in the end each has its own.
  const first = 1 + Math.max(-1, ...before.map((l) => l.group)), of = joined(more), own = more.map((l, i): Laid => ({ ...l, group: first + (of[i] ?? 0) }));
  const full = { laid: [...before, ...own], hall: hallWith(hall, own) };
  known.set(key, full);
  return full;
}

/** Without the tables that the number does not need: whole runs first, then single tables, those farthest from the couple or the middle. */
function fewest(laid: readonly Laid[], places: number, hall: Hall): readonly Laid[] {
  const box = boxOf(hall.floor.flatMap((p) => p.outer)), aim: Point = hall.focus ?? [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const far = (l: Laid): number => Math.hypot(l.at[0] - aim[0], l.at[1] - aim[1]);
  let left = [...laid];
  for (const group of [...new Set([...left].sort((a, b) => far(b) - far(a)).map((l) => l.group))]) {
    const rest = left.filter((l) => l.group !== group);
    if (totalPlaces(rest) >= places) left = rest;
  }
  return left;
}

/** Fullest of a list of families, each in turn, in the orders that may matter. */
export function fullest(work: Work, families: readonly Family[], kind: TableKind, known: Known): readonly Draft[] {
  const orders = families.length > 1 ? [families, [...families].reverse()] : [families];
  return orders.map((order) => {
    const { laid } = inTurn(work, order, known);
    // A mix that came out all of one kind is called by what it is.
    const round = laid.some((l) => isRoundFamily(l.family)), long = laid.some((l) => !isRoundFamily(l.family));
    return { laid: work.ask.places === "most" ? laid : fewest(laid, work.ask.places, work.hall), kind: round && long ? "mixed" : round ? "rounds" : long ? "long" : kind, form: "fullest", score: 0 };
  });
}
