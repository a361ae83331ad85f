import bidiFactory from "bidi-js";

const bidi = bidiFactory();

/** Letters that are written from right to left, and the signs that turn a line about. */
const TURNS = /[\u0590-\u08FF\u200F\u2067\uFB1D-\uFDFF\uFE70-\uFEFC]|[\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;
/** The letters alone whose script the shaper sets from right to left. */
const RIGHT_TO_LEFT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]|[\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

export const turns = (text: string): boolean => TURNS.test(text);
export const rightToLeft = (text: string): boolean => RIGHT_TO_LEFT.test(text);

/**
 * The level of each UTF-16 unit of a line (Unicode Bidirectional Algorithm, UAX 9): even from left to right, odd from right
 * to left. A line takes the direction of its first strong letter; null where nothing of it turns.
 */
export function levelsOf(line: string): Uint8Array | null {
  return turns(line) ? bidi.getEmbeddingLevels(line).levels : null;
}

/** Runs in the order of the eye: from the highest level down to the lowest odd one, stretches at or above it are reversed (UAX 9, L2). */
export function inSight<T extends { readonly level: number }>(runs: readonly T[]): readonly T[] {
  const out = [...runs];
  const highest = Math.max(0, ...out.map((r) => r.level));
  for (let level = highest; level > 0; level -= 1) {
    let start = 0;
    while (start < out.length) {
      if ((out[start]?.level ?? 0) < level) { start += 1; continue; }
      let end = start;
      while (end < out.length && (out[end]?.level ?? 0) >= level) end += 1;
      out.splice(start, end - start, ...out.slice(start, end).reverse());
      start = end;
    }
  }
  return out;
}

const mirrored = (letter: string): string => bidi.getMirroredCharacter(letter) ?? letter;

/**
 * A run as the shaper wants it. The shaper itself turns a run about whose script runs from right to left; what has no such
 * letter (a hyphen between two names) is turned here, brackets are mirrored (UAX 9, L4), and Arabic figures turned back.
 */
export function forShaper(text: string, level: number): string {
  const turned = level % 2 === 1;
  if (!turned && !rightToLeft(text)) return text;
  const letters = [...graphemes.segment(text)].map((s) => (turned ? mirrored(s.segment) : s.segment));
  return (turned === rightToLeft(text) ? letters : letters.reverse()).join("");
}
