import { aroundCircle, boxesNear, clearance, distance, polygonShape, rectangle, roundPoint, type Point, type Shape } from "../../geometry";
import { isRound, shapeAt, type Item, type Seat } from "../../layout";
import { backAngle, backToRoom, hallAfter, type Hall, type Standing } from "./hall";
import { composedStart, moveSeats, ringSeats, sideSeats } from "./seats";
import type { Laid, Sides } from "./types";

export const laidPlaces = (l: Laid): number => (isRound(l.family.shape) ? l.ring : l.sides.reduce((s, n) => s + n, 0));
export const totalPlaces = (list: readonly Laid[]): number => list.reduce((s, l) => s + laidPlaces(l), 0);

/** The places of a laid table in the venue's frame. */
function seatsOf(hall: Hall, l: Laid, at: Point, angle: number): Seat[] {
  const { shape } = l.family;
  if (isRound(shape)) return moveSeats(ringSeats(shape.diameter, l.ring, hall.chair, composedStart(l.ring)), at, -hall.turned);
  return moveSeats(sideSeats(shape, l.sides, hall.chair), at, angle);
}

/** Tables as items of the plan, numbered in the order given. */
export function itemsOf(hall: Hall, laid: readonly Laid[]): readonly Item[] {
  const stood: { readonly group: number; readonly shape: Shape }[] = [];
  return laid.map((l, i) => {
    const at = wholeSpot(hall, l, stood);
    const angle = isRound(l.family.shape) ? 0 : backAngle(hall, l.angle);
    const { shape } = l.family;
    return {
      id: `t-${i + 1}`, kind: "table", role: "dining", label: `${i + 1}`, room: hall.space.room, from: { stock: l.family.stock },
      shape, at, angle: angle % 180, seats: seatsOf(hall, { ...l, sides: l.sides }, at, angle),
    };
  });
}

/** Whole millimetres for a table: in a slanting room those that part it least from the tables it is joined to, and never push it into them. */
function wholeSpot(hall: Hall, l: Laid, stood: { readonly group: number; readonly shape: Shape }[]): Point {
  const exact = backToRoom(hall, l.at), near = roundPoint(exact);
  if (isRound(l.family.shape) || hall.turned % 90 === 0) return near;
  const angle = backAngle(hall, l.angle);
  const [x, y] = [Math.floor(exact[0]), Math.floor(exact[1])];
  const joined = stood.filter((s) => s.group === l.group);
  const cost = (p: Point): number => {
    const own = shapeAt(l.family.shape, p, angle);
    return joined.reduce((sum, o) => {
      const c = boxesNear(own.box, o.shape.box, 5) ? clearance(own, o.shape) : 9;
      return sum + (c > 5 ? 0 : c < 0 ? -4 * c : c);
    }, distance(p, exact) / 10);
  };
  const options: readonly Point[] = [[x, y], [x + 1, y], [x, y + 1], [x + 1, y + 1]];
  const best = joined.length === 0 ? near : options.reduce((b, p) => (cost(p) < cost(b) - 1e-9 ? p : b), near);
  stood.push({ group: l.group, shape: shapeAt(l.family.shape, best, angle) });
  return best;
}

export const standingOf = (l: Laid): Standing => isRound(l.family.shape)
  ? { polygon: aroundCircle(l.at, l.family.shape.diameter / 2, 72), round: { at: l.at, radius: l.family.shape.diameter / 2 } }
  : { polygon: rectangle(l.at, l.family.shape.width, l.family.shape.depth, l.angle), round: null };

/** The hall with these tables standing in it already. */
export const hallWith = (hall: Hall, laid: readonly Laid[]): Hall => (laid.length === 0 ? hall : hallAfter(hall, laid.map(standingOf)));

/** For each table the first of those that it stands end to end with, itself among them. */
export function joined(laid: readonly Laid[]): readonly number[] {
  const shapes = laid.map((l) => (isRound(l.family.shape) ? null : polygonShape(standingOf(l).polygon)));
  const of = laid.map((_, i) => i);
  shapes.forEach((a, i) => shapes.forEach((b, j) => {
    if (!a || !b || j <= i || of[i] === of[j] || !boxesNear(a.box, b.box, 3) || clearance(a, b) > 3) return;
    const [x, y] = [of[i], of[j]];
    of.forEach((g, k) => { if (g === y) of[k] = x as number; });
  }));
  return of;
}

/** The tables of each form or run, and each that stands alone. */
export function groupsIn(laid: readonly Laid[]): readonly (readonly Laid[])[] {
  const of = joined(laid);
  return [...new Set(of)].map((g) => laid.filter((_, i) => of[i] === g));
}

/** Takes places away until n are left, evenly, and from the tables farthest from the focus first. */
export function trimTo(laid: readonly Laid[], n: number, focus: Point): readonly Laid[] {
  const out = [...laid];
  const far = (l: Laid): number => Math.hypot(l.at[0] - focus[0], l.at[1] - focus[1]);
  const order = out.map((_, i) => i).sort((a, b) => far(out[b] as Laid) - far(out[a] as Laid) || a - b);
  for (let spare = totalPlaces(out) - n; spare > 0; spare--) {
    let pick = -1;
    for (const i of order) if (laidPlaces(out[i] as Laid) > 0 && (pick < 0 || laidPlaces(out[i] as Laid) > laidPlaces(out[pick] as Laid))) pick = i;
    const l = out[pick];
    if (!l) break;
    out[pick] = isRound(l.family.shape) ? { ...l, ring: l.ring - 1 } : { ...l, sides: lessOne(l.sides) };
  }
  return out.filter((l) => laidPlaces(l) > 0);
}

function lessOne(s: Sides): Sides {
  const most = Math.max(s[0], s[2]);
  const side = most <= 1 && s[1] + s[3] > 0 ? (s[1] > 0 ? 1 : 3) : s[2] >= s[0] ? 2 : 0;
  return [s[0] - (side === 0 ? 1 : 0), s[1] - (side === 1 ? 1 : 0), s[2] - (side === 2 ? 1 : 0), s[3] - (side === 3 ? 1 : 0)];
}
