import { beforeAll, describe, expect, test } from "vitest";
import { printProposal } from "@/lib/print";
import { input, venue } from "../unit/papers/fixture";
import { extent, open, shapesOf } from "../unit/print/read";

/** Points of paper: 72 to the inch of 25.4 mm (ISO 32000-1, 8.3.2.3). */
const points = (mm: number): number => (mm * 72) / 25.4;
const now = new Date("2027-05-09T12:00:00Z");
const MEAL_PAGE = 4;

async function mealSheet(locale: string) {
  const base = input();
  const { bytes } = await printProposal({ ...base, venue: venue({ locale }), meta: { ...base.meta, now } });
  const page = await (await open(bytes)).getPage(MEAL_PAGE);
  const text = (await page.getTextContent()).items.map((i) => ("str" in i ? i.str : "")).join(" ").replace(/\s+/g, " ");
  const ratio = Number(/Scale 1 ?: ?(\d+)/.exec(text)?.[1]);
  const shapes = (await shapesOf(bytes, MEAL_PAGE)).map(extent);
  const find = (width: number, height: number) =>
    shapes.filter((s) => Math.abs(s.right - s.left - width) < 0.1 && Math.abs(s.top - s.bottom - height) < 0.1);
  return { ratio, text, shapes, find, size: page.view.slice(2) };
}

describe.each([["en-GB"], ["en-US"]])("a plan in the proposal of a venue in %s is true when measured (ISO 32000-1: 1 in = 72 pt)", (locale) => {
  let sheet: Awaited<ReturnType<typeof mealSheet>>;
  beforeAll(async () => { sheet = await mealSheet(locale); });

  test("names its scale", () => {
    expect(sheet.ratio).toBeGreaterThanOrEqual(50);
  });
  test("the hall of 12.00 by 8.00 m", () => {
    expect(sheet.find(points(12_000 / sheet.ratio), points(8_000 / sheet.ratio)).length).toBeGreaterThan(0);
  });
  test("table 2, a round of 1.68 m, and where it stands: 6.00 m from the west wall and 2.00 m from the north", () => {
    const hall = sheet.find(points(12_000 / sheet.ratio), points(8_000 / sheet.ratio))[0];
    const middles = sheet.find(points(1_680 / sheet.ratio), points(1_680 / sheet.ratio))
      .map((s) => [(s.left + s.right) / 2 - (hall?.left ?? 0), (hall?.top ?? 0) - (s.top + s.bottom) / 2] as const);
    const [x, y] = [points(6_000 / sheet.ratio), points(2_000 / sheet.ratio)];
    expect(middles.some((m) => Math.abs(m[0] - x) < 0.1 && Math.abs(m[1] - y) < 0.1)).toBe(true);
  });
  test("the scale bar, by the figure at its end", () => {
    const metres = Number(/(\d+) m(?![a-z])/.exec(sheet.text.slice(sheet.text.search(/Scale 1/)))?.[1]);
    expect(metres).toBeGreaterThan(0);
    const length = points((metres * 1_000) / sheet.ratio);
    const bars = sheet.shapes.filter((s) => s.top - s.bottom > points(0.5) && s.top - s.bottom < points(4) && Math.abs(s.right - s.left - length) < 0.1);
    expect(bars.length).toBeGreaterThan(0);
  });
});

test("the paper is A4, 297 by 210 mm (ISO 216), and in the United States Letter, 11 by 8.5 in (ANSI/ASME Y14.1, size A, from memory, unconfirmed)", async () => {
  const [width = 0, height = 0] = (await mealSheet("en-GB")).size;
  expect(width).toBeCloseTo(points(297), 2);
  expect(height).toBeCloseTo(points(210), 2);
  expect((await mealSheet("en-US")).size).toEqual([11 * 72, 8.5 * 72]);
});
