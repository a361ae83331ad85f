import type { Point } from "../../geometry";
import type { Ground } from "./hall";
import type { Interval, Lines } from "./lines";
import { flipUnit } from "./settle";
import type { Unit } from "./units";

/** Heights looked at between those where the floor has a corner, mm apart. */
const STEP = 150;

/** The most units that a line holds at whole millimetres, each as far left as it goes. */
export function rowOf(line: readonly Interval[], pitch: number): number[] {
  const out: number[] = [];
  let next = -Infinity;
  for (const [l, r] of line) for (let x = Math.max(Math.ceil(l - 1e-6), next); x <= r + 1e-6; x += pitch) { out.push(x); next = x + pitch; }
  return out;
}

/** How many those are. */
export function rowMost(line: readonly Interval[], pitch: number): number {
  let n = 0, next = -Infinity;
  for (const [l, r] of line) {
    const from = Math.max(Math.ceil(l - 1e-6), next), k = Math.floor((Math.floor(r + 1e-6) - from) / pitch) + 1;
    if (k > 0) { n += k; next = from + k * pitch; }
  }
  return n;
}

/** Heights at which rows may run: from each corner of the floor up and down by whole pitches, and some between. */
function heights(lines: Lines, pitch: number): readonly number[] {
  const out = new Set<number>();
  const put = (y: number): void => { if (y >= lines.minY && y <= lines.maxY) out.add(y); };
  for (let k = 0; k <= 2; k++) {
    for (const y of lines.begins) put(Math.ceil(y - 1e-6) + k * pitch);
    for (const y of lines.ends) put(Math.floor(y + 1e-6) - k * pitch);
  }
  for (let y = Math.ceil(lines.minY); y <= lines.maxY; y += pitch) put(y);
  for (let y = Math.floor(lines.maxY); y >= lines.minY; y -= pitch) put(y);
  for (let y = Math.ceil(lines.minY); y <= lines.maxY; y += STEP) put(y);
  return [...out].sort((a, b) => a - b);
}

/** Rows of a unit at least a pitch apart that hold the most together: exact over the heights looked at. */
function level(unit: Unit, lines: Lines): Point[] {
  const ys = heights(lines, unit.py);
  const best: { total: number; row: boolean; before: number }[] = [];
  let j = -1;
  ys.forEach((y, i) => {
    while (j + 1 < i && (ys[j + 1] as number) <= y - unit.py) j++;
    const take = rowMost(lines.at(y), unit.px) + (j >= 0 ? (best[j]?.total ?? 0) : 0);
    const skip = best[i - 1]?.total ?? 0;
    best.push(take > skip ? { total: take, row: true, before: j } : { total: skip, row: false, before: i - 1 });
  });
  const out: Point[] = [];
  for (let i = best.length - 1; i >= 0;) {
    const b = best[i];
    if (!b) break;
    const y = ys[i] as number;
    if (b.row) for (const x of rowOf(lines.at(y), unit.px)) out.push([x, y]);
    i = b.before;
  }
  return out.reverse();
}

/** The fullest rows or columns of a unit. */
export function fullestRows(unit: Unit, ground: Ground | null): readonly Point[] {
  if (!ground) return [];
  const across = level(unit, ground.level), down = level(flipUnit(unit), ground.upright);
  return down.length > across.length ? down.map(([x, y]): Point => [y, x]) : across;
}
