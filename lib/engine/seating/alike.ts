import { boxOf, type Point } from "../../geometry";
import { isRoundFamily, unitsOf, type Draft, type Work } from "./drafts";
import { choose, composedGrids, type Standings } from "./grids";
import { evenRows } from "./even-rows";
import { groundFor } from "./hall";
import type { Family } from "./types";
import { layUnit, type Unit } from "./units";

/** What two sizes of one shape look like beside one size alone. */
const TWO_SIZES = 0.2;

const spans = (f: Family): readonly [number, number] => ("diameter" in f.shape ? [f.shape.diameter, f.shape.diameter] : [f.shape.width, f.shape.depth]);

/**
 * Rows of two sizes of table of one shape, where neither alone is owned in number enough: all stand where the larger would, the smaller
 * ones farthest from the couple. Pre: families of one shape. Post: the drafts hold the places.
 */
export function alikeDrafts(work: Work, families: readonly Family[], places: number): readonly Draft[] {
  const out: Draft[] = [];
  for (const big of families) for (const small of families) {
    const [[w, d], [v, e]] = [spans(big), spans(small)];
    if (big === small || v > w || e > d || (v === w && e === d && big.stock > small.stock) || big.ends !== small.ends) continue;
    for (const [k, unit] of unitsOf(work, big, [1], [790]).entries()) {
      const less = unitsOf(work, small, [1], [790])[k];
      if (!less) continue;
      const a = Math.min(big.count, Math.ceil(places / unit.places)), b = Math.ceil(Math.max(0, places - a * unit.places) / less.places);
      if (b < 1 || b > small.count) continue;
      for (const s of standing(work, unit, a + b)) out.push(laid(work, s, { unit, less, a }));
    }
  }
  return out.sort((x, y) => y.score - x.score).slice(0, 3);
}

function standing(work: Work, unit: Unit, n: number): readonly Standings[] {
  const ground = groundFor(work.hall, unit.footing);
  return [...composedGrids(work.hall, unit, ground, n, { keep: 2 }), ...evenRows(work.hall, unit, ground, n)];
}

function laid(work: Work, s: Standings, { unit, less, a }: { readonly unit: Unit; readonly less: Unit; readonly a: number }): Draft {
  const box = boxOf(s.points), middle: Point = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const near = new Set(choose(s.points, a, work.hall, middle));
  return {
    laid: s.points.flatMap((p, i) => layUnit(near.has(p) ? unit : less, p, i)), kind: isRoundFamily(unit.family) ? "rounds" : "long",
    form: s.grid.staggered ? "staggered" : "grid", score: s.score - TWO_SIZES,
  };
}
