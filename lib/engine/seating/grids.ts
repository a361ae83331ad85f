import type { Point } from "../../geometry";
import type { Ground, Hall } from "./hall";
import { countOn, pointsOn, type Interval, type Lines } from "./lines";
import { rowMost } from "./rows";
import { flipUnit, settle } from "./settle";
import type { Unit } from "./units";

/** A lattice of positions true to the hall's axes: every `step`-th row may stand half a pitch over. */
export type Grid = { readonly px: number; readonly py: number; readonly x0: number; readonly y0: number; readonly staggered: boolean };
export type Standings = { readonly points: readonly Point[]; readonly grid: Grid; readonly score: number };

export type GridRow = { readonly y: number; readonly line: readonly Interval[]; /** Half a pitch over. */ readonly over: boolean };
/** The rows of a lattice that meet the floor: where each lies on it, and whether its positions stand half a pitch over. */
export function gridRows({ py, y0, staggered }: Pick<Grid, "py" | "y0" | "staggered">, lines: Lines): readonly GridRow[] {
  const out: GridRow[] = [], first = Math.ceil((lines.minY - y0) / py - 1e-9);
  for (let j = first; y0 + j * py <= lines.maxY + 1e-6; j++) {
    const y = y0 + j * py, line = lines.at(y);
    if (line.length > 0) out.push({ y, line, over: staggered && Math.abs(j % 2) === 1 });
  }
  return out;
}
/** Where the positions of a row begin. */
const startOf = ({ over }: GridRow, x0: number, px: number): number => (over ? x0 + Math.round(px / 2) : x0);
/** How many positions rows hold, the lattice begun at `x0`. */
export const rowsCount = (rows: readonly GridRow[], x0: number, px: number): number => rows.reduce((n, r) => n + countOn(r.line, startOf(r, x0, px), px), 0);
export const gridCount = (grid: Grid, lines: Lines): number => rowsCount(gridRows(grid, lines), grid.x0, grid.px);
export const gridPoints = (grid: Grid, lines: Lines): Point[] => gridRows(grid, lines).flatMap((r) => pointsOn(r.line, r.y, startOf(r, grid.x0, grid.px), grid.px));

/** Origins along one axis: on or astride the line of symmetry when there is one, else justified, centred and a few between. */
function origins(lo: number, hi: number, pitch: number, mirror: number | null, steps: number): readonly number[] {
  const half = Math.round(pitch / 2);
  if (mirror !== null) return [Math.round(mirror), Math.round(mirror) - half];
  const mid = Math.round((lo + hi) / 2);
  const set = new Set([Math.ceil(lo), Math.floor(hi), mid, mid - half]);
  for (let i = 1; i < steps; i++) set.add(Math.ceil(lo) + Math.round((pitch * i) / steps));
  return [...set];
}

type Mirrors = { readonly mirrorX: number | null; readonly mirrorY: number | null };
/** A point mirrored at the hall's line of symmetry; itself where there is none. */
export const imageIn = ({ mirrorX, mirrorY }: Mirrors, [x, y]: Point): Point => [mirrorX === null ? x : 2 * mirrorX - x, mirrorY === null ? y : 2 * mirrorY - y];

/** Share of points whose mirror image is a point too, within 30 mm; 1 where there is no line of symmetry. */
export function symmetry(points: readonly Point[], mirrorX: number | null, mirrorY: number | null): number {
  if (mirrorX === null && mirrorY === null) return 1;
  const hit = points.filter((p) => { const q = imageIn({ mirrorX, mirrorY }, p); return points.some((r) => Math.abs(r[0] - q[0]) + Math.abs(r[1] - q[1]) < 30); });
  return points.length === 0 ? 1 : hit.length / points.length;
}

/** n of the points: leaves out those farthest from the focus, each with its mirror image while two may go. */
export function choose(points: readonly Point[], n: number, hall: Hall, middle: Point): readonly Point[] {
  const left = [...points];
  const to = hall.focus ?? middle;
  const twin = (p: Point): number => { const q = imageIn(hall, p); return left.findIndex((r) => r !== p && Math.abs(r[0] - q[0]) + Math.abs(r[1] - q[1]) < 30); };
  const rowSize = (p: Point): number => left.filter((q) => Math.abs(q[1] - p[1]) < 30).length;
  const cost = (p: Point): number => Math.hypot(p[0] - to[0], p[1] - to[1]) - 400 * rowSize(p);
  while (left.length > n) {
    const spare = left.length - n;
    const ranked = left.map((p) => ({ p, c: cost(p), t: twin(p), selfTwin: Math.abs(imageIn(hall, p)[0] - p[0]) + Math.abs(imageIn(hall, p)[1] - p[1]) < 30 }))
      .sort((a, b) => b.c - a.c || a.p[1] - b.p[1] || a.p[0] - b.p[0]);
    const odd = spare % 2 === 1;
    const pick = (odd ? ranked.find((r) => r.selfTwin || r.t < 0) : undefined) ?? ranked.find((r) => spare >= 2 || r.selfTwin || r.t < 0) ?? ranked[0];
    if (!pick) break;
    const mate = pick.t >= 0 && !pick.selfTwin && spare >= 2 && (hall.mirrorX !== null || hall.mirrorY !== null) ? left[pick.t] : undefined;
    left.splice(left.indexOf(pick.p), 1);
    if (mate) left.splice(left.indexOf(mate), 1);
  }
  return left;
}

/** Two lines nearer than this, of the least pitch, are one line that was missed. */
const MISSED = 0.3;
/** Units that stand a hand's breadth off a line that others keep. */
function nearMisses(lines: readonly (readonly [number, number])[], pitch: number): number {
  const order = [...lines].sort((a, b) => a[0] - b[0]);
  return order.reduce((n, [v, k], i) => { const next = order[i + 1]; return n + (next && next[0] - v < MISSED * pitch ? Math.min(k, next[1]) : 0); }, 0);
}

/** What it is worth that each unit has its mirror image: one that lacks it is seen at once. */
const WHOLE = 0.3;

/** How composed units look: symmetry, rows, even and generous gaps, use of the floor; higher is better, some 2 at best. */
export function judge(points: readonly Point[], unit: Unit, hall: Hall, region: Lines): number {
  if (points.length === 0) return -9;
  const sym = symmetry(points, hall.mirrorX, hall.mirrorY);
  const rows = new Map<number, number>(), cols = new Map<number, number>();
  const near = (m: Map<number, number>, v: number): number => { for (const k of m.keys()) if (Math.abs(k - v) < 30) return k; return v; };
  for (const [x, y] of points) {
    const r = near(rows, y), c = near(cols, x);
    rows.set(r, (rows.get(r) ?? 0) + 1); cols.set(c, (cols.get(c) ?? 0) + 1);
  }
  const fullest = Math.max(1, ...rows.values());
  const ragged = [...rows.values()].reduce((s, k) => s + (fullest - k) / fullest, 0) / rows.size;
  const lines = (rows.size + cols.size) / (2 * points.length);
  const beside = nearMisses([...cols], unit.px) + nearMisses([...rows], unit.py);
  const slack = points.map((p, i) => {
    let least = 1_000;
    points.forEach((q, j) => {
      if (i === j) return;
      const dx = Math.abs(p[0] - q[0]), dy = Math.abs(p[1] - q[1]);
      least = Math.min(least, unit.round ? Math.hypot(dx, dy) - unit.px : Math.max(dx - unit.px, dy - unit.py));
    });
    return least;
  });
  const mean = slack.reduce((s, v) => s + v, 0) / slack.length;
  const uneven = Math.sqrt(slack.reduce((s, v) => s + (v - mean) ** 2, 0) / slack.length) / 1_000;
  const cx = points.reduce((s, p) => s + p[0], 0) / points.length, cy = points.reduce((s, p) => s + p[1], 0) / points.length;
  const midX = (region.minX + region.maxX) / 2, midY = (region.minY + region.maxY) / 2;
  const size = Math.hypot(region.maxX - region.minX, region.maxY - region.minY) || 1;
  const off = Math.hypot(cx - midX, cy - midY) / size;
  const to = hall.focus;
  const far = to ? points.reduce((s, p) => s + Math.hypot(p[0] - to[0], p[1] - to[1]), 0) / points.length / size : 0;
  return 2 * hall.even * sym + (sym === 1 ? WHOLE * hall.even : 0) - 0.6 * ragged - 2.5 * Math.max(0, lines - 1 / Math.sqrt(points.length)) - 0.7 * (beside / points.length) + 0.6 * (mean / 1_000) - 0.8 * uneven - 1.2 * off - 0.4 * far;
}

/** Grids that are looked at closely, the most promising first; where fewer are, the sweep is coarser too. */
const ROUGH = 40;
/** How much wider than the least pitch rows and columns may stand; what shares a span out evenly is tried besides. */
const STRETCHES = [0, 0.03, 0.06, 0.1, 0.15, 0.2, 0.27, 0.35, 0.45, 0.6], FEW_STRETCHES = [0, 0.06, 0.15, 0.27];

type Found = { readonly grid: Grid; readonly total: number; readonly pre: number; readonly points?: readonly Point[] };

/** How promising a crossing is that holds just the number. */
const CROSSED = 0.3;

/** Rows at an even pitch, crossed by upright lines wherever those hold most: columns and doors rarely keep to a pitch. */
function crossings(hall: Hall, unit: Unit, { level: lines, upright }: Ground, n: number): Found[] {
  const out: Found[] = [];
  const flipped = { unit: flipUnit(unit), lines: upright, mirrorX: hall.mirrorY, mirrorY: hall.mirrorX };
  for (const [way, swap] of [[{ unit, lines, mirrorX: hall.mirrorX, mirrorY: hall.mirrorY }, false], [flipped, true]] as const) {
    const span = way.lines.maxY - way.lines.minY;
    const most = Math.floor(span / way.unit.py) + 1;
    for (let rows = Math.min(most, 14); rows >= Math.max(1, most - 3); rows--) {
      for (const py of new Set([way.unit.py, Math.max(way.unit.py, rows > 1 ? Math.floor(span / (rows - 1)) : 0), Math.max(way.unit.py, Math.floor(span / rows))])) {
        const reach = (rows - 1) * py;
        if (reach > span + 0.5) continue;
        const free = Math.max(0, span - reach);
        const starts = way.mirrorY !== null ? [Math.round(way.mirrorY - reach / 2)] : [0, 0.25, 0.5, 0.75, 1].map((k) => Math.round(way.lines.minY + 0.5 + (free - 1) * k));
        for (const y0 of new Set(starts)) {
          const ys = Array.from({ length: rows }, (_, j) => y0 + j * py);
          if (ys.reduce((s, y) => s + rowMost(way.lines.at(y), way.unit.px), 0) < n) continue;
          const points = bestColumns(ys, way.unit, way.lines, way.mirrorX);
          if (points.length < n) continue;
          out.push({
            grid: { px: way.unit.px, py, x0: 0, y0, staggered: false }, total: points.length,
            points: swap ? points.map(([x, y]) => [y, x] as const) : points, pre: CROSSED - 0.06 * (points.length - n),
          });
        }
      }
    }
  }
  return out;
}

function lies(row: readonly Interval[], x: number): boolean {
  for (const [l, r] of row) if (x >= l - 0.01 && x <= r + 0.01) return true;
  return false;
}
/** How many rows an upright line crosses inside the floor. */
function crossed(rows: readonly (readonly Interval[])[], x: number): number {
  let n = 0;
  for (const row of rows) if (lies(row, x)) n++;
  return n;
}

/** Upright lines at least a pitch apart that cross the rows inside the floor most often, mirrored where there is a mirror. */
function bestColumns(ys: readonly number[], unit: Unit, lines: Lines, mirror: number | null): Point[] {
  const STEP = 40;
  const rows = ys.map((y) => lines.at(y));
  const double = mirror === null ? null : Math.round(2 * mirror);
  const last = double === null ? lines.maxX : double / 2 - unit.px / 2;
  const xs: number[] = [];
  for (let x = Math.ceil(lines.minX); x <= last; x += STEP) xs.push(x);
  if (last >= lines.minX && Math.floor(last) > (xs[xs.length - 1] ?? -Infinity)) xs.push(Math.floor(last));
  const worth = xs.map((x) => crossed(rows, x) + (double === null ? 0 : crossed(rows, double - x)));
  const run = (limit: number): { readonly total: number; readonly picks: readonly number[] } => {
    const best: { total: number; pick: number; before: number }[] = [];
    let j = -1;
    for (let i = 0; i < xs.length; i++) {
      const x = xs[i] as number;
      while (j + 1 < i && (xs[j + 1] as number) <= x - unit.px) j++;
      const before = j >= 0 ? (best[j]?.total ?? 0) : 0;
      const take = x <= limit ? before + (worth[i] ?? 0) : -1, skip = i > 0 ? (best[i - 1]?.total ?? 0) : 0;
      best.push(take > skip ? { total: take, pick: i, before: j } : { total: skip, pick: -1, before: i - 1 });
    }
    const picks: number[] = [];
    for (let i = best.length - 1; i >= 0;) { const b = best[i]; if (!b) break; if (b.pick >= 0) picks.push(xs[b.pick] as number); i = b.before; }
    return { total: best[best.length - 1]?.total ?? 0, picks };
  };
  const astride = run(last);
  let picks = double === null ? astride.picks : astride.picks.flatMap((x) => [x, double - x]);
  if (double !== null && double % 2 === 0) {
    const mid = double / 2, onAxis = run(mid - unit.px), own = crossed(rows, mid);
    if (onAxis.total + own > astride.total) picks = [mid, ...onAxis.picks.flatMap((x) => [x, double - x])];
  }
  return ys.flatMap((y, i) => picks.filter((x) => lies(rows[i] ?? [], x)).map((x): Point => [x, y]));
}

/** How many are kept and looked at closely; `turned`: level grids of rounds turned by 45 degrees alone, and what tells that they still are. */
type GridsAsk = { readonly keep: number; readonly rough?: number | undefined; readonly turned?: ((points: readonly Point[]) => boolean) | undefined };

/** Grids of a unit that hold at least n, the most composed first. */
export function composedGrids(hall: Hall, unit: Unit, ground: Ground | null, n: number, { keep, rough: looked = ROUGH, turned }: GridsAsk): readonly Standings[] {
  const quick = looked < ROUGH;
  if (!ground || n < 1) return [];
  const lines = ground.level;
  const found: Found[] = [];
  const stretch = quick ? FEW_STRETCHES : STRETCHES;
  const spanX = lines.maxX - lines.minX, spanY = lines.maxY - lines.minY;
  if (!(spanX >= 0 && spanY >= 0)) return [];
  // Pitches that share a span out evenly come first to mind; the others step up from the least.
  const pitches = (least: number, span: number): number[] => {
    const even = Array.from({ length: Math.min(40, Math.floor(span / least)) }, (_, i) => Math.floor(span / (i + 1))).filter((p) => p >= least && p <= least * (quick ? 1.5 : 1.8));
    return [...new Set([...stretch.map((s) => Math.round(least * (1 + s))), ...even, ...(span < least ? [least] : [])])];
  };
  const xPitches = pitches(unit.px, spanX).map((px) => ({ px, starts: origins(lines.minX, lines.maxX, px, hall.mirrorX, quick ? 2 : 4) }));
  // No more are kept than will be looked at: what is less promising than the last of those is not written down.
  let least = -Infinity;
  const scan = (staggered: boolean, xs: typeof xPitches, leastY: number, pys = pitches(leastY, spanY)): void => {
    for (const py of pys) for (const y0 of origins(lines.minY, lines.maxY, py, hall.mirrorY, quick ? 3 : 6)) {
      const rows = gridRows({ py, y0, staggered }, lines);
      if (rows.reduce((most, r) => most + rowMost(r.line, unit.px), 0) < n) continue;
      for (const { px, starts } of xs) for (const x0 of starts) {
        const gx = Math.min(1, (px - unit.px) / 700), gy = Math.min(1, (py - leastY) / 700);
        const bare = 0.5 * (gx + gy) - 0.4 * Math.abs(px - py - unit.px + leastY) / 2_000;
        if (bare - (staggered ? 0.15 : 0) <= least) break;
        const total = rowsCount(rows, x0, px);
        if (total < n) continue;
        const pre = bare - 0.12 * (total - n) - (staggered ? 0.15 : 0);
        if (pre <= least) continue;
        found.push({ grid: { px, py, x0, y0, staggered }, total, pre });
        if (found.length >= 4 * looked) { found.sort((a, b) => b.pre - a.pre).length = looked; least = found[looked - 1]?.pre ?? -Infinity; }
      }
    }
  };
  // Rows at half the pitch of their places, each half a pitch over, are a level grid turned by 45 degrees.
  if (turned) for (const half of STRETCHES.map((s) => Math.ceil(unit.px * Math.SQRT1_2 * (1 + s)))) scan(true, [{ px: 2 * half, starts: origins(lines.minX, lines.maxX, 2 * half, hall.mirrorX, 4) }], half, [half]);
  else scan(false, xPitches, unit.py);
  if (unit.round && !turned) for (const x of xPitches) scan(true, [x], Math.ceil(Math.max(Math.sqrt(Math.max(0, unit.px ** 2 - Math.floor(x.px / 2) ** 2)), unit.py / 2)));
  // No crossing is more promising than this; where enough are, none would be looked at.
  const ahead = found.filter((f) => f.pre >= CROSSED).length;
  if (ahead < looked) found.push(...crossings(hall, unit, ground, n));
  found.sort((a, b) => b.pre - a.pre);
  const middle: Point = [(lines.minX + lines.maxX) / 2, (lines.minY + lines.maxY) / 2];
  const rough = found.slice(0, looked).flatMap(({ grid, points: given }) => {
    const points = choose(given ?? gridPoints(grid, lines), n, hall, middle);
    return turned && !turned(points) ? [] : [{ points, grid, score: judge(points, unit, hall, lines) }];
  }).sort((a, b) => b.score - a.score).slice(0, keep * 3);
  return rough.map(({ points: from, grid }) => {
    // Evened out line by line, a turned grid would lose its angle.
    const points = turned ? from : settle(from, { unit, level: lines, upright: ground.upright, hall }, { align: false });
    return { points, grid, score: judge(points, unit, hall, lines) - (grid.staggered ? 0.15 : 0) };
  }).sort((a, b) => b.score - a.score).slice(0, keep);
}
