import { describe, expect, it } from "vitest";
import type { Item, Layout } from "../../../lib/layout";
import { check, contextOf, SCENE_RULES } from "../../../lib/rules";
import { box, briefOf, hall, itemOf, layoutOf, roundTable, rowChair, venueOf, type RoomFile } from "./kit";

type DoorFile = RoomFile["doors"][number];
const way = (id: string, from: readonly [number, number], to: readonly [number, number], over: Partial<DoorFile> = {}): DoorFile =>
  ({ id, from: [...from], to: [...to], leads: "outside", exit: true, for: ["guests"], swing: "out", ...over });
const drinks = (people: number) => briefOf({ guests: { adults: people }, ceremony: { here: false }, meal: { service: "none" } });
const only = (rule: string, venue = venueOf(), layout: Layout = layoutOf("drinks", []), brief?: ReturnType<typeof briefOf>) => {
  const c = contextOf(venue, layout, brief);
  return c.scenes.flatMap((v) => SCENE_RULES[rule]?.(v, c) ?? []);
};
const thing = (id: string, at: readonly [number, number], size: readonly [number, number]): Item =>
  itemOf({ id, kind: "other", from: { brought: true }, shape: { width: size[0], depth: size[1] }, at });

describe("IBC 2018 1007.1.1: two ways out stand apart by half the greatest span", () => {
  // A room of 15 x 20 m has a diagonal of 25 m: half of it is 12.5 m, a third 8.33 m.
  const apart = (mm: number, house?: { rule: string; limit: number }[]) => venueOf({
    rooms: [hall({ outline: box(0, 0, 20000, 15000), posted: { standing: 400 }, doors: [way("a", [1000, 0], [2000, 0]), way("b", [1000 + mm - 1000, 0], [1000 + mm, 0])] })],
    ...(house ? { rules: { profile: "model-code" as const, house } } : {}),
  });
  it("12,500 mm pass and 12,490 mm do not, measured to any point of the doors' width", () => {
    expect(only("exitsApart", apart(12_500), undefined, drinks(60))).toEqual([]);
    expect(only("exitsApart", apart(12_490), undefined, drinks(60)).map((f) => [f.code, f.measured, f.limit])).toEqual([["exits-apart", 12_490, 25_000 / 2]]);
  });
  it("asks nothing under 50 people", () => expect(only("exitsApart", apart(5_000), undefined, drinks(49))).toEqual([]));
  it("asks a third where sprinklers are throughout (exception 2)", () => {
    const house = [{ rule: "sprinklered", limit: 1 }];
    expect(only("exitsApart", apart(Math.ceil(25_000 / 3), house), undefined, drinks(60))).toEqual([]);
    expect(only("exitsApart", apart(Math.ceil(25_000 / 3) - 10, house), undefined, drinks(60)).map((f) => f.code)).toEqual(["exits-apart"]);
  });
});

describe("IBC 2018 1005.3.2 and 1005.5: width of the ways out", () => {
  const doors = (...widths: readonly number[]) => venueOf({ rooms: [hall({ outline: box(0, 0, 20000, 20000), posted: { standing: 600 }, doors: widths.map((w, i) => way(`d${i}`, [1000 + i * 5000, 0], [1000 + i * 5000 + w, 0])) })] });
  it("is a must where all doors together lack 0.2 in a person", () => {
    // 400 people: 400 x 5.08 = 2032 mm.
    expect(only("exitWidth", doors(1020, 1020), undefined, drinks(400))).toEqual([]);
    expect(only("exitWidth", doors(1010, 1010), undefined, drinks(400)).map((f) => [f.level, f.measured, f.limit])).toEqual([["must", 2 * 1010, 400 * 5.08]]);
  });
  it("is a should where only doors under 32 in (1010.1.1) make up the width", () => {
    expect(only("exitWidth", doors(1600, 800), undefined, drinks(200)).map((f) => f.level)).toEqual(["should"]);
  });
  it("wants all of it left with the widest shut by the UK's guides, as a should", () => {
    const uk = { ...doors(1020, 1020), rules: { profile: "uk-guide" as const } };
    expect(only("exitWidth", uk, undefined, drinks(200))).toEqual([]);
    expect(only("exitWidth", uk, undefined, drinks(203)).map((f) => [f.level, f.data?.["shut"]])).toEqual([["should", true]]);
  });
});

describe("IBC 2018 1029.8: at most 30 ft to a choice of two ways out", () => {
  // A passage 900 mm wide between two blocks 10 m thick, shut at its far end: the way to wider floor is the way along it.
  const venue = venueOf({ rooms: [hall({ outline: box(0, 0, 30000, 21000), posted: { standing: 300 }, doors: [way("w", [0, 2000], [0, 3600]), way("n", [2000, 0], [3600, 0])] })] });
  const seatAt = (x: number): Layout => layoutOf("drinks", [
    thing("n", [20000, 5025], [20000, 10050]), thing("s", [20000, 15975], [20000, 10050]), rowChair("seat", [x, 10500], 180),
  ]);
  // Floor 914 mm wide ends where its walker, 457 mm in radius, touches the corners 450 mm either side of its path.
  const mouth = 10000 - Math.sqrt(456.75 ** 2 - 450 ** 2), limit = 30 * 304.8;
  it("9,144 mm pass with 60 people and 10 mm more do not; with 49 they do", () => {
    expect(only("commonPath", venue, seatAt(Math.floor(mouth + limit)), drinks(60))).toEqual([]);
    const [found] = only("commonPath", venue, seatAt(Math.ceil(mouth + limit) + 10), drinks(60));
    expect([found?.code, found?.limit]).toEqual(["common-path", limit]);
    expect(found?.measured).toBeGreaterThanOrEqual(limit + 10 - 1);
    expect(only("commonPath", venue, seatAt(Math.ceil(mouth + limit) + 10), drinks(49))).toEqual([]);
  });
});

describe("guests in wheelchairs", () => {
  const eats = briefOf({ guests: { adults: 8, wheelchairs: 1 }, ceremony: { here: false }, meal: { top: "none" } });
  const toilets = (steps: number) => venueOf({ rooms: [hall({ doors: [...hall().doors, way("wc", [9000, 12000], [10000, 12000], { leads: "toilets", exit: false, steps })] })] });
  const meal = (...more: readonly Item[]): Layout => layoutOf("meal", [roundTable("t1", [10000, 5000]), ...more]);
  it("reach the toilets by a route of 914 mm without steps", () => {
    expect(only("toilets", toilets(0), meal(), eats)).toEqual([]);
    expect(only("toilets", toilets(2), meal(), eats).map((f) => f.code)).toEqual(["toilets-steps"]);
    const screens = (gap: number) => [thing("l", [8300, 10500], [100, 2999]), thing("r", [10700, 10500], [100, 2999]), thing("f", [8250 + (2500 - gap) / 2, 9050], [2500 - gap, 100])];
    expect(only("toilets", toilets(0), meal(...screens(1014)), eats)).toEqual([]);
    expect(only("toilets", toilets(0), meal(...screens(1004)), eats).map((f) => f.code)).toEqual(["toilets-route"]);
  });
  it("have one place in twenty to choose from on a route (2010 ADA Standards 226.1)", () => {
    expect(only("accessiblePlaces", venueOf(), meal(), eats)).toEqual([]);
    const ring = [thing("n", [10000, 2600], [5000, 100]), thing("s", [10000, 7400], [5000, 100]), thing("w", [7500, 5000], [100, 4600]), thing("e", [12500, 5000], [100, 4600])];
    expect(only("accessiblePlaces", venueOf(), meal(...ring), eats).map((f) => [f.code, f.measured, f.limit])).toEqual([["accessible-places", 0, Math.ceil(8 / 20)]]);
  });
});

describe("crowd managers, IFC 2018 403.12.3", () => {
  it("none are asked for 500 people, three for 501", () => {
    const big = venueOf({ rooms: [hall({ outline: box(0, 0, 40000, 30000), posted: { standing: 900 } })] });
    expect(only("crowd", big, undefined, drinks(500))).toEqual([]);
    expect(only("crowd", big, undefined, drinks(501)).map((f) => f.data?.["needed"])).toEqual([Math.ceil(501 / 250)]);
  });
});

describe("the coarse floor that rules ask first", () => {
  it("answers as the exact one does, gap by gap", () => {
    const bar = itemOf({ id: "bar", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at: [10000, 350] });
    for (let gap = 906; gap <= 934; gap += 4) {
      const screens = [thing("l", [4750, 3000], [9500, 100]), thing("r", [9500 + gap + (10500 - gap) / 2, 3000], [10500 - gap, 100])];
      const codes = check(venueOf(), layoutOf("meal", [bar, ...screens])).map((f) => f.code);
      expect(codes, String(gap)).toEqual(gap < 914 ? ["route"] : []);
    }
  });
});

describe("steps at the ways out", () => {
  it("do not make the seats of a room that is left by steps lie far from a choice of exits", () => {
    // Two rooms on one level: the hall's own doors have steps, the annexe's do not, and a wall lies between them.
    const steps = { steps: 2 };
    const venue = venueOf({ rooms: [
      hall({ outline: box(0, 0, 20000, 12000), posted: { standing: 220 }, doors: [way("w", [0, 5000], [0, 6600], steps), way("n", [2000, 0], [3600, 0], steps)] }),
      { ...hall({ id: "annexe", name: "Annexe", outline: box(40000, 0, 9000, 9000) }), doors: [way("a", [41000, 0], [42500, 0]), way("b", [44000, 0], [45500, 0])] },
    ] });
    expect(only("commonPath", venue, layoutOf("drinks", [rowChair("seat", [15000, 6000], 180)]), drinks(60))).toEqual([]);
  });
});
