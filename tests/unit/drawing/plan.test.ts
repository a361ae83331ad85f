import { describe, expect, it } from "vitest";
import { larkspur } from "../../../lib/demo/larkspur";
import { composePlan, toSvg, type Drawing } from "../../../lib/drawing";
import { polygonClearance } from "../../../lib/geometry";
import { along, layout, piece, round, scene, standing, venue } from "./kit";
import { corners, flat, texts } from "./marks";
import type { Layout } from "../../../lib/layout";
import type { Venue } from "../../../lib/venue";
import { mill, millCeremony, millMeal } from "./mill";

const titleBlock = {
  couple: "Ines Calloway and Theo Brandt", day: "Saturday 12 June 2027", package: "Hosted day", scene: "Meal", layoutTitle: "A, rounds about a spine",
  places: 92, revision: 3, fingerprint: "9f3c 71a0", sheet: "4 of 8",
};
const a4 = { width: 297, height: 210, legend: true, frame: true, titleBlock };
const letter = { ...a4, width: 279.4, height: 215.9 };

const barn = venue(larkspur);
const hall = "threshing-hall";
const barnMeal = layout("B, rounds in rows", [scene("meal", "Meal", [hall], [
  ...[0, 1, 2, 3].flatMap((c) => [2000, 6096, 10100].map((y, r) => round(`t${c * 3 + r + 1}`, c * 3 + r + 1, [4200 + c * 3300, y], { room: hall, diameter: 1524, stock: "round-5ft", places: 8 }))),
  piece({
    id: "farm", kind: "table", role: "dining", label: "Table 13", room: hall, from: { stock: "farm-8ft" }, shape: { width: 2438, depth: 1016 }, at: [16900, 6096], angle: 90,
    seats: along([16900, 6096], [2438, 1016], { angle: 90, places: 4, ends: 2 }),
  }),
  ...standing(barn, [hall]),
])]);

const meal = composePlan(mill, millMeal(), "meal", { sheet: a4 });
const all: readonly (readonly [string, Drawing])[] = [
  ["the mill's meal on A4", meal],
  ["the mill's ceremony on A4", composePlan(mill, millCeremony(), "ceremony", { sheet: a4 })],
  ["the barn on Letter", composePlan(barn, barnMeal, "meal", { sheet: letter })],
  ["the mill on a phone", composePlan(mill, millMeal(), "meal", { pixelWidth: 358 })],
  ["the hall on a phone", composePlan(mill, millMeal(), "meal", { pixelWidth: 358, rooms: ["grain-floor"] })],
  ["the barn on a phone", composePlan(barn, barnMeal, "meal", { pixelWidth: 358 })],
  ["the mill on a desk", composePlan(mill, millMeal(), "meal", { pixelWidth: 900 })],
];

describe("scale", () => {
  it("draws a room of 16.2 m as 162 mm at 1:100", () => {
    expect(meal.perMetre).toBe(10);
    const floors = flat(meal.marks).filter((m) => m.kind === "path" && m.fill === "floor" && m.stroke?.ink === "wall");
    const first = floors[0];
    const xs = first?.kind === "path" ? first.steps.flatMap((s) => (s.op === "Z" ? [] : [s.to[0]])) : [];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(162, 9);
    expect(Math.min(...xs)).toBeCloseTo(meal.origin[0], 9);
  });
  it("draws a bar of as many millimetres as it says metres", () => {
    const bar = texts(meal).find((t) => t.text === "4\u00a0m");
    const nought = texts(meal).find((t) => t.text === "0");
    expect(bar && nought && bar.at[0] - nought.at[0]).toBeCloseTo(4 * 10, 9);
    expect(texts(meal).some((t) => t.text.startsWith("Scale 1\u2009:\u2009100 on A4."))).toBe(true);
  });
  it("keeps to a scale that is asked for", () => {
    expect(composePlan(mill, millMeal(), "meal", { sheet: a4, scale: 200 }).perMetre).toBe(5);
  });
  it("takes the true scale of a table", () => {
    const d = composePlan(mill, millMeal(), "meal", { sheet: a4, scale: 125 });
    const group = flat(d.marks).find((m) => m.kind === "group" && m.id === "piece-table-1");
    const table = group?.kind === "group" ? group.marks.find((m) => m.kind === "path" && m.fill === "v-round") : undefined;
    const xs = table?.kind === "path" ? table.steps.flatMap((s) => (s.op === "Z" ? [] : [s.to[0]])) : [];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(1680 / 125, 6);
  });
});

describe("words on a plan", () => {
  it.each(all)("never cross one another: %s", (_, drawing) => {
    const list = texts(drawing).filter((t) => t.text.trim() !== "");
    const clashes: string[] = [];
    list.forEach((a, i) => list.slice(i + 1).forEach((b) => {
      if (polygonClearance(corners(a), corners(b)) < -0.05) clashes.push(`${a.text} / ${b.text}`);
    }));
    expect(clashes).toEqual([]);
  });
  it.each(all)("stay on the paper: %s", (_, drawing) => {
    for (const t of texts(drawing)) for (const [x, y] of corners(t)) {
      expect(x, t.text).toBeGreaterThan(0);
      expect(x, t.text).toBeLessThan(drawing.width);
      expect(y, t.text).toBeGreaterThan(0);
      expect(y, t.text).toBeLessThan(drawing.height);
    }
  });
  it("are never under 11 px on a page, nor under 2 mm on paper", () => {
    for (const [name, d] of all) {
      const least = Math.min(...texts(d).map((t) => t.size));
      expect(least, name).toBeGreaterThanOrEqual(name.includes("phone") || name.includes("desk") ? (11 * 25.4) / 96 : 2);
    }
  });
  it("write feet and inches in the barn and metres in the mill", () => {
    expect(texts(all[2]?.[1] ?? meal).map((t) => t.text)).toContain("64′");
    expect(texts(meal).map((t) => t.text)).toEqual(expect.arrayContaining(["16.20", "9.40", "1.96", "Grain Floor", "Way out", "Couple"]));
  });
  it("show the caution on every sheet, and not as the smallest words", () => {
    const list = texts(meal);
    const caution = list.find((t) => t.text.startsWith("Planning aid."));
    expect(caution?.size).toBeGreaterThan(Math.min(...list.map((t) => t.size)));
  });
});

describe("the plan told", () => {
  it("names each piece with its size, its places and its distances from two walls", () => {
    expect(meal.words).toContain("Grain Floor, 16.20\u00a0×\u00a09.40\u00a0m.");
    expect(meal.words).toContain("Table 3, round 1.68\u00a0m, 8 places; its middle 1.96\u00a0m from the left wall, 1.85\u00a0m from the upper wall.");
    expect(meal.words.some((w) => w.startsWith("Table 7,") && w.includes("1 for a wheelchair"))).toBe(true);
  });
  it("counts chairs in rows and lists no chair by itself", () => {
    const words = composePlan(mill, millCeremony(), "ceremony").words;
    expect(words).toContain("84 chairs in rows.");
    expect(words.filter((w) => w.startsWith("Chair,"))).toEqual([]);
  });
  it("labels every piece in the drawing, tables first by number", () => {
    const labels = flat(meal.marks).flatMap((m) => (m.kind === "group" && m.role === "piece" ? [m.label ?? ""] : []));
    expect(labels.slice(0, 3)).toEqual(["Table 1", "Table 2", "Table 3"].map((n) => `${n}, round 1.68\u00a0m, 8 places`));
  });
});

describe("size", () => {
  it("keeps a sheet under twelve thousand marks and 900 kB, a small plan under 60 kB", () => {
    for (const [name, d] of all) {
      const svg = toSvg(d, { theme: "light" });
      expect(flat(d.marks).length, name).toBeLessThan(12_000);
      expect(svg.length, name).toBeLessThan(name.includes("phone") ? 60_000 : 900_000);
    }
  });
  it("makes the same bytes twice", () => {
    expect(toSvg(composePlan(mill, millMeal(), "meal", { sheet: a4 }), { theme: "light" })).toBe(toSvg(meal, { theme: "light" }));
  });
});

describe("findings on a plan", () => {
  const found = { ...millMeal(), findings: [
    { code: "a", level: "note" as const, source: "common practice, no source", scene: "meal" as const, items: ["table-1"], text: "Near the door." },
    { code: "b", level: "must" as const, source: "common practice, no source", scene: "meal" as const, items: [], at: [8100, 4700] as const, text: "In the way out." },
    { code: "c", level: "must" as const, source: "common practice, no source", scene: "ceremony" as const, items: ["x"], text: "Elsewhere." },
  ] };
  it("are lettered by weight, drawn and told, those of other parts of the day left out", () => {
    const d = composePlan(mill, found, "meal", { sheet: a4, findings: true });
    expect(d.words.filter((w) => w.startsWith("Finding"))).toEqual(["Finding A, must: In the way out.", "Finding B, note: Near the door."]);
    expect(texts(d).filter((t) => t.text === "A" || t.text === "B")).toHaveLength(2);
  });
  it("are left out unless asked for", () => {
    expect(composePlan(mill, found, "meal", { sheet: a4 }).words.some((w) => w.startsWith("Finding"))).toBe(false);
  });
});

describe("rooms of any shape", () => {
  const bare = (outline: readonly (readonly [number, number])[], doors: Venue["rooms"][number]["doors"] = []): Venue => {
    const [first] = mill.rooms;
    if (!first) throw new Error("the mill has rooms");
    return { ...mill, drapes: [], rooms: [{ ...first, outline, doors, obstacles: [], windows: [], sockets: [], walls: [], standing: [] }] };
  };
  const tables = (...at: readonly (readonly [number, number])[]): Layout => layout("A", [scene("meal", "Meal", ["grain-floor"],
    at.map((p, i) => round(`t${i + 1}`, i + 1, p, { room: "grain-floor", diameter: 1680, stock: "round", places: 8 })))]);
  const cases: readonly (readonly [string, Venue, Layout])[] = [
    ["an L", bare([[0, 0], [14000, 0], [14000, 6000], [8000, 6000], [8000, 12000], [0, 12000]]), tables([3000, 3000], [3000, 9000], [11000, 3000])],
    ["a slanted wall", bare([[0, 0], [14000, 0], [14000, 9000], [3000, 11000], [0, 9000]]), tables([3000, 3000], [9000, 5000])],
    ["a room turned by 30 degrees", bare([[0, 0], [10392, 6000], [6392, 12928], [-4000, 6928]]), tables([2000, 4500], [4500, 8500])],
    ["a great hall", bare([[0, 0], [90000, 0], [90000, 60000], [0, 60000]]), tables([30000, 30000])],
    ["a cupboard", bare([[0, 0], [1500, 0], [1500, 1200], [0, 1200]]), layout("A", [scene("meal", "Meal", ["grain-floor"], [])])],
  ];
  it.each(cases)("are drawn on a sheet and on a phone: %s", (_, v, l) => {
    for (const options of [{ sheet: a4 }, { pixelWidth: 358 }]) {
      const d = composePlan(v, l, "meal", options);
      const list = texts(d);
      list.forEach((a, i) => list.slice(i + 1).forEach((b) => expect(polygonClearance(corners(a), corners(b)), `${a.text} / ${b.text}`).toBeGreaterThan(-0.05)));
      if ("sheet" in options) expect(list.some((t) => t.text.startsWith("Planning aid."))).toBe(true);
      expect(toSvg(d, { theme: "print" })).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
  it("keeps the cautions on a sheet whose scale was asked for and is too large", () => {
    const d = composePlan(mill, millMeal(), "meal", { sheet: a4, scale: 50 });
    expect(d.perMetre).toBe(20);
    expect(texts(d).some((t) => t.text.startsWith("Planning aid."))).toBe(true);
  });
});
