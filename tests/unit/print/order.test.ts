import { describe, expect, test } from "vitest";
import type { Font } from "@/lib/drawing/pdf";
import { forShaper, inSight, levelsOf } from "@/lib/print/order";
import { boundsOf } from "@/lib/print/ranges";
import { shape } from "@/lib/print/runs";

const font: Font = { face: "sans", weight: "regular", italic: false };
const shown = (text: string): readonly string[] => shape(text, font).runs.map((r) => r.text);

describe("a line with words from right to left (Unicode Standard Annex 9)", () => {
  test("has odd levels where it runs to the left, and two more within for figures", () => {
    expect([...(levelsOf("a ב1") ?? [])]).toEqual([0, 0, 1, 2]);
    expect(levelsOf("Łucja & Žofie")).toBeNull();
  });
  test("is met by the eye in the order of rule L2", () => {
    const runs = [["a", 0], ["B", 1], ["1", 2], ["C", 1], ["d", 0]].map(([name, level]) => ({ name, level: Number(level) }));
    expect(inSight(runs).map((r) => r.name)).toEqual(["a", "C", "1", "B", "d"]);
  });
  test("leaves letters to the shaper, turns what is no letter, and mirrors brackets (rule L4)", () => {
    expect(forShaper("שרה", 1)).toBe("שרה");
    expect(forShaper(" (", 1)).toBe(") ");
    expect(forShaper("١٢", 2)).toBe("٢١");
  });
  test("keeps the space at its end at the right", () => {
    expect(shown("ليلى ").at(-1)).toBe(" ");
  });
  test("keeps two names apart that stand in a sentence of ours", () => {
    const order = shown("\u2068שרה\u2069, \u2068נועה\u2069 and Ann").join("").replace(/[ ,]/g, "");
    expect(order.startsWith("שרה")).toBe(true);
  });
});

describe("what a package says it covers", () => {
  test("is read from its ranges (CSS Fonts 4, unicode-range)", () => {
    expect(boundsOf("U+0590-05FF, U+20aa")).toEqual([[0x590, 0x5ff], [0x20aa, 0x20aa]]);
  });
});

describe("Chinese characters", () => {
  const faces = (text: string): readonly string[] => shape(text, font).runs.map((r) => r.face.key.split("-")[0] ?? "");
  test("take Japanese forms beside kana and Chinese ones alone", () => {
    expect(faces("直子の")).toEqual(["biz"]);
    expect(faces("直")[0]).toBe("noto");
  });
});
