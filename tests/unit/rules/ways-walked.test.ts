import { describe, expect, it } from "vitest";
import type { Brief } from "../../../lib/brief";
import type { Item, Layout } from "../../../lib/layout";
import { contextOf, SCENE_RULES, type Raw } from "../../../lib/rules";
import type { Venue } from "../../../lib/venue";
import { box, briefOf, hall, itemOf, layoutOf, roundTable, rowChair, venueOf, type RoomFile } from "./kit";

const only = (rule: string, venue: Venue, layout: Layout, brief?: Brief): readonly Raw[] => {
  const c = contextOf(venue, layout, brief), v = c.scenes[0];
  return v ? (SCENE_RULES[rule]?.(v, c) ?? []) : [];
};
type Door = RoomFile["doors"][number];
const way = (id: string, from: [number, number], to: [number, number], over: Partial<Door> = {}): Door =>
  ({ id, from, to, leads: "outside", exit: true, for: ["guests"], swing: "out", ...over });
/** A piece by its corners. */
const block = (id: string, x0: number, y0: number, x1: number, y1: number): Item =>
  ({ ...itemOf({ id, kind: "screen", from: { brought: true }, shape: { width: x1 - x0, depth: y1 - y0 }, at: [0, 0] }), at: [(x0 + x1) / 2, (y0 + y1) / 2] });

describe("IBC 2018 1005.3.2, 1005.5: people of a room against the doors that they drain to", () => {
  const out = [way("a", [0, 1000], [0, 3000]), way("b", [0, 9000], [0, 11_000])];
  const inner = (width: number, leads: string, x: number, ids: string): Door => way(ids, [x, 4000], [x, 4000 + width], { leads, exit: false, swing: "none" });
  const venue = (width: number, more: readonly Door[] = []) => venueOf({ rooms: [
    hall({ doors: [...out, inner(width, "annexe", 20_000, "to")] }),
    hall({ id: "annexe", name: "Annexe", outline: box(20_000, 0, 12_000, 12_000), doors: [inner(width, "hall", 20_000, "from"), ...more] }),
  ], packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ["hall", "annexe"], turnover: true, dueDays: 42 }] });
  const chairs = (n: number, room: string, x: number): readonly Item[] => Array.from({ length: n }, (_, k) => ({ ...rowChair(`${room}${k}`, [x + (k % 10) * 450, 2000 + Math.floor(k / 10) * 900]), room }));
  const day = (n: number): Layout => layoutOf("ceremony", chairs(n, "annexe", 24_000), ["hall", "annexe"]);
  it("98 people pass a door of 500 mm, which 5.08 mm a person lets, and 99 do not", () => {
    expect(98 * 5.08).toBeLessThan(500);
    expect(only("drain", venue(500), day(98))).toEqual([]);
    expect(only("drain", venue(500), day(99)).map((f) => [f.code, f.level, f.at, f.measured, f.limit, f.data?.["people"], f.data?.["room"]]))
      .toEqual([["drain", "must", [20_000, 4250], 500, Math.ceil(99 * 5.08), 99, "annexe"]]);
  });
  it("a way out of the room's own carries its share", () => expect(only("drain", venue(500, [way("own", [32_000, 4000], [32_000, 4900])]), day(99))).toEqual([]));
  it("half the width is asked with any one way out shut", () => {
    const far = [way("own", [32_000, 4000], [32_000, 5600])];
    expect(only("drain", venue(250, far), day(98))).toEqual([]);
    expect(only("drain", venue(250, far), day(100)).map((f) => [f.data?.["shut"], f.measured, f.limit])).toEqual([[true, 250, 100 * 5.08 * 0.5]]);
  });
});

describe("a path from a place that is too narrow", () => {
  it("is told where it is narrowest, and how wide it is there", () => {
    const venue = venueOf({ rooms: [hall({ doors: [way("w", [0, 5200], [0, 6800])] })] });
    const wall = (gap: number): readonly Item[] => [block("n", 12_000, 0, 12_300, 5800), block("s", 12_000, 5800 + gap, 12_300, 12_000)];
    const table = roundTable("t1", [16_000, 6000]);
    expect(only("ways", venue, layoutOf("meal", [...wall(308), table]), briefOf())).toEqual([]);
    const [found] = only("ways", venue, layoutOf("meal", [...wall(300), table]), briefOf());
    expect([found?.code, found?.data?.["narrow"]]).toEqual(["way-out", 300]);
    expect([Math.abs((found?.at?.[0] ?? 0) - 12_150) <= 151, found?.at?.[1]]).toEqual([true, 5800 + 150]);
  });
});

describe("IBC 2018 1029.8: the way is walked, not flown", () => {
  // Two lanes 900 mm wide side by side, joined at their far end: out by one, back by the other.
  const venue = venueOf({ rooms: [hall({ outline: box(0, 0, 30_000, 12_000), posted: { rows: 300, standing: 300 }, doors: [way("w", [0, 2000], [0, 3600]), way("n", [2000, 0], [3600, 0])] })] });
  const lanes = (long: number): readonly Item[] => {
    const x0 = 8000, x1 = x0 + long;
    return [block("top", x0, 3000, x1 + 1200, 3200), block("mid", x0, 4100, x1, 4300), block("low", x0 - 1400, 5200, x1 + 1200, 5400), block("end", x1 + 900, 3200, x1 + 1200, 5200), block("cap", x0 - 1400, 4100, x0, 5200)];
  };
  const seat = rowChair("seat", [8500, 4750], 0);
  const people = briefOf({ guests: { adults: 60 } });
  it("a lane there and back of 4 m is near enough, one of 6 m is not", () => {
    expect(only("commonPath", venue, layoutOf("drinks", [...lanes(4000), seat]), people)).toEqual([]);
    const [found] = only("commonPath", venue, layoutOf("drinks", [...lanes(6000), seat]), people);
    expect(found?.code).toBe("common-path");
    // 6 m out less the half metre that the seat stands in, and 6 m back.
    expect(found?.measured).toBeGreaterThan(9144);
    expect(found?.measured).toBeLessThan(2 * 6000 + 1500);
  });
});

describe("2010 ADA Standards 403.5.2: a route that turns back", () => {
  const venue = venueOf({ rooms: [hall({ doors: [way("w", [0, 50], [0, 950])] })] });
  const eats = briefOf({ guests: { adults: 8, wheelchairs: 1 } });
  // A bar behind a screen 100 mm thick that reaches from the west wall to the turn; lanes of a width on either side of it.
  const bend = (side: number, gap: number): Layout => layoutOf("meal", [
    block("thin", 0, side, 10_000, side + 100), block("low", 0, 2 * side + 100, 20_000, 2 * side + 200), block("end", 10_000 + gap, 0, 10_100 + gap, 2 * side + 100),
    itemOf({ id: "floor", kind: "dance-floor", from: { stock: "panel" }, shape: { width: 800, depth: 800 }, at: [1500, Math.round(1.5 * side + 100)] }),
  ]);
  it.each([
    ["36 in beside and 48 at the turn do not do", 1000, 1220, ["route-turn"]],
    ["42 beside and 48 at the turn do", 1068, 1220, []],
    ["42 beside and less than 48 at the turn do not", 1068, 1210, ["route-turn"]],
    ["36 beside and 60 at the turn do", 1000, 1526, []],
    ["36 beside and less than 60 at the turn do not", 1000, 1516, ["route-turn"]],
  ] as const)("%s", (_, side, gap, codes) => expect(only("routeTurns", venue, bend(side, gap), eats).map((f) => f.code)).toEqual(codes));
  it("a thing that is passed by and not turned about is nothing to tell of", () => {
    const post = layoutOf("meal", [block("post", 9000, 1000, 9200, 2000), itemOf({ id: "floor", kind: "dance-floor", from: { stock: "panel" }, shape: { width: 1000, depth: 1000 }, at: [15_000, 6000] })]);
    expect(only("routeTurns", venue, post, eats)).toEqual([]);
  });
});

describe("2010 ADA Standards 403.5.3: places to pass", () => {
  const wheel = (x: number): Item => itemOf({ id: "wheel", kind: "other", role: "wheelchair-space", from: { brought: true }, shape: { width: 760, depth: 1220 }, at: [x, 700], seats: [{ x, y: 700, facing: 90, place: "wheelchair" }] });
  const lane = (long: number) => venueOf({ rooms: [hall({ outline: box(0, 0, long, 1400), doors: [way("w", [0, 100], [0, 1300])] })] });
  it("a lane under 60 in wide has one within 200 ft or is told of", () => {
    const eats = briefOf({ guests: { adults: 8, wheelchairs: 1 } });
    expect(only("routeTurns", lane(80_000), layoutOf("ceremony", [wheel(70_000)]), eats).map((f) => f.code)).toEqual(["route-passing"]);
    const wide = venueOf({ rooms: [hall({ outline: [[0, 0], [80_000, 0], [80_000, 1400], [60_000, 1400], [60_000, 4000], [57_000, 4000], [57_000, 1400], [0, 1400]], doors: [way("w", [0, 100], [0, 1300])] })] });
    expect(only("routeTurns", wide, layoutOf("ceremony", [wheel(70_000)]), eats)).toEqual([]);
  });
});
