import type { Brief } from "../brief";
import { quote } from "../fees";
import type { Layout, WetTwin } from "../layout";
import { checkWet } from "../rules";
import type { Venue } from "../venue";
import { contextOf, packageOf } from "./arrange";
import { recounted } from "./repair/edit";
import { benchOf } from "./repair/judge";
import { sealed } from "./repair/seal";
import { turnoversOfDay } from "./turnover";

/**
 * A layout whose pieces were changed by hand made whole again: places counted, turnovers, findings, fees and score as they follow from
 * where everything stands now; of its wet-weather twin too. No piece is moved.
 * @throws when the brief names a package that the venue lacks: `briefAgainstVenue` refuses that at the edge.
 */
export function settle(venue: Venue, brief: Brief, layout: Layout): Layout {
  const pack = packageOf(venue, brief);
  if (!pack) throw new Error(`package ${brief.package} is not among ${venue.packages.map((p) => p.id).join(", ")}`);
  const ctx = contextOf(venue, pack, brief, 1);
  const bench = benchOf(venue, brief, [], 0);
  const dry = sealed(bench, ctx, layout);
  if (!layout.wet) return dry;
  const day = recounted({ ...layout, scenes: layout.wet.scenes });
  const turnovers = turnoversOfDay(venue, day.scenes, (s) => (s.id === "ceremony" ? ctx.demand.ceremonyGuests : ctx.demand.guests));
  const { wet: _, ...whole } = { ...day, turnovers, findings: [] };
  const wet: WetTwin = { scenes: day.scenes, turnovers, findings: checkWet(venue, whole, brief), quote: quote(venue, brief, whole) };
  return { ...dry, wet };
}
