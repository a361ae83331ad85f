import type { Measure, Style } from "./type";
import { runsLeftward } from "./words";

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
  const space = widthOf(" ", fit);
  const lines: string[] = [];
  let line = "";
  let used = 0;
  for (const word of text.split(/[ \t]+/).filter(Boolean)) {
    // Words are measured one by one: the printer remembers them, and they come back again and again.
    const width = widthOf(word, fit);
    if (line !== "" && used + space + width <= fit.width) {
      line = `${line} ${word}`;
      used += space + width;
      continue;
    }
    // The space at which a line ends stays on it: without it a reading voice would join the words of two lines.
    if (line !== "") lines.push(`${line} `);
    const parts = width <= fit.width ? [word] : cut(word, fit);
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1) ?? "";
    used = parts.length === 1 ? width : widthOf(line, fit);
  }
  return [...lines, line];
}

const broken = new WeakMap<Measure, Map<string, readonly string[]>>();
/** Only so many texts are remembered: the same ones are set again and again while columns are made level. */
const REMEMBERED = 5_000;

/** Text broken into lines no wider than `width`; line ends of the writer are kept, empty lines at either end are not. */
export function wrap(text: string, fit: Fit): readonly string[] {
  const { font, size } = fit.style;
  const key = `${font.face}${font.weight}${font.italic ? "i" : ""} ${size} ${fit.width} ${text}`;
  const known = broken.get(fit.measure) ?? new Map<string, readonly string[]>();
  const before = known.get(key);
  if (before) return before;
  if (known.size >= REMEMBERED) known.clear();
  const lines = wrapAnew(text, fit);
  broken.set(fit.measure, known.set(key, lines));
  return lines;
}

function wrapAnew(text: string, fit: Fit): readonly string[] {
  const paragraphs = text.replace(/\r\n?/g, "\n").trim().split("\n");
  return paragraphs.flatMap((p, i) => {
    const lines = keptToward(p, wrapParagraph(p, fit));
    const last = lines.at(-1) ?? "";
    return i === paragraphs.length - 1 || last === "" ? lines : [...lines.slice(0, -1), `${last} `];
  });
}

/**
 * Each line of a text that runs from left to right says so where it begins with letters that do not: a bracket at its end closes what the
 * line before opened, and would else stand at its beginning (UAX 9, P2 asks it of paragraphs, and a line is a part of one).
 */
function keptToward(paragraph: string, lines: readonly string[]): readonly string[] {
  if (lines.length === 1 || runsLeftward(paragraph)) return lines;
  return lines.map((line) => (runsLeftward(line) ? `\u200e${line}` : line));
}

/** The same number of lines, but as even as they can be: no last line of one word. */
export function wrapEvenly(text: string, fit: Fit): readonly string[] {
  const lines = wrap(text, fit);
  let [low, high] = [fit.width / 2, fit.width];
  let best = lines;
  for (let i = 0; i < 6; i += 1) {
    const width = (low + high) / 2;
    const tried = wrap(text, { ...fit, width });
    if (tried.length > lines.length) low = width;
    else [high, best] = [width, tried];
  }
  return best;
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
