import type { Font } from "../drawing/pdf";
import { facesOf, type Face } from "./faces";

/** A stretch of text that one file prints. */
export type Run = { readonly face: Face; readonly text: string };
export type Shaped = { readonly runs: readonly Run[]; /** Letters that no face has, as they were written. */ readonly missing: readonly string[] };

/** What asks for no glyph of its own, and what would turn the line about: joiners, marks of direction, controls, variation selectors. */
const UNSEEN = /[\p{Cc}\u00AD\u061C\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF]|[\uFE00-\uFE0F]/gu;

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

const holds = (face: Face, text: string): boolean =>
  [...text].every((c) => face.font.hasGlyphForCodePoint(c.codePointAt(0) ?? 0));

const SCRIPT_NAMES = [
  "Hebrew", "Arabic", "Han", "Hiragana", "Katakana", "Hangul", "Devanagari", "Bengali", "Tamil", "Telugu", "Thai", "Georgian", "Armenian", "Ethiopic",
] as const;
const SCRIPTS = SCRIPT_NAMES.map((name) => ({ name, test: new RegExp(`\\p{Script=${name}}`, "u") }));

/** The script of a letter in words; "other signs" where it has none that we can name. */
export const scriptOf = (grapheme: string): string =>
  SCRIPTS.find((s) => s.test.test(grapheme))?.name ?? (/\p{L}/u.test(grapheme) ? "another script" : "other signs");

/**
 * Splits text into runs by which face holds its letters. Each letter with its marks stays whole. Where no face has it the
 * run says so in brackets, so that the paper never shows an empty box, and the letters are reported.
 */
export function shape(text: string, font: Font): Shaped {
  const faces = facesOf(font);
  const first = faces[0];
  if (first === undefined) return { runs: [], missing: [] };
  const runs: { face: Face; text: string }[] = [];
  const missing: string[] = [];
  let said = "";
  const push = (face: Face, piece: string): void => {
    const last = runs.at(-1);
    if (last?.face === face) last.text += piece;
    else runs.push({ face, text: piece });
  };
  for (const { segment } of graphemes.segment(text.normalize("NFC").replace(/\s+/gu, " "))) {
    const letter = segment.replace(UNSEEN, "");
    if (letter === "") continue;
    const current = runs.at(-1)?.face;
    const face = current && holds(current, letter) && letter !== " " ? current : faces.find((f) => holds(f, letter));
    if (face) {
      push(face, letter);
      if (letter !== " ") said = "";
      continue;
    }
    missing.push(letter);
    const script = scriptOf(letter);
    if (script !== said) push(first, `[${script}]`);
    said = script;
  }
  return { runs, missing };
}

/** The scripts of the letters in a text that cannot be printed, each once. */
export const lacks = (text: string): readonly string[] =>
  [...new Set(shape(text, { face: "serif", weight: "regular", italic: false }).missing.map(scriptOf))];

/** Tabular figures keep columns of numbers true; both families have them. */
export const FEATURES: readonly PDFKit.Mixins.OpenTypeFeatures[] = ["tnum"];

const widths = new Map<string, number>();
/** Only so many widths are remembered: a desk that prints all day must not grow without end. */
const REMEMBERED = 50_000;

function runWidth(run: Run): number {
  const key = `${run.face.key}\u0000${run.text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  if (widths.size >= REMEMBERED) widths.clear();
  const width = run.face.font.layout(run.text, [...FEATURES]).advanceWidth / run.face.font.unitsPerEm;
  widths.set(key, width);
  return width;
}

const wholes = new Map<string, number>();

/** Width of text in the unit that `size` is in. */
export function widthOf(text: string, font: Font, size: number): number {
  const key = `${font.face}${font.weight}${font.italic ? "i" : ""}\u0000${text}`;
  const known = wholes.get(key);
  if (known !== undefined) return known * size;
  if (wholes.size >= REMEMBERED) wholes.clear();
  const width = shape(text, font).runs.reduce((sum, run) => sum + runWidth(run), 0);
  wholes.set(key, width);
  return width * size;
}

export const runAdvance = (run: Run, size: number): number => runWidth(run) * size;
