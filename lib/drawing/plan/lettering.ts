import { sinCos } from "../../geometry";
import type { Ink, Mark, Paper } from "../display";
import { box, placedSteps } from "../paths";
import { capHeight, DESCENT, textWidth, type Type } from "../metrics";
import type { Ground, Rect } from "./ground";

export type Line = { readonly text: string; readonly type: Type; readonly ink: Ink };

/** Clear space kept about words, mm of paper. */
const AIR = 0.55;

/** From one line to the next: what hangs below the one and what stands in the other, with a little air. */
const leading = (above: Type, t: Type): number => above.size * DESCENT + t.size * (capHeight(t) + (t.face === "serif" ? 0.1 : 0.26));

/** The room that a block of lines takes: capitals of the first to descenders of the last. */
export function blockSize(lines: readonly Line[]): { readonly width: number; readonly height: number } {
  let height = 0;
  lines.forEach((l, i) => { const above = lines[i - 1]; height += above ? leading(above.type, l.type) : l.type.size * capHeight(l.type); });
  const last = lines.at(-1);
  return { width: Math.max(0, ...lines.map((l) => textWidth(l.text, l.type))), height: height + (last ? last.type.size * DESCENT : 0) };
}

/** Lines set in a box, one under another. */
export function setBlock(lines: readonly Line[], at: Rect, anchor: "start" | "middle" | "end"): readonly Mark[] {
  const x = anchor === "start" ? at.x : anchor === "middle" ? at.x + at.width / 2 : at.x + at.width;
  let y = at.y;
  return lines.map((l, i) => {
    const above = lines[i - 1];
    y += above ? leading(above.type, l.type) : l.type.size * capHeight(l.type);
    return { kind: "text", at: [x, y], text: l.text, ...l.type, anchor, ink: l.ink };
  });
}

/** One line set about a point, turned. */
export function setTurned(line: Line, middle: Paper, angle: number): Mark {
  const drop = (line.type.size * capHeight(line.type)) / 2;
  const { sin, cos } = sinCos(angle);
  const at: Paper = angle === 0 ? [middle[0], middle[1] + drop] : angle === -90 ? [middle[0] + drop, middle[1]]
    : [middle[0] - sin * drop, middle[1] + cos * drop];
  return { kind: "text", at, text: line.text, ...line.type, anchor: "middle", angle, ink: line.ink };
}

/** A plain piece of the same tint, let into the grain, that words stand on. */
export const cartouche = (middle: Paper, size: { readonly width: number; readonly height: number }, angle: number, fill: Ink): Mark =>
  ({ kind: "path", steps: placedSteps(box(-size.width / 2, -size.height / 2, size.width, size.height), middle, angle), fill });

/** An angle at which words read from below or from the right: in [-90, 90). */
export const upright = (angle: number): number => {
  const a = ((angle % 180) + 180) % 180;
  return a >= 90 ? a - 180 : a;
};

export type Spot = { readonly at: Rect; readonly anchor: "start" | "middle" | "end" };

/** The first of the spots whose box, with air about it, is free; it is then taken. */
export function firstFree(ground: Ground, spots: Iterable<Spot>, room?: number): Spot | null {
  for (const spot of spots) {
    const r = spot.at;
    const aired = { x: r.x - AIR, y: r.y - AIR, width: r.width + 2 * AIR, height: r.height + 2 * AIR };
    if (!ground.free(aired, room)) continue;
    ground.takeRect({ x: r.x - AIR / 2, y: r.y - AIR / 2, width: r.width + AIR, height: r.height + AIR });
    return spot;
  }
  return null;
}

/** Spots beside a box, near ones first: below, above, right, left, then slid along, then further off. */
export function* beside(target: Rect, size: { readonly width: number; readonly height: number }, reach = 5): Generator<Spot> {
  const { width: w, height: h } = size;
  const cx = target.x + target.width / 2, cy = target.y + target.height / 2;
  for (let off = 0.9; off <= reach; off += 0.9) {
    for (const slide of [0, 0.35, -0.35, 0.7, -0.7]) {
      const sx = cx + slide * Math.max(target.width, w) - w / 2, sy = cy + slide * Math.max(target.height, h) - h / 2;
      yield { at: { x: sx, y: target.y + target.height + off, width: w, height: h }, anchor: "middle" };
      yield { at: { x: sx, y: target.y - off - h, width: w, height: h }, anchor: "middle" };
      yield { at: { x: target.x + target.width + off, y: sy, width: w, height: h }, anchor: "start" };
      yield { at: { x: target.x - off - w, y: sy, width: w, height: h }, anchor: "end" };
    }
  }
}

/** Splits words into two lines of nearly the same length, or leaves a single word whole. */
export function halves(text: string, type: Type): readonly string[] {
  const parts = text.split(" ");
  if (parts.length < 2) return [text];
  let best: readonly string[] = [text], least = Infinity;
  for (let i = 1; i < parts.length; i++) {
    const two = [parts.slice(0, i).join(" "), parts.slice(i).join(" ")];
    const wide = Math.max(...two.map((t) => textWidth(t, type)));
    if (wide < least) { least = wide; best = two; }
  }
  return best;
}
