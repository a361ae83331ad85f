import { describe, expect, it } from "vitest";
import { clearance } from "../../../../lib/geometry";
import { isRound, shapeAt } from "../../../../lib/layout";
import type { Family, SeatingSpace } from "../../../../lib/engine/seating";
import { hallOf } from "../../../../lib/engine/seating/hall";
import { straightened } from "../../../../lib/engine/seating/straight";
import type { Laid } from "../../../../lib/engine/seating/types";
import { ASK, LONG, rectangleAt, ROUND, spaceOf } from "./rooms";

const room = spaceOf(rectangleAt(0, 0, 16_000, 10_000));
const at = (family: Family, x: number, y: number, group: number): Laid => ({ family, at: [x, y], angle: 0, ring: isRound(family.shape) ? 8 : 0, sides: isRound(family.shape) ? [0, 0, 0, 0] : [3, 0, 3, 0], group });
const line = (laid: readonly Laid[], space: SeatingSpace = room): readonly Laid[] => straightened(hallOf(space, ASK), laid);
const ys = (laid: readonly Laid[]): readonly number[] => laid.map((l) => l.at[1]);
/** From edge to edge of two tables, mm. */
const way = (a: Laid, b: Laid): number => clearance(shapeAt(a.family.shape, a.at, a.angle), shapeAt(b.family.shape, b.at, b.angle));

describe("tables that stand a hand's breadth off their neighbours' line", () => {
  it.each([["rounds", ROUND], ["long tables", LONG]] as const)("are brought onto it: %s of which one is 150 mm off and one 280 mm", (_, family) => {
    const laid = [at(family, 3_000, 5_000, 0), at(family, 7_000, 5_150, 1), at(family, 11_000, 4_870, 2)];
    expect(new Set(ys(line(laid))).size).toBe(1);
    expect(line(laid).map((l) => l.at[0])).toEqual([3_000, 7_000, 11_000]);
  });

  it("are left where they are when they miss it by more: that looks meant", () => {
    const laid = [at(ROUND, 3_000, 5_000, 0), at(ROUND, 7_000, 5_310, 1)];
    expect(line(laid)).toBe(laid);
  });

  it("have the neighbour come to them where a column keeps them off", () => {
    // The column's face is 762 + 1067 mm from the middle of the round before it.
    const column = rectangleAt(6_850, 5_150 - 762 - 1_067 - 300, 300, 300);
    const out = line([at(ROUND, 3_000, 5_000, 0), at(ROUND, 7_000, 5_150, 1)], { ...room, solids: [column] });
    expect(out[0]?.at[1]).toBe(out[1]?.at[1]);
    expect(out[1]?.at[1]).toBeGreaterThanOrEqual(5_150);
  });

  it("stay where the line would take from a way that is no wider than it may have to be", () => {
    // Both rows fill the depth between the walls: 1067 + 762 from each, and the least gap of two tables between.
    const low = 1_067 + 762, high = low + 1_524 + 1_372 + 10, narrow = spaceOf(rectangleAt(0, 0, 16_000, high + low));
    const laid = [at(ROUND, 3_000, low, 0), at(ROUND, 3_000, high, 1), at(ROUND, 6_500, low + 150, 2)];
    const out = line(laid, narrow);
    expect(out[0]?.at[1]).toBe(out[2]?.at[1]);
    expect(way(out[0] as Laid, out[1] as Laid)).toBeGreaterThanOrEqual(way(laid[0] as Laid, laid[1] as Laid) - 0.01);
  });

  it("bring a run along with all its tables, joined as before", () => {
    const run = [at(LONG, 3_000, 5_000, 0), at(LONG, 3_000 + 1_829, 5_000, 0)];
    const out = line([...run, at(LONG, 9_000, 5_120, 1)]);
    expect(new Set(ys(out)).size).toBe(1);
    expect((out[1]?.at[0] ?? 0) - (out[0]?.at[0] ?? 0)).toBe(1_829);
  });

  it("keep their mirror image", () => {
    const mirror = { ...room, mirror: { at: [8_000, 1_000] as const, angle: 90 } };
    const laid = [at(ROUND, 3_000, 3_000, 0), at(ROUND, 3_120, 6_500, 1), at(ROUND, 13_000, 3_000, 2), at(ROUND, 12_880, 6_500, 3)];
    for (const l of line(laid, mirror)) expect(line(laid, mirror).some((o) => Math.abs(o.at[0] - (16_000 - l.at[0])) <= 2 && o.at[1] === l.at[1])).toBe(true);
  });
});
