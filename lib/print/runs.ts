import type { Font } from "../drawing/pdf";
import { faceFor, holds, type Face, type Han } from "./faces";
import { laidOut } from "./glyphs";
import { forShaper, inSight, levelsOf } from "./order";

/** A stretch of text that one file prints, as its shaper wants it. */
export type Run = {
  readonly face: Face; readonly text: string;
  /** The same as it is read, where its letters are re-ordered in print. */
  readonly read?: string;
};
export type Shaped = {
  /** In the order of the eye, from left to right. */
  readonly runs: readonly Run[];
  /** Letters that no face has, as they were written. */
  readonly missing: readonly string[];
  /** The words as they are read, where what is printed does not give them back letter by letter. */
  readonly read?: string;
};

/** What asks for no glyph of its own, and the older signs of direction, which would turn about what follows them. */
const UNSEEN = /[\p{Cc}\u00AD\u200B\u2060-\u2065\u202A-\u202E\u206A-\u206F\uFEFF]|[\uFE00-\uFE0F]/gu;
/** Marks and isolates of direction: the order of the letters heeds them, the eye does not see them. */
const MARKS = /[\u061C\u200E\u200F\u2066-\u2069]/gu;
/** Joiners: they shape the letters about them where a face knows them. */
const JOINERS = /[\u200C\u200D]/gu;
/** A script whose letters change places within a syllable: what is printed does not give them back one by one. */
const REORDERED = /\p{Script=Devanagari}/u;

/** Only so many words are remembered: a desk that prints all day must not grow without end. */
const REMEMBERED = 50_000;

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

const SCRIPT_NAMES = [
  "Hebrew", "Arabic", "Han", "Hiragana", "Katakana", "Hangul", "Devanagari", "Bengali", "Gurmukhi", "Gujarati", "Tamil", "Telugu", "Kannada", "Malayalam",
  "Sinhala", "Thai", "Lao", "Myanmar", "Khmer", "Tibetan", "Mongolian", "Georgian", "Armenian", "Ethiopic", "Cherokee",
] as const;
const SCRIPTS = SCRIPT_NAMES.map((name) => ({ name, test: new RegExp(`\\p{Script=${name}}`, "u") }));

/** The script of a letter in words; "other signs" where it has none that we can name. */
export const scriptOf = (grapheme: string): string =>
  SCRIPTS.find((s) => s.test.test(grapheme))?.name ?? (/\p{L}/u.test(grapheme) ? "another script" : "other signs");

/** Words with kana are Japanese, words with hangul Korean; Chinese characters alone take the forms of the paper that they stand on. */
const hanOf = (text: string, paper: Han): Han =>
  /[\p{Script=Hiragana}\p{Script=Katakana}]/u.test(text) ? "japanese" : /\p{Script=Hangul}/u.test(text) ? "korean" : paper;

const space = (letter: string): boolean => letter === " " || letter === "\u00a0";

const keyOf = (font: Font): string => `${font.face}${font.weight}${font.italic ? "i" : ""}`;
const shaped = new Map<string, Shaped>();

/**
 * Splits a line into runs by which face holds its letters and which way they run. Each letter with its marks stays whole.
 * Where no face has it the run says so in brackets, so that the paper never shows an empty box, and the letters are reported.
 */
export function shape(text: string, font: Font, paper: Han = "chinese"): Shaped {
  const key = `${keyOf(font)} ${paper} ${text}`;
  const known = shaped.get(key);
  if (known) return known;
  if (shaped.size >= REMEMBERED) shaped.clear();
  const made = shapeAnew(text, font, paper);
  shaped.set(key, made);
  return made;
}

function shapeAnew(text: string, font: Font, paper: Han): Shaped {
  const first = faceFor("a", font, "chinese");
  if (first === null) return { runs: [], missing: [] };
  const whole = text.normalize("NFC").replace(/\s+/gu, (s) => (s === "\u00a0" ? s : " ")).replace(UNSEEN, "");
  // The space at which a line ends stays at its right, whichever way its words run.
  const line = whole.trimEnd();
  const levels = levelsOf(line);
  const han = hanOf(line, paper);
  const runs: { face: Face; text: string; level: number }[] = [];
  const missing: string[] = [];
  let said = "";
  const push = (face: Face, piece: string, level: number): void => {
    const last = runs.at(-1);
    if (last?.face === face && last.level === level) last.text += piece;
    else runs.push({ face, text: piece, level });
  };
  for (const { segment, index } of graphemes.segment(line)) {
    const joined = segment.replace(MARKS, "");
    if (joined === "") continue;
    const level = levels?.[index] ?? 0;
    const current = runs.at(-1)?.face;
    const bare = joined.replace(JOINERS, "");
    if (bare === "") continue;
    const face = current && !space(bare) && holds(current, bare) ? current : faceFor(bare, font, han);
    if (face) {
      push(face, holds(face, joined) ? joined : bare, level);
      if (!space(bare)) said = "";
      continue;
    }
    missing.push(bare);
    const script = scriptOf(bare);
    if (script !== said) push(first, `[${script}]`, level + (level % 2));
    said = script;
  }
  const shown = inSight(runs).map((r): Run => ({ face: r.face, text: forShaper(r.text, r.level), ...(REORDERED.test(r.text) ? { read: r.text } : {}) }));
  const end = whole.slice(line.length);
  const last = shown.at(-1);
  const ended = end === "" ? shown : last?.face === first ? [...shown.slice(0, -1), { face: first, text: last.text + end }] : [...shown, { face: first, text: end }];
  return { runs: ended, missing, ...(missing.length > 0 || levels !== null || REORDERED.test(line) ? { read: whole.replace(MARKS, "") } : {}) };
}

/** The scripts of the letters in a text that cannot be printed, each once. */
export const lacks = (text: string): readonly string[] =>
  [...new Set(shape(text, { face: "serif", weight: "regular", italic: false }).missing.map(scriptOf))];

const wholes = new Map<string, number>();

/** Width of text in the unit that `size` is in. */
export const widthOf = (text: string, font: Font, size: number): number => widthOn("chinese", text, font, size);

const measures = new Map<Han, typeof widthOf>();
/** The same on a paper whose Chinese characters take some country's forms; one function a country. */
export function widthIn(paper: Han): typeof widthOf {
  const known = measures.get(paper) ?? (paper === "chinese" ? widthOf : (text, font, size) => widthOn(paper, text, font, size));
  measures.set(paper, known);
  return known;
}

function widthOn(paper: Han, text: string, font: Font, size: number): number {
  const key = `${keyOf(font)} ${paper} ${text}`;
  const known = wholes.get(key);
  if (known !== undefined) return known * size;
  if (wholes.size >= REMEMBERED) wholes.clear();
  const width = shape(text, font, paper).runs.reduce((sum, run) => sum + laidOut(run.face, run.text).advanceWidth, 0) / 1000;
  wholes.set(key, width);
  return width * size;
}

export const runAdvance = (run: Run, size: number): number => (laidOut(run.face, run.text).advanceWidth / 1000) * size;
