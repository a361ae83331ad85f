import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../lib/brief";
import { contextOf, packageOf } from "../../../lib/engine/arrange";
import { topItems, topOf } from "../../../lib/engine/stages/top-table";
import { hallFor } from "../../bench/weddings";

/** The top table of a hall's 1.83 m tables for so many on one side, its middle at 0. */
function topFor(places: number) {
  const venue = hallFor(100);
  const brief = briefSchema.parse({ format: "marquetry.brief/1", package: "hire", date: "2027-06-12", guests: { adults: 80 }, meal: { top: "one-sided", topPlaces: places } });
  const pack = packageOf(venue, brief);
  if (!pack) throw new Error("no package");
  const ctx = contextOf(venue, pack, brief, 1), top = topOf(ctx, 900);
  if (!top) throw new Error("no top table");
  const tables = topItems(ctx, top, "hall", { at: [0, 0], angle: 0 });
  return { tables, xs: tables.flatMap((t) => t.seats.map((s) => s.x)).sort((a, b) => a - b) };
}
/** Half a chair, and half a table, mm. */
const HALF_CHAIR = 450 / 2, HALF_TABLE = 1830 / 2;

describe("the places of a top table laid on one side", () => {
  const asked = Array.from({ length: 17 }, (_, i) => i + 4);

  it.each(asked)("are %i, each before one table alone: none stands across a joint", (places) => {
    const { tables, xs } = topFor(places);
    expect(xs).toHaveLength(places);
    for (const t of tables) for (const s of t.seats) expect(Math.abs(s.x - t.at[0])).toBeLessThanOrEqual(HALF_TABLE - HALF_CHAIR);
  });

  it.each(asked)("are %i, alike on both sides of its middle unless a joint lies there and the number is odd", (places) => {
    const { tables, xs } = topFor(places);
    if (tables.length % 2 === 0 && places % 2 === 1) return;
    xs.forEach((x, i) => expect(Math.abs(x + (xs[places - 1 - i] ?? NaN))).toBeLessThanOrEqual(2));
  });

  it.each(asked)("are %i, none much farther from the next than another: the joints alone part them", (places) => {
    const gaps = topFor(places).xs.flatMap((x, i, all) => (i === 0 ? [] : [x - (all[i - 1] ?? NaN)]));
    expect(Math.max(...gaps) / Math.min(...gaps)).toBeLessThanOrEqual(1.25);
  });
});
