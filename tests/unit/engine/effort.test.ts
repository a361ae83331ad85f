import { describe, expect, it } from "vitest";
import { briefSchema, type Brief } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import { contextOf, packageOf } from "../../../lib/engine/arrange";
import { EFFORT } from "../../../lib/engine/effort";
import { search } from "../../../lib/engine/search";
import { stopwatch } from "../../../lib/engine/stopwatch";
import { venueSchema, type Venue } from "../../../lib/venue";
import { pairFrom } from "../../soak/soak";

const mill: Venue = venueSchema.parse(tidewheel);
const day = (adults: number, wheelchairs: number): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults, wheelchairs },
  meal: { service: "buffet" }, music: { by: "dj", dancing: 0.35 }, displays: ["welcome", "cards", "cake"],
});

/** Steps that a search has spent of so many. */
function spentOf(venue: Venue, brief: Brief, effort: number): number {
  const pack = packageOf(venue, brief);
  if (!pack) throw new Error(`no package ${brief.package}`);
  const ctx = contextOf(venue, pack, brief, 1, { left: effort });
  search(ctx, 1, { wet: false }, stopwatch());
  return effort - ctx.effort.left;
}

/** What is begun before the steps run out is ended: the rows for 92 guests, 30 of them in wheelchairs, and one whole day of some sixty pieces. */
const BEGUN = (20 + 92 / 4 + 15 * 30) + (50 + 60);

describe("what one arrangement may spend", () => {
  it("ends a search once its steps are spent, save for what was begun", () => {
    // Thirty who come in wheelchairs, and a house whose suppliers' table found no spot for minutes: the longest searches known.
    for (const { venue, brief } of [{ venue: mill, brief: day(92, 30) }, pairFrom(400_042)]) {
      const spent = spentOf(venue, brief, 600);
      expect(spent).toBeGreaterThan(600);
      expect(spent).toBeLessThan(600 + BEGUN);
    }
  });

  it("counts the same steps for the same files", () => {
    const copy = venueSchema.parse(JSON.parse(JSON.stringify(tidewheel)));
    expect(spentOf(copy, day(40, 1), EFFORT)).toBe(spentOf(mill, day(40, 1), EFFORT));
  });

  it("lays a usual day for a sixth of its steps", () => {
    expect(spentOf(mill, day(92, 1), EFFORT)).toBeLessThan(EFFORT / 6);
  });

  it("says why, and shows the closest attempt, where the steps ran out", () => {
    const found = arrange(mill, day(92, 30), { effort: 400, layouts: 1, instead: false, wet: false });
    expect(found.status).toBe("not-found");
    expect(found.reasons.length).toBeGreaterThan(0);
    expect(found.closest?.scenes.map((s) => s.id)).toContain("meal");
  });
});
