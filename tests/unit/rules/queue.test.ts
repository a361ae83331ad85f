import { describe, expect, it } from "vitest";
import { contextOf, SCENE_RULES } from "../../../lib/rules";
import type { Item, SceneId } from "../../../lib/layout";
import { briefOf, hall, itemOf, layoutOf, roundTable, rowChair, venueOf } from "./kit";

const found = (scene: SceneId, items: readonly Item[], venue = venueOf()): readonly (readonly unknown[])[] => {
  const c = contextOf(venue, layoutOf(scene, items), briefOf());
  return c.scenes.flatMap((v) => SCENE_RULES.queue?.(v, c) ?? []).map((f) => [f.level, f.measured, f.data?.["b"]]);
};
/** A bar that looks down the page: its front lies half its depth below its middle. */
const bar = (at: [number, number] = [10_000, 1200], angle = 0): Item => itemOf({ id: "bar", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at, angle });
const FRONT = 1200 + 700 / 2;
const floor = (top: number, x = 10_000): Item => itemOf({ id: "floor", kind: "dance-floor", from: { stock: "panel" }, shape: { width: 4000, depth: 4000 }, at: [x, top + 2000] });
const buffet = (id: string, at: [number, number], angle = 0): Item => itemOf({ id, kind: "table", role: "buffet", from: { stock: "long" }, shape: { width: 1829, depth: 762 }, at, angle });

describe("UFC 4-722-01 (2003, withdrawn), 5-5: those who wait in one file take 4 ft", () => {
  const LANE = Math.ceil(4 * 304.8);
  it("a dance floor 1220 mm before the bar leaves them, one 20 mm nearer does not", () => {
    expect(LANE).toBe(1220);
    expect(found("dancing", [bar(), floor(FRONT + LANE)])).toEqual([]);
    expect(found("dancing", [bar(), floor(FRONT + LANE - 20)])).toEqual([["should", 1200, "floor"]]);
  });
  it("until there is dancing its floor is one to wait on", () => expect(found("meal", [bar(), floor(FRONT + 100)])).toEqual([]));
  it("what lies behind the bar or beside its lane is not in it", () => {
    expect(found("dancing", [bar([10_000, 6000]), floor(6000 - 350 - 4000)])).toEqual([]);
    expect(found("dancing", [bar(), floor(FRONT + 100, 10_000 + 1200 + 2000)])).toEqual([]);
  });
  it("chairs at a table stand in it like the table itself", () => {
    // The round's edge lies 762 mm from its middle, its chairs' backs 200 + 250 mm farther.
    const y = FRONT + LANE + 762 + 200 + 250;
    expect(found("meal", [bar(), roundTable("t", [10_000, y + 5])])).toEqual([]);
    expect(found("meal", [bar(), roundTable("t", [10_000, y - 200])]).map(([level, , b]) => [level, b])).toEqual([["should", "t"]]);
  });
  it("a wall before a bar is told of, but not where the venue keeps it", () => {
    const turned = bar([10_000, 1200], 180);
    expect(found("drinks", [turned])).toEqual([["should", 1200 - 350, undefined]]);
    const venue = venueOf({ rooms: [hall({ standing: [{ id: "bar", name: "Bar", kind: "bar", shape: { width: 2400, depth: 700 }, at: [10_000, 1200], angle: 180, move: null }] })] });
    expect(found("drinks", [{ ...turned, from: { standing: "bar" } }], venue)).toEqual([]);
  });
  it("a buffet is judged at the meal alone, and its tables are one line", () => {
    const line = [buffet("one", [9000, 1000]), buffet("two", [9000 + 1829, 1000])];
    expect(found("meal", line)).toEqual([]);
    const sofa = itemOf({ id: "sofa", kind: "lounge", from: { brought: true }, shape: { width: 4000, depth: 800 }, at: [9000, 1000 + 381 + 300 + 400] });
    expect(found("meal", [...line, sofa]).map(([, mm, b]) => [mm, b])).toEqual([[300, "sofa"], [300, "sofa"]]);
    expect(found("dancing", [...line, sofa])).toEqual([]);
  });
  it("nobody waits at a bar during the ceremony", () => expect(found("ceremony", [bar(), rowChair("c", [10_000, FRONT + 400])])).toEqual([]));
});
