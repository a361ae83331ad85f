import { describe, expect, it } from "vitest";
import { check, exitsNeeded, PROFILE_VALUES } from "../../lib/rules";
import { box, briefOf, hall, layoutOf, venueOf } from "../unit/rules/kit";

const { exitSteps } = PROFILE_VALUES["model-code"];
/** A hall of 40 x 30 m with doors of the given widths in its long wall. */
const withDoors = (...widths: readonly number[]) => venueOf({ rooms: [hall({
  outline: box(0, 0, 40000, 30000), posted: { standing: 1800 },
  doors: widths.map((w, i) => ({ id: `d${i}`, from: [1000 + i * 6000, 0] as [number, number], to: [1000 + i * 6000 + w, 0] as [number, number], leads: "outside", exit: true, for: ["guests" as const], swing: "out" as const })),
})] });
const drinks = (people: number, widths: readonly number[]): readonly string[] => check(withDoors(...widths), layoutOf("drinks", []),
  briefOf({ guests: { adults: people }, ceremony: { here: false }, meal: { service: "none" } })).filter((f) => f.code === "exit-count" || f.code === "exit-width").map((f) => f.code);

describe("IBC 2018 Tables 1006.2.1 and 1006.3.2: number of exits", () => {
  it("is 1, 2, 3 and 4 either side of 49, 500 and 1000 people", () => {
    expect([49, 50, 500, 501, 1000, 1001].map((n) => exitsNeeded(n, exitSteps))).toEqual([1, 2, 2, 3, 3, 4]);
  });

  it("is asked of a layout at all six boundaries", () => {
    const wide = 5000;
    for (const [people, need] of [[49, 1], [50, 2], [500, 2], [501, 3], [1000, 3], [1001, 4]] as const) {
      expect(drinks(people, Array(need).fill(wide))).toEqual([]);
      if (need > 1) expect(drinks(people, Array(need - 1).fill(wide))).toContain("exit-count");
    }
  });
});

describe("IBC 2018 1005.3.2, 1005.5, 1010.1.1: width of exits", () => {
  const IN = 25.4;
  it("is 0.2 in a person in all, and half of it with any one shut", () => {
    // 150 people: 0.2 x 150 = 30 in; two doors of 32 in (813 mm) are enough, and one alone leaves 32 in, over 15 in.
    expect(drinks(150, [Math.ceil(32 * IN), Math.ceil(32 * IN)])).toEqual([]);
    // 200 people: 40 in in all and 20 in with one shut.
    expect(drinks(200, [Math.ceil(32 * IN), Math.ceil(32 * IN)])).toEqual([]);
    // 330 people: 66 in in all; two of 32 in are 64 in.
    expect(drinks(330, [813, 813])).toEqual(["exit-width"]);
    // 300 people: 60 in; a door of 72 in and one of 32 in leave 32 in, over 30 in; 321 people want 32.1 in of it.
    expect(drinks(300, [Math.ceil(72 * IN), 813])).toEqual([]);
    expect(drinks(330, [Math.ceil(72 * IN), 813])).toEqual(["exit-width"]);
  });
});
