import type { Brief } from "../brief";
import type { ArrangeResult, Layout } from "../layout";
import type { Venue } from "../venue";
import { contextOf, packageOf } from "./arrange";
import { pastMending } from "./repair/covers";
import { mustsOf, benchOf } from "./repair/judge";
import { mend, fillPlaces, fillPieces } from "./repair/mend";
import { reseatCeremony, reseatMeal } from "./repair/reseat";
import { answer } from "./repair/seal";

export type RepairOptions = {
  readonly seed?: number;
  /** Parts of the day judged, at the most (default 1200): effort is budgeted in steps, never in seconds. */
  readonly budget?: number;
};

const BUDGET = 1200;
/** The same where what is fixed stands wrongly by itself. */
const STUCK = 120;

/**
 * Puts a layout right round the pieces that are fixed: they stay exactly where they are, and of the others as few are moved as can
 * be. First each piece that a must finding names goes to the nearest spot that fits; then pieces near a pinch; then places are made
 * anew; last the part of the day is laid anew round what is fixed. `moved` names what stands elsewhere, is new or is gone.
 * Not found where a must is left, with the closest that was reached.
 * @throws when the brief names a package that the venue lacks: `briefAgainstVenue` refuses that at the edge.
 */
export function repair(venue: Venue, brief: Brief, layout: Layout, fixed: readonly string[] = [], options: RepairOptions = {}): ArrangeResult {
  const pack = packageOf(venue, brief);
  if (!pack) throw new Error(`package ${brief.package} is not among ${venue.packages.map((p) => p.id).join(", ")}`);
  const ctx = contextOf(venue, pack, brief, options.seed ?? 1);
  const bench = benchOf(venue, brief, fixed, options.budget ?? BUDGET);
  // What is fixed stands wrongly by itself: no laying anew can help, and the rest is put right only as far as that is quick.
  const stuck = mustsOf(bench, layout).some((f) => pastMending(bench, layout, f));
  if (stuck) bench.budget.left = Math.min(bench.budget.left, STUCK);
  let best = mend(bench, ctx, layout);
  let left = mustsOf(bench, best).length;
  const scenes = new Set(mustsOf(bench, best).map((f) => f.scene));
  // Laid anew from the layout as it came: what was moved for nothing on the way stays.
  for (const from of left > 0 && !stuck ? [best, layout] : []) {
    const tries = [...(scenes.has("ceremony") ? reseatCeremony(bench, ctx, from) : []), ...(scenes.size > (scenes.has("ceremony") ? 1 : 0) ? reseatMeal(bench, ctx, from) : [])];
    for (const t of tries) {
      if (left === 0) break;
      const more = benchOf(venue, brief, fixed, options.budget ?? BUDGET);
      const mended = mustsOf(more, t).length === 0 ? t : mend(more, ctx, fillPieces(more, ctx, fillPlaces(more, t)));
      const n = mustsOf(more, mended).length;
      if (n < left) { best = mended; left = n; }
    }
  }
  return answer(bench, ctx, { before: layout, after: best });
}
