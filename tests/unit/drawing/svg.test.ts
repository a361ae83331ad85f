import { describe, expect, it } from "vitest";
import { composePlan, planCss, toSvg, type Drawing } from "../../../lib/drawing";
import { escapeText } from "../../../lib/drawing/svg";
import { mill, millMeal } from "./mill";

const drawing = (text: string): Drawing => ({
  width: 100, height: 50, perMetre: 10, origin: [0, 0], title: text, words: [text],
  marks: [{ kind: "group", id: "g", role: "piece", label: text, marks: [{ kind: "text", at: [10, 10], text, size: 3, face: "sans", ink: "ink" }] }],
});
const HOSTILE = `</text><script>alert("1")</script>'&amp;]]>\u0000\u0008\ud800`;

describe("the SVG painter", () => {
  it("lets no words become markup", () => {
    const svg = toSvg(drawing(HOSTILE), { theme: "light" });
    expect(svg).not.toContain("<script");
    expect(svg.match(/<\/text>/g)).toHaveLength(1);
    expect(svg).not.toMatch(/[\u0000-\u0008\ud800-\udfff]/);
    expect(escapeText(HOSTILE)).toBe("&lt;/text&gt;&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&#39;&amp;amp;]]&gt;");
    expect(escapeText("Zoë 🌿")).toBe("Zoë 🌿");
  });
  it("sets no style attribute and no style element, so that the strictest policy holds", () => {
    for (const theme of ["light", "dark", "print", "css"] as const) {
      expect(toSvg(composePlan(mill, millMeal(), "meal"), { theme })).not.toMatch(/ style=|<style/);
    }
  });
  it("writes classes for a page and gives their rules", () => {
    const svg = toSvg(composePlan(mill, millMeal(), "meal"), { theme: "css", pixelWidth: 358 });
    expect(svg).not.toMatch(/#[0-9a-f]{6}/);
    const css = planCss();
    for (const name of new Set([...svg.matchAll(/class="([^"]+)"/g)].flatMap((m) => (m[1] ?? "").split(" ")))) expect(css).toContain(`.${name}`);
  });
  it("draws in the reader's own colours where they are forced: lines and grain on the canvas, never a fill as dark as its words", () => {
    const forced = /@media \(forced-colors: active\)\{([^@]*?)\n\}/.exec(planCss())?.[1] ?? "";
    expect(forced).toContain(".plan .f-v-music{fill:Canvas}");
    expect(forced).toContain(".plan .f-t-music{fill:CanvasText}");
    expect(forced).toContain(".plan .s-g-round{stroke:CanvasText}");
    expect(forced).toContain(".plan .s-accent{stroke:Highlight}");
    expect(forced.match(/#[0-9a-f]{6}|var\(/g)).toBeNull();
  });
  it("carries a title, words and labels for those who do not see it", () => {
    const svg = toSvg(drawing("Table 1"), { theme: "light", idPrefix: "a-" });
    expect(svg).toContain('role="graphics-document"');
    expect(svg).toContain('aria-labelledby="a-title"');
    expect(svg).toContain('<g id="a-g" role="graphics-symbol" aria-label="Table 1">');
    expect(toSvg(drawing("Table 1"), { theme: "light", reads: "image" })).toContain('role="img"');
  });
  it("begins every id with its prefix, once each", () => {
    const svg = toSvg(composePlan(mill, millMeal(), "meal"), { theme: "light", idPrefix: "x-" });
    const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map((m) => m[1] ?? "");
    expect(ids.every((id) => id.startsWith("x-"))).toBe(true);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
