import { describe, expect, it } from "vitest";
import { seeded } from "../../lib/base";
import { union, type Polygon } from "../../lib/geometry";
import { seatTables, type SeatingAsk, type SeatingSpace } from "../../lib/engine/seating";

const DIAMETER = 1524, GAP = 1372;
const PITCH = DIAMETER + GAP;
const ask: SeatingAsk = {
  places: "most", families: [{ stock: "round", name: "Round", shape: { diameter: DIAMETER }, count: 500, places: { comfort: 8, most: 8 }, ends: false, joins: false }],
  gaps: { tableGap: GAP, wallGap: GAP / 2 }, perTable: "comfort", tables: "rounds", form: "any", chair: { width: 450, depth: 500 }, wheelchairs: 0, chairsLeft: 9_999,
};
const square = (side: number): Polygon => [[0, 0], [side, 0], [side, side], [0, side]];
/** Chairs of the walls' tables reach less than half a gap, so that a table asks for a disc of the pitch. */
const tables = (outline: Polygon): number => {
  const space: SeatingSpace = { room: "hall", floor: union([outline]), solids: [], zones: [], axis: 0 };
  return seatTables(space, ask)[0]?.items.length ?? 0;
};

/** Most discs of diameter 1 in a square of area n = 1 ... 30. */
const A084616 = [1, 1, 2, 4, 4, 5, 5, 6, 9, 9, 9, 10, 12, 13, 14, 16, 16, 16, 18, 19, 20, 21, 22, 23, 25, 25, 26, 27, 28, 30];

describe("equal rounds in a square room (OEIS A084616)", () => {
  const placed = A084616.map((_, i) => tables(square(Math.floor(Math.sqrt(i + 1) * PITCH))));
  it("are never more than the best known", () => {
    placed.forEach((n, i) => expect(n, `area ${i + 1}`).toBeLessThanOrEqual(A084616[i] ?? 0));
  });
  it("are never more than one short", () => {
    placed.forEach((n, i) => expect(n, `area ${i + 1}`).toBeGreaterThanOrEqual((A084616[i] ?? 0) - 1));
  });
  it("beat the square grid wherever the best known beats it by more than one, and equal it where the grid is best", () => {
    placed.forEach((n, i) => {
      const area = i + 1, grid = Math.floor(Math.sqrt(area)) ** 2, best = A084616[i] ?? 0;
      if (best > grid + 1) expect(n, `area ${area}`).toBeGreaterThan(grid);
      expect(n, `area ${area}`).toBeGreaterThanOrEqual(grid);
    });
    // The grid is best at 1, 4, 9, 16, 25 and 36, not from 49 on (OEIS A084616, comment).
    for (const k of [1, 2, 3, 4, 5]) expect(placed[k * k - 1], `${k} x ${k}`).toBe(k * k);
  });
  it("reach 0.985 of the best known in the mean", () => {
    const ratio = placed.reduce((s, n, i) => s + n / (A084616[i] ?? 1), 0) / placed.length;
    expect(ratio).toBeGreaterThanOrEqual(0.985);
  });
});

describe("discs of diameter 1 in a square of side 10: grid 100, staggered 105, mixed 106 (T. Sillke, second-hand)", () => {
  it("beats the staggered pattern or equals it", () => {
    const n = tables(square(10 * PITCH));
    expect(n).toBeGreaterThanOrEqual(105);
    expect(n).toBeLessThanOrEqual(106);
  });
});

describe("Oler's bound (1961, from memory, unconfirmed): points at least 1 apart in a rectangle a by b", () => {
  it("is never passed", () => {
    const random = seeded(7);
    for (let i = 0; i < 12; i++) {
      const w = Math.round(6_000 + random() * 14_000), h = Math.round(6_000 + random() * 10_000);
      const a = (w - PITCH) / PITCH, b = (h - PITCH) / PITCH;
      expect(tables([[0, 0], [w, 0], [w, h], [0, h]])).toBeLessThanOrEqual(Math.floor((2 / Math.sqrt(3)) * a * b + a + b + 1));
    }
  });
});

/** Radius of N equal circles in a unit square, best known (Packomania, second-hand), where a larger number just fails to fit. */
const RADII: readonly (readonly [number, number])[] = [
  [11, 0.142399237696], [12, 0.139958844038], [13, 0.133993513499], [14, 0.129331793710], [15, 0.127166547515],
  [26, 0.096362339010], [27, 0.095420001748], [28, 0.093672833833], [29, 0.092463144040], [30, 0.091671057986],
];

describe("equal rounds in the tightest square for N circles (Packomania's radii, second-hand)", () => {
  it("are never more than N in a square a millimetre smaller than the best known for N + 1", () => {
    RADII.forEach(([n, r], i) => {
      const next = RADII[i + 1];
      if (!next || next[0] !== n + 1 || next[1] === r) return;
      expect(tables(square(Math.floor(PITCH / (2 * next[1])) - 1)), `under ${n + 1}`).toBeLessThanOrEqual(n);
    });
  });
  it("are at least N - 1 in a square three parts in a hundred larger than the best known for N", () => {
    for (const [n, r] of RADII) expect(tables(square(Math.ceil((PITCH / (2 * r)) * 1.03))), `for ${n}`).toBeGreaterThanOrEqual(n - 1);
  });
});
