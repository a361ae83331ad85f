import { describe, expect, it } from "vitest";
import { contextOf, SCENE_RULES } from "../../lib/rules";
import type { Item } from "../../lib/layout";
import { briefOf, hall, itemOf, layoutOf, venueOf } from "../unit/rules/kit";

/** A hall of 20 by 12 m with a way out in the west; in it a lane from x = 4 m to a dead end. */
const venue = venueOf({ rooms: [hall({ doors: [{ id: "west", from: [0, 4600], to: [0, 7600], leads: "outside", exit: true, for: ["guests"], swing: "out" }] })] });
/** A screen from its near corner, at the least so large: its middle lies on whole millimetres. */
const block = (id: string, x0: number, y0: number, x1: number, y1: number): Item => {
  const [width, depth] = [2 * Math.ceil((x1 - x0) / 2), 2 * Math.ceil((y1 - y0) / 2)];
  return itemOf({ id, kind: "screen", from: { brought: true }, shape: { width, depth }, at: [x0 + width / 2, y0 + depth / 2] });
};
const wheel = (x: number, y: number): Item => itemOf({ id: "wheel", kind: "other", role: "wheelchair-space", from: { brought: true }, shape: { width: 760, depth: 1220 }, at: [x, y], seats: [{ x, y, facing: 0, place: "wheelchair" }] });
const IN = 25.4, TOP = 5000, FROM = 4000;
/** Its walls: open to the west, shut at its far end. */
const lane = (wide: number, long: number): readonly Item[] => [
  block("top", FROM, TOP - 200, FROM + long, TOP), block("low", FROM, TOP + wide, FROM + long, TOP + wide + 200), block("end", FROM + long, TOP - 200, FROM + long + 200, TOP + wide + 200)];
const found = (items: readonly Item[], wheelchairs = 1) => {
  const c = contextOf(venue, layoutOf("ceremony", items), briefOf({ guests: { adults: 8, wheelchairs } }));
  return c.scenes.flatMap((v) => SCENE_RULES.turning?.(v, c) ?? []);
};
const codes = (items: readonly Item[], wheelchairs = 1): readonly string[] => found(items, wheelchairs).map((f) => `${f.level} ${f.code}`);

describe("2010 ADA Standards 304.3.1: a wheelchair turns in a circle of 60 in (1525 mm)", () => {
  it("60 in are 1524 mm, which the Standards give as 1525", () => expect(Math.abs(60 * IN - 1525)).toBeLessThanOrEqual(1));
  it("in a lane of 1525 mm it turns where it stands, in one of 1523 it does not", () => {
    const long = 12_000, at = wheel(FROM + long - 1000, TOP + 760);
    expect(codes([...lane(1525, long), at])).toEqual([]);
    expect(codes([...lane(1523, long), at])).toEqual(["should turning"]);
  });
  it("a lane that leads nowhere may be 20 ft long (IBC 2018 1029.9.5): a place at most so far from floor to turn on is not told of", () => {
    expect(20 * 12 * IN).toBe(6096);
    // Floor for the circle begins half its width before the lane's mouth.
    const at = (walk: number): readonly Item[] => [...lane(1000, walk + 500), wheel(FROM - Math.floor(1525 / 2) + walk, TOP + 500)];
    expect(codes(at(6000))).toEqual([]);
    // A walk over cells is never told longer than it is: shorter by what a way by octagons is longer than one by circles (1.0824), and by three cells of 150 mm at its ends.
    const walk = Math.ceil(6096 * 1.0824 + 3 * 150), [told] = found(at(walk));
    expect(told?.code).toBe("turning");
    expect(told?.limit).toBe(6096);
    expect(told?.measured).toBeGreaterThan(6096);
    expect(told?.measured).toBeLessThanOrEqual(walk);
  });
  it("nothing is said where no guest comes in a wheelchair", () => expect(codes([...lane(1523, 12_000), wheel(FROM + 11_000, TOP + 760)], 0)).toEqual([]));
});

describe("2010 ADA Standards 304.3.2: or in a T within a square of 60 in, its arms 36 in wide", () => {
  // A bay in the low wall of a lane one metre wide: with the lane it makes a T, the lane its bar.
  const WIDE = 1000, LONG = 14_000, BAY = FROM + 9000;
  const bayed = (wide: number, deep: number): readonly Item[] => [
    block("top", FROM, TOP - 200, FROM + LONG, TOP), block("end", FROM + LONG, TOP - 200, FROM + LONG + 200, TOP + WIDE + 200),
    block("low", FROM, TOP + WIDE, BAY, TOP + WIDE + 900), block("low2", BAY + wide, TOP + WIDE, FROM + LONG, TOP + WIDE + 900), block("bay", BAY, TOP + WIDE + deep, BAY + wide, TOP + WIDE + deep + 200),
    wheel(FROM + LONG - 1500, TOP + 500)];
  it.each([
    ["a bay of 36 in that goes 60 in deep from the lane's far side makes one", 36 * IN, 60 * IN - 1000 + 2, []],
    ["a bay of 35 in does not", 35 * IN, 60 * IN - 1000 + 2, ["should turning"]],
    ["nor one that goes 59 in deep", 36 * IN, 59 * IN - 1000, ["should turning"]],
  ] as const)("%s", (_, wide, deep, told) => expect(codes(bayed(Math.ceil(wide), Math.round(deep)))).toEqual(told));
});
