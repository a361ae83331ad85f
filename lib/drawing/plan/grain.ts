import { sinCos } from "../../geometry";
import type { Paper, Step, Veneer } from "../display";
import { circle, line } from "../paths";

/** The outline that grain is cut to, about its own centre, in mm of paper. */
export type Blank = { readonly radius: number } | { readonly width: number; readonly depth: number };

type Cut = { readonly blank: Blank; /** Multiplies every spacing. */ readonly k: number; /** Wedges of a round: one a place. */ readonly places: number; readonly from: number };
type Laid = { readonly fine: readonly Step[]; /** Drawn with a heavier line: joints between wedges or panels. */ readonly joints: readonly Step[] };

const none: Laid = { fine: [], joints: [] };
const halfW = (b: Blank): number => ("radius" in b ? b.radius : b.width / 2);
const halfD = (b: Blank): number => ("radius" in b ? b.radius : b.depth / 2);

/** The stretch of an endless line (through p along unit u) that lies on the blank. */
function chord(b: Blank, p: Paper, u: Paper): readonly [Paper, Paper] | null {
  let t0 = -1e6, t1 = 1e6;
  if ("radius" in b) {
    const along = p[0] * u[0] + p[1] * u[1];
    const c = p[0] * p[0] + p[1] * p[1] - b.radius * b.radius;
    const root = along * along - c;
    if (root <= 0) return null;
    [t0, t1] = [-along - Math.sqrt(root), -along + Math.sqrt(root)];
  } else {
    for (const [q, d, h] of [[p[0], u[0], b.width / 2], [p[1], u[1], b.depth / 2]] as const) {
      if (Math.abs(d) < 1e-9) {
        if (Math.abs(q) >= h) return null;
        continue;
      }
      const a = (-h - q) / d, c = (h - q) / d;
      t0 = Math.max(t0, Math.min(a, c));
      t1 = Math.min(t1, Math.max(a, c));
    }
  }
  if (t1 - t0 < 0.15) return null;
  return [[p[0] + u[0] * t0, p[1] + u[1] * t0], [p[0] + u[0] * t1, p[1] + u[1] * t1]];
}

/** Maple: a sunburst, one wedge a place, its grain parallel to the middle of the wedge. */
function round({ blank, k, places, from }: Cut): Laid {
  const radius = Math.min(halfW(blank), halfD(blank));
  const n = places >= 5 ? places : 8;
  const starts = (k * radius < 4.5 ? [0.3, 0.66] : radius > 11 ? [0.1, 0.27, 0.44, 0.61, 0.78] : [0.115, 0.345, 0.575, 0.81]);
  const fine: Step[] = [], joints: Step[] = [];
  for (let i = 0; i < n; i++) {
    const edge = sinCos(from + (i * 360) / n);
    joints.push(...line([0, 0], [edge.cos * radius, edge.sin * radius]));
    for (const side of [-1, 1] as const) {
      const mid = sinCos(from + ((i + side / 2) * 360) / n);
      for (const s of starts) {
        const p: Paper = [edge.cos * radius * s, edge.sin * radius * s];
        const end = chord({ radius }, p, [mid.cos, mid.sin]);
        if (end) fine.push(...line(p, end[1]));
      }
    }
  }
  return { fine, joints };
}

/** Ash: long straight lines that break here and there. Each row is [y, start of a break] within a tile of 9 x 3.8. */
const ASH = [[0.3, 0], [0.82, 3.1], [1.25, 6.4], [1.85, 1.6], [2.3, 4.8], [2.95, 7.6], [3.4, 2.4]] as const;
function long({ blank, k }: Cut): Laid {
  const fine: Step[] = [];
  const h = halfD(blank), w = halfW(blank), tile = 3.8 * k, run = 9 * k;
  const first = -Math.ceil(h / tile + 0.5);
  for (let t = first; t <= -first; t++) for (const [row, gap] of ASH) {
    const y = (t - 0.5) * tile + row * k;
    if (Math.abs(y) > h - 0.12) continue;
    const whole = chord(blank, [0, y], [1, 0]);
    if (!whole) continue;
    const [a, b] = [whole[0][0], whole[1][0]];
    for (let x = -Math.ceil(w / run + 1) * run + gap * k; x < w; x += run) {
      const from = Math.max(a, x + 0.5 * k), to = Math.min(b, x + run);
      if (to - from > 0.3) fine.push(...line([from, y], [to, y]));
    }
  }
  return { fine, joints: [] };
}

/** Oak: nested arches along the board, drawn in a frame of 12 x 9.5 that is stretched to fill the piece. */
const OAK_RINGS = [[0.4, 4.9], [1.4, 3.6], [2.5, 2.4], [3.8, 1.3]] as const;
const OAK_EDGES = [[4.3, 4.3], [3.7, 4.2], [3.0, 4.5], [2.0, 4.3]] as const;
function oak({ blank, k }: Cut): Laid {
  if ("radius" in blank) return long({ blank, k, places: 0, from: 0 });
  const fine: Step[] = [];
  const n = Math.max(1, Math.round(blank.width / (12 * k)));
  const sx = blank.width / n / 12, sy = blank.depth / 9.5;
  const rings = k * blank.depth < 5 ? OAK_RINGS.filter((_, i) => i % 2 === 0) : OAK_RINGS;
  const sides = k * blank.depth < 5 ? OAK_EDGES.filter((_, i) => i % 2 === 1) : OAK_EDGES;
  // A quadratic curve with control point q is the cubic one with both controls two thirds of the way to it.
  const quad = (a: Paper, q: Paper, b: Paper): Step =>
    ({ op: "C", c1: [a[0] + (2 / 3) * (q[0] - a[0]), a[1] + (2 / 3) * (q[1] - a[1])], c2: [b[0] + (2 / 3) * (q[0] - b[0]), b[1] + (2 / 3) * (q[1] - b[1])], to: b });
  for (let i = 0; i < n; i++) {
    const at = (x: number, y: number): Paper => [-blank.width / 2 + (i * 12 + x) * sx, y * sy];
    for (const [x, bow] of rings) {
      const a = at(x, 0), b = at(12 - x, 0);
      fine.push({ op: "M", to: a }, quad(a, at(6, -bow), b), quad(b, at(6, bow), a), { op: "Z" });
    }
    for (const sign of [-1, 1] as const) for (const [y, q] of sides) {
      const a = at(0, sign * y), b = at(12, sign * y);
      fine.push({ op: "M", to: a }, quad(a, at(6, sign * q), b));
    }
  }
  return { fine, joints: [] };
}

/** Parallel lines at an angle, at the given places within each period. */
function ruled(blank: Blank, { angle, period, places }: { readonly angle: number; readonly period: number; readonly places: readonly number[] }): readonly Step[] {
  const { sin, cos } = sinCos(angle);
  const reach = Math.hypot(halfW(blank), halfD(blank));
  const out: Step[] = [];
  for (let t = -Math.ceil(reach / period); t <= Math.ceil(reach / period); t++) for (const p of places) {
    const s = (t + p) * period;
    const c = chord(blank, [-sin * s, cos * s], [cos, sin]);
    if (c) out.push(...line(...c));
  }
  return out;
}

/** Satinwood: a ripple; each row is fitted in whole half-waves to the width it has. */
function buffet({ blank, k }: Cut): Laid {
  const fine: Step[] = [];
  const pitch = 1.05 * k, h = halfD(blank);
  const rows = Math.max(1, Math.floor((2 * h - 0.5) / pitch));
  for (let r = 0; r < rows; r++) {
    const y = (r - (rows - 1) / 2) * pitch;
    const c = chord(blank, [0, y], [1, 0]);
    if (!c) continue;
    const [a, b] = [c[0][0], c[1][0]];
    const n = Math.max(2, Math.round((b - a) / (1.4 * k)));
    const step = (b - a) / n, bow = 0.39 * k;
    fine.push({ op: "M", to: [a, y] });
    for (let i = 0; i < n; i++) {
      const x = a + i * step, lift = (i % 2 === 0 ? -1 : 1) * bow;
      fine.push({ op: "C", c1: [x + step / 3, y + lift], c2: [x + (2 * step) / 3, y + lift], to: [x + step, y] });
    }
  }
  return { fine, joints: [] };
}

/** Yew burr: small eyes in a tile of 2.7; those that would cross the edge are left out. */
const EYES = [[0.7, 0.75, 0.5], [0.7, 0.75, 0.18], [2, 2, 0.42], [1.95, 0.55, 0.22], [0.6, 2.1, 0.26]] as const;
function lounge({ blank, k }: Cut): Laid {
  const fine: Step[] = [];
  const tile = 2.7 * k, w = halfW(blank), h = halfD(blank);
  const nx = Math.ceil(w / tile + 0.5), ny = Math.ceil(h / tile + 0.5);
  for (let j = -ny; j < ny; j++) for (let i = -nx; i < nx; i++) for (const [ex, ey, r] of EYES) {
    const x = (i + 0.5) * tile + (ex - 1.35) * k, y = (j + 0.5) * tile + (ey - 1.35) * k, reach = r * k + 0.12;
    const inside = "radius" in blank ? Math.hypot(x, y) + reach <= blank.radius : Math.abs(x) + reach <= w && Math.abs(y) + reach <= h;
    if (inside) fine.push(...circle([x, y], r * k));
  }
  return { fine, joints: [] };
}

/** Beech: two rows of flecks, set back from the edges so that no chair needs a clip. */
function chair({ blank, k }: Cut): Laid {
  const w = halfW(blank), h = halfD(blank), fine: Step[] = [];
  const rows = Math.max(1, Math.floor((2 * h) / (0.95 * k)));
  for (let r = 0; r < rows; r++) {
    const y = ((r + 0.5) / rows - 0.5) * 2 * h;
    const shift = r % 2 === 0 ? 0 : 0.85 * k;
    for (let x = -Math.ceil(w / (1.7 * k)) * 1.7 * k + shift; x < w; x += 1.7 * k) {
      const a = Math.max(x, -w + 0.2), b = Math.min(x + 0.55 * k, w - 0.2);
      if (b - a > 0.25) fine.push(...line([a, y], [b, y]));
    }
  }
  return { fine, joints: [] };
}

/** The grain of a veneer, cut to a blank about the origin. A dance floor is laid by its panels: see `parquet`. */
export function grain(veneer: Veneer, cut: Cut): Laid {
  const { blank, k } = cut;
  switch (veneer) {
    case "round": return round(cut);
    case "long": return long(cut);
    case "oak": return oak(cut);
    case "chair": return chair(cut);
    case "floor": return "radius" in blank ? none : parquet({ width: blank.width, depth: blank.depth, across: 1, down: 1 });
    case "music": return { fine: ruled(blank, { angle: 0, period: 0.75 * k, places: [0.5] }), joints: [] };
    case "bar": return { fine: ruled(blank, { angle: -45, period: 2.2 * k, places: [0.23, 0.43] }), joints: [] };
    case "buffet": return buffet(cut);
    case "lounge": return lounge(cut);
    case "display": {
      const period = 1.25 * k;
      return { fine: [...ruled(blank, { angle: 45, period, places: [0.5] }), ...ruled(blank, { angle: -45, period, places: [0.5] })], joints: [] };
    }
  }
}

/** Walnut: a basket weave, one square a panel, every second one turned. */
export function parquet(floor: { readonly width: number; readonly depth: number; readonly across: number; readonly down: number }): Laid {
  const { width, depth, across, down } = floor;
  const w = width / across, d = depth / down;
  const boards = Math.min(w, d) < 3.2 ? 2 : Math.min(w, d) < 5 ? 3 : 4;
  const fine: Step[] = [], joints: Step[] = [];
  for (let j = 0; j < down; j++) for (let i = 0; i < across; i++) {
    const x = -width / 2 + i * w, y = -depth / 2 + j * d;
    for (let b = 1; b < boards; b++) {
      if ((i + j) % 2 === 0) fine.push(...line([x, y + (d * b) / boards], [x + w, y + (d * b) / boards]));
      else fine.push(...line([x + (w * b) / boards, y], [x + (w * b) / boards, y + d]));
    }
  }
  for (let i = 1; i < across; i++) joints.push(...line([-width / 2 + i * w, -depth / 2], [-width / 2 + i * w, depth / 2]));
  for (let j = 1; j < down; j++) joints.push(...line([-width / 2, -depth / 2 + j * d], [width / 2, -depth / 2 + j * d]));
  return { fine, joints };
}
