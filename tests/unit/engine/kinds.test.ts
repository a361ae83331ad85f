import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import { differInKind, shareMoved } from "../../../lib/engine/kinds";
import type { Layout } from "../../../lib/layout";
import { check } from "../../../lib/rules";
import { venueSchema, type Venue } from "../../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const fixture = (kind: "venues" | "briefs", name: string): unknown => JSON.parse(readFileSync(new URL(`../../fixtures/${kind}/${name}.json`, import.meta.url), "utf8"));
const garden = briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 36 }, ceremony: { room: "sluice-terrace" },
  meal: { service: "buffet" }, music: { by: "dj", dancing: 0.35 }, displays: ["welcome", "cards", "cake"],
});

function expectKinds(venue: Venue, layouts: readonly Layout[], least: number): void {
  expect(layouts.length).toBeGreaterThanOrEqual(least);
  layouts.forEach((a, i) => layouts.slice(i + 1).forEach((b) => expect(differInKind(venue, a, b)).toBe(true)));
  expect(new Set(layouts.map((l) => l.title)).size).toBe(layouts.length);
  for (const l of layouts) expect(l.title).not.toMatch(/no\. \d/);
}

describe("layouts that differ in kind", () => {
  for (const [name, least] of [["t-shape", 3], ["columns", 2]] as const) it(`are ${least} at least in ${name}, each with a title of its own`, () => {
    const venue = venueSchema.parse(fixture("venues", name));
    expectKinds(venue, arrange(venue, briefSchema.parse(fixture("briefs", name)), { instead: false }).layouts, least);
  });

  it("are no two where one is the other in a mirror, and are two where three tables in ten stand elsewhere", () => {
    const layout = arrange(mill, garden, { layouts: 1, instead: false }).layouts[0];
    if (!layout) throw new Error("not arranged");
    // The Grain Floor is 16.2 m long: its mirror image lies at 16200 - x.
    const moved = (change: (x: number, i: number) => number): Layout => ({
      ...layout, scenes: layout.scenes.map((s) => (s.id === "meal" ? { ...s, items: s.items.map((item, i) => (item.seats.length > 0 ? { ...item, at: [change(item.at[0], i), item.at[1]] as const } : item)) } : s)),
    });
    expect(shareMoved(mill, layout, moved((x) => 16_200 - x))).toBe(0);
    expect(differInKind(mill, layout, moved((x) => 16_200 - x))).toBe(false);
    expect(differInKind(mill, layout, moved((x, i) => (i % 2 === 0 ? x + 1700 : x)))).toBe(true);
  });
});

describe("a part of the day outdoors", () => {
  it("has its twin under the roof, with turnovers, findings and fees of its own", () => {
    const result = arrange(mill, garden, { layouts: 2, instead: false });
    expectKinds(mill, result.layouts, 2);
    for (const layout of result.layouts) {
      expect(layout.scenes.find((s) => s.id === "ceremony")?.rooms).toContain("sluice-terrace");
      expect(layout.wet?.scenes.map((s) => s.id)).toEqual(layout.scenes.map((s) => s.id));
      expect(layout.wet?.scenes.flatMap((s) => s.rooms)).not.toContain("sluice-terrace");
      // The rows stand on the Grain Floor then, which is turned over for the meal: the hosted day includes its crew.
      expect(layout.wet?.turnovers.some((t) => t.from === "ceremony" && t.room === "grain-floor")).toBe(true);
      expect(layout.wet?.quote?.lines.map((l) => l.charge)).toContain("turnover");
      const day: Layout = { ...layout, scenes: layout.wet?.scenes ?? [], turnovers: layout.wet?.turnovers ?? [] };
      expect(check(mill, day, { ...garden, ceremony: { ...garden.ceremony, room: "any" } }).filter((f) => f.level === "must")).toEqual([]);
    }
  });
});
