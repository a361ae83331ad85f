import { describe, expect, it } from "vitest";
import { contextOf, SCENE_RULES } from "../../lib/rules";
import type { Item, Layout } from "../../lib/layout";
import { box, briefOf, hall, itemOf, layoutOf, roundTable, rowChair, venueOf } from "../unit/rules/kit";

type Rules = NonNullable<Parameters<typeof venueOf>[0]>["rules"];
/** A passage of 90 x 3 m with a door at its west end, and one more there where two are wanted. */
const passage = (rules?: Rules, doors = 2) => venueOf({
  rooms: [hall({ outline: box(0, 0, 90_000, 3000), posted: { rows: 400, tables: 400, standing: 400 }, doors: Array.from({ length: doors }, (_, i) => (
    { id: `d${i}`, from: [0, 100 + i * 1500] as [number, number], to: [0, 1300 + i * 1500] as [number, number], leads: "outside", exit: true, for: ["guests" as const], swing: "out" as const })) })],
  ...(rules ? { rules } : {}),
});
const found = (venue: ReturnType<typeof venueOf>, layout: Layout) => {
  const c = contextOf(venue, layout, briefOf({ guests: { adults: 60 } }));
  return c.scenes.flatMap((v) => SCENE_RULES.travel?.(v, c) ?? []).map((f) => [f.level, f.measured, f.limit]);
};
const chair = (x: number): Layout => layoutOf("ceremony", [rowChair("c", [x, 700], 180)]);
const FOOT = 304.8;

describe("IBC 2018 Table 1017.2, group A: the walk to a way out", () => {
  it("is 200 ft at the most: 60,960 mm pass and 10 mm more do not", () => {
    expect(200 * FOOT).toBeCloseTo(60_960, 6);
    expect(found(passage(), chair(60_960))).toEqual([]);
    expect(found(passage(), chair(60_970))).toEqual([["must", 60_970, 60_960]]);
  });
  it("is 250 ft where sprinklers are throughout", () => {
    const rules = { profile: "model-code" as const, house: [{ rule: "sprinklered", limit: 1 }] };
    expect(found(passage(rules), chair(250 * FOOT))).toEqual([]);
    expect(found(passage(rules), chair(250 * FOOT + 10))).toEqual([["must", 76_210, 76_200]]);
  });
  it("is walked about what stands there, not flown: screens from either side that leave a way to and fro of four times the length", () => {
    const lanes = (n: number): readonly Item[] => Array.from({ length: n }, (_, i) =>
      itemOf({ id: `s${i}`, kind: "screen", from: { brought: true }, shape: { width: 100, depth: 2400 }, at: [2000 + i * 700, i % 2 === 0 ? 1200 : 1800] }));
    const at = (n: number): Layout => layoutOf("ceremony", [...lanes(n), rowChair("c", [2000 + n * 700 + 300, 700], 180)]);
    // Past each screen the walk is 1.8 m across at the least: 24 of them are less than 200 ft, 48 are more.
    expect(found(passage(), at(24))).toEqual([]);
    const [far] = found(passage(), at(48));
    expect(far?.[0]).toBe("must");
    expect(far?.[1]).toBeGreaterThan(60_960);
    expect(far?.[1]).toBeLessThan(48 * (2400 + 700) + 3000);
  });
});

describe("Warwickshire Fire and Rescue Service: 32 m from rows and 45 m from other places, 15 and 18 m to one way out alone", () => {
  const rules = { profile: "uk-guide" as const };
  const table = (x: number): Layout => layoutOf("drinks", [roundTable("t", [x, 1000], 1)]);
  // The one chair of the table stands 762 + 200 mm before its middle.
  const seat = (mm: number): Layout => table(mm + 762 + 200);
  it.each([[2, 32_000, chair], [1, 15_000, chair], [2, 45_000, seat], [1, 18_000, seat]] as const)("with %i ways out %i mm pass and 20 mm more are told, as a should", (doors, limit, layout) => {
    expect(found(passage(rules, doors), layout(limit))).toEqual([]);
    expect(found(passage(rules, doors), layout(limit + 20)).map(([level, , most]) => [level, most])).toEqual([["should", limit]]);
  });
});
