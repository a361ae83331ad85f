import type { Brief } from "../brief";
import type { ArrangeResult, Layout } from "../layout";
import type { Venue } from "../venue";
import { arrange, contextOf, packageOf } from "./arrange";
import { movedIds, relaidIds } from "./repair/edit";
import { benchOf, mustsOf } from "./repair/judge";
import { fillPieces, fillPlaces, mend } from "./repair/mend";
import { placesAtMeal, takeChairs } from "./repair/places";
import { dropUnasked } from "./repair/pieces";
import { reseatCeremony, reseatMeal } from "./repair/reseat";
import { answer } from "./repair/seal";
import { sceneOf } from "./repair/edit";

export type ChangeOptions = { readonly seed?: number; readonly budget?: number };

const BUDGET = 1500;

/**
 * A new brief on an agreed layout, with as few pieces moved as can be: places at the tables that stand, then a table into free floor,
 * then a table for a larger one or one moved aside; displays come and go by themselves. Only where that fails is a part of the day
 * laid anew, and last the whole day. `moved`: pieces that stand elsewhere, are new or are gone; `relaid`: tables laid otherwise.
 * @throws when the brief names a package that the venue lacks: `briefAgainstVenue` refuses that at the edge.
 */
export function change(venue: Venue, agreed: Layout, brief: Brief, options: ChangeOptions = {}): ArrangeResult {
  const pack = packageOf(venue, brief);
  if (!pack) throw new Error(`package ${brief.package} is not among ${venue.packages.map((p) => p.id).join(", ")}`);
  const seed = options.seed ?? 1;
  // Bounds alone, with nothing tried: what is impossible for any layout is so for this one.
  if (arrange(venue, brief, { seed, layouts: 1, attempts: 0, instead: false }).status === "impossible") return arrange(venue, brief, { seed });
  const ctx = contextOf(venue, pack, brief, seed);
  const bench = benchOf(venue, brief, [], options.budget ?? BUDGET);
  const guests = ctx.demand.guests;
  const asked = dropUnasked(bench, agreed);
  const over = sceneOf(asked, "meal") ? placesAtMeal(asked) - guests : 0;
  const fewer = over > 0 ? takeChairs(bench, asked, over) : asked;
  let best = mend(bench, ctx, fillPlaces(bench, fillPieces(bench, ctx, fewer)));
  const left = mustsOf(bench, best);
  if (left.length > 0) {
    const tries = [...(left.some((f) => f.scene === "ceremony") ? reseatCeremony(bench, ctx, best) : []), ...(left.some((f) => f.scene !== "ceremony") ? reseatMeal(bench, ctx, best) : [])];
    let least = left.length;
    for (const t of tries) {
      const more = benchOf(venue, brief, [], options.budget ?? BUDGET);
      const mended = mend(more, ctx, fillPlaces(more, t));
      const n = mustsOf(more, mended).length;
      if (n < least) { best = mended; least = n; }
      if (n === 0) break;
    }
  }
  const small = answer(bench, ctx, { before: agreed, after: best });
  return small.status === "arranged" ? small : wholly(venue, agreed, brief, small, seed);
}

/** The whole day anew, as a last resort: of what the engine finds, the layout that moves the fewest pieces. */
function wholly(venue: Venue, agreed: Layout, brief: Brief, small: ArrangeResult, seed: number): ArrangeResult {
  const anew = arrange(venue, brief, { seed });
  const best = [...anew.layouts].sort((a, b) => movedIds(agreed, a).length - movedIds(agreed, b).length)[0];
  if (!best) return { ...small, instead: anew.instead };
  return { ...anew, layouts: [best], moved: movedIds(agreed, best), relaid: relaidIds(agreed, best) };
}
