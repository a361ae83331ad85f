import { z } from "zod";

/** Whether a file is said to hold a code point. */
export type Covers = (code: number) => boolean;

/** "U+0460-052F,U+20B4" as bounds, both counted in (CSS Fonts 4, unicode-range). */
export function boundsOf(range: string): readonly (readonly [number, number])[] {
  return range.split(",").flatMap((part) => {
    const found = /^\s*U\+([0-9a-f]{1,6})(?:-([0-9a-f]{1,6}))?\s*$/i.exec(part);
    if (!found?.[1]) return [];
    const from = parseInt(found[1], 16);
    return [[from, found[2] === undefined ? from : parseInt(found[2], 16)] as const];
  });
}

const file = z.record(z.string(), z.string());

/** What a package says of its files: name of the part, and what it covers. Numbered parts stand in brackets there, not in the files' names. */
export function readRanges(text: string): ReadonlyMap<string, Covers> {
  return new Map(Object.entries(file.parse(JSON.parse(text))).map(([name, range]) => {
    const bounds = boundsOf(range);
    return [name.replace(/[[\]]/g, ""), (code: number) => bounds.some(([a, b]) => code >= a && code <= b)];
  }));
}
