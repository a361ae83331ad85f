import type { Point } from "../../geometry";
import type { Field } from "./field";

/** A table, or a run of them, that is moved as one: where its middle is, and where it may be. */
export type Body = { readonly at: Point; readonly field: Field };
/** What two keep between their middles, mm: a distance, where both are round; else so much along x or so much along y. */
export type Apart = number | Point;

/**
 * The coordinates of all bodies on one axis. Those of a line share one value; that of body i is base[i] + sign[i] * value[line[i]]: a
 * mirror image has the opposite sign and twice the mirror's place as its base, and what stands on the mirror itself has the sign 0.
 */
type Lines = { readonly line: readonly number[]; readonly sign: readonly number[]; readonly base: readonly number[]; readonly value: readonly number[] };
type Ranks = readonly [x: Lines, y: Lines];
type Axis = 0 | 1;
/** The axis across which all have their image, and twice where it lies on it. */
export type Mirror = { readonly axis: Axis; readonly double: number };
/** The bodies, and what each two of them keep. */
export type Stood = { readonly bodies: readonly Body[]; readonly apart: (i: number, j: number) => Apart };

/** Lines so far apart may become one, of the least distance between neighbours. */
const REACH = 0.6;
/** Of the lines of an axis in order, those so many places apart are tried as one. */
const NEXT = 3;
/** Pushes before a line is given up, and how many may bring nothing; the share of an overlap by which each of two is pushed. */
const PUSHES = 150, IDLE = 20, PUSH = 0.55;
/** Kept in hand between two for whole millimetres, mm; near enough to where a disc may be, mm. */
const IN_HAND = 2, NEAR = 0.6;
/** Joinings tried for one arrangement. */
const TRIES = 400;

const at = (l: Lines, i: number): number => (l.base[i] ?? 0) + (l.sign[i] ?? 0) * (l.value[l.line[i] ?? 0] ?? 0);

/**
 * Bodies brought into common rows and columns, as many as the floor lets them: two lines that lie near become one, the nearest first, and
 * what then stands too near is pushed apart along the lines; what is left over is shared out. With a mirror, x or y, images stay images.
 * Post: the middles, each in its place of the list, all where they may be and apart, at whole millimetres; null where they were not at first.
 */
export function inRanks(stood: Stood, mirror: Mirror | null): readonly Point[] | null {
  const first = settled(started(stood.bodies, mirror), stood), dead = new Set<string>();
  let ranks = first && rounded(first, stood), tries = TRIES;
  if (!ranks) return null;
  for (let better = true; better;) {
    better = false;
    for (const pair of pairsOf(ranks, stood)) {
      if (dead.has(pair.key) || tries-- <= 0) continue;
      const joined = settled(merged(ranks, pair), stood), whole = joined && rounded(joined, stood);
      if (!whole) { dead.add(pair.key); continue; }
      ranks = whole; better = true;
      break;
    }
  }
  for (const wider of WIDER) {
    const roomy: Stood = { ...stood, apart: (i, j) => grown(stood.apart(i, j), wider) }, loose = settled(ranks, roomy), whole = loose && rounded(loose, roomy);
    if (whole) return pointsOf(whole);
  }
  return pointsOf(ranks);
}
/** How much farther apart than they must be is tried in the end. */
const WIDER = [1.2, 1.1, 1.05, 1.02] as const;
const grown = (a: Apart, by: number): Apart => (typeof a === "number" ? a * by : [a[0] * by, a[1] * by]);
/** What they keep along one axis, where they share their place on the other. */
const along = (a: Apart, k: Axis): number => (typeof a === "number" ? a : a[k]);

const pointsOf = (ranks: Ranks): readonly Point[] => ranks[0].line.map((_, i) => [at(ranks[0], i), at(ranks[1], i)]);

function started(bodies: readonly Body[], mirror: Mirror | null): Ranks {
  const same = (own: readonly number[]): readonly number[] => own.map((v) => own.findIndex((q) => Math.abs(q - v) <= SAME));
  const plain = (k: Axis): Lines => { const value = bodies.map((d) => d.at[k]); return { line: same(value), sign: value.map(() => 1), base: value.map(() => 0), value }; };
  if (!mirror) return [plain(0), plain(1)];
  const { axis, double } = mirror, across = bodies.map((d) => d.at[axis]), other = plain((1 - axis) as Axis);
  // Images lie on one line, told by where the lower of them stands.
  const sign = across.map((v) => (Math.abs(2 * v - double) <= SAME ? 0 : 2 * v < double ? 1 : -1)), value = across.map((v, i) => (sign[i] === -1 ? double - v : v));
  const own: Lines = { line: same(value), sign, base: across.map((v, i) => (sign[i] === 0 ? v : sign[i] === 1 ? 0 : double)), value };
  return axis === 0 ? [own, other] : [other, own];
}
/** Coordinates this near are one line from the first, mm. */
const SAME = 1;

type Pair = { readonly k: Axis; readonly a: number; readonly b: number; readonly gap: number; readonly key: string };

/** Pairs of lines that may become one, the nearest first. */
function pairsOf(ranks: Ranks, stood: Stood): readonly Pair[] {
  const out: Pair[] = [];
  for (const k of [0, 1] as const) {
    const l = ranks[k], members = new Map<number, number[]>();
    l.line.forEach((v, i) => { if (l.sign[i] !== 0) members.set(v, [...(members.get(v) ?? []), i]); });
    const order = [...members].map(([v, who]) => ({ v, who, value: l.value[v] ?? 0 })).sort((p, q) => p.value - q.value);
    order.forEach((p, n) => order.slice(n + 1, n + 1 + NEXT).forEach((q) => {
      const gap = q.value - p.value;
      if (gap > REACH * along(stood.apart(p.who[0] ?? 0, q.who[0] ?? 0), k) || crowded(ranks, k, [...p.who, ...q.who], stood)) return;
      out.push({ k, a: p.v, b: q.v, gap, key: `${k} ${p.who.join(",")} ${q.who.join(",")}` });
    }));
  }
  return out.sort((p, q) => p.gap - q.gap);
}

/** Whether two would share a row and a column, or stand so near in one that no push parts them. */
function crowded(ranks: Ranks, k: Axis, who: readonly number[], { apart }: Stood): boolean {
  const o = (1 - k) as Axis, l = ranks[o], same = (i: number): string => `${l.line[i]} ${l.sign[i]}`;
  return who.some((i, n) => who.slice(n + 1).some((j) => ranks[k].sign[i] === ranks[k].sign[j] && (same(i) === same(j) || Math.abs(at(l, i) - at(l, j)) < 0.5 * along(apart(i, j), o))));
}

function merged(ranks: Ranks, { k, a, b }: Pair): Ranks {
  const l = ranks[k], n = (v: number): number => l.line.filter((x, i) => x === v && l.sign[i] !== 0).length, [p, q] = [n(a), n(b)];
  const value = [...l.value];
  value[a] = ((value[a] ?? 0) * p + (value[b] ?? 0) * q) / (p + q);
  const next: Lines = { ...l, line: l.line.map((v, i) => (v === b && l.sign[i] !== 0 ? a : v)), value };
  return k === 0 ? [next, ranks[1]] : [ranks[0], next];
}

/** Pushed apart along their lines until all stand where they may; null where they do not come to it. */
function settled(ranks: Ranks, { bodies, apart }: Stood): Ranks | null {
  const n = bodies.length, values = [Float64Array.from(ranks[0].value), Float64Array.from(ranks[1].value)] as const;
  const now = [new Float64Array(n), new Float64Array(n)] as const, to = [new Float64Array(n), new Float64Array(n)] as const;
  const keeps = bodies.flatMap((_, i) => bodies.map((__, j) => apart(i, j)));
  const [xs, ys] = now;
  let lowest = Infinity, idle = 0;
  for (let push = 0; push < PUSHES && idle < IDLE; push++) {
    for (const k of [0, 1] as const) {
      const l = ranks[k], v = values[k];
      for (let i = 0; i < n; i++) to[k][i] = now[k][i] = l.base[i]! + l.sign[i]! * v[l.line[i]!]!;
    }
    let worst = 0, total = 0;
    const part = (i: number, j: number, by: Point, over: number): void => {
      worst = Math.max(worst, over); total += over * over;
      to[0][i]! -= by[0]; to[1][i]! -= by[1]; to[0][j]! += by[0]; to[1][j]! += by[1];
    };
    for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) {
      const a = keeps[i * n + j]!, dx = xs[j]! - xs[i]!, dy = ys[j]! - ys[i]!;
      const overX = along(a, 0) + IN_HAND - Math.abs(dx), overY = along(a, 1) + IN_HAND - Math.abs(dy);
      if (overX <= 0 || overY <= 0) continue;
      if (typeof a === "number") {
        const d = Math.hypot(dx, dy) || 0.001, over = a + IN_HAND - d;
        if (over > 0) part(i, j, [(dx / d) * over * PUSH, (dy / d) * over * PUSH], over);
      } else if (overX < overY) part(i, j, [(dx < 0 ? -1 : 1) * overX * PUSH, 0], overX);
      else part(i, j, [0, (dy < 0 ? -1 : 1) * overY * PUSH], overY);
    }
    for (let i = 0; i < n; i++) {
      const { field } = bodies[i]!, q = field.pull([to[0][i]!, to[1][i]!]), own = field.pull([xs[i]!, ys[i]!]), off = Math.hypot(own[0] - xs[i]!, own[1] - ys[i]!);
      worst = Math.max(worst, off); total += off * off;
      to[0][i] = q[0]; to[1][i] = q[1];
    }
    if (worst < NEAR) return [{ ...ranks[0], value: [...values[0]] }, { ...ranks[1], value: [...values[1]] }];
    if (total < lowest * 0.98) { lowest = total; idle = 0; } else idle++;
    for (const k of [0, 1] as const) shared(ranks[k], values[k], now[k], to[k]);
  }
  return null;
}

/** Each line goes where those of it that are pushed would have it, on the mean. */
function shared(l: Lines, values: Float64Array, now: Float64Array, to: Float64Array): void {
  const sum = new Float64Array(values.length), count = new Float64Array(values.length);
  for (let i = 0; i < now.length; i++) {
    const by = (to[i]! - now[i]!) * l.sign[i]!;
    if (Math.abs(by) < 1e-6) continue;
    sum[l.line[i]!]! += by; count[l.line[i]!]! += 1;
  }
  for (let v = 0; v < values.length; v++) if (count[v]! > 0) values[v]! += sum[v]! / count[v]!;
}

/** Whole millimetres for every line, where all still stand as they may: a line at a wall is moved off it by one where rounding took it over. */
function rounded(ranks: Ranks, { bodies, apart }: Stood): Ranks | null {
  const to = (l: Lines): Lines => ({ ...l, value: l.value.map(Math.round) });
  let whole: Ranks = [to(ranks[0]), to(ranks[1])];
  const out = (r: Ranks): number => pointsOf(r).filter((p, i) => !bodies[i]?.field.holds(p)).length;
  for (let left = out(whole), better = true; left > 0;) {
    if (!better) return null;
    better = false;
    for (const k of [0, 1] as const) for (const v of new Set(whole[k].line)) for (const by of [-1, 1]) {
      const l = whole[k], moved = { ...l, value: l.value.map((x, n) => (n === v ? x + by : x)) }, next: Ranks = k === 0 ? [moved, whole[1]] : [whole[0], moved];
      const now = out(next);
      if (now < left) { whole = next; left = now; better = true; }
    }
  }
  const points = pointsOf(whole);
  return points.every((p, i) => points.every((q, j) => j <= i || keeps(apart(i, j), p, q))) ? whole : null;
}
const keeps = (a: Apart, [x, y]: Point, [u, v]: Point): boolean => (typeof a === "number" ? Math.hypot(x - u, y - v) >= a : Math.abs(x - u) >= a[0] || Math.abs(y - v) >= a[1]);
