import { describe, expect, it } from "vitest";
import { seeded } from "../../lib/base";
import { seatTables } from "../../lib/engine/seating";
import { contains, type Point, type Polygon } from "../../lib/geometry";
import { askFor, PITCH, round, spaceOf } from "../bench/rooms";
import { mostBySolver, mostByTrying } from "../bench/solver";

const tables = (outline: Polygon): number => seatTables(spaceOf(outline), askFor([round]))[0]?.items.length ?? 0;
/** A convex four-sided room with slanting walls, mm. */
function slanting(random: () => number): Polygon {
  const w = 6_000 + Math.round(random() * 4_000), h = 5_500 + Math.round(random() * 3_000), cut = Math.round(random() * 1_500);
  return [[cut, 0], [w, Math.round(cut / 2)], [w - Math.round(cut / 2), h], [0, h - cut]];
}
/** Centres that keep half a pitch off every wall of a convex room. */
const standsIn = (p: Point, room: Polygon): boolean => contains(room, p) && room.every((a, i) => {
  const b = room[(i + 1) % room.length] ?? a, n = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / n >= PITCH / 2;
});

function spotsIn(room: Polygon, step: number, random: () => number): readonly Point[] {
  const out: Point[] = [];
  for (let x = PITCH / 2 + random() * 200; x < 12_000; x += step) for (let y = PITCH / 2 + random() * 200; y < 10_000; y += step) {
    const p: Point = [Math.round(x), Math.round(y)];
    if (standsIn(p, room)) out.push(p);
  }
  return out;
}

describe("small rooms against every choice of spots and against HiGHS (general-purpose MILP solver)", () => {
  it("finds with HiGHS what trying every choice of up to twelve spots finds, and seats at least as many tables", async () => {
    const random = seeded(22);
    for (let i = 0; i < 8; i++) {
      const room = slanting(random);
      const spots = [...spotsIn(room, 900, random)].sort((a, b) => a[0] * 7919 % 1009 - b[0] * 7919 % 1009).slice(0, 12);
      const most = mostByTrying(spots, PITCH);
      expect((await mostBySolver(spots, PITCH)).count).toBe(spots.length === 0 ? 0 : most);
      expect(tables(room), JSON.stringify(room)).toBeGreaterThanOrEqual(most);
    }
  }, 120_000);

  it("seats exactly what a passage one table wide holds: one and every pitch one more", () => {
    for (const spare of [0, 1, PITCH / 2, PITCH - 1, PITCH, 2.5 * PITCH, 5 * PITCH]) {
      const length = Math.floor(PITCH + spare);
      expect(tables([[0, 0], [length, 0], [length, PITCH], [0, PITCH]])).toBe(1 + Math.floor((length - PITCH) / PITCH));
    }
  });

  it("seats at least as many as HiGHS does on a close lattice of spots", async () => {
    const random = seeded(5);
    for (let i = 0; i < 3; i++) {
      const room = slanting(random);
      const spots = spotsIn(room, 420, random);
      expect(tables(room)).toBeGreaterThanOrEqual((await mostBySolver(spots, PITCH, 20)).count);
    }
  }, 120_000);
});
