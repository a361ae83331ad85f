import type { Ink, Mark, Paper } from "../drawing/display";
import type { Font } from "../drawing/pdf";

/** Width of a text as printed, in the unit of `size`. Given by the printer, which knows the faces. */
export type Measure = (text: string, font: Font, size: number) => number;

/** A way of setting words; sizes in millimetres of paper. */
export type Style = { readonly font: Font; readonly size: number; readonly leading: number; readonly ink: Ink };

const font = (face: Font["face"], weight: Font["weight"] = "regular", italic = false): Font => ({ face, weight, italic });
const style = (f: Font, size: number, leading: number, ink: Ink = "ink"): Style => ({ font: f, size, leading, ink });

export const STYLES = {
  section: style(font("serif"), 8, 10),
  part: style(font("serif", "medium"), 5.2, 7),
  lead: style(font("serif"), 5.2, 6.9),
  venue: style(font("serif"), 5.4, 7),
  day: style(font("serif"), 6, 8),
  body: style(font("sans"), 3.7, 5.2),
  strong: style(font("sans", "bold"), 3.7, 5.2),
  second: style(font("sans"), 3.2, 4.5, "ink-2"),
  caution: style(font("sans"), 3.2, 4.5, "ink-2"),
  columnHead: style(font("sans"), 3.2, 4.5, "ink-2"),
  total: style(font("sans", "bold"), 4.6, 6.4),
  stripLabel: style(font("sans"), 2.7, 3.6, "ink-2"),
  stripValue: style(font("serif"), 3.7, 5),
} as const satisfies Record<string, Style>;

/** Baseline of a line whose box starts at `top`: the capitals stand in the middle of the box. */
export const baseline = (top: number, s: Style): number => top + (s.leading + 0.69 * s.size) / 2;

export function words(text: string, at: Paper, s: Style, anchor: "start" | "middle" | "end" = "start"): Mark {
  return { kind: "text", at, text, size: s.size, face: s.font.face, weight: s.font.weight, italic: s.font.italic, anchor, ink: s.ink };
}

export const rule = (from: Paper, to: Paper, weight = 0.13, ink: Ink = "ink"): Mark =>
  ({ kind: "path", steps: [{ op: "M", to: from }, { op: "L", to }], stroke: { ink, weight } });

export function box(at: Paper, size: { readonly width: number; readonly height: number }, weight: number): Mark {
  const [x, y] = at;
  return {
    kind: "path", stroke: { ink: "ink", weight },
    steps: [
      { op: "M", to: [x, y] }, { op: "L", to: [x + size.width, y] }, { op: "L", to: [x + size.width, y + size.height] },
      { op: "L", to: [x, y + size.height] }, { op: "Z" },
    ],
  };
}
