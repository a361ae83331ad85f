import { add, scale, sinCos, turn, type Point, type Polygon, type Region } from "../geometry";
import type { Paper, Step } from "./display";

export const line = (...points: readonly Paper[]): readonly Step[] => points.map((to, i) => ({ op: i === 0 ? "M" : "L", to }));
export const closed = (points: readonly Paper[]): readonly Step[] => (points.length === 0 ? [] : [...line(...points), { op: "Z" }]);
export const box = (x: number, y: number, width: number, height: number): readonly Step[] =>
  closed([[x, y], [x + width, y], [x + width, y + height], [x, y + height]]);

/** The ratio that lets a cubic curve stand for a quarter circle within 0.03 per cent of its radius. */
const QUARTER = 0.5522847498;

/** A whole circle as four curves, clockwise. */
export function circle(at: Paper, radius: number): readonly Step[] {
  const k = QUARTER * radius;
  const p = (x: number, y: number): Paper => [at[0] + x, at[1] + y];
  return [
    { op: "M", to: p(radius, 0) },
    { op: "C", c1: p(radius, k), c2: p(k, radius), to: p(0, radius) },
    { op: "C", c1: p(-k, radius), c2: p(-radius, k), to: p(-radius, 0) },
    { op: "C", c1: p(-radius, -k), c2: p(-k, -radius), to: p(0, -radius) },
    { op: "C", c1: p(k, -radius), c2: p(radius, -k), to: p(radius, 0) },
    { op: "Z" },
  ];
}

/** An arc about a centre from one bearing over a sweep of at most 90 degrees (clockwise positive), begun with a move. */
export function arc(centre: Paper, radius: number, from: number, sweep: number): readonly Step[] {
  const half = sinCos(sweep / 4);
  const k = ((4 / 3) * half.sin) / half.cos * radius;
  const at = (degrees: number): Point => turn([radius, 0], degrees);
  const tangent = (degrees: number): Point => turn([0, k], degrees);
  const a = at(from), b = at(from + sweep);
  return [
    { op: "M", to: add(centre, a) },
    { op: "C", c1: add(centre, add(a, tangent(from))), c2: add(centre, add(b, scale(tangent(from + sweep), -1))), to: add(centre, b) },
  ];
}

export const regionSteps = (region: Region, to: (p: Point) => Paper): readonly Step[] =>
  region.flatMap((piece) => [piece.outer, ...piece.holes].flatMap((ring: Polygon) => closed(ring.map(to))));

/** A rectangle about the origin with its two corners at -y rounded. */
export function roundedBack(width: number, depth: number, radius: number): readonly Step[] {
  const w = width / 2, d = depth / 2, k = radius * (1 - QUARTER);
  return [
    { op: "M", to: [-w, d] },
    { op: "L", to: [-w, -d + radius] },
    { op: "C", c1: [-w, -d + k], c2: [-w + k, -d], to: [-w + radius, -d] },
    { op: "L", to: [w - radius, -d] },
    { op: "C", c1: [w - k, -d], c2: [w, -d + k], to: [w, -d + radius] },
    { op: "L", to: [w, d] },
    { op: "Z" },
  ];
}

/** Steps drawn about the origin, turned clockwise and moved to where they belong. */
export function placedSteps(steps: readonly Step[], at: Paper, angle: number): readonly Step[] {
  const put = (p: Paper): Paper => add(at, turn(p, angle));
  return steps.map((s) => (s.op === "Z" ? s : s.op === "C" ? { op: "C", c1: put(s.c1), c2: put(s.c2), to: put(s.to) } : { op: s.op, to: put(s.to) }));
}
