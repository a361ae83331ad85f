import { describe, expect, it } from "vitest";
import { snap, stringsOf } from "../../../lib/hand";
import type { Item } from "../../../lib/layout";
import { turn } from "../../../lib/geometry";
import type { Room } from "../../../lib/venue";
import { grain } from "./mill";

const round = (id: string, at: readonly [number, number], diameter = 1600): Item => ({ id, kind: "table", label: id, room: "grain-floor", from: { stock: "round" }, shape: { diameter }, at, angle: 0, seats: [] });
/** The Grain Floor, 16.2 x 9.4 m. */
const ask = (item: Item, others: readonly Item[], within = 100) => snap({ room: grain, item, others, within });

describe("a piece that is moved", () => {
  it("is drawn to the middle of the room on either axis by itself", () => {
    expect(ask(round("a", [8060, 3000]), []).at).toEqual([16_200 / 2, 3000]);
    expect(ask(round("a", [3000, 4750]), []).at).toEqual([3000, 9_400 / 2]);
  });

  it("is drawn into line with its neighbours, by the middle and by the edges", () => {
    expect(ask(round("a", [5040, 6000]), [round("b", [5000, 2000])]).at).toEqual([5000, 6000]);
    // Left edges in line: a table of 1.60 m over one of 1.00 m.
    expect(ask(round("a", [5330, 6000]), [round("b", [5000, 2000], 1000)]).at).toEqual([5000 - 500 + 800, 6000]);
  });

  it("is drawn midway between two, the gaps equal, before anything else", () => {
    const { at, hints } = ask(round("a", [4950, 2900]), [round("b", [2000, 3000]), round("c", [7800, 3000])]);
    expect(at[0]).toBe((2000 + 7800) / 2);
    const gap = (7800 - 2000 - 1600 - 1600) / 2;
    expect(hints.filter((h) => h.kind === "gap").map((h) => h.mm)).toEqual([gap, gap]);
  });

  it("is drawn as far from its neighbour as that one is from the next", () => {
    const others = [round("b", [2000, 3000]), round("c", [5000, 3000])];
    expect(ask(round("a", [8020, 3000], 1600), others, 30).at).toEqual([5000 + 3000, 3000]);
  });

  it("stays where nothing is near, to the millimetre", () => {
    expect(ask(round("a", [3111, 2222]), [round("b", [6000, 7000])])).toEqual({ at: [3111, 2222], hints: [] });
  });

  it("goes by the axes of a room that stands askew", () => {
    const askew: Room = { ...grain, outline: grain.outline.map((p) => { const [x, y] = turn(p, 30); return [Math.round(x), Math.round(y)] as const; }) };
    const [x, y] = turn([8060, 3000], 30), [mx, my] = turn([8100, 3000], 30);
    const { at } = snap({ room: askew, item: round("a", [Math.round(x), Math.round(y)]), others: [], within: 100 });
    expect(Math.hypot(at[0] - mx, at[1] - my)).toBeLessThan(3);
  });
});

describe("the strings of a piece", () => {
  it("are the clear floor to the nearer of each two walls, and to its nearest neighbour", () => {
    const strings = stringsOf(grain, round("a", [3000, 3000]), [round("b", [5600, 3000]), round("c", [3000, 6500])]);
    expect(strings.map((s) => [s.to, s.mm])).toEqual([["wall", 3000 - 800], ["wall", 3000 - 800], ["piece", 5600 - 3000 - 1600]]);
  });

  it("stand in the middle of two edges that run side by side", () => {
    const long = (id: string, at: readonly [number, number]): Item => ({ ...round(id, at), shape: { width: 2000, depth: 800 } });
    const piece = stringsOf(grain, long("a", [4000, 3000]), [long("b", [5000, 4800])]).find((s) => s.to === "piece");
    expect(piece).toMatchObject({ mm: 4800 - 3000 - 800, from: [4500, 3400], end: [4500, 4400] });
  });
});
