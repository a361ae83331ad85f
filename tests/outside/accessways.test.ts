import { describe, expect, it } from "vitest";
import { accesswayInches, accesswayWidth, aisleInches, check, PROFILE_VALUES, rowClearInches } from "../../lib/rules";
import { rowClearInches as engineRows } from "../../lib/engine/rows/formula";
import { box, hall, layoutOf, rowChair, venueOf } from "../unit/rules/kit";

describe("IBC 2018 1029.13.1 and 1029.13.1.1: accessways between tables", () => {
  it("are 12 in up to 12 ft and 0.5 in more for each foot or part of a foot past it", () => {
    const vector: readonly (readonly [number, number])[] = [[12, 12], [12.1, 12.5], [16, 14], [20, 16], [30, 21]];
    for (const [feet, inches] of vector) expect(accesswayInches(feet)).toBeCloseTo(inches, 9);
    expect(accesswayWidth(12 * 304.8)).toBeCloseTo(12 * 25.4, 9);
  });

  it("run between lines 19 in out from the tables, and the least gap holds both lines and the path", () => {
    const v = PROFILE_VALUES["model-code"];
    expect(v.tableLine).toBe(Math.round(19 * 25.4));
    expect(v.path).toBe(Math.round(12 * 25.4));
    expect(v.most.tableGap).toBeGreaterThanOrEqual((19 + 12 + 19) * 25.4);
    expect(v.most.wallGap).toBeGreaterThanOrEqual((19 + 12) * 25.4);
    expect(v.freeWalk).toBe(Math.round(6 * 304.8));
  });
});

describe("IBC 2018 1029.9.1: level aisles", () => {
  it("are 42, 36 or 30 in by the places served and the sides they are on, and 0.2 in a person past 210", () => {
    expect(aisleInches(50, 2, false)).toBe(42);
    expect(aisleInches(49, 2, false)).toBe(36);
    expect(aisleInches(15, 2, false)).toBe(36);
    expect(aisleInches(14, 2, false)).toBe(30);
    expect(aisleInches(14, 2, true)).toBe(36);
    expect(aisleInches(50, 1, false)).toBe(36);
    expect(aisleInches(14, 1, false)).toBe(30);
    expect(aisleInches(210, 2, false)).toBe(42);
    expect(aisleInches(220, 2, false)).toBeCloseTo(0.2 * 220, 9);
  });
});

describe("IBC 2018 1029.13.2: rows of chairs", () => {
  const both: readonly (readonly [number, number])[] = [[14, 12], [20, 13.8], [34, 18], [47, 21.9], [48, 22], [100, 22]];
  const one: readonly (readonly [number, number])[] = [[7, 12], [10, 13.8], [15, 16.8], [20, 19.8], [23, 21.6], [24, 22]];
  it("follow 12 + 0.3 (n - 14) and 12 + 0.6 (n - 7), capped at 22 in, and end at 100 chairs", () => {
    for (const [n, inches] of both) expect(rowClearInches(n, 2)).toBeCloseTo(inches, 9);
    for (const [n, inches] of one) expect(rowClearInches(n, 1)).toBeCloseTo(inches, 9);
    expect(rowClearInches(101, 2)).toBeNull();
  });

  it("are reckoned alike by the engine and the check", () => {
    for (let n = 1; n <= 101; n++) for (const ends of [1, 2] as const) expect(engineRows(n, ends)).toEqual(rowClearInches(n, ends));
  });

  it("are judged in a layout: 20 chairs open at both ends want 12 + 0.3 x 6 = 13.8 in", () => {
    const need = Math.round(13.8 * 25.4);
    const venue = venueOf({ rooms: [hall({ outline: box(0, 0, 20000, 12000) })] });
    const rows = (clear: number) => layoutOf("ceremony", [0, 1].flatMap((r) => Array.from({ length: 20 }, (_, k) => rowChair(`c${r}-${k}`, [5500 + 450 * k, 5000 + r * (500 + clear)]))));
    expect(check(venue, rows(need)).map((f) => f.code)).toEqual([]);
    expect(check(venue, rows(need - 10)).map((f) => [f.code, f.limit])).toEqual([["row-narrow", need]]);
  });
});
