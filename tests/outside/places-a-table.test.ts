import { describe, expect, it } from "vitest";
import { clearance, polygonShape } from "../../lib/geometry";
import { seatPolygon, type Seat } from "../../lib/layout";
import { ringMost, ringTuck, seatsAround } from "../../lib/engine/seating";

const INCH = 25.4;
const chair = { width: 450, depth: 500 };
const overlaps = (seats: readonly Seat[], size: { width: number; depth: number }): boolean => {
  const shapes = seats.map((s) => polygonShape(seatPolygon(s, size)));
  return shapes.some((a, i) => shapes.some((b, j) => j > i && clearance(a, b) < -1));
};
/** Chairs as bare polygons with their front edges on radius r: another way to the same answer than the formula. */
const ringOverlaps = (n: number, width: number, r: number): boolean => overlaps(
  Array.from({ length: n }, (_, i) => {
    const a = (i * 2 * Math.PI) / n;
    return { x: (r + 250) * Math.cos(a), y: (r + 250) * Math.sin(a), facing: (i * 360) / n + 180, place: "chair" };
  }), { width, depth: 500 });

describe("places at rounds (rental houses' seating charts, second-hand: comfortable and most for 48, 60 and 72 in)", () => {
  // The charts' own most; chairs of 450 mm (18 in).
  const rows = [[48, 6, 8], [60, 8, 10], [72, 10, 12]] as const;
  it.each(rows)("%i in takes %i and %i chairs without overlap", (inches, comfort, most) => {
    const diameter = Math.round(inches * INCH);
    expect(ringMost(diameter, chair)).toBeGreaterThanOrEqual(most);
    for (const n of [comfort, most]) {
      const seats = seatsAround({ diameter }, n, { ends: false, chair });
      expect(seats).toHaveLength(n);
      expect(overlaps(seats, chair)).toBe(false);
    }
  });
});

describe("places at straight tables (24 in a diner: rental houses' charts, second-hand)", () => {
  const rows = [[72, 30, 6, false], [72, 30, 8, true], [96, 30, 8, false], [96, 30, 10, true], [30, 30, 4, true], [48, 48, 8, true], [60, 60, 12, true]] as const;
  it.each(rows)("%i by %i in takes %i, ends laid: %s", (w, d, places, ends) => {
    const seats = seatsAround({ width: Math.round(w * INCH), depth: Math.round(d * INCH) }, places, { ends, chair });
    expect(seats).toHaveLength(places);
    expect(overlaps(seats, chair)).toBe(false);
  });
});

describe("ring of chairs: n of width c, front edges on radius r, do not overlap exactly when c <= 2 r tan(pi / n) (derived)", () => {
  it("agrees with the chairs drawn as polygons", () => {
    for (let n = 3; n <= 16; n++) for (const r of [380, 457, 610, 762, 914]) for (const c of [400, 450, 500]) {
      const limit = 2 * r * Math.tan(Math.PI / n);
      if (Math.abs(c - limit) < 4) continue;
      expect(ringOverlaps(n, c, r), `${n} chairs of ${c} on ${r}`).toBe(c > limit);
    }
  });
  it("gives the worked figures: 60 in, 18 in chairs", () => {
    const r = 30;
    expect(2 * r * Math.tan(Math.PI / 10)).toBeGreaterThan(18);
    expect(2 * r * Math.tan(Math.PI / 12)).toBeLessThan(18);
    expect(2 * (r - 6) * Math.tan(Math.PI / 8)).toBeGreaterThan(18);
    expect(2 * (r - 6) * Math.tan(Math.PI / 10)).toBeLessThan(18);
    // So ten chairs go under the edge less than 6 in, eight as far as chairs go.
    expect(ringTuck(60 * INCH, 10, { width: 18 * INCH, depth: 500 })).toBeLessThan(6 * INCH);
    expect(ringTuck(60 * INCH, 8, { width: 18 * INCH, depth: 500 })).toBe(120);
  });
});
