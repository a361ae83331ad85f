import type { Font } from "../../drawing/pdf";
import type { Style } from "../type";

const font = (face: Font["face"], weight: Font["weight"] = "regular"): Font => ({ face, weight, italic: false });
const style = (f: Font, size: number, leading: number): Style => ({ font: f, size, leading, ink: "ink" });

/** How the day sheets are set: read at arm's length, in bad light, in grey. Nothing under 3.5 mm; all in full ink but the captions. */
export const CARRIED = {
  title: style(font("serif", "medium"), 9, 11),
  section: style(font("serif", "medium"), 6, 7.6),
  part: style(font("sans", "bold"), 4.4, 6),
  body: style(font("sans"), 3.9, 5.2),
  strong: style(font("sans", "bold"), 3.9, 5.2),
  second: style(font("sans"), 3.6, 4.6),
  spot: style(font("sans"), 3.7, 4.8),
  spotName: style(font("sans", "bold"), 3.7, 4.8),
  count: style(font("serif", "medium"), 5.6, 6.2),
  figure: style(font("serif", "medium"), 4.4, 5.5),
  head: { ...style(font("sans"), 3.6, 4.9), ink: "ink-2" },
  label: { ...style(font("sans"), 3.5, 4.2), ink: "ink-2" },
  value: style(font("serif"), 4.2, 5.4),
  caution: style(font("sans"), 3.6, 4.7),
} as const satisfies Record<string, Style>;
