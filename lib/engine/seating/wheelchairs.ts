import { add, boxesNear, clearance, distance, insideBy, polygonShape, turn, type Point, type Shape } from "../../geometry";
import { footprint, isRound, seatPolygon, WHEELCHAIR_FLOOR, type Item, type Seat } from "../../layout";
import { LINE_OUT } from "./hall";
import { linesOf } from "./lines";
import { moveSeats, offEdge, ringTuck, TUCK } from "./seats";
import type { ChairSize, SeatingSpace } from "./types";
import { ROUTE, walkable } from "./ways";

/** How far the clear floor reaches under the table, mm: 2010 ADA Standards 306.2 (17 in), so that its middle lies 178 mm off the edge. */
const UNDER = 432;
const OFF = WHEELCHAIR_FLOOR.depth / 2 - UNDER;
/** Width of table edge that a wheelchair place takes. */
const SLOT = WHEELCHAIR_FLOOR.width + 20;

type Option = { readonly item: Item; readonly seats: () => readonly Seat[]; readonly at: Point; readonly lost: number };

type Rings = (diameter: number, places: number) => readonly Seat[];

/** Rings with a wheelchair place straight ahead (0 degrees), worked out once for each size and number of places. */
function ringsFor(chair: ChairSize): Rings {
  const known = new Map<string, readonly Seat[]>();
  return (diameter, places) => {
    const key = `${diameter} ${places}`, ring = known.get(key) ?? ringWith(diameter, places, chair);
    known.set(key, ring);
    return ring;
  };
}

/** Seats about the origin of a round with a wheelchair place at 0 degrees, chairs shared over the rest. */
function ringWith(diameter: number, places: number, chair: ChairSize): readonly Seat[] {
  const way = 0;
  const r = diameter / 2;
  const middle = turn([r + OFF, 0], way);
  const wheel: Seat = { x: Math.round(middle[0]), y: Math.round(middle[1]), facing: (way + 180) % 360, place: "wheelchair" };
  const floor = polygonShape(seatPolygon(wheel));
  for (let chairs = places - 1; chairs >= 0; chairs--) {
    for (let first = 20; first <= 120; first += 2) {
      const step = chairs > 1 ? (360 - 2 * first) / (chairs - 1) : 0;
      if (step < 0) break;
      const tuck = chairs > 1 ? ringTuck(diameter, Math.max(3, 360 / step), chair) : TUCK;
      if (chair.depth / 2 - tuck > 450) break;
      const off = r + offEdge(tuck, chair);
      const seats = Array.from({ length: chairs }, (_, i): Seat => {
        const a = way + (chairs === 1 ? 180 : first + i * step), p = turn([off, 0], a);
        return { x: Math.round(p[0]), y: Math.round(p[1]), facing: (((a + 180) % 360) + 360) % 360, place: "chair" };
      });
      const near = [seats[0], seats[seats.length - 1]].filter((s): s is Seat => s !== undefined);
      if (near.every((s) => clearance(polygonShape(seatPolygon(s, chair)), floor) >= 3)) return [wheel, ...seats];
    }
  }
  return [wheel];
}

/** Seats of a straight table with one place of a long side taken by a wheelchair, at that side's left or right. */
function sideWith(item: Item, chair: ChairSize, top: boolean, left: boolean): readonly Seat[] | null {
  if (isRound(item.shape)) return null;
  const { width, depth } = item.shape;
  const local = item.seats.map((s) => {
    const [x, y] = turn([s.x - item.at[0], s.y - item.at[1]], -item.angle);
    return { ...s, x: Math.round(x), y: Math.round(y), facing: (((s.facing - item.angle) % 360) + 360) % 360 };
  });
  const isTop = (s: Seat): boolean => Math.abs(s.facing - 90) < 1, isBottom = (s: Seat): boolean => Math.abs(s.facing - 270) < 1;
  const mine = local.filter(top ? isTop : isBottom), rest = local.filter((s) => !mine.includes(s));
  if (mine.length === 0 || width < SLOT + 160 || mine.some((s) => s.place === "wheelchair")) return null;
  const endTaken = rest.some((s) => (left ? Math.abs(s.facing) < 1 || Math.abs(s.facing - 360) < 1 : Math.abs(s.facing - 180) < 1));
  const inset = endTaken ? TUCK + 20 : 10;
  const length = width - inset - SLOT;
  const chairs = Math.min(mine.length - 1, Math.floor(length / (chair.width + 10)));
  const sign = top ? -1 : 1, flip = left ? 1 : -1;
  const first = mine[0];
  if (!first) return null;
  const at = (fromEnd: number, off: number, place: Seat["place"]): Seat =>
    ({ x: Math.round(flip * (fromEnd - width / 2)), y: Math.round(sign * (depth / 2 + off)), facing: first.facing, place });
  const off = Math.abs(Math.abs(first.y) - depth / 2);
  return [...rest, at(inset + SLOT / 2, OFF, "wheelchair"), ...Array.from({ length: chairs }, (_, i) => at(inset + SLOT + ((i + 0.5) * length) / chairs, off, "chair"))];
}

/**
 * Gives up to `count` places to wheelchairs: each takes the place of a chair on a side that an accessible route reaches,
 * spread over the tables and the room. Places that a wheelchair's width costs are counted in `lost`.
 */
export function placeWheelchairs(space: SeatingSpace, items: readonly Item[], opts: { readonly count: number; readonly chair: ChairSize; readonly axis: number; readonly spare: number }): { readonly items: readonly Item[]; readonly placed: number } {
  let out = [...items];
  let placed = 0, spare = opts.spare;
  const chosen: Point[] = [];
  if (opts.count === 0) return { items, placed };
  const open = walkable(space, items, ROUTE);
  if (open.length === 0) return { items, placed };
  const rings = ringsFor(opts.chair);
  const inside = open.map((p) => linesOf([p]));
  const reached = (edge: Point, outward: Point): boolean => {
    const q = add(edge, [outward[0] * (LINE_OUT + ROUTE / 2 + 6), outward[1] * (LINE_OUT + ROUTE / 2 + 6)]);
    return inside.some((l) => l.at(q[1]).some(([from, to]) => q[0] >= from && q[0] <= to));
  };
  const walls = space.floor, solids = space.solids.map(polygonShape), zones = space.zones.map((z) => polygonShape(z.polygon));
  const others: readonly { readonly id: string; readonly shapes: readonly Shape[] }[] = [...items, ...(space.fixed ?? [])].map((t) => ({ id: t.id, shapes: [footprint(t), ...t.seats.map((s) => polygonShape(seatPolygon(s, opts.chair)))] }));
  const laid = new Map<string, readonly Shape[]>();
  const off = (a: Shape, b: Shape): boolean => !boxesNear(a.box, b.box, 0) || clearance(a, b) >= 0;
  const stands = (o: Option): boolean => {
    const seats = o.seats();
    const own: Shape[] = seats.map((s) => polygonShape(seatPolygon(s, opts.chair)));
    if (own.some((a, i) => own.some((b, j) => j > i && !off(a, b)))) return false;
    const wheel = own[seats.findIndex((s) => s.place === "wheelchair")];
    if (!wheel || !walls.some((p) => insideBy(wheel, p.outer) >= 0 && p.holes.every((h) => clearance(wheel, polygonShape(h)) >= 0))) return false;
    return own.every((c) => solids.every((s) => off(c, s)) && zones.every((z) => off(c, z)) &&
      others.every((t) => t.id === o.item.id || (laid.get(t.id) ?? t.shapes).every((s) => off(c, s))));
  };
  while (placed < opts.count) {
    const options: Option[] = [];
    for (const item of out) {
      if (item.seats.some((s) => s.place === "wheelchair")) continue;
      const n = item.seats.length;
      if (isRound(item.shape)) {
        const r = item.shape.diameter / 2;
        for (let k = 0; k < 16; k++) {
          const way = opts.axis + k * 22.5, outward = turn([1, 0], way);
          if (!reached(add(item.at, turn([r, 0], way)), outward)) continue;
          const ring = rings(item.shape.diameter, n);
          options.push({ item, seats: () => moveSeats(ring, item.at, way), at: item.at, lost: n - ring.length });
        }
      } else for (const top of [true, false]) for (const left of [true, false]) {
        const { width, depth } = item.shape;
        const local: Point = [(left ? -1 : 1) * (width / 2 - SLOT / 2 - 10), (top ? -1 : 1) * (depth / 2)];
        if (!reached(add(item.at, turn(local, item.angle)), turn([0, top ? -1 : 1], item.angle))) continue;
        const seats = sideWith(item, opts.chair, top, left);
        if (seats) options.push({ item, seats: () => moveSeats(seats, item.at, item.angle), at: item.at, lost: n - seats.length });
      }
    }
    const near = (o: Option): number => (space.focus ? distance(o.at, space.focus) / 4 : 0) - Math.min(9_000, ...chosen.map((c) => distance(c, o.at)));
    const pick = options.filter((o) => o.lost <= spare).sort((a, b) => a.lost - b.lost || near(a) - near(b)).find(stands);
    if (!pick) break;
    const seats = pick.seats();
    out = out.map((i) => (i === pick.item ? { ...i, seats: [...seats] } : i));
    laid.set(pick.item.id, [footprint(pick.item), ...seats.map((s) => polygonShape(seatPolygon(s, opts.chair)))]);
    chosen.push(pick.at);
    spare -= pick.lost;
    placed++;
  }
  return { items: out, placed };
}
