import { describe, expect, it } from "vitest";
import { check, occupantLoad, postedFor, PROFILE_VALUES } from "../../lib/rules";
import { siteOf } from "../../lib/venue";
import { box, briefOf, hall, layoutOf, venueOf } from "../unit/rules/kit";

const FT2 = 0.3048 * 0.3048;
const exits = (w: number, d: number) => [0, w].map((x, i) => ({ id: `d${i}`, from: [x, 1000] as [number, number], to: [x, d - 1000] as [number, number], leads: "outside", exit: true, for: ["guests" as const], swing: "out" as const }));
const room = (w: number, d: number, posted?: { rows?: number; tables?: number; standing?: number }) =>
  venueOf({ rooms: [hall({ outline: box(0, 0, w, d), doors: exits(w, d), posted })] });

describe("IBC 2018 Table 1004.5: net floor a person", () => {
  const { factors } = PROFILE_VALUES["model-code"];
  it("is 7, 15 and 5 ft2 for chairs, for tables and chairs, and for standing", () => {
    expect(factors.rows).toBeCloseTo(7 * FT2, 9);
    expect(factors.tables).toBeCloseTo(15 * FT2, 9);
    expect(factors.standing).toBeCloseTo(5 * FT2, 9);
  });

  it("steps up by one person at each multiple of the factor", () => {
    for (const [factor, ft2] of [[factors.rows, 7], [factors.tables, 15], [factors.standing, 5]] as const) for (const n of [1, 49, 50, 300]) {
      expect(occupantLoad(n * ft2 * FT2, factor)).toBe(n);
      expect(occupantLoad((n * ft2 + 0.1) * FT2, factor)).toBe(n + 1);
    }
  });

  it("governs where nothing is posted, areas either side of a step", () => {
    // 15 ft2 x 100 people = 1500 ft2 = 139.3546 m2: 10 m by 13.936 m holds 100, by 13.935 m only 99.
    const people = (d: number): number => postedFor(siteOf(room(10000, d)), { id: "meal", rooms: ["hall"] }).total;
    expect(people(Math.ceil((100 * 15 * FT2 * 1e6) / 10000))).toBe(100);
    expect(people(Math.floor((100 * 15 * FT2 * 1e6) / 10000))).toBe(99);
  });

  it("gives way to a posted figure, lower or higher, and is then told as a should", () => {
    const drinks = (guests: number, posted: number) => check(room(10000, 10000, { standing: posted, tables: 0 }), layoutOf("drinks", []),
      briefOf({ guests: { adults: guests }, ceremony: { here: false }, meal: { service: "none" } })).filter((f) => f.unit === "people").map((f) => [f.code, f.level]);
    expect(drinks(60, 60)).toEqual([]);
    expect(drinks(61, 60)).toEqual([["posted", "must"]]);
    // 100 m2 / 5 ft2 = 215 standing; posted 300 is past one to 7 ft2 = 153.
    expect(drinks(153, 300)).toEqual([]);
    expect(drinks(154, 300)).toEqual([["densest", "must"]]);
  });
});

describe("IBC 2018 1004.5.1: never denser than one to 7 net ft2", () => {
  it("holds against any posting", () => {
    const site = siteOf(room(10000, 10000, { rows: 1000 }));
    expect(postedFor(site, { id: "ceremony", rooms: ["hall"] }).densest).toBe(Math.floor(100 / (7 * FT2)));
  });
});
