import { add, bearing, clearance, polygonShape, turn, type Point } from "../../geometry";
import { isRound, seatPolygon, type ItemShape, type Seat } from "../../layout";
import type { ChairSize, Sides } from "./types";

/** How far a chair goes under the table's edge at most, mm: common practice, no source. */
export const TUCK = 120;
/** Least and most distance of a chair's centre from its table's edge, mm (the project's file format). */
const OFF_EDGE = { least: 100, most: 450 } as const;
/** Whole millimetres move a chair by up to 0.7 mm. */
const ROUNDING = 2;

/**
 * How far the chairs of a round go under its edge, mm; negative when they must stand off it. n chairs of width c, their
 * front edges on radius r, do not overlap exactly when c <= 2 r tan(pi / n).
 */
export function ringTuck(diameter: number, places: number, chair: ChairSize): number {
  if (places < 3) return Math.min(TUCK, diameter / 2);
  const t = Math.round(Math.tan(Math.PI / places) * 1e9) / 1e9;
  return Math.min(TUCK, diameter / 2 - (chair.width + ROUNDING) / (2 * t));
}

/** The chair centre's distance off the edge for a tuck, kept within what a place may be. */
export const offEdge = (tuck: number, chair: ChairSize): number =>
  Math.max(OFF_EDGE.least, Math.min(OFF_EDGE.most, Math.ceil(chair.depth / 2 - tuck)));

/** Places that fit round a table without chairs overlapping or standing too far off. */
export function ringMost(diameter: number, chair: ChairSize): number {
  let n = 2;
  while (n < 60 && chair.depth / 2 - ringTuck(diameter, n + 1, chair) <= OFF_EDGE.most) n++;
  return n;
}

/** How far the outermost corner of a chair stands from a round table's edge, mm. */
export function ringReach(diameter: number, places: number, chair: ChairSize): number {
  const out = diameter / 2 + offEdge(ringTuck(diameter, places, chair), chair) + chair.depth / 2;
  return Math.hypot(out, chair.width / 2) - diameter / 2;
}

/** How far chairs stand out from the side of a straight table, mm. */
export const sideReach = (chair: ChairSize): number => offEdge(TUCK, chair) + chair.depth / 2;

/** Places shared over the sides that may be taken, always to the side with the most length a place. */
export function shareSides(shape: { readonly width: number; readonly depth: number }, places: number, open: readonly boolean[], least: number): Sides {
  const lengths = [shape.width, shape.depth, shape.width, shape.depth] as const;
  const n = [0, 0, 0, 0];
  for (let k = 0; k < places; k++) {
    let best = -1, room = 0;
    for (const i of [0, 2, 3, 1]) {
      const each = (lengths[i] ?? 0) / ((n[i] ?? 0) + 1);
      if (open[i] && each >= least && each > room + 1e-9) { best = i; room = each; }
    }
    if (best < 0) break;
    n[best] = (n[best] ?? 0) + 1;
  }
  return [n[0] ?? 0, n[1] ?? 0, n[2] ?? 0, n[3] ?? 0];
}

const seatAt = (p: Point, facing: number): Seat => ({
  x: Math.round(p[0]), y: Math.round(p[1]), facing: ((facing % 360) + 360) % 360, place: "chair",
});

/** Chairs round a disc; `start` is where the first stands, degrees clockwise from +x. */
export function ringSeats(diameter: number, places: number, chair: ChairSize, start: number): readonly Seat[] {
  const off = diameter / 2 + offEdge(ringTuck(diameter, places, chair), chair);
  return Array.from({ length: places }, (_, i) => {
    const a = start + (i * 360) / places;
    return seatAt(turn([off, 0], a), a + 180);
  });
}

/** Where a ring starts so that it is symmetric about the table's own axes. */
export const composedStart = (places: number): number => (places % 2 === 0 ? 180 / places : -90);

function straight(shape: { readonly width: number; readonly depth: number }, sides: Sides, chair: ChairSize, tuck: number): Seat[] {
  const out: Seat[] = [];
  const off = offEdge(tuck, chair);
  const dims = [[shape.width, shape.depth], [shape.depth, shape.width], [shape.width, shape.depth], [shape.depth, shape.width]] as const;
  sides.forEach((n, side) => {
    const [along, across] = dims[side] ?? [0, 0];
    for (let i = 0; i < n; i++) {
      const s = ((i + 0.5) / n - 0.5) * along;
      // Side 0 is the top: built looking up the page, then turned to its side.
      out.push(seatAt(turn([s, -across / 2 - off], side * 90), 90 + side * 90));
    }
  });
  return out;
}

const clash = (seats: readonly Seat[], chair: ChairSize): boolean => {
  const shapes = seats.map((s) => polygonShape(seatPolygon(s, chair)));
  return shapes.some((a, i) => shapes.some((b, j) => j > i && clearance(a, b) < -0.5));
};

/** Chairs along the sides of a rectangle about the origin; they go under it less far where its corners are tight. */
export function sideSeats(shape: { readonly width: number; readonly depth: number }, sides: Sides, chair: ChairSize): readonly Seat[] {
  const deepest = Math.min(TUCK, shape.depth / 2 - 10, shape.width / 2 - 10);
  for (const tuck of [deepest, 80, 40, 0]) {
    if (tuck > deepest) continue;
    const seats = straight(shape, sides, chair, tuck);
    if (!clash(seats, chair)) return seats;
  }
  return straight(shape, sides, chair, 0);
}

/** The same seats about another point and turned. */
export function moveSeats(seats: readonly Seat[], at: Point, angle: number): Seat[] {
  return seats.map((s) => {
    const [x, y] = add(at, turn([s.x, s.y], angle));
    return { ...s, x: Math.round(x), y: Math.round(y), facing: bearing(turn([1, 0], s.facing + angle)) };
  });
}

/**
 * The places of one table about the origin at angle 0, mm: a ring about a round, or chairs along the sides of a
 * rectangle (`ends`: its two ends are laid too; `sides` says outright how many go where).
 */
export function seatsAround(shape: ItemShape, places: number, opts: {
  readonly ends: boolean; readonly chair: ChairSize; readonly sides?: Sides; readonly start?: number;
}): readonly Seat[] {
  if (isRound(shape)) return ringSeats(shape.diameter, places, opts.chair, opts.start ?? composedStart(places));
  const sides = opts.sides ?? shareSides(shape, places, [true, opts.ends, true, opts.ends], opts.chair.width);
  return sideSeats(shape, sides, opts.chair);
}
