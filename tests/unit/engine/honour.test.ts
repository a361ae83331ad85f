import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../lib/brief";
import { arrange } from "../../../lib/engine";
import { honoured } from "../../../lib/engine/stages/honour";
import type { Item, Scene } from "../../../lib/layout";
import { hallFor } from "../../bench/weddings";

const hall = hallFor(200);
const round = (n: number, x: number, y: number): Item => ({
  id: `t${n}`, kind: "table", role: "dining", label: `Table ${n}`, room: "hall", from: { stock: "round" }, shape: { diameter: 1_800 }, at: [x, y], angle: 0,
  // Two guests, who look up the page at the couple.
  seats: [-300, 300].map((dx) => ({ x: x + dx, y: y + 1_100, facing: 270, place: "chair" as const })),
});
const top: Item = { id: "top", kind: "table", role: "top", label: "Couple", room: "hall", from: { stock: "small" }, shape: { width: 1_220, depth: 760 }, at: [10_000, 1_500], angle: 0, seats: [] };
const meal = (...tables: readonly Item[]): Scene => ({ id: "meal", title: "Meal", seats: 0, rooms: ["hall"], drapes: [], items: [top, ...tables], numbers: [] });

describe("tables for two families", () => {
  it("are two that stand equally near the couple, though one alone stands nearer", () => {
    const found = honoured({ venue: hall }, meal(round(1, 10_000, 5_000), round(2, 6_500, 5_200), round(3, 13_500, 5_200)));
    expect(found?.alike).toBe(true);
    expect(found?.tables.map((t) => t.number)).toEqual([2, 3]);
    // 3500 along and 3700 down from the couple; to the corner of a table of 1220 x 760, less the round's half.
    expect(found?.tables[0].apart).toBe(Math.round(Math.hypot(3_500 - 610, 3_700 - 380) - 900));
  });

  it("are named with the nearer first where no two are alike", () => {
    const found = honoured({ venue: hall }, meal(round(1, 10_000, 9_000), round(2, 10_000, 5_000)));
    expect(found?.alike).toBe(false);
    expect(found?.tables.map((t) => [t.number, t.apart])).toEqual([[2, 3_500 - 380 - 900], [1, 7_500 - 380 - 900]]);
  });

  it("are alike in what the engine lays in a hall that is even", () => {
    const brief = briefSchema.parse({ format: "marquetry.brief/1", package: "hire", date: "2027-06-12", guests: { adults: 90 }, meal: { service: "buffet", tables: "rounds", familyTables: 2 } });
    const layout = arrange(hall, brief, { layouts: 1, instead: false }).layouts[0], scene = layout?.scenes.find((s) => s.id === "meal");
    if (!layout || !scene) throw new Error("not arranged");
    const found = honoured({ venue: hall }, scene);
    expect(found?.alike).toBe(true);
    expect(layout.why).toContain(`Tables ${found?.tables.map((t) => t.number).join(" and ")} are alike in rank, one for each family: as near the couple, and with as many guests who face them.`);
  });

  it("are none without a table of the couple's own", () => {
    expect(honoured({ venue: hall }, { ...meal(round(1, 10_000, 5_000), round(2, 6_500, 5_000)), items: [round(1, 10_000, 5_000), round(2, 6_500, 5_000)] })).toBeNull();
  });
});
