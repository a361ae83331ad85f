import { describe, expect, test } from "vitest";
import { paint, toPoints, type PdfSurface } from "@/lib/drawing/pdf";
import type { Mark } from "@/lib/drawing/display";

function recorder() {
  const calls: { readonly kind: string; readonly value: unknown }[] = [];
  const surface: PdfSurface = {
    path: (value) => { calls.push({ kind: "path", value }); },
    circle: (value) => { calls.push({ kind: "circle", value }); },
    clip: (value, body) => { calls.push({ kind: "clip", value }); body(); calls.push({ kind: "end", value: null }); },
    text: (value) => { calls.push({ kind: "text", value }); },
  };
  return { calls, surface };
}
const colours = (ink: string): string => `#${ink}`;

describe("painting a display list on a PDF page", () => {
  test("25.4 mm are 72 points, to the last bit", () => {
    expect(toPoints(25.4)).toBe(72);
    expect(toPoints(297)).toBe((297 * 72) / 25.4);
  });
  test("moves and enlarges a drawing about its own corner", () => {
    const { calls, surface } = recorder();
    const line: Mark = { kind: "path", steps: [{ op: "M", to: [0, 0] }, { op: "L", to: [10, 0] }], stroke: { ink: "ink", weight: 0.25, dash: [1, 0] } };
    paint([line], { surface, colours, placing: { at: [25.4, 50.8], scale: 2 } });
    expect(calls[0]?.value).toMatchObject({
      steps: [{ op: "M", to: [72, 144] }, { op: "L", to: [toPoints(25.4 + 10 * 2), 144] }],
      stroke: { color: "#ink", weight: toPoints(0.5), dash: [toPoints(2), 0.01] },
    });
  });
  test("leaves out what has no ink and keeps what a clip holds inside it", () => {
    const { calls, surface } = recorder();
    const circle: Mark = { kind: "circle", at: [1, 1], radius: 1, fill: "none" };
    paint([circle, { kind: "clip", steps: [], marks: [{ ...circle, fill: "v-oak" }] }], { surface, colours });
    expect(calls.map((c) => c.kind)).toEqual(["clip", "circle", "end"]);
  });
  test("words keep face, anchor and turn, and start regular, upright, at the left", () => {
    const { calls, surface } = recorder();
    paint([{ kind: "group", marks: [{ kind: "text", at: [0, 0], text: "Bar", size: 2.6, face: "sans", ink: "t-bar" }] }], { surface, colours });
    expect(calls[0]?.value).toEqual({
      at: [0, 0], text: "Bar", size: toPoints(2.6), color: "#t-bar", font: { face: "sans", weight: "regular", italic: false }, anchor: "start", angle: 0,
    });
  });
});
