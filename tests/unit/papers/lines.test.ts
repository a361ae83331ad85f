import { expect, it } from "vitest";
import { wrap } from "../../../lib/papers/lines";
import { STYLES, type Measure, type Style } from "../../../lib/papers/type";

const style: Style = { ...STYLES.lead, size: 1, leading: 1.4 };
/** One millimetre a letter. */
const measure: Measure = (text) => [...text].length;
const lines = (text: string, width: number): readonly string[] => wrap(text, { style, width, measure }).map((line) => line.trimEnd());

it("a line that begins with Arabic within a text from left to right keeps that text's direction, so that its bracket closes at its end (UAX 9)", () => {
  expect(lines("Yusra (يسرى الخطيب) and Omar", 13)).toEqual(["Yusra (يسرى", "\u200eالخطيب) and", "Omar"]);
});

it("a text that runs from right to left is left to its own direction, and one line alone as it is", () => {
  expect(lines("يسرى الخطيب", 6)).toEqual(["يسرى", "الخطيب"]);
  expect(lines("Yusra (يسرى)", 30)).toEqual(["Yusra (يسرى)"]);
});
