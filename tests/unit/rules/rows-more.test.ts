import { describe, expect, it } from "vitest";
import type { Item, Layout } from "../../../lib/layout";
import { contextOf, DAY_RULES, SCENE_RULES } from "../../../lib/rules";
import type { Venue } from "../../../lib/venue";
import { box, briefOf, hall, itemOf, layoutOf, rowChair, venueOf } from "./kit";

const only = (rule: string, venue: Venue, layout: Layout, brief?: ReturnType<typeof briefOf>) => {
  const c = contextOf(venue, layout, brief);
  return [...c.scenes.flatMap((v) => SCENE_RULES[rule]?.(v, c) ?? []), ...(DAY_RULES[rule]?.(c) ?? [])];
};
const big = venueOf({ rooms: [hall({ outline: box(0, 0, 24000, 24000), posted: { rows: 400 }, doors: [
  { id: "a", from: [0, 10000], to: [0, 12000], leads: "outside", exit: true, for: ["guests"], swing: "out" },
  { id: "b", from: [24000, 10000], to: [24000, 12000], leads: "outside", exit: true, for: ["guests"], swing: "out" },
] })] });
/** Rows of 2 x k chairs with an aisle between; the rows' outer ends stand at the walls of a screen or are open. */
const rows = (n: number, k: number, aisle: number, y = 6000): readonly Item[] => Array.from({ length: n }, (_, r) => Array.from({ length: 2 * k }, (_, i) =>
  rowChair(`c${r}-${i}`, [6000 + 450 * i + (i >= k ? aisle : 0), y + r * 914]))).flat();
const screens = (n: number, k: number, aisle: number): readonly Item[] => [6000 - 225 - 50, 6000 + 450 * (2 * k - 1) + aisle + 225 + 50].map((x, i) =>
  itemOf({ id: `s${i}`, kind: "screen", from: { brought: true }, shape: { width: 100, depth: n * 914 }, at: [Math.round(x), 6000 + ((n - 1) * 914) / 2] }));
const ceremony = (items: readonly Item[]): Layout => layoutOf("ceremony", items);

describe("IBC 2018 1029.9.1(4) and 1029.6.1(4): an aisle between rows by the places that it serves", () => {
  it.each([
    // 2 x 7 chairs a row, shut at their outer ends, so the aisle serves them all.
    ["14 places, 30 in", 1, 7, 762], ["28 places, 36 in", 2, 7, 914],
  ] as const)("%s: passes, and 10 mm less does not where rows follow on one another", (_, n, k, least) => {
    expect(only("aisles", big, ceremony([...rows(n, k, least), ...screens(n, k, least)]))).toEqual([]);
    const found = only("aisles", big, ceremony([...rows(n, k, least - 10), ...screens(n, k, least - 10)])).map((f) => [f.code, f.measured, f.limit]);
    expect(found).toEqual(n === 1 ? [] : [["aisle-width", least - 10, least]]);
  });
  it("past 210 places it is 0.2 in for each", () => {
    // 16 rows of 2 x 7: 224 places, 44.8 in.
    const least = Math.round(224 * 0.2 * 25.4);
    expect(only("aisles", big, ceremony([...rows(16, 7, least), ...screens(16, 7, least)]))).toEqual([]);
    expect(only("aisles", big, ceremony([...rows(16, 7, least - 10), ...screens(16, 7, least - 10)])).map((f) => [f.measured, f.limit, f.data?.["served"]])).toEqual([[least - 10, least, 224]]);
  });
  it.each(["none", "sides", undefined] as const)("from 50 places on is 42 in, whatever aisle was asked for (%s)", (aisle) => {
    // 4 rows of 2 x 7: 56 places; 42 in = 1066.8 mm.
    const brief = aisle && briefOf({ ceremony: { here: true, seating: "rows", aisle } });
    expect(only("aisles", big, ceremony([...rows(4, 7, 1067), ...screens(4, 7, 1067)]), brief)).toEqual([]);
    expect(only("aisles", big, ceremony([...rows(4, 7, 1057), ...screens(4, 7, 1057)]), brief).map((f) => [f.code, f.measured, f.limit, f.data?.["served"]])).toEqual([["aisle-width", 1057, 1067, 56]]);
  });
  it("is told of once where a centre aisle was asked for, and so is another beside it", () => {
    const brief = briefOf({ ceremony: { here: true, seating: "rows", aisle: "centre" } });
    const narrow = ceremony([...rows(4, 7, 1057), ...screens(4, 7, 1057)]);
    expect([...only("aisles", big, narrow, brief), ...only("centreAisle", big, narrow, brief)].map((f) => [f.code, f.measured])).toEqual([["centre-aisle", 1057]]);
    // A third run of 7 behind a second aisle, narrower than the one in the middle: 8 rows, 8 x (7 / 2 + 7) = 84 places or more at it.
    const third = Array.from({ length: 8 }, (_, r) => Array.from({ length: 7 }, (_, i) => rowChair(`d${r}-${i}`, [6000 + 450 * (14 + i) + 1100 + 900, 6000 + r * 914]))).flat();
    const two = ceremony([...rows(8, 7, 1100), ...third]);
    expect([...only("aisles", big, two, brief), ...only("centreAisle", big, two, brief)].map((f) => [f.code, f.measured, f.limit])).toEqual([["aisle-width", 900, 1067]]);
  });
  it("is shared with the outer ends where those are open", () => {
    expect(only("aisles", big, ceremony(rows(16, 7, 1067)))).toEqual([]);
  });
});

describe("IBC 2018 1029.9.1(5): beside a wall an aisle serves one side", () => {
  /** Rows of k chairs, the east ends `lane` mm before a screen, the west ends open, 320 mm of floor ahead of each. */
  const beside = (n: number, k: number, lane: number, ahead = 320): Layout => {
    const east = 6000 + 450 * (k - 1) + 225;
    return ceremony([
      ...Array.from({ length: n }, (_, r) => Array.from({ length: k }, (_c, i) => rowChair(`c${r}-${i}`, [6000 + 450 * i, 6000 + r * (500 + ahead)]))).flat(),
      itemOf({ id: "s", kind: "screen", from: { brought: true }, shape: { width: 100, depth: 8000 }, at: [east + lane + 50, 7500] }),
    ]);
  };
  const ends = (layout: Layout): readonly unknown[] => only("rowLength", big, layout).map((f) => [f.code, f.data?.["ends"], f.limit]);
  // Ten chairs open at both ends want 12 in, open at one 12 + 0.6 (10 - 7) = 13.8.
  const want = Math.round((12 + 0.6 * (10 - 7)) * 25.4);
  it("914 mm are a way out of the row, 904 are none: the rows then open at one end alone", () => {
    expect(ends(beside(4, 10, 914))).toEqual([]);
    const narrow = ends(beside(4, 10, 904));
    expect(narrow).toHaveLength(3);
    expect(narrow[0]).toEqual(["row-narrow", 1, want]);
  });
  it("762 mm are one where it serves fewer than 15 places: two rows of ten, half of each, and not three", () => {
    expect(ends(beside(2, 10, 762))).toEqual([]);
    expect(ends(beside(2, 10, 752))).toHaveLength(1);
    expect(ends(beside(3, 10, 762))).toHaveLength(2);
  });
});

describe("loose chairs are fastened together", () => {
  const chairs = (n: number): Layout => ceremony(rows(20, 6, 1500).slice(0, n));
  it("past 200 in groups of three or more (IBC 2018 1029.15), as a note", () => {
    expect(only("fastened", big, chairs(200))).toEqual([]);
    expect(only("fastened", big, chairs(201)).map((f) => [f.code, f.level, f.data?.["least"]])).toEqual([["rows-fastened", "note", 3]]);
  });
  it("past 50 in lengths of 4 to 14 by the UK's guide", () => {
    const uk = { ...big, rules: { profile: "uk-guide" as const } };
    expect(only("fastened", uk, chairs(50))).toEqual([]);
    expect(only("fastened", uk, chairs(51)).map((f) => [f.data?.["least"], f.data?.["most"]])).toEqual([[4, 14]]);
  });
});

describe("the floor before the first row", () => {
  const first = (depth: number): Layout => ceremony(rows(3, 4, 1200, depth + 250));
  it("is 6 ft, and 3 m by the UK's guide", () => {
    expect(only("frontStrip", big, first(1829))).toEqual([]);
    expect(only("frontStrip", big, first(1819)).map((f) => [f.code, f.measured, f.limit])).toEqual([["front-strip", 1819, 1829]]);
    const uk = { ...big, rules: { profile: "uk-guide" as const } };
    expect(only("frontStrip", uk, first(3000))).toEqual([]);
    expect(only("frontStrip", uk, first(2990)).map((f) => f.limit)).toEqual([3000]);
  });
});

describe("wheelchair spaces among rows", () => {
  const space = (id: string, at: readonly [number, number]): Item => itemOf({
    id, kind: "other", role: "wheelchair-space", from: { brought: true }, shape: { width: 915, depth: 1220 }, at, angle: 180, seats: [{ x: at[0], y: at[1], facing: 270, place: "wheelchair" }],
  });
  const brief = briefOf({ guests: { adults: 24, wheelchairs: 1 }, meal: { service: "none" } });
  it("2010 ADA Standards Table 221.2.1.1: one for 25 seats, two for 26, as a note", () => {
    const of = (chairs: number): Layout => ceremony([...rows(4, 4, 1200).slice(0, chairs), space("w", [20000, 6000])]);
    expect(only("wheelchairSpacesInRows", big, of(24), brief)).toEqual([]);
    expect(only("wheelchairSpacesInRows", big, of(25), brief).map((f) => [f.level, f.measured, f.limit])).toEqual([["note", 1, 2]]);
  });
  it("221.3: a chair stands beside each", () => {
    const end = 6000 + 450 * 7 + 1200 + 225;
    const beside = (gap: number): Layout => ceremony([...rows(1, 4, 1200), space("w", [Math.round(end + gap + 457.5), 6000])]);
    expect(only("companions", big, beside(50))).toEqual([]);
    expect(only("companions", big, beside(260)).map((f) => f.code)).toEqual(["companion"]);
  });
});

describe("power", () => {
  const venue = (amps: number, socket: [number, number] = [0, 4000]): Venue => venueOf({ rooms: [hall({ sockets: [{ at: socket, circuit: "A", amps }] })] });
  const dj = itemOf({ id: "dj", kind: "dj", from: { brought: true }, shape: { width: 1800, depth: 760 }, at: [1500, 3500] });
  const brief = (watts: number) => briefOf({ music: { by: "dj", more: [{ scene: "drinks", by: "dj", watts }] } });
  it("a circuit of 13 A carries 13 x 230 = 2,990 W in Britain, and not 2,991", () => {
    expect(only("circuitLoad", venue(13), layoutOf("drinks", [dj]), brief(13 * 230))).toEqual([]);
    expect(only("circuitLoad", venue(13), layoutOf("drinks", [dj]), brief(13 * 230 + 1)).map((f) => [f.code, f.measured, f.limit])).toEqual([["circuit-load", 2991, 2990]]);
  });
  it("one of 20 A carries 20 x 120 = 2,400 W in the United States", () => {
    const us = { ...venue(20), locale: "en-US" };
    expect(only("circuitLoad", us, layoutOf("drinks", [dj]), brief(2400))).toEqual([]);
    expect(only("circuitLoad", us, layoutOf("drinks", [dj]), brief(2401)).map((f) => f.limit)).toEqual([2400]);
  });
  it("a cable across a door is told, and one along a free wall is not", () => {
    const at = (y: number): Item => ({ ...dj, at: [1500, y] });
    // The west door lies between y 5,200 and 6,800; the long way round passes the east door.
    expect(only("cables", venue(13, [0, 4000]), layoutOf("drinks", [at(1500)]), brief(500))).toEqual([]);
    expect(only("cables", venue(13, [0, 4000]), layoutOf("drinks", [at(9000)]), brief(500)).map((f) => [f.code, f.data?.["door"]])).toEqual([["cable-door", "west"]]);
  });
});

describe("the couple's wishes", () => {
  const room = venueOf({ rooms: [hall({ windows: [{ from: [9000, 0], to: [11000, 0], sill: 900 }], obstacles: [{ id: "pier", kind: "column", outline: box(9500, 3000, 1000, 400) }] })] });
  const cake = (y: number): Layout => layoutOf("meal", [itemOf({ id: "cake", kind: "table", role: "cake", from: { brought: true }, shape: { diameter: 800 }, at: [10000, y] })]);
  const wish = (w: object) => briefOf({ wishes: [{ put: "cake", ...w }] });
  it("near is within 3 m of it, edge to edge", () => {
    expect(only("wishes", room, cake(3000 + 400), wish({ near: "window" }))).toEqual([]);
    expect(only("wishes", room, cake(3010 + 400), wish({ near: "window" })).map((f) => [f.code, f.level, f.measured, f.limit])).toEqual([["wish-near", "should", 3010, 3000]]);
  });
  it("away is at least 5 m from it", () => {
    expect(only("wishes", room, cake(5000 + 400), wish({ "away-from": "window" }))).toEqual([]);
    expect(only("wishes", room, cake(4990 + 400), wish({ "away-from": "window" })).map((f) => [f.code, f.measured])).toEqual([["wish-away", 4990]]);
  });
  it("in sight is not behind a pier", () => {
    expect(only("wishes", room, cake(2000), wish({ "in-sight-of": "window" }))).toEqual([]);
    expect(only("wishes", room, cake(6000), wish({ "in-sight-of": "window" })).map((f) => f.code)).toEqual(["wish-sight"]);
  });
});
