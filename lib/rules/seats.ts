import { bearing, distance, edges, nearestOnSegment, pointClearance, scale, sub, unit, add, type Point } from "../geometry";
import { footprint, type Item, type Seat } from "../layout";
import { placed, type Context, type Raw, type SceneView } from "./context";
import type { RuleValues } from "./values";

/** How far off its table a sitter may look past it, degrees: positions are whole millimetres. */
const LOOK = 20;

/** The point of a table's edge nearest to a seat. */
export function edgePoint(table: Item, seat: Seat): Point {
  const shape = footprint(table);
  const p: Point = [seat.x, seat.y];
  if (shape.kind === "disc") return add(shape.at, scale(unit(sub(p, shape.at)), shape.radius));
  let best: Point = p, d = Infinity;
  for (const e of edges(shape.points)) {
    const q = nearestOnSegment(p, e);
    const k = distance(p, q);
    if (k < d) { d = k; best = q; }
  }
  return best;
}

/** Distance of a seat's middle from its table's edge, mm; negative under the table. */
export function seatOffset(table: Item, seat: Seat): number {
  const shape = footprint(table);
  const p: Point = [seat.x, seat.y];
  return shape.kind === "disc" ? distance(p, shape.at) - shape.radius : pointClearance(p, shape.points);
}

/** Angle between where a sitter looks and the nearest edge of the table, degrees; 0 where the seat touches the edge. */
function lookingPast(table: Item, seat: Seat): number {
  const to = sub(edgePoint(table, seat), [seat.x, seat.y]);
  if (Math.hypot(to[0], to[1]) < 20) return 0;
  const turn = Math.abs(bearing(to) - (((seat.facing % 360) + 360) % 360));
  return Math.min(turn, 360 - turn);
}

/** Tables whose places have all been found in order by some values. */
const inOrder = new WeakMap<RuleValues, WeakSet<Item>>();

/** A place at a table: its middle 100 to 450 mm off the edge (a wheelchair's 0 to 700), looking at the table. */
export function seats(v: SceneView, c: Context): readonly Raw[] {
  const known = inOrder.get(c.values) ?? new WeakSet<Item>();
  inOrder.set(c.values, known);
  return v.scene.items.flatMap((item) => {
    if (item.kind !== "table" || known.has(item)) return [];
    const found = seatsOf(v, c, item);
    if (found.length === 0) known.add(item);
    return found;
  });
}

function seatsOf(v: SceneView, c: Context, item: Item): readonly Raw[] {
  const { seatNear, seatFar, wheelchairFar } = c.values;
  return item.seats.flatMap((s, i): readonly Raw[] => {
    const base = { level: "must" as const, scene: v.scene.id, items: [item.id], at: placed([s.x, s.y]) };
    const [near, far] = s.place === "wheelchair" ? [0, wheelchairFar] : [seatNear, seatFar];
    const off = seatOffset(item, s);
    if (off < near - 1 || off > far + 1) {
      const limit = off < near ? near : far;
      return [{
        ...base, code: "seat-offset", source: "common practice, no source", measured: Math.round(off), limit, unit: "mm",
        data: { a: item.id, seat: i + 1, off: Math.round(off), near, far, place: s.place },
      }];
    }
    const past = lookingPast(item, s);
    return past <= LOOK ? [] : [{
      ...base, code: "seat-facing", source: "common practice, no source", measured: Math.round(past), limit: LOOK, unit: "degrees",
      data: { a: item.id, seat: i + 1, past: Math.round(past) },
    }];
  });
}
