import { boxOf, type Box } from "../../geometry";
import { isRoundFamily, lay, runLengths, unitsOf, type Draft, type Work } from "./drafts";
import { evenRows } from "./even-rows";
import { composedGrids } from "./grids";
import { boxAt, groundFor, type Ground } from "./hall";
import { hallWith, totalPlaces } from "./items";
import { clipped } from "./lines";
import { fullestRows } from "./rows";
import type { Family } from "./types";
import { placesAt, type Unit } from "./units";

type Band = { readonly form: string; readonly area: Box };

/** Parts of the floor that the long tables may take: the middle, with rounds on both sides, or one end. */
function bands({ level: { minX, maxX, minY, maxY } }: Ground): readonly Band[] {
  const w = maxX - minX, h = maxY - minY, cx = (minX + maxX) / 2, cy = (minY + maxY) / 2;
  const box = (x: number, y: number, wide: number, deep: number): Box => boxOf(boxAt([x, y], wide + 2, deep + 2));
  return [
    { form: "spine", area: box(cx, cy, w, h * 0.34) },
    { form: "spine", area: box(cx, cy, w * 0.34, h) },
    { form: "halves", area: box(minX + w / 4, cy, w / 2, h) },
    { form: "halves", area: box(maxX - w / 4, cy, w / 2, h) },
    { form: "halves", area: box(cx, minY + h / 4, w, h / 2) },
    { form: "halves", area: box(cx, maxY - h / 4, w, h / 2) },
  ];
}

const clippedGround = ({ level, upright }: Ground, b: Box): Ground => ({ level: clipped(level, b), upright: clipped(upright, { minX: b.minY, maxX: b.maxY, minY: b.minX, maxY: b.maxX }) });

/** Staggered rows may hold more than level ones, by no more than the closest packing does: 2 / sqrt(3). */
const CLOSER = 1.16;
/** A guess from above at how many rounds of a family the empty floor takes. */
function roundsAtMost(work: Work, g: Family): number {
  const unit = unitsOf(work, g)[0];
  return unit ? Math.ceil(CLOSER * fullestRows(unit, groundFor(work.hall, unit.footing)).length) + 1 : 0;
}

/** What two kinds of table look like beside one kind, to those who asked for neither. */
const UNASKED = 0.25;
/** A spine or a half of the floor is of tables for a company, not for two. */
const FEWEST = 4;

/** Rounds and long tables together, composed: long runs in a band of the floor, rounds in the rest. */
export function mixedDrafts(work: Work, families: readonly Family[], places: number): readonly Draft[] {
  const rounds = families.filter(isRoundFamily), longs = families.filter((f) => !isRoundFamily(f));
  const out: Draft[] = [];
  for (const f of longs.filter((l) => placesAt(l, work.ask, work.ask.chair) >= FEWEST || l.joins).slice(0, 2)) {
    const choices: { unit: Unit; runs: number; away: number }[] = [];
    const room = new Map(rounds.map((g) => [g, roundsAtMost(work, g)]));
    const roundSeats = rounds.reduce((s, g) => s + (unitsOf(work, g)[0]?.places ?? 0) * Math.min(g.count, room.get(g) ?? 0), 0);
    for (const unit of unitsOf(work, f, runLengths(f).slice(-4), [790])) for (let runs = 1; runs <= 6; runs++) {
      if (runs * unit.count > f.count) break;
      const seats = runs * unit.places;
      if (unit.places < FEWEST) break;
      if (seats >= places || places - seats > roundSeats) continue;
      choices.push({ unit, runs, away: Math.abs(seats / places - 0.4) - 0.03 * unit.count + (runs % 2 === 1 && runs > 1 ? 0.02 : 0) });
    }
    const pick = (upright: boolean): typeof choices => choices.filter((c) => c.unit.upright === upright).sort((a, b) => a.away - b.away).slice(0, work.steps > 0 ? 3 : 2);
    for (const { unit, runs } of [...pick(false), ...pick(true)]) {
      const ground = groundFor(work.hall, unit.footing);
      if (!ground) continue;
      for (const band of bands(ground)) {
        const within = clippedGround(ground, band.area);
        const long = composedGrids({ ...work.hall, focus: null }, unit, within, runs, { keep: 1, rough: 12 })[0];
        if (!long) continue;
        const laid = lay(unit, long.points);
        const hall = hallWith(work.hall, laid);
        for (const g of rounds.slice(0, 2)) {
          const round = unitsOf({ ...work, hall }, g)[0];
          if (!round) continue;
          const n = Math.ceil((places - totalPlaces(laid)) / round.places);
          if (n > g.count || n > (room.get(g) ?? 0)) continue;
          const left = groundFor(hall, round.footing), best = composedGrids(hall, round, left, n, { keep: 1, rough: 12 })[0] ?? evenRows(hall, round, left, n)[0];
          if (!best) continue;
          out.push({ laid: [...laid, ...lay(round, best.points, 1_000)], kind: "mixed", form: band.form, score: (long.score + best.score) / 2 + (band.form === "spine" ? 0.1 : 0) - (work.ask.tables === "any" ? UNASKED : 0) });
        }
      }
    }
  }
  return out.sort((a, b) => b.score - a.score).slice(0, 4);
}
