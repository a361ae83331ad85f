import {
  add, boxesNear, clearance, edges, middle, polygonShape, rectangle, scale, segmentClearance, sub, turn, unit, type Box, type Point, type Polygon, type Segment, type Shape,
} from "../geometry";
import type { Item, Seat } from "../layout";
import type { RoomSite } from "../venue";
import { middleOf, placed, type Group, type SceneView } from "./context";
import { clearOf } from "./meet";
import { edgePoint, seatOffset } from "./seats";

/** Width of floor that a sitter is taken to face or back on to, mm: 24 in a place (common practice, no source). */
export const PLACE = 610;
/** Floor behind a sitter, from the table's edge outward. */
function behind(table: Item, seat: Seat, deep: number): Polygon {
  const edge = edgePoint(table, seat);
  const off = seatOffset(table, seat);
  const out: Point = off > 20 ? unit(sub([seat.x, seat.y], edge)) : scale(turn([1, 0], seat.facing), -1);
  const bearing = (Math.atan2(out[1], out[0]) * 180) / Math.PI;
  return rectangle(add(edge, scale(out, deep / 2)), PLACE, deep, bearing - 90);
}

const backsKnown = new WeakMap<Item, Map<number, readonly Shape[]>>();
function backsOf(table: Item, deep: number): readonly Shape[] {
  const of = backsKnown.get(table) ?? new Map<number, readonly Shape[]>();
  backsKnown.set(table, of);
  const known = of.get(deep) ?? table.seats.map((s) => polygonShape(behind(table, s, deep)));
  of.set(deep, known);
  return known;
}

export type Near = { readonly table: Item; readonly other: string; readonly kind: "table" | "wall" | "obstacle" | "piece"; readonly gap: number; readonly at: Point };
type Least = { readonly tableGap: number; readonly wallGap: number };

/** Tables that people sit at. */
export const seated = (v: SceneView): readonly Item[] => v.scene.items.filter((i) => i.kind === "table" && i.seats.length > 0);

/** The walls of a room that come within a distance of a box. */
export function wallsNear({ floor }: RoomSite, box: Box, by: number): readonly Segment[] {
  const out: Segment[] = [];
  for (const p of floor) for (const ring of [p.outer, ...p.holes]) for (const e of edges(ring)) {
    const [a, b] = e;
    if (Math.min(a[0], b[0]) <= box.maxX + by && Math.max(a[0], b[0]) >= box.minX - by && Math.min(a[1], b[1]) <= box.maxY + by && Math.max(a[1], b[1]) >= box.minY - by) out.push(e);
  }
  return out;
}

/** Every pair of a seated table and what its places face nearer than the gaps given; of some tables alone, where they are named. */
export function nearThings(v: SceneView, gaps: Least, only?: ReadonlySet<string>): readonly Near[] {
  const reach = Math.max(gaps.tableGap, gaps.wallGap);
  const byRoom = new Map<string, Group[]>();
  for (const g of v.groups) { const list = byRoom.get(g.item.room); if (list) list.push(g); else byRoom.set(g.item.room, [g]); }
  const pairs = new Set<string>();
  return v.groups.flatMap((g) => {
    const { item: table, shape } = g, room = v.site.rooms.get(table.room);
    if (table.kind !== "table" || table.seats.length === 0 || !room || (only && !only.has(table.id))) return [];
    const near = (byRoom.get(table.room) ?? []).filter((o) => o !== g && boxesNear(o.shape.box, shape.box, reach));
    return around({ room, table: g, near, gaps }).filter((n) => {
      // Where each of two tables faces the other they are told of once.
      const key = n.kind === "table" || n.kind === "piece" ? [table.id, n.other].sort().join("|") : "";
      if (key !== "" && pairs.has(key)) return false;
      pairs.add(key);
      return true;
    });
  });
}

type Around = { readonly room: RoomSite; readonly table: Group; readonly near: readonly Group[]; readonly gaps: Least };
const known = new WeakMap<Group, { readonly asked: Around; readonly found: readonly Near[] }[]>();
/** Answers kept for a table: by the gaps of comfort and by the least. */
const KEPT = 2;

const same = (a: Around, b: Around): boolean => a.room === b.room && a.gaps.tableGap === b.gaps.tableGap && a.gaps.wallGap === b.gaps.wallGap &&
  a.near.length === b.near.length && a.near.every((g, i) => g === b.near[i]);

/** What one table's places face too near, which follows from the table, its room and what stands near: kept while these stay. */
function around(asked: Around): readonly Near[] {
  const of = known.get(asked.table) ?? [];
  known.set(asked.table, of);
  const before = of.find((k) => same(k.asked, asked));
  if (before) return before.found;
  const found = facedBy(asked);
  if (of.length >= KEPT) of.shift();
  of.push({ asked, found });
  return found;
}

function facedBy({ room, table: { item: table, shape }, near, gaps }: Around): readonly Near[] {
  const out: Near[] = [];
  for (const { item: other, shape: s } of near) {
    const isTable = other.kind === "table";
    if (!isTable && (!("standing" in other.from) || other.kind === "dance-floor" || (other.kind === "chair" && other.seats.length > 0))) continue;
    const limit = isTable ? gaps.tableGap : gaps.wallGap;
    const gap = clearance(shape, s);
    if (gap >= limit - 1 || !backsOf(table, limit).some((b) => boxesNear(b.box, s.box, 0) && clearance(b, s) < -1)) continue;
    out.push({ table, other: other.id, kind: isTable ? "table" : "piece", gap, at: placed(middle(middleOf(shape), middleOf(s))) });
  }
  const walls = wallsNear(room, shape.box, gaps.wallGap).filter((e) => segmentClearance(shape, e) < gaps.wallGap - 1);
  const wall = walls.filter((e) => backsOf(table, gaps.wallGap).some((b) => segmentClearance(b, e) === 0)).map((e) => segmentClearance(shape, e));
  if (wall.length > 0) out.push({ table, other: "wall", kind: "wall", gap: Math.min(...wall), at: middleOf(shape) });
  const obstacles = room.room.obstacles.filter((o) => clearOf(shape, o.outline) < gaps.wallGap - 1);
  for (const o of obstacles) if (backsOf(table, gaps.wallGap).some((b) => clearOf(b, o.outline) < 0)) {
    out.push({ table, other: o.id, kind: "obstacle", gap: clearOf(shape, o.outline), at: middleOf(shape) });
  }
  return out;
}
