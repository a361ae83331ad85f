import { describe, expect, it } from "vitest";
import { numberTables } from "../../../../lib/engine/number";
import type { Item } from "../../../../lib/layout";

const round = (id: string, x: number, y: number): Item =>
  ({ id, kind: "table", role: "dining", label: "", room: "r", from: { stock: "s" }, shape: { diameter: 1500 }, at: [x, y], angle: 0, seats: [] });
const long = (id: string, x: number, y: number): Item =>
  ({ ...round(id, x, y), shape: { width: 1829, depth: 762 } });

describe("numberTables", () => {
  it("goes to and fro from the entrance", () => {
    const items = [round("a", 3000, 6000), round("b", 6000, 6000), round("c", 9000, 6000), round("d", 3000, 3000), round("e", 6000, 3000), round("f", 9000, 3000)];
    const { items: out, numbers } = numberTables(items, [2000, 9000]);
    expect(out.map((i) => i.id)).toEqual(["t1", "t2", "t3", "t6", "t5", "t4"]);
    expect(numbers).toEqual(["t1", "t2", "t3", "t4", "t5", "t6"]);
    expect(out[3]?.label).toBe("Table 6");
  });
  it("starts at the end nearer to the entrance", () => {
    const out = numberTables([round("a", 3000, 6000), round("b", 9000, 6000)], [9500, 9000]).items;
    expect(out.map((i) => i.id)).toEqual(["t2", "t1"]);
  });
  it("gives a joined run one number and leaves the top table and other pieces alone", () => {
    const top: Item = { ...long("top", 6000, 1000), role: "top" };
    const cake: Item = { ...round("cake", 1000, 1000), role: "cake" };
    const { items, numbers } = numberTables([long("a", 3000, 5000), top, long("b", 4829, 5000), cake, long("c", 9000, 5000)], [2000, 9000], { top });
    expect(items.map((i) => i.id)).toEqual(["t1", "top", "t1-b", "cake", "t2"]);
    expect(items[2]?.label).toBe("Table 1");
    expect(numbers).toEqual(["t1", "t2"]);
  });
  it("says nothing of a room without dining tables", () => {
    expect(numberTables([], [0, 0])).toEqual({ items: [], numbers: [] });
  });
});
