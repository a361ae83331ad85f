import { create } from "fontkit";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { textWidth, wrap, type Type } from "../../../lib/drawing";
import { ADVANCES } from "../../../lib/drawing/metrics-data";

const FILES: Readonly<Record<keyof typeof ADVANCES, readonly [family: string, style: string]>> = {
  "serif-regular": ["newsreader", "400-normal"], "serif-medium": ["newsreader", "500-normal"], "serif-bold": ["newsreader", "600-normal"],
  "serif-italic": ["newsreader", "400-italic"], "sans-regular": ["public-sans", "400-normal"], "sans-medium": ["public-sans", "500-normal"],
  "sans-bold": ["public-sans", "600-normal"],
};
const open = (family: string, subset: string, style: string) => {
  const font = create(readFileSync(`node_modules/@fontsource/${family}/files/${family}-${subset}-${style}.woff`));
  if (!("layout" in font)) throw new Error("a collection of fonts where one was meant");
  return font;
};

describe("measures of text", () => {
  it.each(Object.entries(FILES))("are the fonts' own: %s", (key, [family, style]) => {
    const fonts = ["latin", "latin-ext"].map((subset) => open(family, subset, style));
    for (const [face, table] of Object.entries(ADVANCES)) {
      if (face !== key) continue;
      for (const [width, characters] of Object.entries(table)) for (const c of characters) {
        const font = fonts.find((f) => f.hasGlyphForCodePoint(c.codePointAt(0) ?? 0));
        const advance = font?.layout(c, ["tnum"]).positions.reduce((s, p) => s + p.xAdvance, 0) ?? 0;
        expect(Math.round((advance * 1000) / (font?.unitsPerEm ?? 1000)), c).toBe(Number(width));
      }
    }
  });
  it("make all figures equally wide", () => {
    const type: Type = { size: 10, face: "sans" };
    expect(textWidth("1.11", type)).toBe(textWidth("8.88", type));
  });
  it("break lines no wider than asked, but never a word", () => {
    const type: Type = { size: 2.3, face: "sans" };
    const lines = wrap("The posted occupancy and the fire authority govern", 20, type);
    expect(lines.every((l) => textWidth(l, type) <= 20)).toBe(true);
    expect(wrap("incomprehensibilities", 5, type)).toEqual(["incomprehensibilities"]);
  });
});
