import { describe, expect, it } from "vitest";
import { olerPoints, olerRounds } from "../../lib/engine/bounds";
import { union } from "../../lib/geometry";

/** Most circles of diameter 1 in a square of area n, n = 1 … 30 (OEIS A084616). */
const A084616 = [1, 1, 2, 4, 4, 5, 5, 6, 9, 9, 9, 10, 12, 13, 14, 16, 16, 16, 18, 19, 20, 21, 22, 23, 25, 25, 26, 27, 28, 30];

describe("Oler 1961: N <= 2/sqrt3 A/p^2 + P/(2p) + 1", () => {
  it("is never under the known optima of circles in a square (OEIS A084616)", () => {
    A084616.forEach((known, i) => {
      const side = Math.sqrt(i + 1) - 1;
      expect(olerPoints({ area: side * side, perimeter: 4 * side }, 1)).toBeGreaterThanOrEqual(known);
    });
  });
  it("is met by a hexagon of 7 points and by a row of 4", () => {
    expect(olerPoints({ area: (3 * Math.sqrt(3)) / 2, perimeter: 6 }, 1)).toBe(7);
    expect(olerPoints({ area: 0, perimeter: 2 * 3 }, 1)).toBe(3 + 1);
  });
  it("bounds 60 in rounds with 60 in gaps and 42 in walls in a 50 x 50 ft room by 25 (best known: 22)", () => {
    const inch = 25.4, side = 50 * 12 * inch;
    const floor = union([[[0, 0], [side, 0], [side, side], [0, side]]]);
    // Centre square 38 ft, pitch 10 ft: 2/sqrt3 * 3.8^2 + 2 * 3.8 + 1 = 25.27.
    expect(olerRounds(floor, [], { diameter: 60 * inch, tableGap: 60 * inch, wallGap: 42 * inch })).toBe(Math.floor((2 / Math.sqrt(3)) * 3.8 ** 2 + 2 * 3.8 + 1));
  });
  it("is never under the known optima when asked of rooms with the millimetre let go (OEIS A084616)", () => {
    A084616.forEach((known, i) => {
      // Discs of 1500 mm with no gaps: a square of side sqrt(n) discs.
      const side = Math.sqrt(i + 1) * 1500;
      const floor = union([[[0, 0], [side, 0], [side, side], [0, side]]]);
      expect(olerRounds(floor, [], { diameter: 1500, tableGap: 0, wallGap: 0 })).toBeGreaterThanOrEqual(known);
    });
  });
});
