import { add, bearing, boxesNear, clearance, distance, insideBy, polygonShape, sub, turn, type Point, type Shape } from "../../geometry";
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

type Rings = (diameter: number, places: number, wheels: 1 | 2) => readonly Seat[];

/** Rings with a wheelchair place straight ahead (0 degrees), worked out once for each size and number of places. */
function ringsFor(chair: ChairSize): Rings {
  const known = new Map<string, readonly Seat[]>();
  return (diameter, places, wheels) => {
    const key = `${diameter} ${places} ${wheels}`, ring = known.get(key) ?? (wheels === 1 ? ringWith(diameter, places, chair) : ringWithTwo(diameter, places, chair));
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

/** The same with a second wheelchair place across the table, at 180 degrees, the chairs shared over the two arcs between. */
function ringWithTwo(diameter: number, places: number, chair: ChairSize): readonly Seat[] {
  const off = diameter / 2 + OFF;
  const wheels: readonly Seat[] = [{ x: Math.round(off), y: 0, facing: 180, place: "wheelchair" }, { x: -Math.round(off), y: 0, facing: 0, place: "wheelchair" }];
  const floors = wheels.map((s) => polygonShape(seatPolygon(s)));
  for (let chairs = places - 2; chairs >= 0; chairs--) for (let first = 20; first <= 90; first += 2) {
    const arcs = [Math.ceil(chairs / 2), Math.floor(chairs / 2)].map((n, k) => Array.from({ length: n }, (_, i): Seat => {
      const a = k * 180 + (n === 1 ? 90 : first + (i * (180 - 2 * first)) / (n - 1));
      const tuck = n > 1 ? ringTuck(diameter, Math.max(3, (360 * (n - 1)) / Math.max(1, 180 - 2 * first)), chair) : TUCK;
      const p = turn([diameter / 2 + offEdge(tuck, chair), 0], a);
      return { x: Math.round(p[0]), y: Math.round(p[1]), facing: (a + 180) % 360, place: "chair" };
    }));
    const bodies = arcs.flat().map((s) => polygonShape(seatPolygon(s, chair)));
    const apart = bodies.every((b, i) => floors.every((f) => clearance(b, f) >= 3) && bodies.every((c, j) => j <= i || clearance(b, c) >= 0));
    if (apart) return [...wheels, ...arcs.flat()];
  }
  return wheels;
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
 * spread over the tables and the room; a second at one table, across it, only when no table without takes one. Places that a
 * wheelchair's width costs are counted in `lost`.
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
    const wheels = own.filter((_, i) => seats[i]?.place === "wheelchair");
    if (!wheels.every((w) => walls.some((p) => insideBy(w, p.outer) >= 0 && p.holes.every((h) => clearance(w, polygonShape(h)) >= 0)))) return false;
    return own.every((c) => solids.every((s) => off(c, s)) && zones.every((z) => off(c, z)) &&
      others.every((t) => t.id === o.item.id || (laid.get(t.id) ?? t.shapes).every((s) => off(c, s))));
  };
  const wheelsAt = (i: Item): readonly Seat[] => i.seats.filter((s) => s.place === "wheelchair");
  const optionsAt = (wheels: 0 | 1): readonly Option[] => {
    const options: Option[] = [];
    for (const item of out) {
      const here = wheelsAt(item), first = here[0];
      if (here.length !== wheels) continue;
      const n = item.seats.length;
      if (isRound(item.shape)) {
        const r = item.shape.diameter / 2;
        const ways = first ? [bearing(sub([first.x, first.y], item.at))] : Array.from({ length: 16 }, (_, k) => opts.axis + k * 22.5);
        for (const way of ways) {
          const free = turn([first ? -1 : 1, 0], way);
          if (!reached(add(item.at, [r * free[0], r * free[1]]), free)) continue;
          const ring = rings(item.shape.diameter, n, first ? 2 : 1);
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
    return options;
  };
  while (placed < opts.count) {
    const near = (o: Option): number => (space.focus ? distance(o.at, space.focus) / 4 : 0) - Math.min(9_000, ...chosen.map((c) => distance(c, o.at)));
    const best = (wheels: 0 | 1): Option | undefined => optionsAt(wheels).filter((o) => o.lost <= spare).sort((a, b) => a.lost - b.lost || near(a) - near(b)).find(stands);
    const pick = best(0) ?? best(1);
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
