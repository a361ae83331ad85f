import { describe, expect, it } from "vitest";
import { mostInRow, rowClear, rowClearInches, wheelchairSpacesNeeded } from "../../lib/engine/rows";

describe("IBC 2018 1029.13.2: clear floor ahead of chairs in rows", () => {
  it.each([
    [14, 12], [20, 12 + 0.3 * 6], [34, 12 + 0.3 * 20], [47, 12 + 0.3 * 33], [48, 22], [100, 22],
  ])("1029.13.2.1, an aisle at both ends: %i seats need %d in", (n, inches) => {
    expect(rowClearInches(n, 2)).toBeCloseTo(inches, 9);
  });
  it("1029.13.2.1: 101 seats in a row are too many", () => expect(rowClearInches(101, 2)).toBeNull());
  it.each([
    [7, 12], [10, 12 + 0.6 * 3], [15, 12 + 0.6 * 8], [20, 12 + 0.6 * 13], [23, 12 + 0.6 * 16], [24, 22],
  ])("1029.13.2.2, an aisle at one end: %i seats need %d in", (n, inches) => {
    expect(rowClearInches(n, 1)).toBeCloseTo(inches, 9);
  });
  it("gives millimetres of 25.4 to the inch and finds the longest row for a clear width", () => {
    expect(rowClear(20, 2)).toBeCloseTo((12 + 0.3 * 6) * 25.4, 9);
    expect(mostInRow(12 * 25.4, 2)).toBe(14);
    expect(mostInRow(12 * 25.4, 1)).toBe(7);
    expect(mostInRow(12 * 25.4 - 1, 1)).toBe(0);
    expect(mostInRow(22 * 25.4, 2)).toBe(100);
  });
});

describe("2010 ADA Standards table 221.2.1.1: wheelchair spaces where chairs stand in rows", () => {
  it.each([
    [25, 1], [26, 2], [50, 2], [51, 4], [150, 4], [151, 5], [300, 5], [301, 6], [500, 6], [501, 6 + 1], [650, 6 + 1], [651, 6 + 2],
  ])("%i seats need %i", (seats, spaces) => expect(wheelchairSpacesNeeded(seats)).toBe(spaces));
});
