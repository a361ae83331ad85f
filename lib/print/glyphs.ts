import type { Glyph, GlyphPosition } from "fontkit";
import type { Face } from "./faces";

/** Tabular figures keep columns of numbers true; both families have them. */
export const FEATURES: readonly PDFKit.Mixins.OpenTypeFeatures[] = ["tnum"];

type Placed = GlyphPosition & { readonly advanceWidth: number };
/** A text as its face sets it, in thousandths of the size: what the PDF writer asks of a font. */
export type LaidOut = { readonly glyphs: readonly Glyph[]; readonly positions: readonly Placed[]; readonly advanceWidth: number };

const known = new Map<string, LaidOut>();
/** Only so many are remembered: a desk that prints all day must not grow without end. */
const REMEMBERED = 20_000;

/** Sets a text once and remembers it, for its measuring and its writing, in this paper and the next. */
export function laidOut(face: Face, text: string): LaidOut {
  const key = `${face.key} ${text}`;
  const before = known.get(key);
  if (before) return before;
  if (known.size >= REMEMBERED) known.clear();
  const scale = 1000 / face.font.unitsPerEm;
  const run = face.font.layout(text, [...FEATURES]);
  const positions = run.positions.map((p, i): Placed => ({
    xAdvance: p.xAdvance * scale, yAdvance: p.yAdvance * scale, xOffset: p.xOffset * scale, yOffset: p.yOffset * scale, advanceWidth: (run.glyphs[i]?.advanceWidth ?? 0) * scale,
  }));
  const made: LaidOut = { glyphs: run.glyphs, positions, advanceWidth: positions.reduce((sum, p) => sum + p.xAdvance, 0) };
  known.set(key, made);
  return made;
}
