import { describe, expect, it } from "vitest";
import { composePlan, toSvg } from "../../../lib/drawing";
import { waysOver } from "../../../lib/drawing/plan/routes";
import { flowsOf, sightsOf } from "../../../lib/drawing/plan/flows";
import { distance, union, type Point } from "../../../lib/geometry";
import type { Venue } from "../../../lib/venue";
import { layout, piece, round, scene } from "./kit";
import { flat, texts } from "./marks";
import { mill, millCeremony, millMeal } from "./mill";

const a4 = { width: 297, height: 210, legend: true, frame: true, titleBlock: { couple: "Ines Calloway and Theo Brandt" } };
const long = (points: readonly Point[]): number => points.reduce((n, p, i) => { const q = points[i + 1]; return q ? n + distance(p, q) : n; }, 0);

describe("ways over free floor", () => {
  const box = (x: number, y: number, w: number, d: number): readonly Point[] => [[x, y], [x + w, y], [x + w, y + d], [x, y + d]];
  it("are straight where nothing stands between", () => {
    const { ways, lengths } = waysOver(union([box(0, 0, 10_000, 3_000)]), { starts: [[500, 1_500]], goals: [[9_500, 1_500]], reach: 600 });
    expect(ways).toHaveLength(1);
    expect(ways[0]?.points).toHaveLength(2);
    expect(lengths[0]).toBeGreaterThan(9_000 - 2 * 150);
    expect(lengths[0]).toBeLessThan(9_000 + 2 * 150);
  });
  it("go about a corner, and no shorter than round it", () => {
    const ell = union([box(0, 0, 8_000, 2_000), box(0, 0, 2_000, 8_000)]);
    const { ways } = waysOver(ell, { starts: [[7_500, 1_500]], goals: [[1_500, 7_500]], reach: 300 });
    const straight = distance([7_500, 1_500], [2_000, 2_000]) + distance([2_000, 2_000], [1_500, 7_500]);
    expect(long(ways[0]?.points ?? [])).toBeGreaterThanOrEqual(straight - 2 * 150);
    expect(long(ways[0]?.points ?? [])).toBeLessThan(straight * 1.1);
  });
  it("go on as one where they meet, and find none through a wall", () => {
    const hall = union([box(0, 0, 10_000, 4_000)]);
    const joined = waysOver(hall, { starts: [[500, 1_950], [3_000, 1_950]], goals: [[9_500, 1_950]], reach: 300 });
    expect(joined.ways.filter((w) => w.arrives)).toHaveLength(1);
    const apart = waysOver(union([box(0, 0, 2_000, 2_000), box(5_000, 0, 2_000, 2_000)]), { starts: [[1_000, 1_000]], goals: [[6_000, 1_000]], reach: 300 });
    expect(apart).toEqual({ ways: [], lengths: [null] });
  });
});

describe("layers of lines", () => {
  const meal = millMeal().scenes[0], ceremony = millCeremony().scenes[0];
  if (!meal || !ceremony) throw new Error("both have their scene");
  it("lead from every table to a way out, and say how long the longest is", () => {
    const { ways, words } = flowsOf(mill, meal);
    expect(ways.some((w) => w.arrives)).toBe(true);
    expect(words[0]).toMatch(/^Ways out are drawn from \d+ of \d+ tables and rows; the longest, from .+, is about \d+\u00a0m\.$/);
  });
  it("say which tables something stands before: here a column midway between the couple and a table", () => {
    const [hall] = mill.rooms;
    if (!hall) throw new Error("a hall");
    const column: Point = [8_100, 4_000];
    const one: Venue = { ...mill, drapes: [], rooms: [{ ...hall, obstacles: [{ id: "c", kind: "column", outline: [[8_000, 3_900], [8_200, 3_900], [8_200, 4_100], [8_000, 4_100]] }] }] };
    const couple = piece({ id: "top", kind: "table", role: "top", label: "Couple", room: hall.id, at: [8_100, 1_500], shape: { width: 1220, depth: 760 }, seats: [{ x: 8100, y: 1000, facing: 90, place: "chair" }] });
    const tables = [round("t1", 1, [8_100, 2 * column[1] - 1_500], { room: hall.id, diameter: 1680, stock: "round", places: 8 }), round("t2", 2, [3_000, 3_000], { room: hall.id, diameter: 1680, stock: "round", places: 8 })];
    const { seen, hidden, words } = sightsOf(one, scene("meal", "Meal", [hall.id], [couple, ...tables]));
    expect([seen.length, hidden.length]).toEqual([1, 1]);
    expect(words).toEqual(["A straight line runs from the couple's table to 1 of 2 tables.", "Something stands before table 1."]);
  });
  it("are groups that a page can hide, told by their labels and in the words; none is drawn unasked", () => {
    const drawing = composePlan(mill, millMeal(), "meal", { sheet: a4, layers: ["ways", "sight"] });
    const svg = toSvg(drawing, { theme: "css" });
    expect(svg.match(/data-layer="(ways|sight)"/g)).toEqual(['data-layer="ways"', 'data-layer="sight"']);
    expect(drawing.words.some((w) => w.startsWith("Ways out are drawn from"))).toBe(true);
    expect(texts(drawing).map((t) => t.text)).toEqual(expect.arrayContaining(["Ways out", "Lines of sight"]));
    expect(toSvg(composePlan(mill, millMeal(), "meal", { sheet: a4 }), { theme: "css" })).not.toContain("data-layer");
  });
  it("count the chairs of the rows that see the arch", () => {
    expect(sightsOf(mill, ceremony).words[0]).toMatch(/^A straight line runs from the willow arch to \d+ of 84 chairs\.$/);
  });
});

describe("several levels in one drawing", () => {
  const [hall, wheel] = mill.rooms;
  if (!hall || !wheel) throw new Error("two rooms");
  const two: Venue = { ...mill, drapes: [], rooms: [{ ...hall, doors: [] }, { ...hall, id: "loft", name: "Loft", level: 1, doors: [] }] };
  const both = layout("A", [scene("meal", "Meal", [hall.id, "loft"], [hall.id, "loft"].map((room, i) => round(`t${i + 1}`, i + 1, [5_000, 4_000], { room, diameter: 1680, stock: "round", places: 8 })))]);
  it.each([["a sheet", { sheet: a4 }], ["a page", { pixelWidth: 640 }]] as const)("stand beside one another on %s, each by its name, at one scale", (_, options) => {
    const d = composePlan(two, both, "meal", options);
    expect(texts(d).map((t) => t.text)).toEqual(expect.arrayContaining(["Lower level", "Upper level", "1", "2"]));
    const middles = ["t1", "t2"].map((id) => {
      const group = flat(d.marks).find((m) => m.kind === "group" && m.id === `piece-${id}`);
      const table = group?.kind === "group" ? group.marks.find((m) => m.kind === "path" && m.fill === "v-round") : undefined;
      const steps = table?.kind === "path" ? table.steps.flatMap((s) => (s.op === "Z" ? [] : [s.to])) : [];
      return [0, 1].map((k) => (Math.min(...steps.map((p) => p[k] ?? 0)) + Math.max(...steps.map((p) => p[k] ?? 0))) / 2);
    });
    ["grain-floor", "loft"].forEach((room, i) => {
      const origin = d.origins?.[room];
      expect(origin && middles[i]?.[0]).toBeCloseTo((origin?.[0] ?? 0) + 5 * d.perMetre, 6);
      expect(origin && middles[i]?.[1]).toBeCloseTo((origin?.[1] ?? 0) + 4 * d.perMetre, 6);
    });
    expect(distance(d.origins?.["grain-floor"] ?? [0, 0], d.origins?.["loft"] ?? [0, 0])).toBeGreaterThan(9 * d.perMetre);
  });
  it("have one origin where all rooms are on one", () => {
    expect(composePlan(mill, millMeal(), "meal", { sheet: a4 }).origins).toBeUndefined();
  });
});

describe("joined tables", () => {
  const top = (id: string, x: number) => piece({ id, kind: "table", role: "dining", label: "Table 1", room: "grain-floor", from: { stock: "long" }, at: [x, 4000], shape: { width: 1830, depth: 760 }, seats: [{ x, y: 3500, facing: 90, place: "chair" }] });
  const run = { ...scene("meal", "Meal", ["grain-floor"], [top("t1", 4000), top("t1-b", 5830)]), numbers: ["t1"] };
  const d = composePlan(mill, layout("A", [run]), "meal", { sheet: a4 });
  it("bear one number in their middle, and no other word", () => {
    expect(texts(d).filter((t) => t.text === "1" && t.face === "serif")).toHaveLength(1);
    expect(texts(d).some((t) => t.text === "Table 1")).toBe(false);
  });
  it("are told part by part", () => {
    expect(d.words.filter((w) => w.startsWith("Table 1, part"))).toHaveLength(2);
  });
});
