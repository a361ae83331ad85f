/** A point or a vector, in millimetres; x to the right, y down the page. */
export type Point = readonly [x: number, y: number];

export const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];
export const sub = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const scale = (a: Point, k: number): Point => [a[0] * k, a[1] * k];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
/** z of the cross product: positive when b lies clockwise from a on the page (y down). */
export const cross = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];
export const length = (a: Point): number => Math.sqrt(dot(a, a));
export const distance = (a: Point, b: Point): number => length(sub(a, b));
export const lerp = (a: Point, b: Point, t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
export const middle = (a: Point, b: Point): Point => lerp(a, b, 0.5);
export const roundPoint = (a: Point): Point => [Math.round(a[0]), Math.round(a[1])];

/** The vector of length 1 along a; [1, 0] for the zero vector. */
export function unit(a: Point): Point {
  const n = length(a);
  return n === 0 ? [1, 0] : [a[0] / n, a[1] / n];
}

/** Sine and cosine rounded to 1e-12, exact at multiples of 90 degrees: built-ins may differ in the last bit between machines. */
export function sinCos(degrees: number): { readonly sin: number; readonly cos: number } {
  const d = ((degrees % 360) + 360) % 360;
  if (d === 0) return { sin: 0, cos: 1 };
  if (d === 90) return { sin: 1, cos: 0 };
  if (d === 180) return { sin: 0, cos: -1 };
  if (d === 270) return { sin: -1, cos: 0 };
  const r = (d * Math.PI) / 180;
  return { sin: Math.round(Math.sin(r) * 1e12) / 1e12, cos: Math.round(Math.cos(r) * 1e12) / 1e12 };
}

/** a turned clockwise (on the page) by degrees about the origin. */
export function turn(a: Point, degrees: number): Point {
  const { sin, cos } = sinCos(degrees);
  return [a[0] * cos - a[1] * sin, a[0] * sin + a[1] * cos];
}

/** Direction of a vector in degrees clockwise from +x, in [0, 360), rounded to 1e-9. */
export function bearing(a: Point): number {
  const d = (Math.atan2(a[1], a[0]) * 180) / Math.PI;
  const r = Math.round(((d + 360) % 360) * 1e9) / 1e9;
  return r === 360 ? 0 : r;
}
