import { describe, expect, it } from "vitest";
import type { Item, Layout } from "../../../lib/layout";
import { check } from "../../../lib/rules";
import type { Venue } from "../../../lib/venue";
import { briefOf, hall, itemOf, layoutOf, roundTable, venueOf } from "./kit";

/** A meal for 21 with a bar, a floor and a cake, with which no rule finds anything. */
const venue: Venue = venueOf({
  rooms: [hall({ standing: [{ id: "gear", name: "Mill gear", kind: "other", shape: { width: 800, depth: 800 }, at: [3000, 1000], angle: 0, move: null }], keepClear: [{ id: "hatch", outline: [[16000, 8000], [17000, 8000], [17000, 9000], [16000, 9000]], why: "Floor hatch" }] })],
  rules: { profile: "model-code", most: { tableGap: 1372, wallGap: 800 }, comfort: { tableGap: 1372, wallGap: 800 } },
});
const brief = briefOf({ guests: { adults: 21 }, ceremony: { here: false }, meal: { top: "none" }, music: { dancing: 0.3 }, displays: ["cake"] });
const ITEMS: readonly Item[] = [
  itemOf({ id: "gear", kind: "other", from: { standing: "gear" }, shape: { width: 800, depth: 800 }, at: [3000, 1000] }),
  roundTable("t1", [6000, 4000], 7), roundTable("t2", [10000, 4000], 7), roundTable("t3", [14000, 4000], 7),
  itemOf({ id: "bar", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at: [10000, 11650], angle: 180 }),
  itemOf({ id: "floor", kind: "dance-floor", from: { stock: "panel", count: 9 }, shape: { width: 3000, depth: 3000 }, at: [12000, 8500] }),
  itemOf({ id: "cake", kind: "table", role: "cake", from: { stock: "long" }, shape: { width: 1829, depth: 762 }, at: [6000, 11600] }),
];
const day = (items: readonly Item[]): Layout => {
  const meal = layoutOf("meal", items), dancing = layoutOf("dancing", items);
  return { ...meal, scenes: [...meal.scenes, ...dancing.scenes] };
};
const codes = (items: readonly Item[]): readonly string[] => [...new Set(check(venue, day(items), brief).map((f) => f.code))];
/** The same with one piece, and its seats, elsewhere. */
const moved = (id: string, to: readonly [number, number]): readonly Item[] => ITEMS.map((i) => (i.id === id
  ? { ...i, at: to, seats: i.seats.map((s) => ({ ...s, x: s.x + to[0] - i.at[0], y: s.y + to[1] - i.at[1] })) } : i));

describe("one piece of a layout without findings moved 10 mm over a limit gives that finding and no other", () => {
  it("finds nothing where nothing is wrong", () => expect(codes(ITEMS)).toEqual([]));
  it.each([
    ["a table towards another", "t1", [10000 - 1524 - 1372, 4000], [10000 - 1524 - 1362, 4000], "table-gap"],
    ["a table towards the wall behind its places", "t2", [10000, 800 + 762], [10000, 790 + 762], "wall-gap"],
    ["a piece through a wall", "cake", [6000, 12000 - 381], [6000, 12000 - 371], "outside-room"],
    ["a piece on to the dance floor", "cake", [13500 + 915, 8500], [13490 + 915, 8500], "overlap"],
    ["a piece into the floor inside a way out", "cake", [900 + 915, 6000], [890 + 915, 6000], "door-clear"],
    ["a piece into floor kept clear", "cake", [16500, 8000 - 381], [16500, 8010 - 381], "on-keep-clear"],
    ["a standing piece that may not be moved", "gear", [3000, 1001], [3000, 1010], "standing-fixed"],
  ] as const)("%s", (_, id, at, over, code) => {
    expect(codes(moved(id, at))).toEqual([]);
    expect(codes(moved(id, over))).toEqual([code]);
  });
});
