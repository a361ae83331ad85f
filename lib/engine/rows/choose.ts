import { liesIn, type Ground } from "./ground";
import { distance, dot, polygonClearance, sub, type Polygon } from "../../geometry";
import { LEAST_CLEAR, mostInRow } from "./formula";
import { fieldOf, pieceCost, sightCost, unlikeBlock } from "./looks";
import { aheadOf, wheelchairBody, type Setting, type Slot } from "./slots";
import type { RowAsk } from "./types";

export type WheelSpace = ReturnType<typeof wheelchairBody> & { readonly side: -1 | 1; readonly n: number; readonly width: number };
export type Choice = { readonly chairs: readonly Slot[]; readonly wheels: readonly WheelSpace[]; readonly rows: number; readonly cost: number; /** What of the cost another setting may spare. */ readonly blemish: number };

/** Wheelchair spaces, mm: 36 in wide where there is room, else 30 in; 48 in deep (2010 ADA Standards 802.1, 305.3). */
const WIDE = 915, NARROW = 760, DEEP = 1220;
/** Between two of them, mm, with a hair for whole millimetres: bent rows bring their fronts together. */
const BETWEEN = 3;
/** What sight from the wings costs in most rooms: no setting is sought to spare it. */
const USUAL_SIGHT = 2_000;
/** What lies farther off than this, mm from middle to middle, meets no wheelchair space, nor the floor ahead of a chair. */
const NEARBY = 2_500;

/** A deep body turned to the couple comes nearer to the aisle in front than the chairs that it stands for. */
const comesIntoAisle = (s: Setting, body: Polygon, side: -1 | 1): boolean => s.aisle > s.gap && body.some((p) => dot(sub(p, s.frame.origin), s.frame.across) * side < s.aisle / 2 - 1);

/** Wheelchair spaces at the outer ends of the first row, each with a chair beside it for a companion; sides take turns. */
function wheelchairs(s: Setting, ground: Ground, front: readonly Slot[], wanted: number, most: number): { readonly wheels: readonly WheelSpace[]; readonly used: ReadonlySet<Slot> } {
  const wheels: WheelSpace[] = [];
  const used = new Set<Slot>();
  const kept = new Set<Slot>();
  const width = s.curve ? NARROW : Math.max(NARROW, Math.min(WIDE, 2 * s.chair.width + s.gap));
  const slotsNeeded = 2 * s.chair.width + s.gap >= NARROW ? 2 : 3;
  const line = (side: -1 | 1): readonly Slot[] => front.filter((c) => c.side === side && c.n < most).sort((a, b) => b.n - a.n);
  const sides = [line(1), line(-1)] as const;
  const next = [0, 0], placed = [0, 0];
  for (let turnOf = 0, misses = 0; wheels.length < wanted && misses < 2; turnOf = 1 - turnOf) {
    const slots = sides[turnOf as 0 | 1];
    // Companions of two spaces sit side by side between them: alone between two that are so deep, one would hardly get out of a bent row.
    const first = (placed[turnOf] ?? 0) % 2 === 1 ? 1 : 0;
    let done = false;
    for (let i = next[turnOf] ?? 0; i + slotsNeeded < slots.length && !done; i++) {
      const a = slots[i + first], b = slots[i + first + slotsNeeded - 1], beside = slots[first === 1 ? i : i + slotsNeeded], outer = slots[i], inner = slots[i + slotsNeeded];
      if (!a || !b || !beside || !outer || !inner || outer.n - inner.n !== slotsNeeded || used.has(a) || kept.has(a) || kept.has(beside)) continue;
      const w = wheelchairBody(s, a, b, { width, depth: DEEP });
      if (!liesIn(ground.free, w.body) || comesIntoAisle(s, w.body, a.side) || wheels.some((o) => distance(o.at, w.at) < NEARBY && polygonClearance(o.body, w.body) < BETWEEN)) continue;
      wheels.push({ ...w, side: a.side, n: b.n, width });
      for (let k = i + first; k < i + first + slotsNeeded; k++) { const u = slots[k]; if (u) used.add(u); }
      kept.add(beside);
      next[turnOf] = i + slotsNeeded + 1;
      placed[turnOf] = (placed[turnOf] ?? 0) + 1;
      done = true;
    }
    misses = done ? 0 : misses + 1;
  }
  return { wheels, used };
}

/** Chairs for this many, at most `most` a side in a row, from the front; the last row is filled from the aisle outwards, as its slots are given. */
function fill(rows: readonly (readonly Slot[])[], used: ReadonlySet<Slot>, wanted: number, most: number): readonly Slot[] {
  const out: Slot[] = [];
  for (const row of rows) for (const c of row) {
    if (out.length >= wanted) return out;
    if (c.n >= most) break;
    if (!used.has(c)) out.push(c);
  }
  return out;
}

/** Bent rows: chairs whose floor ahead a wheelchair space, deeper than they, comes into are left out too. */
function cramped(front: readonly Slot[], wheels: readonly WheelSpace[], used: ReadonlySet<Slot>, s: Setting): ReadonlySet<Slot> {
  const out = new Set(used);
  for (const c of front) if (!used.has(c)) {
    const close = wheels.filter((w) => distance(w.at, c.at) < NEARBY), ahead = close.length > 0 ? aheadOf(s, c, LEAST_CLEAR) : [];
    if (close.some((w) => polygonClearance(ahead, w.body) < -0.5)) out.add(c);
  }
  return out;
}

/** Chairs of one row of n a side on both sides of no aisle make one row: the formula counts them all. */
function mostASide(s: Setting, ask: RowAsk): number {
  const clear = s.pitch - s.chair.depth;
  const ends = (s.lanes[0] > 0 ? 1 : 0) + (s.lanes[1] > 0 ? 1 : 0);
  if (ask.aisle === "centre") return mostInRow(clear, ends === 2 ? 2 : 1);
  return Math.floor(mostInRow(clear, ends === 2 ? 2 : 1) / 2);
}

type Chosen = { readonly ask: RowAsk; readonly pieces: readonly Polygon[] };

/**
 * The best choice of row length for one setting: everyone seated if it can be, in the shape that keeps the farthest guest nearest to
 * the couple, rows filled evenly, past the pieces that stand there and not round them.
 */
export function choose(s: Setting, ground: Ground, slots: readonly (readonly Slot[])[], { ask, pieces }: Chosen): Choice | null {
  const rows = slots.map((row) => [...row].sort((a, b) => a.n - b.n || a.side - b.side));
  const longest = rows.reduce((m, r) => Math.max(m, (r.at(-1)?.n ?? -1) + 1), 0);
  const top = Math.min(longest, mostASide(s, ask)), found: Shape[] = [];
  for (let most = Math.min(top, 2); most <= top && top > 0; most++) {
    const { wheels, used } = wheelchairs(s, ground, rows[0] ?? [], ask.wheelchairs, most);
    const wanted = Math.min(ask.people - wheels.length, ask.chairsLeft);
    const chairs = fill(rows, s.curve ? cramped(rows[0] ?? [], wheels, used, s) : used, wanted, most);
    if (chairs.length > 0) found.push(shapeOf(chairs, wheels, { rows, most, ask }));
  }
  const least = Math.min(...found.map((f) => f.short));
  let best: Choice | null = null;
  for (const f of found.filter((k) => k.short === least).sort((a, b) => a.cost - b.cost)) {
    if (best && f.cost >= best.cost) break;
    const sight = sightCost(f.chairs), block = unlikeBlock(f);
    if (best && f.cost + sight + block >= best.cost) continue;
    const unlike = block + (pieces.length > 0 ? pieceCost(fieldOf(f.chairs), pieces) : 0), cost = f.cost + sight + unlike;
    if (!best || cost < best.cost) best = { chairs: f.chairs, wheels: f.wheels, rows: f.offered.length, cost, blemish: unlike + Math.max(0, sight - USUAL_SIGHT) };
  }
  return best;
}

type Shape = Pick<Choice, "chairs" | "wheels" | "cost"> & { readonly short: number; readonly offered: readonly number[] };
type Offer = { readonly rows: readonly (readonly Slot[])[]; readonly most: number; readonly ask: RowAsk };

/** One length of row: how many it leaves standing, how many each of its rows has room for, and what its depth and its last row cost. */
function shapeOf(chairs: readonly Slot[], wheels: readonly WheelSpace[], { rows, most, ask }: Offer): Shape {
  const last = chairs.at(-1)?.row ?? 0;
  const offered = rows.slice(0, last + 1).map((row) => { const k = row.findIndex((c) => c.n >= most); return k < 0 ? row.length : k; });
  let inLast = 0, reach = 0;
  for (const c of chairs) { if (c.row === last) inLast++; reach = Math.max(reach, c.reach); }
  return {
    chairs, wheels, offered, short: ask.people - wheels.length - chairs.length + (ask.wheelchairs - wheels.length) * 0.5,
    cost: reach + 900 * (1 - inLast / Math.max(1, offered[last] ?? 0)) + (inLast < 4 && last > 0 ? 600 : 0),
  };
}
