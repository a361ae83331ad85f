import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefSchema, people, type BriefFile } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import type { ArrangeResult } from "../../../lib/layout";
import { check } from "../../../lib/rules";
import { venueSchema, type Venue } from "../../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const brief = (adults: number, more: Partial<BriefFile> = {}) => briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults, wheelchairs: 1 },
  meal: { service: "buffet" }, music: { by: "dj", dancing: 0.35 }, displays: ["welcome", "cards", "cake"], ...more,
});
const fixture = (kind: "venues" | "briefs", name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../fixtures/${kind}/${name}.json`, import.meta.url), "utf8"));

/** What every arranged answer must hold, whatever the room. */
function expectArranged(venue: Venue, asked: ReturnType<typeof brief>, result: ArrangeResult): void {
  expect(result.status).toBe("arranged");
  for (const layout of result.layouts) {
    expect(check(venue, layout, asked).filter((f) => f.level === "must").map((f) => f.text)).toEqual([]);
    const meal = layout.scenes.find((s) => s.id === "meal");
    expect(meal?.seats).toBeGreaterThanOrEqual(people(asked));
    expect(layout.quote?.total).toBe((layout.quote?.net ?? 0) + (layout.quote?.tax ?? 0));
  }
}

describe("arranging a day at the mill", () => {
  for (const adults of [40, 70, 92]) it(`seats ${adults} guests without a must finding`, () => {
    const asked = brief(adults);
    expectArranged(mill, asked, arrange(mill, asked, { layouts: 1 }));
  });

  it("gives the same bytes for the same files and seed", () => {
    const asked = brief(40);
    expect(JSON.stringify(arrange(mill, asked, { layouts: 1, seed: 7 }))).toBe(JSON.stringify(arrange(mill, asked, { layouts: 1, seed: 7 })));
  });

  it("proves that rounds alone cannot seat more than 7 x 10 + 2, and offers a mix that it has run", () => {
    const asked = brief(7 * 10 + 2 + 1, { meal: { service: "buffet", tables: "rounds", perTable: "most" } });
    const result = arrange(mill, asked, { layouts: 1 });
    expect(result.status).toBe("impossible");
    expect(result.reasons.map((r) => r.code)).toContain("bound-tables");
    expect(result.instead.map((i) => i.change)).toContainEqual({ "meal.tables": "any" });
  });

  it("proves that no room takes more than its posted figure", () => {
    const result = arrange(mill, brief(400), { layouts: 1, instead: false });
    expect(result.status).toBe("impossible");
    expect(result.reasons.some((r) => r.code === "bound-posted" || r.code === "bound-densest")).toBe(true);
  });

  it("keeps standing furniture where its place is free, and charges none of it then", () => {
    const result = arrange(mill, brief(40), { layouts: 1 });
    const moved = result.layouts[0]?.quote?.lines.filter((l) => ["heavy-piece", "light-piece"].includes(l.charge) && l.count > 0) ?? [];
    expect(moved).toEqual([]);
  });

  it("seats the couple at one of the rounds where they ask for it", () => {
    const result = arrange(mill, brief(60, { meal: { service: "buffet", tables: "rounds", top: "round", perTable: "most" } }), { layouts: 1, instead: false });
    const tops = result.layouts[0]?.scenes.find((s) => s.id === "meal")?.items.filter((i) => i.role === "top") ?? [];
    expect(tops.map((t) => t.shape)).toEqual([{ diameter: 1680 }]);
  });

  it("can be stopped before it begins, and says that it found nothing", () => {
    const result = arrange(mill, brief(92), { stop: () => true, instead: false });
    expect(result.status).toBe("not-found");
    expect(result.layouts).toEqual([]);
  });
});

describe("arranging days in rooms made up for the purpose", () => {
  for (const name of ["l-shape", "t-shape", "columns", "slanted-wall", "one-exit", "two-rooms", "tiny-room", "corridor"]) it(`seats everyone in ${name}`, () => {
    const venue = venueSchema.parse(fixture("venues", name));
    const asked = briefSchema.parse(fixture("briefs", name));
    expectArranged(venue, asked, arrange(venue, asked, { layouts: 1 }));
  });
});
