import type { Measure, Style } from "./type";

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

type Fit = { readonly style: Style; readonly width: number; readonly measure: Measure };

const widthOf = (text: string, fit: Fit): number => fit.measure(text, fit.style.font, fit.style.size);

/** A word wider than the line is cut between letters; nothing runs over an edge. */
function cut(word: string, fit: Fit): string[] {
  const parts: string[] = [];
  let part = "";
  for (const { segment } of graphemes.segment(word)) {
    if (part !== "" && widthOf(part + segment, fit) > fit.width) {
      parts.push(part);
      part = segment;
    } else part += segment;
  }
  return part === "" ? parts : [...parts, part];
}

function wrapParagraph(text: string, fit: Fit): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/[ \t]+/).filter(Boolean)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (widthOf(longer, fit) <= fit.width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    const parts = widthOf(word, fit) <= fit.width ? [word] : cut(word, fit);
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1) ?? "";
  }
  return [...lines, line];
}

/** Text broken into lines no wider than `width`; line ends of the writer are kept, empty lines at either end are not. */
export function wrap(text: string, fit: Fit): readonly string[] {
  return text.replace(/\r\n?/g, "\n").trim().split("\n").flatMap((p) => wrapParagraph(p, fit));
}

/** One line at most `width` wide; what is left out is marked. Only for words that stand in full elsewhere on the paper. */
export function shorten(text: string, fit: Fit): string {
  const flat = text.replace(/\s+/g, " ").trim();
  if (widthOf(flat, fit) <= fit.width) return flat;
  let kept = "";
  for (const { segment } of graphemes.segment(flat)) {
    if (widthOf(`${kept}${segment}…`, fit) > fit.width) break;
    kept += segment;
  }
  return `${kept.trimEnd()}…`;
}
