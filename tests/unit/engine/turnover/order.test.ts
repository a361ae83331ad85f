import { describe, expect, it } from "vitest";
import { seeded } from "../../../../lib/base";
import { orderOf, statesOf, type OnItsWay } from "../../../../lib/engine/turnover/order";
import type { Item } from "../../../../lib/layout";

const table = (id: string, x: number, y: number): Item => ({
  id, kind: "table", role: "dining", label: id, room: "hall", from: { stock: "round" }, shape: { diameter: 1500 }, at: [x, y], angle: 0, seats: [],
});
const go = (id: string, from: readonly [number, number] | null, to: readonly [number, number], stage = 2): OnItsWay<string> =>
  ({ task: id, stage, old: from && table(id, ...from), now: table(id, ...to) });
const apart = (list: readonly Item[]): boolean => list.every((a, i) => list.slice(i + 1).every((b) => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) >= 1500));

describe("the order of a turnover", () => {
  it("sets a table down only once the one that stood there has gone", () => {
    const order = orderOf([go("a", [0, 0], [4000, 0]), go("b", [4000, 0], [8000, 0])]);
    expect(order.steps.map((s) => s.task)).toEqual(["b", "a"]);
    expect(order.aside.size).toBe(0);
  });
  it("puts one table of a ring aside, and one that a piece of an earlier stage waits for", () => {
    expect(orderOf([go("a", [0, 0], [4000, 0]), go("b", [4000, 0], [0, 0])]).aside.size).toBe(1);
    const staged = orderOf([go("late", [0, 0], [8000, 0], 3), go("early", null, [0, 0], 1)]);
    expect([...staged.aside].map((s) => s.task)).toEqual(["late"]);
    expect(staged.steps.map((s) => s.task)).toEqual(["early", "late"]);
  });
  it("leaves nothing on anything else at any moment, for 200 rooms of up to 12 tables moved at random on a grid of 1.5 m", () => {
    const random = seeded(7);
    for (let room = 0; room < 200; room++) {
      const spots = Array.from({ length: 16 }, (_, i) => [(i % 4) * 1500, Math.floor(i / 4) * 1500] as const);
      const shuffled = (): readonly (readonly [number, number])[] => spots.map((s) => ({ s, k: random() })).sort((a, b) => a.k - b.k).map((x) => x.s);
      const [old, now] = [shuffled(), shuffled()];
      const n = 2 + Math.floor(random() * 11);
      const list = Array.from({ length: n }, (_, i) => go(`t${i}`, random() < 0.2 ? null : old[i] ?? [0, 0], now[i] ?? [0, 0], 1 + Math.floor(random() * 3)));
      const order = orderOf(list);
      expect(order.steps.length).toBe(n);
      for (const state of statesOf([], order)) expect(apart(state)).toBe(true);
      expect(statesOf([], order).at(-1)?.map((i) => i.id).sort()).toEqual(list.map((s) => s.now.id).sort());
    }
  });
});
