import type { Mark } from "../drawing/display";
import { CAUTIONS } from "../words/cautions";
import { shorten, wrapEvenly } from "./lines";
import type { Region } from "./flow";
import { baseline, box, rule, STYLES, words, type Measure } from "./type";

export type Sheet = { readonly width: number; readonly height: number };
export const A4: Sheet = { width: 297, height: 210 };
/** 11 x 8.5 in. */
export const LETTER: Sheet = { width: 279.4, height: 215.9 };

/** Letter where it is the office's paper; CLDR gives these regions US-Letter (supplemental data, paperSize). */
const LETTER_REGIONS = new Set(["US", "CA", "MX", "CL", "CO", "CR", "GT", "NI", "PA", "PH", "PR", "SV", "VE", "BZ"]);

export function sheetFor(locale: string): Sheet {
  const region = new Intl.Locale(locale).maximize().region;
  return region !== undefined && LETTER_REGIONS.has(region) ? LETTER : A4;
}

const OUTER = 7;
export const INNER = 8.4;
export const MARGIN = 19;
export const TOP = 19;
const STRIP = { height: 12.6, inset: 4.2, pad: 3 } as const;

/** The double frame that drawings and their papers wear: a firm line and a fine one inside it. */
export function frame(sheet: Sheet): readonly Mark[] {
  return [
    box([OUTER, OUTER], { width: sheet.width - 2 * OUTER, height: sheet.height - 2 * OUTER }, 0.5),
    box([INNER, INNER], { width: sheet.width - 2 * INNER, height: sheet.height - 2 * INNER }, 0.13),
  ];
}

export const stripTop = (sheet: Sheet): number => sheet.height - INNER - STRIP.inset - STRIP.height;

/** Where a page's matter may stand: above the title strip. */
export const bodyRegion = (page: number, sheet: Sheet): Region =>
  ({ page, x: MARGIN, y: TOP, width: sheet.width - 2 * MARGIN, height: stripTop(sheet) - 7 - TOP });

/** Two columns of a page: the first takes `share` of what is left beside the gutter. */
export function columnsOf(whole: Region, share: number, gutter: number): readonly [Region, Region] {
  const first = (whole.width - gutter) * share;
  return [{ ...whole, width: first }, { ...whole, x: whole.x + first + gutter, width: whole.width - gutter - first }];
}

/** The nth of so many equal columns, counted on through the pages that follow `from`. */
export function nthColumn(n: number, by: { readonly from: number; readonly columns: number; readonly gutter: number; readonly sheet: Sheet }): Region {
  const whole = bodyRegion(by.from + Math.floor(n / by.columns), by.sheet);
  const width = (whole.width - by.gutter * (by.columns - 1)) / by.columns;
  return { ...whole, width, x: whole.x + (n % by.columns) * (width + by.gutter) };
}

export type StripCell = { readonly label: string; readonly value: string; readonly most: number };

/** The title strip at the foot of a page, and the cautions beside it. The same words stand in full in the tree elsewhere. */
export function foot(sheet: Sheet, cells: readonly StripCell[], { measure, cautions = CAUTIONS }: { readonly measure: Measure; /** In the paper's language. */ readonly cautions?: string }): readonly Mark[] {
  const { stripLabel, stripValue, caution } = STYLES;
  const sized = cells.map((cell) => {
    const value = shorten(cell.value, { style: stripValue, width: cell.most, measure });
    const inner = Math.max(measure(value, stripValue.font, stripValue.size), measure(cell.label, stripLabel.font, stripLabel.size));
    return { ...cell, value, width: inner + 2 * STRIP.pad };
  });
  const width = sized.reduce((sum, c) => sum + c.width, 0);
  const y = stripTop(sheet);
  const left = sheet.width - INNER - STRIP.inset - width;
  const marks: Mark[] = [box([left, y], { width, height: STRIP.height }, 0.25)];
  let x = left;
  sized.forEach((cell, i) => {
    if (i > 0) marks.push(rule([x, y], [x, y + STRIP.height], 0.13));
    marks.push(words(cell.label, [x + STRIP.pad, baseline(y + 1.6, stripLabel)], stripLabel));
    marks.push(words(cell.value, [x + STRIP.pad, baseline(y + 5.9, stripValue)], stripValue));
    x += cell.width;
  });
  const lines = wrapEvenly(cautions, { style: caution, width: left - MARGIN - 8, measure });
  // The last line stands level with the strip's lower edge.
  const top = y + STRIP.height - lines.length * caution.leading + 0.6;
  lines.forEach((line, i) => marks.push(words(line, [MARGIN, baseline(top + i * caution.leading, caution)], caution)));
  return marks;
}
