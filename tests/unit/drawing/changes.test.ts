import { describe, expect, it } from "vitest";
import { changesOf, compare, toSvg } from "../../../lib/drawing";
import type { Item, Layout } from "../../../lib/layout";
import { round } from "./kit";
import { texts } from "./marks";
import { mill, millCeremony, millMeal } from "./mill";

const change = (layout: Layout, to: (items: readonly Item[]) => readonly Item[]): Layout =>
  ({ ...layout, scenes: layout.scenes.map((s) => ({ ...s, items: to(s.items) })) });
const moved = (id: string, dx: number, dy = 0) => (i: Item): Item => i.id !== id ? i
  : { ...i, at: [i.at[0] + dx, i.at[1] + dy], seats: i.seats.map((s) => ({ ...s, x: s.x + dx, y: s.y + dy })) };
const meal = (l: Layout) => { const [s] = l.scenes; if (!s) throw new Error("a meal"); return s; };
const told = (was: Layout, now: Layout): readonly string[] => changesOf(mill, meal(was), meal(now)).map((c) => `${c.number} ${c.kind}: ${c.text}`);

describe("what changed between two revisions", () => {
  it("is nothing where nothing did", () => {
    expect(told(millMeal(), millMeal())).toEqual([]);
  });
  it("says how far a table moved, and which way on the plan", () => {
    expect(told(millMeal(), change(millMeal(), (l) => l.map(moved("table-7", 600, -250)))))
      .toEqual(["1 moved: Table 7 stands 0.60\u00a0m further right and 0.25\u00a0m further up on the plan."]);
  });
  it("pairs pieces of one sort nearest first when their ids are new", () => {
    const now = change(millMeal(), (l) => l.map((i) => (i.id === "terrace-0" ? { ...moved("terrace-0", 300)(i), id: "terrace-9" } : i)));
    expect(told(millMeal(), now)).toEqual(["1 moved: High table stands 0.30\u00a0m further right on the plan."]);
  });
  it("numbers what moved first, then what is laid anew, what is new and what is gone", () => {
    const now = change(millMeal(), (l) => [
      ...l.filter((i) => i.id !== "plan").map(moved("table-7", 600)).map((i) => (i.id === "table-1" ? { ...i, seats: i.seats.slice(1) } : i)),
      round("table-10", 10, [15000, 7550], { room: "grain-floor", diameter: 1680, stock: "round", places: 8 }),
    ]);
    expect(told(millMeal(), now)).toEqual([
      "1 moved: Table 7 stands 0.60\u00a0m further right on the plan.",
      "2 laid: Table 1 has 7 places, no longer 8.",
      "3 added: Table 10, round 1.68\u00a0m, 8 places, is new in the Grain Floor.",
      "4 removed: Seating plan, 0.62\u00a0×\u00a00.42\u00a0m, is taken out of the Grain Floor.",
    ]);
  });
  it("counts chairs in rows and does not list them", () => {
    const now = change(millCeremony(), (l) => l.filter((i) => !i.id.startsWith("chair-6-")));
    expect(changesOf(mill, meal(millCeremony()), meal(now)).map((c) => c.text)).toEqual(["14 chairs of the rows in the Grain Floor are taken out."]);
  });
});

describe("was and now on one plan", () => {
  const now = change(millMeal(), (l) => [
    ...l.filter((i) => i.id !== "plan").map(moved("table-7", 600)),
    round("table-10", 10, [15000, 7550], { room: "grain-floor", diameter: 1680, stock: "round", places: 8 }),
  ]);
  const { drawing, changes } = compare(mill, { was: millMeal(), now }, "meal", { pixelWidth: 900 });
  it("bears the number of every change, told apart by more than colour", () => {
    const seen = texts(drawing).map((t) => t.text);
    expect(changes.map((c) => c.kind)).toEqual(["moved", "added", "removed"]);
    expect(seen).toEqual(expect.arrayContaining(["1", "+2", "\u22123"]));
  });
  it("is a layer that a page can hide, read out change by change", () => {
    const svg = toSvg(drawing, { theme: "css" });
    expect(svg).toContain('<g id="plan-changes" data-layer="changes">');
    expect(svg).toContain('aria-label="Change 1: Table 7 stands 0.60\u00a0m further right on the plan."');
    expect(drawing.words.filter((w) => w.startsWith("Change "))).toHaveLength(3);
  });
  it("draws no change where the earlier layout lacks the part of the day, but says that all is new", () => {
    const c = compare(mill, { was: { scenes: [] }, now: millMeal() }, "meal");
    expect(c.changes.every((x) => x.kind === "added")).toBe(true);
  });
});

describe("joined tables", () => {
  it("are one table: their places are counted together", () => {
    const now = change(millMeal(), (l) => l.map((i) => (i.id === "table-8a" ? { ...i, seats: i.seats.slice(1) } : i)));
    const before = 2 * (4 + 4 + 1);
    expect(told(millMeal(), now)).toEqual([`1 laid: Table 8 has ${before - 1} places, no longer ${before}.`]);
  });
});
