import { ADVANCES } from "./metrics-data";

/** How words are set: what the measure depends on. */
export type Type = {
  readonly size: number;
  readonly face: "serif" | "sans";
  readonly weight?: "regular" | "medium" | "bold";
  readonly italic?: boolean;
};

type FaceKey = keyof typeof ADVANCES;

const tables = new Map<FaceKey, ReadonlyMap<string, number>>();
function table(key: FaceKey): ReadonlyMap<string, number> {
  const known = tables.get(key);
  if (known) return known;
  const made = new Map<string, number>();
  for (const [width, characters] of Object.entries(ADVANCES[key])) for (const c of characters) made.set(c, Number(width));
  tables.set(key, made);
  return made;
}

const keyOf = (t: Type): FaceKey => (t.face === "serif" && t.italic ? "serif-italic" : `${t.face}-${t.weight ?? "regular"}`);

/** What a character takes that the table does not hold: marks nothing, wide scripts a full em, others a broad letter. */
function unknown(c: string): number {
  if (/\p{M}|\p{Cf}|\p{Cc}/u.test(c)) return 0;
  return /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Extended_Pictographic}]/u.test(c) ? 1000 : 660;
}

/** Whether the measure of every letter is known: of others the width is a guess. */
export const isMeasured = (text: string, type: Type): boolean => { const widths = table(keyOf(type)); return [...text].every((c) => widths.has(c)); };

/** Width of one line of text in the unit of its size (mm of paper). Kerning is left out, so that the figure errs on the wide side. */
export function textWidth(text: string, type: Type): number {
  const widths = table(keyOf(type));
  let sum = 0;
  for (const c of text) sum += widths.get(c) ?? unknown(c);
  return (sum * type.size) / 1000;
}

/** Height of capitals and figures, as a part of the size. */
export const capHeight = (type: Pick<Type, "face">): number => (type.face === "serif" ? 0.67 : 0.723);
/** How far letters reach below the line, as a part of the size. */
export const DESCENT = 0.24;

/** Breaks text into lines no wider than `width`; a word that is longer than a line stands alone on it. */
export function wrap(text: string, width: number, type: Type): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter((w) => w !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, type) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines;
}

/** Text shortened with an ellipsis until it is no wider than `width`. */
export function shorten(text: string, width: number, type: Type): string {
  if (textWidth(text, type) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && textWidth(`${letters.join("").trimEnd()}…`, type) > width) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}
