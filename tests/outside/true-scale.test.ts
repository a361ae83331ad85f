import { beforeAll, describe, expect, test } from "vitest";
import type { Drawing } from "@/lib/drawing/display";
import { proposalPaper } from "@/lib/papers";
import { printPaper } from "@/lib/print/print";
import { qrModules } from "@/lib/print/qr";
import { lacks, widthOf } from "@/lib/print/runs";
import { input, plan } from "../unit/papers/fixture";
import { extent, open, shapesOf } from "../unit/print/read";

// The drawing is 1:100: 10 mm of paper a metre. Points are 72 to the inch of 25.4 mm.
const points = (mm: number): number => (mm * 72) / 25.4;
const drawing: Drawing = plan();
const MEAL_PAGE = 4;

describe("true scale: 1 in = 72 pt (ISO 32000-1, 8.3.2.3)", () => {
  let bytes = new Uint8Array();
  let shapes: readonly ReturnType<typeof extent>[] = [];
  beforeAll(async () => {
    const paper = proposalPaper(input(), { measure: widthOf, sheet: () => drawing, small: () => drawing, qr: qrModules, lacks });
    bytes = new Uint8Array((await printPaper(paper, { colours: () => "#000000", now: new Date("2027-05-09T12:00:00Z") })).bytes);
    shapes = (await shapesOf(bytes, MEAL_PAGE)).map(extent);
  });
  const find = (width: number, height: number) =>
    shapes.find((s) => Math.abs(s.right - s.left - width) < 0.1 && Math.abs(s.top - s.bottom - height) < 0.1);

  test("the hall of 12.00 by 8.00 m measures 120 by 80 mm, 40 mm from the left and upper edge", () => {
    const hall = find(points(12_000 / 100), points(8_000 / 100));
    expect(hall).toBeDefined();
    expect(hall?.left).toBeCloseTo(points(40), 1);
    expect(hall?.top).toBeCloseTo(points(210 - 40), 1);
  });
  test("a round of 1.68 m measures 16.8 mm across and stands 2.00 m from both walls", () => {
    const table = find(points(1_680 / 100), points(1_680 / 100));
    expect(table).toBeDefined();
    expect(((table?.left ?? 0) + (table?.right ?? 0)) / 2).toBeCloseTo(points(40 + 2_000 / 100), 1);
  });
  test("the scale bar of 4 m measures 40 mm", () => {
    expect(find(points(4_000 / 100), points(1.5))).toBeDefined();
  });
  test("the page is A4, 297 by 210 mm (ISO 216)", async () => {
    const [, , width, height] = (await (await open(bytes)).getPage(MEAL_PAGE)).view;
    expect(width).toBeCloseTo(points(297), 2);
    expect(height).toBeCloseTo(points(210), 2);
  });
  test("a venue in the United States has Letter, 11 by 8.5 in (ANSI/ASME Y14.1, size A)", async () => {
    const base = input();
    const paper = proposalPaper({ ...base, venue: { ...base.venue, locale: "en-US" } }, { measure: widthOf, sheet: () => drawing, small: () => drawing, qr: qrModules, lacks });
    const printed = await printPaper(paper, { colours: () => "#000000", now: new Date("2027-05-09T12:00:00Z") });
    const [, , width, height] = (await (await open(printed.bytes)).getPage(1)).view;
    expect([width, height]).toEqual([11 * 72, 8.5 * 72]);
  });
});
