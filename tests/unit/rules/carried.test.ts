import { describe, expect, it } from "vitest";
import type { Item, Layout } from "../../../lib/layout";
import { check, contextOf, SCENE_RULES } from "../../../lib/rules";
import type { Venue } from "../../../lib/venue";
import { box, briefOf, hall, itemOf, layoutOf, roundTable, venueOf } from "./kit";

const door = (id: string, x: number, y: number) => ({ id, from: [x, y] as [number, number], to: [x, y + 1600] as [number, number], leads: "outside", exit: true, for: ["guests" as const], swing: "out" as const });
/** A hall of 30 x 12 m whose ways out all lie in its east wall. */
const venue: Venue = venueOf({ rooms: [hall({ outline: box(0, 0, 30000, 12000), doors: [door("n", 30000, 1000), door("s", 30000, 9000)] })] });
const screen = (id: string, x: number, from: number, to: number): Item => itemOf({ id, kind: "screen", from: { brought: true }, shape: { width: 100, depth: to - from }, at: [x, (from + to) / 2] });
/** Two screens across the hall with a gap between them, at 12 m from the west wall. */
const gate = (gap: number, x = 12000): readonly Item[] => [screen("up", x, 0, 5800), screen("down", x, 5800 + gap, 12000)];
/** Ten tables of eight behind the screens: 80 people, 80 x 5.08 = 406.4 mm. */
const tables = (n: number): readonly Item[] => Array.from({ length: n }, (_, k) => roundTable(`t${k}`, [2000 + (k % 3) * 3000, 1800 + Math.floor(k / 3) * 2700], 8));
const found = (items: readonly Item[], brief?: ReturnType<typeof briefOf>) => {
  const layout: Layout = layoutOf("meal", items), c = contextOf(venue, layout, brief);
  return c.scenes.flatMap((v) => SCENE_RULES["carried"]?.(v, c) ?? []).map((f) => [f.level, f.measured, f.limit, f.items, f.at, f.data?.["people"]]);
};

describe("IBC 2018 1005.3.2: 0.2 in of a stretch for each person whose shortest way out runs through it", () => {
  it("80 people pass between two screens 406 mm apart, and 396 mm are 10 short of it", () => {
    expect(found([...gate(406), ...tables(10)])).toEqual([]);
    expect(found([...gate(396), ...tables(10)])).toEqual([["should", 396, Math.ceil(80 * 5.08), ["up", "down"], [12000 + 50, 5800 + 396 / 2], 80]]);
  });

  it("counts the people who are there, not the chairs: 78 at the same places pass 396 mm (78 x 5.08 = 396.24), and 390 are too few", () => {
    const brief = (n: number) => briefOf({ guests: { adults: n }, ceremony: { here: false }, meal: { top: "none" } });
    expect(found([...gate(396), ...tables(10)], brief(78))).toEqual([]);
    expect(found([...gate(390), ...tables(10)], brief(78)).map((f) => [f[1], f[2], f[5]])).toEqual([[390, Math.ceil(78 * 5.08), 78]]);
  });

  it("a second way through takes those to whom it is nearer, and each carries its own", () => {
    const two = [screen("up", 12000, 0, 2800), screen("mid", 12000, 3200, 8800), screen("down", 12000, 9200, 12000)];
    expect(found([...two, ...tables(10)])).toEqual([]);
  });

  it("those who sit before the stretch do not walk through it", () => {
    expect(found([...gate(396, 1000), ...tables(10).map((t) => ({ ...t, at: [t.at[0] + 4000, t.at[1]] as const, seats: t.seats.map((s) => ({ ...s, x: s.x + 4000 })) }))])).toEqual([]);
  });

  it("says so in words, in the layout's own check", () => {
    const said = check(venue, layoutOf("meal", [...gate(396), ...tables(10)])).find((f) => f.code === "stretch")?.text;
    expect(said).toBe("The shortest ways out of 80 people run between up and down, where 396 mm are free; so many ask for 407 mm.");
  });
});
