import type { Drawing, Mark } from "../../../lib/drawing";
import { textWidth } from "../../../lib/drawing";

export type Text = Extract<Mark, { kind: "text" }>;

/** All marks of a drawing, groups and clips opened. */
export function flat(marks: readonly Mark[]): readonly Mark[] {
  return marks.flatMap((m) => (m.kind === "group" || m.kind === "clip" ? [m, ...flat(m.marks)] : [m]));
}
export const texts = (d: Drawing): readonly Text[] => flat(d.marks).filter((m): m is Text => m.kind === "text");

/** The four corners of a line of text as it is measured: from its baseline to the top of its capitals. */
export function corners(t: Text): readonly (readonly [number, number])[] {
  const w = textWidth(t.text, t), h = t.size * (t.face === "serif" ? 0.67 : 0.723);
  const from = t.anchor === "middle" ? -w / 2 : t.anchor === "end" ? -w : 0;
  const rad = ((t.angle ?? 0) * Math.PI) / 180;
  return ([[from, -h], [from + w, -h], [from + w, 0], [from, 0]] as const)
    .map(([x, y]) => [t.at[0] + x * Math.cos(rad) - y * Math.sin(rad), t.at[1] + x * Math.sin(rad) + y * Math.cos(rad)] as const);
}
