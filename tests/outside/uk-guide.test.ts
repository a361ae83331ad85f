import { describe, expect, it } from "vitest";
import { wheelchairSpacesNeeded } from "../../lib/engine/rows";
import { capacity } from "../../lib/engine/capacity";
import { contextOf, occupantLoad, PROFILE_VALUES, ruleValues, SCENE_RULES, wheelchairSpaces } from "../../lib/rules";
import { box, hall, layoutOf, venueOf } from "../unit/rules/kit";

const uk = PROFILE_VALUES["uk-guide"];

describe("UK figures (HM Government fire risk guides, second-hand; Warwickshire Fire and Rescue Service)", () => {
  it("floor-space factors: 0.3 m2 standing, 1.0 m2 dining; 120 m2 hold 400 and 120 people", () => {
    expect([occupantLoad(120, uk.factors.standing), occupantLoad(120, uk.factors.tables)]).toEqual([120 / 0.3, 120 / 1.0]);
  });
  it("one way out for up to 60 people by the guides; the profile keeps the code's 49, which is stricter", () => expect(uk.exitSteps[0]).toBeLessThanOrEqual(60));
  it("5 mm of door a person at most 0.08 mm under the profile's, with the widest discounted wholly", () => {
    expect(uk.exitWidth).toBeGreaterThanOrEqual(5);
    expect(uk.exitLeft).toBe(1);
  });
  it("loose chairs past 50 are linked in lengths of 4 to 14", () => expect(uk.fastened).toMatchObject({ from: 50, least: 4, most: 14 }));
  it("305 mm from the back of a row to the front of the next", () => expect(uk.rowClear).toBeGreaterThanOrEqual(Math.round(12 * 25.4)));
  it("a strip of 3 m across the front of a room for marriages is left by the engine's rows", () => {
    const rooms = [hall({ outline: box(0, 0, 12000, 12000), doors: [
      { id: "a", from: [0, 5200], to: [0, 6800], leads: "outside", exit: true, for: ["guests"], swing: "out" },
      { id: "b", from: [12000, 5200], to: [12000, 6800], leads: "outside", exit: true, for: ["guests"], swing: "out" },
    ] })];
    const venue = venueOf({ rooms, rules: { profile: "uk-guide" } });
    const items = capacity(venue, { style: "rows" }).rooms[0]?.styles.rows?.most.items ?? [];
    expect(items.length).toBeGreaterThan(50);
    const c = contextOf(venue, layoutOf("ceremony", items));
    expect(c.scenes.flatMap((v) => SCENE_RULES["frontStrip"]?.(v, c) ?? [])).toEqual([]);
  });
});

describe("rules of a house", () => {
  it("tighten and never loosen, the profile's own figure being the least", () => {
    const of = (limit: number): number => ruleValues(venueOf({ rules: { profile: "uk-guide", house: [{ rule: "front-depth", limit }] } })).frontDepth;
    expect([of(2000), of(3500)]).toEqual([3000, 3500]);
  });
});

describe("2010 ADA Standards Table 221.2.1.1: wheelchair spaces among seats in rows", () => {
  it.each([[25, 1], [26, 2], [50, 2], [51, 4], [150, 4], [151, 5], [300, 5], [301, 6], [500, 6], [501, 6 + 1], [650, 6 + 1], [651, 6 + 2]])("%i seats, %i spaces", (seats, spaces) => {
    expect(wheelchairSpaces(seats)).toBe(spaces);
    expect(wheelchairSpacesNeeded(seats)).toBe(spaces);
  });
});
