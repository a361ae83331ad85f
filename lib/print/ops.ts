import type { Step } from "../drawing/display";
import type { Pen } from "../drawing/pdf";

/** A hundredth of a point is 3.5 thousandths of a millimetre: finer than any printer, and a third off the file. */
export const fine = (points: number): number => Math.round(points * 100) / 100;

/** A figure as short as PDF allows it: .5, not 0.5 (ISO 32000-1, 7.3.3). */
export function figure(points: number): string {
  const text = String(fine(points));
  if (text.startsWith("0.")) return text.slice(1);
  return text.startsWith("-0.") ? `-${text.slice(2)}` : text === "-0" ? "0" : text;
}

const inks = new Map<string, string>();
/** "#rrggbb" as the operands of a colour, one figure where it is a grey. */
function operands(color: string): string {
  const known = inks.get(color);
  if (known !== undefined) return known;
  const part = (i: number): string => { const t = String(Math.round((parseInt(color.slice(i, i + 2), 16) / 255) * 1000) / 1000); return t.startsWith("0.") ? t.slice(1) : t; };
  const rgb = [part(1), part(3), part(5)];
  const made = rgb[0] === rgb[1] && rgb[1] === rgb[2] ? `${rgb[0] ?? "0"} g` : `${rgb.join(" ")} rg`;
  inks.set(color, made);
  return made;
}

/** What a page's pen and ink are now: what is the same already is not written again. */
export type State = { fill: string; stroke: string; weight: number; cap: string; dash: string };
export const fresh = (): State => ({ fill: "", stroke: "", weight: -1, cap: "", dash: "?" });

const CAPS = { butt: 0, round: 1, square: 2 } as const;
export type Shape = { readonly fill?: string | undefined; readonly stroke?: Pen | undefined; readonly evenOdd?: boolean };

/** Content of a page or of a form as it is written: operators one after another, and the box that they cover, counted from `origin`. */
export type Ops = { readonly parts: string[]; readonly state: State; origin: readonly [number, number]; /** The origin is yet to be: the first point drawn. */ open: boolean; box: readonly [number, number, number, number] };
/** "first": coordinates are counted from the first point drawn. */
export const createOps = (origin: readonly [number, number] | "first" = [0, 0]): Ops =>
  ({ parts: [], state: fresh(), origin: origin === "first" ? [0, 0] : origin, open: origin === "first", box: [Infinity, Infinity, -Infinity, -Infinity] });

export function takeInk(to: Ops, color: string): void {
  if (to.state.fill === color) return;
  to.state.fill = color;
  to.parts.push(operands(color));
}

function takePen({ state, parts }: Ops, pen: Pen): void {
  const weight = fine(pen.weight), cap = pen.cap ?? "butt";
  const dash = (pen.dash ?? []).map((d) => Number(d.toFixed(3))).join(" ");
  if (state.weight !== weight) parts.push(`${figure(weight)} w`);
  if (state.stroke !== pen.color) parts.push(operands(pen.color).toUpperCase());
  if (state.cap !== cap) parts.push(`${CAPS[cap]} J`);
  if (state.dash !== dash) parts.push(`[${dash}]0 d`);
  Object.assign(state, { weight, stroke: pen.color, cap, dash });
}

export function trace(to: Ops, steps: readonly Step[]): void {
  const begin = to.open ? steps.find((s) => s.op !== "Z") : undefined;
  if (begin) Object.assign(to, { origin: begin.to, open: false });
  const { parts, origin: [ox, oy] } = to;
  let [x0, y0, x1, y1] = to.box;
  const at = (p: readonly [number, number]): string => {
    const x = p[0] - ox, y = p[1] - oy;
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
    return `${figure(x)} ${figure(y)}`;
  };
  for (const step of steps) {
    if (step.op === "M") parts.push(`${at(step.to)} m`);
    else if (step.op === "L") parts.push(`${at(step.to)} l`);
    else if (step.op === "C") parts.push(`${at(step.c1)} ${at(step.c2)} ${at(step.to)} c`);
    else parts.push("h");
  }
  to.box = [x0, y0, x1, y1];
}

/** Pen and ink are taken before the path is begun: between its steps and its painting nothing else may stand (ISO 32000-1, 8.5.2). */
export function draw(to: Ops, steps: readonly Step[], { fill, stroke, evenOdd }: Shape): void {
  if (stroke) takePen(to, stroke);
  if (fill) takeInk(to, fill);
  trace(to, steps);
  const star = evenOdd ? "*" : "";
  to.parts.push(fill && stroke ? `B${star}` : fill ? `f${star}` : stroke ? "S" : "n");
}

/** What `body` changes of pen and ink is undone after it. */
export function within(to: Ops, body: () => void): void {
  const before = { ...to.state };
  to.parts.push("q");
  body();
  to.parts.push("Q");
  Object.assign(to.state, before);
}
