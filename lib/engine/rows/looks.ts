import { boxesNear, boxOf, convexHull, overlapDepth, type Polygon } from "../../geometry";
import type { Front } from "./fronts";
import type { Slot } from "./slots";

/**
 * What an eye has against a plan of rows, all in one measure: as if the farthest guest sat so many millimetres farther off (common
 * practice, no source). A step of a front's rank; a millimetre off the wall's middle; a step of comfort given up.
 */
const RANK = 8_000, OFF = 1.6, COMFORT = 1_000;
/** A door behind the couple, where latecomers come in before all eyes: a little more than a long wall instead of a short one. A corner goes after all of them. */
const DOOR_BEHIND = 22_000;
/** A piece among the rows; a row broken by a column; all guests on one side of the middle; a short row behind a long one. */
const AMONG = 16_000, BREAK = 1_000, LOPSIDED = 16_000, TAIL = 1_500;
/** All guests so far to the side of the couple that they see them from beyond 60 degrees. */
const ASKANCE = 10_000, TAN_60 = Math.sqrt(3);
/** A row is short that has under this share of the longest before it. */
const SHORT = 0.6;
/** A share of the guests by which one side may have more, unnoticed; slots of a row that a wheelchair space stands for. */
const EVEN = 0.1, WHEEL = 2;
/** Deeper than this among the chairs, mm, and a piece is wrapped by them rather than passed. */
const DEEP = 150;

export const frontCost = (f: Front): number => f.rank * RANK + f.off * OFF + (f.door || f.kind === "corner" ? DOOR_BEHIND : 0);
export const comfortCost = (rank: number): number => rank * COMFORT;

/** The floor that chairs take as one block: the hull of their bodies. */
export function fieldOf(chairs: readonly Slot[]): Polygon {
  const ends = new Map<number, readonly [Slot, Slot]>();
  for (const c of chairs) {
    const [left, right] = ends.get(c.row) ?? [c, c], at = across(c);
    ends.set(c.row, [at < across(left) ? c : left, at > across(right) ? c : right]);
  }
  return convexHull([...ends.values()].flatMap(([a, b]) => [...a.body, ...b.body]));
}
const across = (c: Slot): number => c.side * (c.n + 1);

/** True for a piece that stands on such floor, so that what is there goes round it. */
export const standsAmong = (field: Polygon, piece: Polygon): boolean => field.length > 2 && boxesNear(boxOf(field), boxOf(piece), 0) && overlapDepth(field, piece) > DEEP;

/** Sight of the couple from the wings of short deep rooms: the share of guests who look past 60 degrees. */
export const sightCost = (chairs: readonly Slot[]): number => {
  let wide = 0;
  for (const c of chairs) if (c.aside > TAN_60) wide++;
  return (wide / chairs.length) * ASKANCE;
};

/** Chairs row by row, wheelchair spaces, and how many each row has room for. */
type Block = { readonly chairs: readonly Slot[]; readonly wheels: readonly { readonly side: -1 | 1 }[]; readonly offered: readonly number[] };

/** What is unlike one whole block, even on both sides of its middle: rows in parts, one half longer than the other, a thin tail. */
export function unlikeBlock({ chairs, wheels, offered }: Block): number {
  return Math.max(0, breaks(chairs) - wheels.length) * BREAK + Math.max(0, unevenness(chairs, wheels) - EVEN) * LOPSIDED + tail(offered) * TAIL;
}

/** Pieces that stand on the floor of the chairs, or of the couple. */
export const pieceCost = (floor: Polygon, pieces: readonly Polygon[]): number => pieces.filter((p) => standsAmong(floor, p)).length * AMONG;

/** The share of places that have none for their like on the other side of the aisle. */
function unevenness(chairs: Block["chairs"], wheels: Block["wheels"]): number {
  const right = new Map<number, number>([[0, wheels.reduce((n, w) => n + w.side * WHEEL, 0)]]);
  for (const c of chairs) right.set(c.row, (right.get(c.row) ?? 0) + c.side);
  return [...right.values()].reduce((n, k) => n + Math.abs(k), 0) / (chairs.length + wheels.length * WHEEL);
}

function tail(offered: readonly number[]): number {
  let longest = 0, n = 0;
  for (const k of offered) { if (k < longest * SHORT) n++; longest = Math.max(longest, k); }
  return n;
}

/** How often the chairs of one row on one side of the aisle are parted, or parted from the aisle; given row by row from the aisle outwards. */
function breaks(chairs: readonly Slot[]): number {
  const last = new Map<number, number>();
  let n = 0;
  for (const c of chairs) {
    const key = c.row * 2 + (c.side > 0 ? 1 : 0);
    if (c.n !== (last.get(key) ?? -1) + 1) n++;
    last.set(key, c.n);
  }
  return n;
}
