import type { Random } from "../../base";
import { distance, turn, type Point } from "../../geometry";
import { piecesBound } from "../bounds/oler";
import type { Field } from "./field";
import { gridPoints, gridRows, rowsCount, type Grid } from "./grids";
import { turnRegion } from "./hall";
import { linesOf, type Interval, type Lines } from "./lines";
import { Cells } from "./near";

/**
 * Most points of a field, each at least p from the others. Patterns first (level, staggered and stretched, turned to
 * each of the angles, swept over their origins), then one more and one more by pushing overlaps apart.
 */
export function packEqual(field: Field, p: number, opts: { readonly angles: readonly number[]; readonly steps: number; readonly random: Random; readonly ceiling: number }): readonly Point[] {
  let best = patterns(field, p, opts.angles, opts.ceiling);
  for (const dir of [0, 90, 180, 270, 45]) {
    if (best.length >= opts.ceiling) break;
    const fill = cornerFill(field, p, dir, []);
    if (fill.length > best.length) best = fill;
  }
  if (best.length < opts.ceiling) best = cornerFill(field, p, 0, best);
  let budget = opts.steps;
  let lost = 0, alike = 0, last = Infinity;
  // Past the bound there is nothing to search for.
  const most = Math.min(opts.ceiling, piecesBound(field.region, p));
  const thrown = (k: number): readonly Point[] => {
    const by = (THROWN[k] ?? 0) * p;
    return by === 0 ? best : best.map(([x, y]) => field.pull([x + (opts.random() - 0.5) * by, y + (opts.random() - 0.5) * by]));
  };
  while (best.length > 0 && best.length < most && budget > 0) {
    const tried = oneMore(field, p + 2, thrown(lost), { budget, random: opts.random });
    budget = tried.left;
    if (!tried.points) {
      alike = Math.abs(tried.least - last) < ALIKE * last ? alike + 1 : 0;
      last = tried.least;
      if (last > SHORT || alike >= 2 || ++lost >= THROWN.length) break;
      continue;
    }
    lost = 0; alike = 0; last = Infinity;
    const snapped = tried.points.map((q) => snap(q, field));
    if (!snapped.every((q) => field.holds(q))) continue;
    best = cornerFill(field, p, 0, snapped);
  }
  return best.slice(0, opts.ceiling);
}

/** Whole millimetres inside the field, the nearest that are. */
function snap(q: Point, field: Field): Point {
  const x = Math.floor(q[0]), y = Math.floor(q[1]);
  const options: Point[] = [[x, y], [x + 1, y], [x, y + 1], [x + 1, y + 1]];
  return options.filter((o) => field.holds(o)).sort((a, b) => distance(a, q) - distance(b, q))[0] ?? [Math.round(q[0]), Math.round(q[1])];
}

/** What rows of a lattice hold at the most, the lattice pushed along them as one likes. */
function mostOn(rows: readonly { readonly line: readonly Interval[] }[], pitch: number): number {
  let n = 0;
  for (const { line } of rows) for (const [l, r] of line) n += Math.floor((r - l) / pitch + 1e-6) + 1;
  return n;
}

function patterns(field: Field, p: number, angles: readonly number[], ceiling: number): readonly Point[] {
  let best: { count: number; by: number; grid: Grid; lines: Lines } | null = null;
  for (const by of angles) {
    if (best && best.count >= ceiling) break;
    const lines = linesOf(turnRegion(field.region, -by));
    const w = lines.maxX - lines.minX, h = lines.maxY - lines.minY;
    const pitch = by % 90 === 0 ? p : p + 1.5;
    for (const stretch of [1, 1.01, 1.03, 1.06, 1.1, 1.15, 1.21, 1.28, 1.36, Math.SQRT2]) for (const staggered of [false, true]) {
      if ((!staggered && stretch > 1) || (best && best.count >= ceiling)) continue;
      const px = Math.ceil(pitch * stretch);
      const py = staggered ? Math.ceil(Math.max(pitch / 2, Math.sqrt(pitch * pitch - Math.floor(px / 2) ** 2))) : Math.ceil(pitch);
      const steps = w * h > 4e8 ? 8 : 14;
      const xs = [...Array.from({ length: steps }, (_, i) => Math.ceil(lines.minX) + Math.round((i * px) / steps)), Math.floor(lines.maxX)];
      const ys = [...Array.from({ length: steps }, (_, i) => Math.ceil(lines.minY) + Math.round((i * py) / steps)), Math.floor(lines.maxY)];
      for (const y0 of ys) {
        const rows = gridRows({ py, y0, staggered }, lines);
        // A row holds no more than its length in pitches, wherever it begins.
        if (best && mostOn(rows, px) <= best.count) continue;
        for (const x0 of xs) {
          const count = rowsCount(rows, x0, px);
          if (!best || count > best.count) best = { count, by, grid: { px, py, x0, y0, staggered }, lines };
        }
      }
    }
  }
  if (!best) return [];
  const { by, grid, lines } = best;
  return gridPoints(grid, lines).map((q) => (by === 0 ? q : snap(turn(q, by), field))).filter((q) => field.holds(q));
}

/** Adds points to the given ones, always the free candidate farthest back along a direction. */
export function cornerFill(field: Field, p: number, direction: number, start: readonly Point[]): Point[] {
  const out = [...start];
  const along = turn([1, 0], direction + 0.5);
  const key = (q: Point): number => q[0] * along[0] + q[1] * along[1];
  const free = (q: Point): boolean => { for (const o of out) if ((o[0] - q[0]) ** 2 + (o[1] - q[1]) ** 2 < p * p - 1e-6) return false; return true; };
  let open: { q: Point; k: number }[] = [];
  const offer = (q: Point): void => { const s = snap(q, field); if (field.holds(s) && free(s)) open.push({ q: s, k: key(s) }); };
  const meet = (c: Point): void => {
    for (const [a, b] of field.edges) {
      const dx = b[0] - a[0], dy = b[1] - a[1], fx = a[0] - c[0], fy = a[1] - c[1];
      const A = dx * dx + dy * dy, B = 2 * (fx * dx + fy * dy), C = fx * fx + fy * fy - (p + 0.8) ** 2;
      const D = B * B - 4 * A * C;
      if (A === 0 || D < 0) continue;
      for (const s of [-1, 1]) { const t = (-B + s * Math.sqrt(D)) / (2 * A); if (t >= 0 && t <= 1) offer([a[0] + t * dx, a[1] + t * dy]); }
    }
    for (const o of out) {
      const d = distance(o, c), r = p + 0.8;
      if (o === c || d === 0 || d > 2 * r) continue;
      const h = Math.sqrt(r * r - (d * d) / 4), mx = (o[0] + c[0]) / 2, my = (o[1] + c[1]) / 2, ux = (c[0] - o[0]) / d, uy = (c[1] - o[1]) / d;
      offer([mx - uy * h, my + ux * h]); offer([mx + uy * h, my - ux * h]);
    }
  };
  for (const q of field.corners) offer(q);
  for (const o of start) meet(o);
  for (;;) {
    let pick: { q: Point; k: number } | undefined;
    for (const o of open) if (!pick || o.k < pick.k || (o.k === pick.k && o.q[1] < pick.q[1])) pick = o;
    if (!pick) return out;
    out.push(pick.q);
    open = open.filter((o) => free(o.q));
    meet(pick.q);
  }
}

/** Points may move by so much, mm, while one round of pushes lasts and still be found next to each other. */
const NEIGHBOURS = 40;

/** Rounds of pushes before one point more is given up. */
const ROUNDS = 5_000;
/**
 * How one point more is begun again, before it is given up for good: how far everything is thrown about first, of the pitch. Mostly
 * what is lacking is a better spot to begin from; now and then the whole pattern stands in the way.
 */
const THROWN = [0, 0, 1.2, 0, 2.4] as const;

/**
 * The overlap that is left at the least (root of the squares' sum, of the pitch) from which one point more is given up at the first
 * look, and for good once the rounds are over. In 60 rooms every point that was found had 0.15 at the most by that look; and of starts
 * that failed, those that another start mended had 0.09.
 */
const FAR = 0.25, SHORT = 0.12, LOOK = 500;
/** Three starts in turn that end as near as this to the same overlap have come to the same standing. */
const ALIKE = 0.03;

type Push = { readonly points: readonly Point[] | null; readonly left: number; readonly least: number };

/** One point more than given, or null: drops it in the emptiest spot and pushes overlaps apart, moving the worst elsewhere when stuck. */
function oneMore(field: Field, p: number, from: readonly Point[], { budget, random }: { readonly budget: number; readonly random: Random }): Push {
  const { box } = field;
  const n = from.length + 1;
  const xs = new Float64Array(n), ys = new Float64Array(n);
  from.forEach((q, i) => { xs[i] = q[0]; ys[i] = q[1]; });
  const emptiest = (skip: number): Point => {
    let best: Point = [box.minX, box.minY], least = Infinity;
    for (let k = 0; k < 40; k++) {
      const q = field.pull([box.minX + random() * (box.maxX - box.minX), box.minY + random() * (box.maxY - box.minY)]);
      let cost = 0;
      for (let i = 0; i < n; i++) if (i !== skip) cost += Math.max(0, p - Math.hypot(xs[i]! - q[0], ys[i]! - q[1])) ** 2;
      if (cost < least) { least = cost; best = q; }
    }
    return best;
  };
  const put = (i: number): void => { const q = emptiest(i); xs[i] = q[0]; ys[i] = q[1]; };
  put(n - 1);
  let left = budget, stuck = 0, lowest = Infinity, least = Infinity;
  const pain = new Float64Array(n);
  let worst = 0, total = 0;
  const cells = new Cells(box, p + NEIGHBOURS, n);
  /** Pushes two points apart that are nearer than they may be. */
  const part = (i: number, j: number): void => {
    const dx = xs[j]! - xs[i]!, dy = ys[j]! - ys[i]!;
    const d2 = dx * dx + dy * dy;
    if (d2 >= p * p) return;
    const d = Math.sqrt(d2) || 0.001, over = p - d;
    if (over > worst) worst = over;
    total += over * over;
    pain[i] = pain[i]! + over; pain[j] = pain[j]! + over;
    const ux = (dx / d) * over * 0.55, uy = (dy / d) * over * 0.55;
    xs[i] = xs[i]! - ux; ys[i] = ys[i]! - uy;
    xs[j] = xs[j]! + ux; ys[j] = ys[j]! + uy;
  };
  for (let rounds = 0; left > 0 && rounds < ROUNDS; rounds++) {
    left -= 40 * n;
    worst = 0; total = 0;
    pain.fill(0);
    cells.fill(xs, ys);
    cells.pairs(part);
    for (let i = 0; i < n; i++) {
      const q = field.pull([xs[i]!, ys[i]!]);
      worst = Math.max(worst, Math.abs(q[0] - xs[i]!), Math.abs(q[1] - ys[i]!));
      xs[i] = q[0]; ys[i] = q[1];
    }
    if (worst < 0.6) return { points: Array.from({ length: n }, (_, i) => [xs[i]!, ys[i]!] as const), left, least: 0 };
    least = Math.min(least, total);
    if (rounds === LOOK && least > (FAR * p) ** 2) break;
    if (total < lowest * 0.98) { lowest = total; stuck = 0; } else stuck++;
    if (stuck > 60) {
      let w = 0;
      for (let i = 1; i < n; i++) if (pain[i]! * (0.7 + 0.6 * random()) > pain[w]!) w = i;
      put(w);
      if (random() < 0.3) for (let i = 0; i < n; i++) { xs[i] = xs[i]! + (random() - 0.5) * p * 0.3; ys[i] = ys[i]! + (random() - 0.5) * p * 0.3; }
      stuck = 0; lowest = Infinity;
    }
  }
  return { points: null, left, least: Math.sqrt(least) / p };
}
