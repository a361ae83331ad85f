import { describe, expect, it } from "vitest";
import { check } from "../../lib/rules";
import { hall, itemOf, layoutOf, venueOf } from "../unit/rules/kit";

type Door = NonNullable<ReturnType<typeof hall>["doors"]>[number];
const door = (over: Partial<Door>): Door => ({ id: "x", from: [8000, 0], to: [9000, 0], leads: "outside", exit: false, for: ["guests"], swing: "in", ...over });
const codes = (d: Door, table: readonly [number, number]): readonly string[] => check(
  venueOf({ rooms: [hall({ doors: [...hall().doors, d] })] }),
  layoutOf("meal", [itemOf({ id: "t", kind: "table", role: "cake", from: { stock: "long" }, shape: { width: 1829, depth: 762 }, at: table })]),
).map((f) => f.code);

describe("IBC 2018 1005.7.1 and 1010.1: nothing in a door's swing or its approach", () => {
  it("finds a table 10 mm into the swing of a leaf, and not one 10 mm out", () => {
    // A leaf of 1000 mm swings 1000 mm in; the table's half depth is 381 mm.
    expect(codes(door({}), [8500, 1000 + 381 - 10])).toEqual(["door-clear"]);
    expect(codes(door({}), [8500, 1000 + 381 + 10])).toEqual([]);
  });

  it("takes half the width for two leaves, never under 900 mm", () => {
    const pair = door({ to: [10000, 0] });
    expect(codes(pair, [9000, 1000 + 381 - 10])).toEqual(["door-clear"]);
    expect(codes(pair, [9000, 1000 + 381 + 10])).toEqual([]);
    expect(codes(door({ to: [9500, 0] }), [8700, 900 + 381 - 10])).toEqual(["door-clear"]);
    expect(codes(door({ to: [9500, 0] }), [8700, 900 + 381 + 10])).toEqual([]);
  });

  it("keeps 900 mm inside a door that swings out and is no exit, and a leaf's depth inside an exit", () => {
    expect(codes(door({ swing: "out" }), [8500, 900 + 381 + 10])).toEqual([]);
    expect(codes(door({ swing: "out", exit: true }), [8500, 900 + 381 + 10])).toEqual(["door-clear"]);
  });
});
