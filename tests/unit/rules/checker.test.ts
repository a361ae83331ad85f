import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Item, Layout } from "../../../lib/layout";
import { check, checker } from "../../../lib/rules";
import { briefOf, hall, itemOf, layoutOf, roundTable, rowChair, venueOf } from "./kit";

const venue = venueOf({ rooms: [hall({ obstacles: [{ id: "post", kind: "column", outline: [[9800, 2000], [10200, 2000], [10200, 2400], [9800, 2400]] }] })] });
const brief = briefOf({ guests: { adults: 54, wheelchairs: 1 }, ceremony: { here: true }, meal: { top: "none" }, music: { dancing: 0.3 }, displays: ["cake"] });
const MEAL: readonly Item[] = [
  ...[0, 1, 2, 3, 4, 5].map((k) => roundTable(`t${k}`, [3500 + (k % 3) * 4000, 3500 + Math.floor(k / 3) * 4500])),
  itemOf({ id: "bar", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at: [16000, 11650], angle: 180 }),
  itemOf({ id: "cake", kind: "table", role: "cake", from: { stock: "long" }, shape: { width: 1829, depth: 762 }, at: [6000, 11600] }),
];
const ROWS: readonly Item[] = Array.from({ length: 60 }, (_, k) => rowChair(`c${k}`, [6000 + (k % 10) * 450 + (k % 10 > 4 ? 1200 : 0), 4000 + Math.floor(k / 10) * 950]));
const floor = itemOf({ id: "floor", kind: "dance-floor", from: { stock: "panel", count: 9 }, shape: { width: 3000, depth: 3000 }, at: [16500, 8000] });
const day: Layout = {
  ...layoutOf("meal", []),
  scenes: [...layoutOf("ceremony", ROWS).scenes, ...layoutOf("meal", MEAL).scenes, ...layoutOf("dancing", [...MEAL, floor]).scenes],
};

/** A piece and its seats elsewhere, turned. */
const put = (item: Item, to: readonly [number, number], angle: number): Item => ({
  ...item, at: to, angle, seats: item.seats.map((s) => ({ ...s, x: s.x + to[0] - item.at[0], y: s.y + to[1] - item.at[1] })),
});
const withPiece = (layout: Layout, scene: string, item: Item): Layout => ({ ...layout, scenes: layout.scenes.map((s) => (s.id === scene ? { ...s, items: s.items.map((i) => (i.id === item.id ? item : i)) } : s)) });

const step = fc.record({ part: fc.integer({ min: 0, max: 2 }), piece: fc.nat(1000), x: fc.integer({ min: -200, max: 20200 }), y: fc.integer({ min: -200, max: 12200 }), angle: fc.constantFrom(0, 90, 37), keep: fc.boolean() });

describe("a checker", () => {
  it("begins with the whole check", () => expect(checker(venue, brief, day).findings).toEqual(check(venue, day, brief)));

  it("tells of a moved piece what the whole check tells of the day with it moved", () => {
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 6 }), (steps) => {
      let now = checker(venue, brief, day);
      for (const s of steps) {
        const scene = now.layout.scenes[s.part], item = scene?.items[s.piece % (scene.items.length || 1)];
        if (!scene || !item) continue;
        const there = put(item, [s.x, s.y], s.angle), after = withPiece(now.layout, scene.id, there);
        expect(now.move(scene.id, there)).toEqual(check(venue, after, brief));
        if (s.keep) now = now.next(after);
        expect(now.findings).toEqual(check(venue, now.layout, brief));
      }
    }), { numRuns: 40, seed: 20270612 });
  });

  it("judges without a brief as the check does", () => expect(checker(venue, null, day).findings).toEqual(check(venue, day)));

  it("adds a piece that the part of the day does not have", () => {
    const more = roundTable("t9", [16500, 3500]);
    expect(checker(venue, brief, day).move("meal", more)).toEqual(check(venue, { ...day, scenes: day.scenes.map((s) => (s.id === "meal" ? { ...s, items: [...s.items, more] } : s)) }, brief));
  });

  // What was found for a map, and for the map before it, must not stand where one chair of a run has been pushed into the next, or a hand's breadth matters.
  const nudge = fc.record({ part: fc.integer({ min: 0, max: 2 }), piece: fc.nat(1000), x: fc.integer({ min: -300, max: 300 }), y: fc.constantFrom(0, 0, -120, 120), angle: fc.constantFrom(0, 0, 0, 3), gone: fc.constantFrom(false, false, false, true) });
  it("tells so of pieces nudged, turned a little or taken away, one after another, as hands do", () => {
    fc.assert(fc.property(fc.array(nudge, { minLength: 3, maxLength: 12 }), (steps) => {
      let now = checker(venue, brief, day);
      for (const s of steps) {
        const scene = now.layout.scenes[s.part], item = scene?.items[s.piece % (scene.items.length || 1)];
        if (!scene || !item) continue;
        const there = put(item, [item.at[0] + s.x, item.at[1] + s.y], item.angle + s.angle);
        const after = s.gone ? { ...now.layout, scenes: now.layout.scenes.map((p) => (p.id === scene.id ? { ...p, items: p.items.filter((i) => i.id !== item.id) } : p)) } : withPiece(now.layout, scene.id, there);
        now = now.next(after);
        // A copy of which no part is the same object, at a venue of its own: nothing of an earlier check answers for it.
        expect(now.findings).toEqual(check(structuredClone(venue), structuredClone(after), brief));
      }
    }), { numRuns: 25, seed: 20300511 });
  });
});
