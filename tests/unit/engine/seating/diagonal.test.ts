import { describe, expect, it } from "vitest";
import { seatTables, type SeatingSpace } from "../../../../lib/engine/seating";
import { isRound, type Item } from "../../../../lib/layout";
import { askFor, GAP, long, round, spaceOf } from "../../../bench/rooms";

// The couple at the middle of the upper wall of a hall of 26 x 16 m, all true to the line x = 13 m.
const top: Item = { id: "top", kind: "table", role: "top", label: "Couple", room: "hall", from: { stock: "small" }, shape: { width: 1220, depth: 760 }, at: [13_000, 1_700], angle: 0, seats: [] };
const bare = spaceOf([[0, 0], [26_000, 0], [26_000, 16_000], [0, 16_000]]);
const hall: SeatingSpace = { ...bare, fixed: [top], focus: top.at, mirror: { at: top.at, angle: 90 } };
const found = (space: SeatingSpace, family: typeof round, more: Parameters<typeof askFor>[1]): readonly Item[] =>
  seatTables(space, askFor([family], { form: "diagonal", ...more }), { effort: 0 }).find((s) => s.form === "diagonal")?.items ?? [];

describe("tables on the slant", () => {
  it("are rounds in a level grid turned by 45 degrees", () => {
    const items = found(bare, round, { places: 96 });
    // 96 guests at eight to a table.
    expect(items.length).toBe(96 / 8);
    const steps = items.map((a) => items.filter((b) => b !== a).map((b) => [Math.abs(b.at[0] - a.at[0]), Math.abs(b.at[1] - a.at[1])] as const).sort((p, q) => Math.hypot(...p) - Math.hypot(...q))[0] ?? [0, 1]);
    const slanting = steps.filter(([x, y]) => Math.min(x, y) >= 0.6 * Math.max(x, y));
    expect(slanting.length).toBeGreaterThanOrEqual(0.7 * items.length);
  });

  it("are long tables in a chevron, each with its image beyond the line on which the couple look", () => {
    const items = found(hall, long, { places: 60 });
    expect(items.length).toBe(60 / 6);
    for (const t of items) {
      expect([45, 135]).toContain(t.angle);
      const image = items.find((o) => Math.hypot(o.at[0] - (2 * 13_000 - t.at[0]), o.at[1] - t.at[1]) < 30);
      expect(image?.angle).toBe(180 - t.angle);
      // Down the page on the left an end points up and to the right, at the couple: 135 degrees, where the page's y grows downwards.
      expect(t.angle).toBe(t.at[0] < 13_000 ? 135 : 45);
    }
  });

  it("keep the gap of two tables where one stands crosswise to the next", () => {
    const items = found(bare, long, { places: 60 });
    expect(new Set(items.map((i) => i.angle))).toEqual(new Set([45, 135]));
    const corners = items.map((i) => {
      const [w, d] = isRound(i.shape) ? [0, 0] : [i.shape.width / 2, i.shape.depth / 2], a = (i.angle * Math.PI) / 180;
      return ([[-w, -d], [w, -d], [w, d], [-w, d]] as const).map(([x, y]) => [i.at[0] + x * Math.cos(a) - y * Math.sin(a), i.at[1] + x * Math.sin(a) + y * Math.cos(a)] as const);
    });
    // Of two rectangles that lie apart the least distance is between a corner of one and a side of the other.
    const toSide = (p: readonly [number, number], a: readonly [number, number], b: readonly [number, number]): number => {
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]], t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
    };
    const gaps = corners.flatMap((a, i) => corners.flatMap((b, j) => (i === j ? [] : a.flatMap((p) => b.map((q, k) => toSide(p, q, b[(k + 1) % 4] ?? q))))));
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(GAP);
  });

  it("are not offered unasked before tables true to the walls", () => {
    const [first] = seatTables(hall, askFor([long], { places: 60 }), { effort: 0 });
    expect(first?.form).not.toBe("diagonal");
  });
});
