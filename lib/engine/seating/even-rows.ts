import type { Point } from "../../geometry";
import { judge, type Standings } from "./grids";
import type { Ground, Hall } from "./hall";
import { cut, type Interval, type Lines } from "./lines";
import { rowMost, rowOf } from "./rows";
import { fits, flipUnit, needX } from "./settle";
import type { Unit } from "./units";

/** Fewer units than this make no rows to speak of. */
const FEWEST = 5;
/** Rows that are tried beside the fewest that hold the number. */
const ROWS_MORE = 2;
/** Where free floor is to spare, units of a row stand no farther apart than this, of the least pitch. */
const WIDEST = 1.7;
/** What rows of their own length look like beside a grid whose columns run through. */
const LESS = 0.3;

/**
 * Straight rows at an even pitch, each as full as its own length allows and evenly spread over it: for rooms whose walls slant, or whose
 * columns and doors keep to no pitch. Those that hold n, the most composed first.
 */
export function evenRows(hall: Hall, unit: Unit, ground: Ground | null, n: number): readonly Standings[] {
  if (!ground || n < FEWEST) return [];
  const out: Standings[] = [];
  for (const swap of [false, true]) {
    const u = swap ? flipUnit(unit) : unit, lines = swap ? ground.upright : ground.level, mirror = swap ? hall.mirrorY : hall.mirrorX;
    const floor: Floor = { lines, unit: u, mirror };
    for (const ys of [...heightsOf(floor, n), ...closeHeights(floor, n)]) {
      const points = rowsAt(floor, ys.rows, ys.counts).flat();
      if (points.length !== n || !points.every((_, i) => fits(points, i, u, lines))) continue;
      const placed = swap ? points.map(([x, y]): Point => [y, x]) : points;
      out.push({ points: placed, grid: { px: unit.px, py: unit.py, x0: 0, y0: 0, staggered: false }, score: judge(placed, unit, hall, ground.level) - LESS });
    }
  }
  return out.sort((a, b) => b.score - a.score).slice(0, 2);
}

type Floor = { readonly lines: Lines; readonly unit: Unit; readonly mirror: number | null };
type Rows = { readonly rows: readonly number[]; readonly counts: readonly number[] };

/** Ways of running the rows: few more than are needed, spread over the whole floor or drawn together in its middle. */
function heightsOf({ lines, unit }: Floor, n: number): readonly Rows[] {
  const out: Rows[] = [], span = lines.maxY - lines.minY, most = Math.min(20, Math.floor(span / unit.py) + 1);
  let found = 0;
  for (let k = 1; k <= most && found <= ROWS_MORE; k++) {
    const widest = k > 1 ? span / (k - 1) : 0;
    let held = false;
    for (const pitch of new Set([Math.floor(widest), Math.floor(Math.min(widest, Math.max(unit.py, span / k))), unit.py])) for (const at of [0.5, 0, 1]) {
      if (k > 1 && pitch < unit.py) continue;
      const y0 = Math.ceil(lines.minY + (span - (k - 1) * pitch) * at - (at === 1 ? 1 : 0) + (at === 0 ? 1 : 0));
      const rows = Array.from({ length: k }, (_, i) => y0 + i * pitch), caps = rows.map((y) => rowMost(lines.at(y), unit.px));
      if (caps.reduce((s, c) => s + c, 0) < n) continue;
      held = true;
      out.push({ rows, counts: shared(caps, n) });
      if ((k - 1) * pitch > span - 2) break;
    }
    if (held) found++;
  }
  return out;
}

/** Rows of rounds may lie nearer than a pitch where each stands in the gaps of the one before: no nearer than this, of the pitch. */
const CLOSEST = 0.87;

/** Ways of running rows closer than a pitch: as many as the floor takes, spread over the whole of it. */
function closeHeights(floor: Floor, n: number): readonly Rows[] {
  const { lines, unit } = floor, span = lines.maxY - lines.minY;
  if (!unit.round) return [];
  const out: Rows[] = [], plain = Math.floor(span / unit.py) + 1, most = Math.min(20, Math.floor(span / (CLOSEST * unit.py)) + 1);
  for (let k = Math.max(2, plain + 1); k <= most; k++) {
    const pitch = Math.floor((span - 1) / (k - 1)), rows = Array.from({ length: k }, (_, i) => Math.ceil(lines.minY) + i * pitch);
    const caps = rowsAt(floor, rows, null).map((r) => r.length);
    if (caps.reduce((s, c) => s + c, 0) >= n) out.push({ rows, counts: shared(caps, n) });
  }
  return out;
}

/** The units of each row: so many as it is to hold, or as go. A row keeps off the one before it. */
function rowsAt({ lines, unit, mirror }: Floor, rows: readonly number[], counts: readonly number[] | null): readonly (readonly Point[])[] {
  const out: (readonly Point[])[] = [];
  rows.forEach((y, i) => {
    let line = lines.at(y);
    for (const [x, above] of out[i - 1] ?? []) { const need = needX(unit, y - above); if (need > 0) line = cut(line, x - need, x + need); }
    out.push(spread(line, { y, count: counts?.[i] ?? rowMost(line, unit.px), unit, mirror }));
  });
  return out;
}

/** n shared over rows of these capacities: always taken from the fullest, the outer ones of equals first. */
function shared(caps: readonly number[], n: number): readonly number[] {
  const counts = [...caps], mid = (caps.length - 1) / 2;
  for (let over = caps.reduce((s, c) => s + c, 0) - n; over > 0; over--) {
    let pick = 0;
    counts.forEach((c, i) => { const b = counts[pick] ?? 0; if (c > b || (c === b && Math.abs(i - mid) > Math.abs(pick - mid))) pick = i; });
    counts[pick] = (counts[pick] ?? 1) - 1;
  }
  return counts;
}

type Row = { readonly y: number; readonly count: number; readonly unit: Unit; readonly mirror: number | null };

/** So many units along one row: shared over its stretches of floor, each stretch evenly filled about its middle. */
function spread(line: readonly Interval[], { y, count, unit, mirror }: Row): readonly Point[] {
  const tight = rowOf(line, unit.px), per = line.map(([l, r]) => tight.filter((x) => x >= l - 0.5 && x <= r + 0.5).length);
  const middleOf = ([l, r]: Interval): number => (l + r) / 2;
  const centre = mirror ?? ((line[0]?.[0] ?? 0) + (line[line.length - 1]?.[1] ?? 0)) / 2;
  for (let over = tight.length - count; over > 0; over--) {
    let pick = -1, most = -Infinity;
    line.forEach((on, i) => {
      if ((per[i] ?? 0) < 1) return;
      // The stretch that is packed closest gives up first, the outer of equals.
      const close = (per[i] ?? 0) / (on[1] - on[0] + unit.px) * 1e4 + Math.abs(middleOf(on) - centre) / 1e6;
      if (close > most) { most = close; pick = i; }
    });
    if (pick < 0) return [];
    per[pick] = (per[pick] ?? 1) - 1;
  }
  const out: Point[] = [];
  let last = -Infinity;
  line.forEach((on, i) => {
    const m = per[i] ?? 0, [l, r] = [Math.max(Math.ceil(on[0]), last + unit.px), Math.floor(on[1])];
    if (m < 1) return;
    const pitch = m > 1 ? Math.min(Math.floor((r - l) / (m - 1)), Math.max(unit.px, Math.floor((r - l + unit.px) / m)), Math.round(unit.px * WIDEST)) : 0;
    const from = l + Math.floor((r - l - (m - 1) * pitch) / 2);
    for (let k = 0; k < m; k++) { last = from + k * pitch; out.push([last, y]); }
  });
  return out;
}
