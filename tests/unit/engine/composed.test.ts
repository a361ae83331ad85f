import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefSchema, type Brief } from "../../../lib/brief";
import { arrange } from "../../../lib/engine";
import type { Item, Layout } from "../../../lib/layout";
import { check } from "../../../lib/rules";
import { venueSchema, type Venue } from "../../../lib/venue";
import { hallFor } from "../../bench/weddings";

const fixture = (kind: "venues" | "briefs", name: string): unknown => JSON.parse(readFileSync(new URL(`../../fixtures/${kind}/${name}.json`, import.meta.url), "utf8"));
const brief = (adults: number, meal: object, more: object = {}): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: "hire", date: "2027-06-12", guests: { adults }, meal, music: { by: "dj", dancing: 0.35 }, displays: ["cake"], ...more,
});
function mealOf(venue: Venue, b: Brief): { readonly layout: Layout; readonly items: readonly Item[] } {
  const layout = arrange(venue, b, { layouts: 1, instead: false }).layouts[0];
  if (!layout) throw new Error("not arranged");
  expect(check(venue, layout, b).filter((f) => f.level === "must")).toEqual([]);
  return { layout, items: layout.scenes.find((s) => s.id === "meal")?.items ?? [] };
}
const dining = (items: readonly Item[]): readonly Item[] => items.filter((i) => i.role === "dining");
const xs = (items: readonly Item[]): readonly number[] => items.map((i) => i.at[0]);
const widthOf = (v: Venue): number => Math.max(...(v.rooms[0]?.outline ?? []).map((p) => p[0]));

describe("a meal that looks composed", () => {
  // 200 guests' hall for 40 and for 90: floor enough that nothing but looks decides.
  const hall = hallFor(200), middle = widthOf(hall) / 2;

  it("has its horseshoe true to the middle of the hall, no lane pushing it aside", () => {
    const { items } = mealOf(hall, brief(40, { service: "buffet", tables: "long", form: "u" })), all = xs(dining(items));
    expect(Math.abs((Math.min(...all) + Math.max(...all)) / 2 - middle)).toBeLessThanOrEqual(30);
  });

  it("has the dance floor on the line on which the couple look, and off their table", () => {
    const { items } = mealOf(hall, brief(90, { service: "buffet", tables: "rounds" }));
    const top = items.find((i) => i.role === "top"), floor = items.find((i) => i.kind === "dance-floor");
    if (!top || !floor || "diameter" in floor.shape || "diameter" in top.shape) throw new Error("no floor before a top table");
    const angle = (top.angle * Math.PI) / 180, [dx, dy] = [floor.at[0] - top.at[0], floor.at[1] - top.at[1]];
    expect(Math.abs(dx * Math.cos(angle) + dy * Math.sin(angle))).toBeLessThanOrEqual(60);
    expect(Math.hypot(dx, dy) - (Math.min(floor.shape.depth, floor.shape.width) + top.shape.depth) / 2).toBeGreaterThanOrEqual(450);
  });

  it("has every table's image on the other side of a hall that is even", () => {
    const { items } = mealOf(hall, brief(90, { service: "buffet", tables: "rounds" })), tables = dining(items);
    const top = items.find((i) => i.role === "top");
    if (!top) throw new Error("no top table");
    const across = top.angle % 180 === 0 ? 0 : 1;
    const image = (t: Item): readonly [number, number] => (across === 0 ? [2 * top.at[0] - t.at[0], t.at[1]] : [t.at[0], 2 * top.at[1] - t.at[1]]);
    expect(tables.filter((t) => !tables.some((o) => Math.hypot(o.at[0] - image(t)[0], o.at[1] - image(t)[1]) < 30))).toEqual([]);
  });

  it("seats the couple where a room in the shape of a T is even on both sides of them", () => {
    const t = venueSchema.parse({ ...hall, rooms: hall.rooms.map((r) => ({
      ...r, outline: [[0, 0], [24_000, 0], [24_000, 8_000], [16_500, 8_000], [16_500, 17_000], [7_500, 17_000], [7_500, 8_000], [0, 8_000]],
      doors: r.doors.filter((d) => d.id !== "south").map((d) => ({ ...d, from: [d.id === "west" ? 0 : 24_000, 3_000], to: [d.id === "west" ? 0 : 24_000, 4_800] })),
    })) });
    const { items } = mealOf(t, brief(100, { service: "buffet", tables: "rounds" }));
    expect(items.find((i) => i.role === "top")?.at[0]).toBe((7_500 + 16_500) / 2);
  });

  it("is laid in one grid of two sizes where neither is owned in number enough", () => {
    const few = venueSchema.parse({ ...hall, stock: [...hall.stock.map((s) => (s.id === "long" ? { ...s, count: 5 } : s)), {
      id: "broad", name: "Broad", kind: "table", shape: { width: 2_400, depth: 950 }, height: 740, count: 5, seats: { comfort: 8, most: 10 }, ends: true,
    }] });
    const { items } = mealOf(few, brief(66, { tables: "long" })), tables = dining(items);
    const of = (id: string): readonly Item[] => tables.filter((i) => "stock" in i.from && i.from.stock === id);
    // Five broad ones of eight, and the rest of the 64 beside the couple at four of six.
    expect([of("broad").length, of("long").length]).toEqual([5, 4]);
    // Nine tables on three rows or columns.
    const lines = (k: 0 | 1): number => new Set(tables.map((i) => i.at[k])).size;
    expect(Math.min(lines(0), lines(1))).toBeLessThanOrEqual(4);
  });
});

describe("joined tables among columns", () => {
  const columns = venueSchema.parse(fixture("venues", "columns"));
  it.each([["u", 40, "A horseshoe"], ["e", 60, "A comb of tables"]] as const)("stand as a form of %s for %i with their legs between the columns", (form, adults, title) => {
    const { layout, items } = mealOf(columns, brief(adults, { tables: "long", form }, { music: { by: "playlist" } }));
    expect(layout.title).toContain(title);
    expect(items.reduce((n, i) => n + i.seats.length, 0)).toBe(adults);
    // One run: the parts share their number.
    expect(new Set(dining(items).map((i) => i.label)).size).toBe(1);
  });
});
