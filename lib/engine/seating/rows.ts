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

/** Heights of rows of a unit, at least a pitch apart, that hold the most together: exact over the heights looked at. */
export function fullestHeights(unit: Unit, lines: Lines): readonly number[] {
  const ys = heights(lines, unit.py);
  const best: { total: number; row: boolean; before: number }[] = [];
  let j = -1;
  ys.forEach((y, i) => {
    while (j + 1 < i && (ys[j + 1] as number) <= y - unit.py) j++;
    const take = rowMost(lines.at(y), unit.px) + (j >= 0 ? (best[j]?.total ?? 0) : 0);
    const skip = best[i - 1]?.total ?? 0;
    best.push(take > skip ? { total: take, row: true, before: j } : { total: skip, row: false, before: i - 1 });
  });
  const out: number[] = [];
  for (let i = best.length - 1; i >= 0;) {
    const b = best[i];
    if (!b) break;
    if (b.row) out.push(ys[i] as number);
    i = b.before;
  }
  return out.reverse();
}

/** The most that such rows hold, each as far left as it goes. */
const level = (unit: Unit, lines: Lines): readonly Point[] => fullestHeights(unit, lines).flatMap((y) => rowOf(lines.at(y), unit.px).map((x): Point => [x, y]));
/** The fullest rows, and the fullest columns. */
export const fullestBoth = (unit: Unit, { level: across, upright }: Ground): readonly (readonly Point[])[] => [level(unit, across), level(flipUnit(unit), upright).map(([x, y]): Point => [y, x])];

/** The fullest rows or columns of a unit. */
export function fullestRows(unit: Unit, ground: Ground | null): readonly Point[] {
  if (!ground) return [];
  const [across = [], down = []] = fullestBoth(unit, ground);
  return down.length > across.length ? down : across;
}
