import type { Mark } from "../../drawing/display";
import { CAUTIONS } from "../../words/cautions";
import { heading, type Setting } from "../blocks";
import { content, element, type Content, type Element } from "../document";
import { flowThrough, type Flow, type Region } from "../flow";
import { frame, INNER, type Sheet, type StripCell } from "../frame";
import { shorten, wrapEvenly } from "../lines";
import { baseline, box, rule, words, type Measure } from "../type";
import { CARRIED } from "./style";

/** Less margin than a proposal has: the paper is for the plan. */
export const EDGE = 13;
const STRIP = { height: 12.4, inset: 3.6, pad: 2.6 } as const;
/** Room for the strip, and for the cautions beside it: three lines on A4, four on the narrower Letter. */
const footHeight = (sheet: Sheet): number => (sheet.width > 290 ? 14.5 : 19.2);

export type Setup = { readonly sheet: Sheet; readonly measure: Measure };

/** Where a page's matter may stand: above the title strip and the cautions. */
export const bodyOf = (page: number, sheet: Sheet): Region =>
  ({ page, x: EDGE, y: EDGE, width: sheet.width - 2 * EDGE, height: sheet.height - INNER - STRIP.inset - footHeight(sheet) - 3 - EDGE });

/** One part of the sheets: its pages are counted from `from`. */
export type Part = { readonly title: string; readonly from: number; readonly pages: number; readonly elements: readonly Element[]; readonly artifacts: readonly Content[] };

export type Desk = Setting & { readonly artifacts: Content[] };

/** Columns from page to page: `first` on the first page, whole columns of equal width on those that follow. */
export function columns(from: number, { sheet, measure }: Setup, by: { readonly first: readonly Region[]; readonly count: number }): Desk {
  const flow: Flow = flowThrough((n) => {
    const given = by.first[n];
    if (given) return given;
    const k = n - by.first.length;
    const whole = bodyOf(from + (by.first.length > 0 ? 1 : 0) + Math.floor(k / by.count), sheet);
    const gutter = 9, width = (whole.width - gutter * (by.count - 1)) / by.count;
    return { ...whole, width, x: whole.x + (k % by.count) * (width + gutter) };
  });
  return { flow, measure, artifacts: [] };
}

/** The name of a sheet at the head of its page, with what it is about beside it. */
export function headOf(page: number, said: { readonly title: string; readonly beside: string }, { sheet, measure }: Setup): Element {
  const s = CARRIED.title, b = CARRIED.body;
  const y = baseline(EDGE - 2, s);
  const x = EDGE + measure(said.title, s.font, s.size) + 5;
  const beside = shorten(said.beside, { style: b, width: sheet.width - EDGE - x, measure });
  return element("H2", [content(page, [words(said.title, [EDGE, y], s), ...(said.beside === "" ? [] : [words(beside, [x, y], b)])])]);
}

export const HEAD = 11.5;

/** A heading within a sheet. */
export const section = (text: string, to: Desk, keep = 18, tag: "H2" | "H3" = "H3"): Element => heading(text, CARRIED.section, { ...to, tag, keep });

/** The title strip at the foot, and the cautions beside it in words no smaller than the rest. */
export function footOf(sheet: Sheet, cells: readonly StripCell[], measure: Measure): readonly Mark[] {
  const { label, value, caution } = CARRIED;
  const sized = cells.map((cell) => {
    const text = shorten(cell.value, { style: value, width: cell.most, measure });
    return { label: cell.label, text, width: Math.max(measure(text, value.font, value.size), measure(cell.label, label.font, label.size)) + 2 * STRIP.pad };
  });
  const width = sized.reduce((sum, c) => sum + c.width, 0);
  const y = sheet.height - INNER - STRIP.inset - STRIP.height;
  let x = sheet.width - INNER - STRIP.inset - width;
  const left = x;
  const marks: Mark[] = [...frame(sheet), box([left, y], { width, height: STRIP.height }, 0.25)];
  sized.forEach((cell, i) => {
    if (i > 0) marks.push(rule([x, y], [x, y + STRIP.height], 0.13));
    marks.push(words(cell.label, [x + STRIP.pad, baseline(y + 1.2, label)], label), words(cell.text, [x + STRIP.pad, baseline(y + 5.9, value)], value));
    x += cell.width;
  });
  const lines = wrapEvenly(CAUTIONS, { style: caution, width: left - EDGE - 6, measure });
  const top = y + STRIP.height - lines.length * caution.leading + 0.6;
  lines.forEach((line, i) => marks.push(words(line, [EDGE, baseline(top + i * caution.leading, caution)], caution)));
  return marks;
}
