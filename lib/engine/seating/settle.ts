import type { Point } from "../../geometry";
import type { Hall } from "./hall";
import type { Lines } from "./lines";
import type { Unit } from "./units";

/** Least distance along x between two units whose rows lie dy apart; 0 when they pass each other. */
export function needX(unit: Unit, dy: number): number {
  if (!unit.round) return Math.abs(dy) < unit.py ? unit.px : 0;
  return Math.abs(dy) < unit.px ? Math.sqrt(unit.px * unit.px - dy * dy) : 0;
}

/** The same floor and unit with x and y exchanged. */
export const flipUnit = (u: Unit): Unit => ({ ...u, w: u.h, h: u.w, px: u.py, py: u.px, upright: !u.upright });
const flip = ([x, y]: Point): Point => [y, x];

type Floor = { readonly unit: Unit; readonly level: Lines; readonly upright: Lines; readonly hall: Hall };

/** How far a unit may slide along its level line, to either side. */
function slide(points: readonly Point[], i: number, unit: Unit, lines: Lines): readonly [number, number] {
  const [x, y] = points[i] as Point;
  const on = lines.at(y).find(([l, r]) => x >= l - 0.01 && x <= r + 0.01);
  if (!on) return [0, 0];
  let left = x - on[0], right = on[1] - x;
  points.forEach((q, j) => {
    if (j === i) return;
    const need = needX(unit, q[1] - y);
    if (need === 0) return;
    if (q[0] >= x) right = Math.min(right, q[0] - x - need);
    else left = Math.min(left, x - q[0] - need);
  });
  return [Math.max(0, left), Math.max(0, right)];
}

const cluster = (values: readonly number[], within: number): number[][] => {
  const order = values.map((v, i) => ({ v, i })).sort((a, b) => a.v - b.v || a.i - b.i);
  const out: number[][] = [];
  let last = -Infinity;
  for (const { v, i } of order) {
    const head = out[out.length - 1];
    if (head && v - last <= within) head.push(i); else { out.push([i]); last = v; }
  }
  return out;
};

/** One pass over the upright lines of units: each goes to the middle of its play, with its mirror image. */
function passX(points: Point[], floor: { unit: Unit; lines: Lines; mirror: number | null }): number {
  let moved = 0;
  const groups = cluster(points.map((p) => p[0]), 0.5);
  const double = floor.mirror === null ? null : Math.round(2 * floor.mirror);
  for (const g of groups) {
    const x = (points[g[0] ?? 0] as Point)[0];
    let mate: number[] = [];
    if (double !== null) {
      const want = double - x;
      if (Math.abs(want - x) <= 1) continue;
      mate = groups.find((o) => Math.abs((points[o[0] ?? 0] as Point)[0] - want) <= 1) ?? [];
      if (mate.length > 0 && x > want) continue;
    }
    let left = Infinity, right = Infinity;
    for (const i of g) { const [l, r] = slide(points, i, floor.unit, floor.lines); left = Math.min(left, l); right = Math.min(right, r); }
    for (const i of mate) { const [l, r] = slide(points, i, floor.unit, floor.lines); left = Math.min(left, r); right = Math.min(right, l); }
    const by = Math.trunc((right - left) / 2);
    if (by === 0) continue;
    moved += Math.abs(by);
    for (const i of g) points[i] = [(points[i] as Point)[0] + by, (points[i] as Point)[1]];
    for (const i of mate) points[i] = [(points[i] as Point)[0] - by, (points[i] as Point)[1]];
  }
  return moved;
}

/** How far apart units may stand and still be brought onto one line, mm: near ones first. */
const ALIGNED = [450, 900, 1_400] as const;

/** Brings units that almost line up onto one upright line, where they may all go there; each with its mirror image where there is a mirror. */
function alignX(points: Point[], floor: { unit: Unit; lines: Lines; mirror: number | null }): void {
  const double = floor.mirror === null ? null : Math.round(2 * floor.mirror);
  const xOf = (i: number): number => (points[i] as Point)[0];
  const twin = (i: number): number => double === null ? -1 : points.findIndex((q) => Math.abs(q[0] - (double - xOf(i))) <= 1 && Math.abs(q[1] - (points[i] as Point)[1]) <= 1);
  for (const within of ALIGNED) for (const all of cluster(points.map((p) => p[0]), within)) {
    const g = double === null ? all : all.filter((i) => 2 * xOf(i) < double - 1);
    const xs = [...new Set(g.map(xOf))].sort((a, b) => a - b);
    if (xs.length < 2) continue;
    const mates = double === null ? [] : g.map(twin);
    if (mates.includes(-1)) continue;
    const often = [...xs].sort((a, b) => g.filter((i) => xOf(i) === b).length - g.filter((i) => xOf(i) === a).length);
    for (const to of [Math.round(xs.reduce((s, x) => s + x, 0) / xs.length), ...often]) {
      const next = points.map((p, i): Point => (g.includes(i) ? [to, p[1]] : mates.includes(i) && double !== null ? [double - to, p[1]] : p));
      if (![...g, ...mates].every((i) => fits(next, i, floor.unit, floor.lines))) continue;
      for (const i of [...g, ...mates]) points[i] = next[i] as Point;
      break;
    }
  }
}

export function fits(points: readonly Point[], i: number, unit: Unit, lines: Lines): boolean {
  const [x, y] = points[i] as Point;
  if (!lines.at(y).some(([l, r]) => x >= l - 0.01 && x <= r + 0.01)) return false;
  return points.every((q, j) => j === i || Math.abs(q[0] - x) >= needX(unit, q[1] - y) - 1e-6);
}

/** Evens out gaps: every line of units moves to the middle of its play, level and upright in turn. Symmetry is kept. */
export function settle(points: readonly Point[], floor: Floor, opts: { readonly align: boolean; readonly passes?: number }): readonly Point[] {
  let out = [...points];
  const { unit, hall } = floor;
  const across = { unit, lines: floor.level, mirror: hall.mirrorX };
  const down = { unit: flipUnit(unit), lines: floor.upright, mirror: hall.mirrorY };
  if (opts.align) {
    alignX(out, across);
    out = out.map(flip); alignX(out, down); out = out.map(flip);
  }
  for (let k = 0; k < (opts.passes ?? 14); k++) {
    let moved = passX(out, across);
    out = out.map(flip);
    moved += passX(out, down);
    out = out.map(flip);
    if (moved < 20) break;
  }
  return out;
}
