import { describe, expect, it } from "vitest";
import { capacity } from "../../../../lib/engine/capacity";
import { turn, type Point, type Polygon } from "../../../../lib/geometry";
import type { Capacity, Style } from "../../../../lib/layout";
import { venueSchema, type Venue } from "../../../../lib/venue";

type Names = { readonly room: string; readonly door: string; readonly round: string; readonly long: string };
const NAMES: Names = { room: "hall", door: "d", round: "round", long: "long" };
const ROOMS: readonly (readonly [name: string, outline: Polygon, doors: readonly (readonly [Point, Point])[], column: Point])[] = [
  ["an oblong with a column", [[0, 0], [13_000, 0], [13_000, 9_000], [0, 9_000]], [[[0, 3_000], [0, 4_600]], [[13_000, 5_000], [13_000, 6_200]]], [5_000, 4_000]],
  ["an L", [[0, 0], [15_000, 0], [15_000, 7_000], [8_000, 7_000], [8_000, 12_000], [0, 12_000]], [[[0, 8_000], [0, 9_400]], [[15_000, 2_000], [15_000, 3_400]]], [6_500, 6_000]],
];

function venueOf([, outline, doors, column]: (typeof ROOMS)[number], move: (p: Point) => Point, names = NAMES): Venue {
  const at = (p: Point): [number, number] => { const q = move(p); return [Math.round(q[0]), Math.round(q[1])]; };
  const [cx, cy] = column;
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
    rooms: [{
      id: names.room, name: "Hall", outline: outline.map(at), uses: ["ceremony", "dining"],
      obstacles: [{ id: "column", kind: "column", outline: [[cx - 150, cy - 150], [cx + 150, cy - 150], [cx + 150, cy + 150], [cx - 150, cy + 150]].map((p) => at([p[0] ?? 0, p[1] ?? 0])) }],
      doors: doors.map(([a, b], i) => ({ id: `${names.door}${i}`, from: at(a), to: at(b), leads: "outside", exit: true, for: ["guests"], swing: "out" })),
    }],
    stock: [
      { id: names.round, name: "Round", kind: "table", shape: { diameter: 1524 }, count: 20, seats: { comfort: 8, most: 8 } },
      { id: names.long, name: "Long", kind: "table", shape: { width: 1829, depth: 762 }, count: 20, seats: { comfort: 6, most: 6 }, joins: true },
      { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 300 },
    ],
    packages: [{ id: "p", name: "P", coordinator: true, rooms: [names.room], turnover: true, dueDays: 7 }],
    charges: [], tax: { name: "VAT", basisPoints: 0, of: "line", included: true },
  });
}

const STYLES = { rounds: 8, long: 6 } as const;
const most = (found: Capacity, style: Style): number => found.rooms[0]?.styles[style]?.most.seats ?? -1;
const of = (venue: Venue, style: Style): number => most(capacity(venue, { style, effort: 0.2 }), style);

describe("how many fit, whichever way the plan is drawn", () => {
  for (const room of ROOMS) for (const [style, table] of [["rounds", STYLES.rounds], ["long", STYLES.long]] as const) {
    const plain = of(venueOf(room, (p) => p), style);
    for (const angle of [17, 90]) it(`is the same within one table for ${style} in ${room[0]} turned by ${angle} degrees`, () => {
      expect(Math.abs(of(venueOf(room, (p) => turn(p, angle)), style) - plain)).toBeLessThanOrEqual(table);
    });
    it(`is the same within one table for ${style} in ${room[0]} seen in a mirror`, () => {
      expect(Math.abs(of(venueOf(room, ([x, y]) => [-x, y]), style) - plain)).toBeLessThanOrEqual(table);
    });
    it(`is the same for ${style} in ${room[0]} moved elsewhere or called otherwise`, () => {
      expect(of(venueOf(room, ([x, y]) => [x + 40_000, y - 70_000]), style)).toBe(plain);
      expect(of(venueOf(room, (p) => p, { room: "zaal", door: "poort", round: "a-disc", long: "z-board" }), style)).toBe(plain);
    });
  }
});
