import { describe, expect, it } from "vitest";
import type { Item, SceneId } from "../../../lib/layout";
import { check } from "../../../lib/rules";
import type { Venue } from "../../../lib/venue";
import { box, briefOf, hall, itemOf, layoutOf, roundTable, rowChair, venueOf } from "./kit";

type Day = { readonly venue: Venue; readonly brief: ReturnType<typeof briefOf>; readonly scene: SceneId; readonly items: readonly Item[] };
const moved = (items: readonly Item[], id: string, [dx, dy]: readonly [number, number]): readonly Item[] => items.map((i) => (i.id === id
  ? { ...i, at: [i.at[0] + dx, i.at[1] + dy], seats: i.seats.map((s) => ({ ...s, x: s.x + dx, y: s.y + dy })) } : i));
const codes = ({ venue, brief, scene }: Day, items: readonly Item[]): readonly string[] => [...new Set(check(venue, layoutOf(scene, items), brief).map((f) => f.code))];

/** A long table with three places on either side, its ends bare. */
const longTable = (id: string, [x, y]: readonly [number, number]): Item => itemOf({
  id, kind: "table", role: "dining", from: { stock: "long" }, shape: { width: 1829, depth: 762 }, at: [x, y],
  seats: [-610, 0, 610].flatMap((k) => [{ x: x + k, y: y - 581, facing: 90, place: "chair" }, { x: x + k, y: y + 581, facing: 270, place: "chair" }]),
});
const screen = (id: string, at: readonly [number, number], width: number, depth: number): Item =>
  itemOf({ id, kind: "screen", from: { brought: true }, shape: { width, depth }, at });

const tight = venueOf({ rules: { profile: "model-code", most: { tableGap: 1372, wallGap: 800 }, comfort: { tableGap: 1372, wallGap: 800 } } });
const bar = itemOf({ id: "bar", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at: [10000, 350] });
/** A meal of 20 at one round and two long tables, with a bar behind two screens that stand 914 mm apart. */
const meal: Day = {
  venue: tight, scene: "meal", brief: briefOf({ guests: { adults: 20 }, ceremony: { here: false }, meal: { top: "none" } }),
  items: [
    roundTable("t1", [15000, 8500], 8), longTable("a", [451 + 915, 9500]), longTable("b", [6000, 7000]), bar,
    screen("l", [4750, 3000], 9500, 100), screen("r", [9500 + 914 + 4793, 3000], 9586, 100),
  ],
};
const beside: Day = { ...meal, brief: briefOf({ guests: { adults: 26 }, ceremony: { here: false }, meal: { top: "none" } }), items: [...meal.items, longTable("c", [6000 + 1829 + 914, 7000])] };

const wide = venueOf({ rooms: [hall({ outline: box(0, 0, 24000, 24000), posted: { rows: 400 }, doors: [
  { id: "a", from: [0, 10000], to: [0, 12000], leads: "outside", exit: true, for: ["guests"], swing: "out" },
  { id: "b", from: [24000, 10000], to: [24000, 12000], leads: "outside", exit: true, for: ["guests"], swing: "out" },
] })] });
/** Rows of two times seven chairs, shut at the outer ends. */
const HALF = 7;
const rows = (count: number, aisle: number, brief: Record<string, unknown>): Day => ({
  venue: wide, scene: "ceremony", brief: briefOf({ guests: { adults: count * 2 * HALF }, ceremony: brief, meal: { service: "none" } }),
  items: [
    ...Array.from({ length: count * 2 * HALF }, (_, n) => { const r = Math.floor(n / (2 * HALF)), i = n % (2 * HALF); return rowChair(`c${r}-${i}`, [6000 + 450 * i + (i >= HALF ? aisle : 0), 6000 + r * 914]); }),
    ...[6000 - 275, 6000 + 450 * (2 * HALF - 1) + aisle + 275].map((x, i) => screen(`s${i}`, [x, 6000 + 457 * (count - 1)], 100, count * 914)),
  ],
});
const few = rows(3, 914, { aisle: "none" }), many = rows(4, 1067, { aisle: "centre" });

describe("one piece of a layout without findings moved 10 mm over a limit gives that finding and no other", () => {
  it.each([
    ["a table's bare end towards a wall: 450 mm", meal, "a", [-1, 0], [-11, 0], "end-wall"],
    ["a table's bare end towards another's: 914 mm", beside, "c", [0, 0], [-10, 0], "end-end"],
    ["a screen beside the only way to the bar: 914 mm", meal, "r", [0, 0], [-10, 0], "route"],
    ["a chair at the aisle between rows of 42 places: 36 in", few, `c1-${HALF - 1}`, [0, 0], [10, 0], "aisle-width"],
    ["a chair at the centre aisle of 56 seats: 42 in", many, `c1-${HALF - 1}`, [0, 0], [10, 0], "centre-aisle"],
    ["a chair of a row towards the back of the row ahead: 305 mm", few, "c2-3", [0, -109], [0, -119], "row-clear"],
  ] as const)("%s", (_, day, id, at, over, code) => {
    expect(codes(day, moved(day.items, id, at))).toEqual([]);
    expect(codes(day, moved(day.items, id, over))).toEqual([code]);
  });
});
