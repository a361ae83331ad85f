import { describe, expect, it } from "vitest";
import { area } from "../../../../lib/geometry";
import { convexHull } from "../../../../lib/geometry";
import { convexSum } from "../../../../lib/engine/seating/hall";
import { countOn, linesOf, pointsOn } from "../../../../lib/engine/seating/lines";
import { shareSides } from "../../../../lib/engine/seating/seats";
import { union } from "../../../../lib/geometry";
import { rectangleAt } from "./rooms";

describe("parts of the seating kernel", () => {
  it("sums convex polygons: two rectangles give one with both widths and depths", () => {
    const sum = convexSum(convexHull(rectangleAt(0, 0, 100, 50)), convexHull(rectangleAt(0, 0, 30, 20)));
    expect(area(sum)).toBeCloseTo((100 + 30) * (50 + 20));
  });
  it("finds where level lines lie in a floor", () => {
    const lines = linesOf(union([[[0, 0], [100, 0], [100, 100], [60, 100], [60, 50], [40, 50], [40, 100], [0, 100]]]));
    expect(lines.at(25)).toEqual([[0, 100]]);
    expect(lines.at(75)).toEqual([[0, 40], [60, 100]]);
    expect(countOn(lines.at(75), 0, 20)).toBe(3 + 3);
    expect(pointsOn(lines.at(75), 75, 0, 20)).toHaveLength(3 + 3);
  });
  it("shares places over the sides, most edge first", () => {
    expect(shareSides({ width: 1829, depth: 762 }, 6, [true, true, true, true], 450)).toEqual([2, 1, 2, 1]);
    expect(shareSides({ width: 1829, depth: 762 }, 8, [true, true, true, true], 450)).toEqual([3, 1, 3, 1]);
    expect(shareSides({ width: 2438, depth: 762 }, 10, [true, false, true, false], 450)).toEqual([5, 0, 5, 0]);
  });
});
