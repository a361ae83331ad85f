import { describe, expect, it } from "vitest";
import { PALETTES, type Colour } from "../../lib/drawing";
import { VENEERS } from "../../lib/drawing/display";

/** Relative luminance and contrast ratio: WCAG 2.2, definitions. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}
const contrast = (a: string, b: string): number => {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
};

describe.each(Object.entries(PALETTES))("WCAG 2.2, 1.4.3 and 1.4.11 (w3.org/TR/WCAG22): the %s palette of a plan", (_, p) => {
  const ratio = (a: Colour, b: Colour): number => contrast(p[a], p[b]);
  it("sets words at 4.5 to 1 (WCAG 1.4.3)", () => {
    for (const [ink, ground] of [["ink", "paper"], ["ink", "leaf"], ["ink", "floor"], ["ink-2", "paper"], ["ink-2", "floor"], ["ink-3", "leaf"], ["ink-3", "paper"], ["ink-3", "floor"], ["ink-2", "leaf"], ["on-accent", "accent"], ["accent", "paper"], ["leaf", "ink"]] as const) {
      expect(ratio(ink, ground), `${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
    for (const v of VENEERS) expect(ratio(`t-${v}`, `v-${v}`), `words on ${v}`).toBeGreaterThanOrEqual(4.5);
  });
  it("draws lines and grain at 3 to 1 (WCAG 1.4.11)", () => {
    for (const [ink, ground] of [["wall", "floor"], ["wall", "paper"], ["line", "floor"], ["ink-2", "floor"], ["ink-2", "paper"], ["ink-3", "paper"], ["ink-3", "floor"], ["line", "paper"], ["accent", "floor"], ["accent", "paper"], ["ink", "hush"]] as const) {
      expect(ratio(ink, ground), `${ink} on ${ground}`).toBeGreaterThanOrEqual(3);
    }
    for (const v of VENEERS) {
      expect(ratio(`g-${v}`, `v-${v}`), `grain of ${v}`).toBeGreaterThanOrEqual(3);
      // A piece is told from the floor by its outline, or by its own tint where that is as dark as the outline.
      expect(Math.max(ratio("ink", "floor"), ratio(`v-${v}`, "floor")), `edge of ${v}`).toBeGreaterThanOrEqual(3);
    }
  });
});
