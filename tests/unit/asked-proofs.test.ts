import { describe, expect, it } from "vitest";
import { briefSchema, type Brief } from "../../lib/brief";
import { arrange } from "../../lib/engine";
import { tidewheel } from "../../lib/demo";
import { venueSchema, type VenueFile } from "../../lib/venue";

const mill = (more: Partial<VenueFile> = {}) => venueSchema.parse({ ...tidewheel, ...more });
const asked = (more: Record<string, unknown>): Brief => briefSchema.parse({ format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 40 }, ...more });
const codes = (brief: Brief, venue = mill()): readonly string[] => { const r = arrange(venue, brief, { layouts: 1 }); return [r.status, ...r.reasons.map((f) => f.code)]; };

describe("what the brief's own words shut out", () => {
  it("is told where a horseshoe of long tables is to be laid of rounds, with what would do instead", () => {
    const r = arrange(mill(), asked({ meal: { service: "plated", tables: "rounds", form: "u" } }), { layouts: 1 });
    expect([r.status, ...r.reasons.map((f) => f.code)]).toEqual(["impossible", "bound-form"]);
    expect(r.reasons[0]).toMatchObject({ limit: 1 + 2, text: expect.stringContaining("rounds are asked for") as unknown });
    expect(r.instead.map((i) => i.change)).toContainEqual({ "meal.form": "any" });
  });

  it("is told where fewer tables join than the form has heads and legs", () => {
    const owning = (count: number) => mill({ stock: tidewheel.stock.map((s) => (s.joins === true ? { ...s, count } : s)) });
    expect(codes(asked({ meal: { service: "plated", tables: "long", form: "e" } }), owning(1 + 3 - 1))).toEqual(["impossible", "bound-form"]);
    expect(codes(asked({ guests: { adults: 12 }, meal: { service: "plated", tables: "long", form: "u" } }), owning(2 + 2))).toEqual(["arranged"]);
  });

  it("is told where the ceremony is to be at tables that no meal lays", () => {
    expect(codes(asked({ ceremony: { seating: "at-tables" }, meal: { service: "none" } }))).toEqual(["impossible", "bound-at-tables"]);
  });
});
