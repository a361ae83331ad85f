import { content, element, type Content, type Element, type Tag } from "./document";
import type { Flow } from "./flow";
import { wrap } from "./lines";
import { runsLeftward } from "./words";
import { baseline, words, type Measure, type Style } from "./type";

/** What every block is set with. */
export type Setting = { readonly flow: Flow; readonly measure: Measure };

/** Lines set one under another, going on in the next region where they must; no line stands alone at either end. */
export function setLines(lines: readonly string[], s: Style, to: Setting & { readonly indent?: number; readonly leftward?: boolean }): Content[] {
  const out: Content[] = [];
  lines.forEach((line, i) => {
    // Two lines hold together at the start and at the end of a paragraph.
    const keep = lines.length > 1 && (i === 0 || i === lines.length - 2) ? s.leading : 0;
    const spot = to.flow.take(s.leading, keep);
    if (line === "") return;
    const y = baseline(spot.y, s);
    // A right-to-left mark keeps each line of such a text to its direction, whatever it begins with.
    out.push(content(spot.page, [to.leftward ? words(`\u200f${line.trimEnd()}`, [spot.x + spot.width, y], s, "end") : words(line, [spot.x + (to.indent ?? 0), y], s)]));
  });
  return out;
}

export function paragraph(text: string, s: Style, to: Setting & { readonly indent?: number; readonly tag?: Tag }): Element {
  const lines = wrap(text, { style: s, width: to.flow.width() - (to.indent ?? 0), measure: to.measure });
  return element(to.tag ?? "P", setLines(lines, s, runsLeftward(text) ? { ...to, leftward: true } : to));
}

/** A heading with room under it for what it heads: `keep` mm. */
export function heading(text: string, s: Style, to: Setting & { readonly tag: "H1" | "H2" | "H3"; readonly keep: number }): Element {
  const lines = wrap(text, { style: s, width: to.flow.width(), measure: to.measure });
  const height = lines.length * s.leading;
  const spot = to.flow.take(height, to.keep);
  const marks = lines.map((line, i) => words(line, [spot.x, baseline(spot.y + i * s.leading, s)], s));
  return element(to.tag, [content(spot.page, marks)]);
}
