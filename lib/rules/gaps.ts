import { boxesNear, boxOf, clearance, edges, polygonShape, rectangle, scale, segmentClearance, add, turn, unit, sub, clockwise, middle, type Box, type Point, type Polygon, type Segment, type Shape } from "../geometry";
import { isRound, type Item, type Seat } from "../layout";
import type { RoomSite } from "../venue";
import { middleOf, placed, type Context, type Raw, type SceneView } from "./context";
import { clearOf } from "./meet";
import { edgePoint, seatOffset } from "./seats";

/** Width of floor that a sitter is taken to face or back on to, mm: 24 in a place (common practice, no source). */
const PLACE = 610;
/** Ends nearer than this are joined, mm. */
export const JOINED = 5;

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

type Near = { readonly table: Item; readonly other: string; readonly kind: "table" | "wall" | "obstacle" | "piece"; readonly gap: number; readonly at: Point };

const seated = (v: SceneView): readonly Item[] => v.scene.items.filter((i) => i.kind === "table" && i.seats.length > 0);

/** The walls of a room that come within a distance of a box. */
function wallsNear({ floor }: RoomSite, box: Box, by: number): readonly Segment[] {
  const out: Segment[] = [];
  for (const p of floor) for (const ring of [p.outer, ...p.holes]) for (const e of edges(ring)) {
    const [a, b] = e;
    if (Math.min(a[0], b[0]) <= box.maxX + by && Math.max(a[0], b[0]) >= box.minX - by && Math.min(a[1], b[1]) <= box.maxY + by && Math.max(a[1], b[1]) >= box.minY - by) out.push(e);
  }
  return out;
}

/** Every pair of a seated table and what its places face nearer than the gaps given; of some tables alone, where they are named. */
export function nearThings(v: SceneView, gaps: { readonly tableGap: number; readonly wallGap: number }, only?: ReadonlySet<string>): readonly Near[] {
  const out: Near[] = [];
  const shapes = new Map<Item, Shape>(v.groups.map((g) => [g.item, g.shape]));
  const pairs = new Set<string>();
  const reach = Math.max(gaps.tableGap, gaps.wallGap);
  const byRoom = new Map<string, Item[]>();
  for (const i of v.scene.items) { const list = byRoom.get(i.room); if (list) list.push(i); else byRoom.set(i.room, [i]); }
  for (const table of seated(v)) {
    if (only && !only.has(table.id)) continue;
    const shape = shapes.get(table);
    const room = v.site.rooms.get(table.room);
    if (!shape || !room) continue;
    const walls = wallsNear(room, shape.box, gaps.wallGap).filter((e) => segmentClearance(shape, e) < gaps.wallGap - 1);
    const obstacles = room.room.obstacles.filter((o) => clearOf(shape, o.outline) < gaps.wallGap - 1);
    const near = (byRoom.get(table.room) ?? []).filter((i) => { const s = shapes.get(i); return i !== table && s && boxesNear(s.box, shape.box, reach); });
    const backs = (deep: number): readonly Shape[] => backsOf(table, deep);
    for (const other of near) {
      const s = shapes.get(other);
      if (!s) continue;
      const isTable = other.kind === "table";
      if (!isTable && (!("standing" in other.from) || other.kind === "dance-floor" || (other.kind === "chair" && other.seats.length > 0))) continue;
      const limit = isTable ? gaps.tableGap : gaps.wallGap;
      const gap = clearance(shape, s);
      const key = [table.id, other.id].sort().join("|");
      if (gap >= limit - 1 || pairs.has(key) || !backs(limit).some((b) => boxesNear(b.box, s.box, 0) && clearance(b, s) < -1)) continue;
      pairs.add(key);
      out.push({ table, other: other.id, kind: isTable ? "table" : "piece", gap, at: placed(middle(middleOf(shape), middleOf(s))) });
    }
    const wall = walls.filter((e) => backs(gaps.wallGap).some((b) => segmentClearance(b, e) === 0)).map((e) => segmentClearance(shape, e));
    if (wall.length > 0) out.push({ table, other: "wall", kind: "wall", gap: Math.min(...wall), at: middleOf(shape) });
    for (const o of obstacles) if (backs(gaps.wallGap).some((b) => clearOf(b, o.outline) < 0)) {
      out.push({ table, other: o.id, kind: "obstacle", gap: clearOf(shape, o.outline), at: middleOf(shape) });
    }
  }
  return out;
}

/** Gaps where places face a table, a wall, an obstacle or a standing piece: at most tables as `must`, in comfort as one `should`. */
export function gaps(v: SceneView, c: Context): readonly Raw[] {
  const { most, comfort } = c.values;
  const limitOf = (n: Near, g: typeof most): number => (n.kind === "table" ? g.tableGap : g.wallGap);
  const near = nearThings(v, comfort);
  // What is nearer than the least is nearer than comfort too.
  const broken = new Set(near.length === 0 ? [] : nearThings(v, most, new Set(near.flatMap((n) => [n.table.id, n.other]))));
  const must = [...broken].map((n): Raw => ({
    code: n.kind === "table" ? "table-gap" : "wall-gap", level: "must", source: c.venue.rules?.most ? "the venue's own figure" : c.values.source.gaps, scene: v.scene.id,
    items: n.kind === "table" || n.kind === "piece" ? [n.table.id, n.other] : [n.table.id], at: n.at, measured: Math.round(n.gap), limit: limitOf(n, most), unit: "mm",
    data: { a: n.table.id, b: n.other, kind: n.kind, gap: Math.round(n.gap), limit: limitOf(n, most) },
  }));
  const taken = new Set([...broken].map((n) => `${n.table.id}|${n.other}`));
  const tight = near.filter((n) => !taken.has(`${n.table.id}|${n.other}`) && !taken.has(`${n.other}|${n.table.id}`));
  return [...must, ...(["table", "wall"] as const).flatMap((kind): readonly Raw[] => {
    const these = tight.filter((n) => (n.kind === "table") === (kind === "table"));
    const worst = [...these].sort((a, b) => a.gap - b.gap)[0];
    if (!worst) return [];
    return [{
      code: kind === "table" ? "table-comfort" : "wall-comfort", level: "should", source: c.venue.rules?.comfort ? "the venue's own figure" : "common practice, no source", scene: v.scene.id,
      items: [...new Set(these.flatMap((n) => (n.kind === "table" ? [n.table.id, n.other] : [n.table.id])))].sort(), at: worst.at,
      measured: Math.round(worst.gap), limit: limitOf(worst, comfort), unit: "mm", data: { count: these.length, gap: Math.round(worst.gap), limit: limitOf(worst, comfort), a: worst.table.id },
    }];
  })];
}

type End = { readonly table: Item; readonly box: Box; readonly edge: readonly [Point, Point]; readonly out: Point; readonly hasPlaces: boolean };

/** The two short edges of a long table that people sit at. */
export function endsOf(table: Item): readonly End[] {
  if (isRound(table.shape)) return [];
  const { width, depth } = table.shape;
  const alongX = width >= depth;
  const half = (alongX ? width : depth) / 2, across = (alongX ? depth : width) / 2;
  const local = (p: Point): Point => (alongX ? p : [p[1], p[0]]);
  return ([1, -1] as const).map((s): End => {
    const corner = (k: number): Point => add(table.at, turn(local([s * half, k * across]), table.angle));
    const out = turn(local([s, 0]), table.angle);
    const edge = [corner(-1), corner(1)] as const;
    const at = middle(edge[0], edge[1]);
    const hasPlaces = table.seats.some((seat) => {
      const d = sub([seat.x, seat.y], at), along = d[0] * out[0] + d[1] * out[1], side = Math.abs(d[0] * out[1] - d[1] * out[0]);
      return along > 0 && side <= across + 1;
    });
    return { table, box: boxOf(edge), edge, out, hasPlaces };
  });
}

const stripOf = (e: End, deep: number): Polygon => clockwise([e.edge[0], e.edge[1], add(e.edge[1], scale(e.out, deep)), add(e.edge[0], scale(e.out, deep))]);

/** An end without places: 450 mm from a wall or obstacle, 914 mm from an end that is not joined to it. */
export function ends(v: SceneView, c: Context): readonly Raw[] {
  const { endWall, endEnd } = c.values;
  const all = seated(v).flatMap(endsOf);
  const out: Raw[] = [];
  const told = new Set<string>();
  for (const e of all.filter((x) => !x.hasPlaces)) {
    const room = v.site.rooms.get(e.table.room);
    if (!room) continue;
    const middleOut = placed(add(middle(e.edge[0], e.edge[1]), scale(e.out, 200)));
    const line: Polygon = stripOf(e, 1);
    // The end's own corners lie on its sides: a strip a little narrower keeps a wall beside the table out.
    const strip = polygonShape(narrow(stripOf(e, endWall - 1)));
    const walls = wallsNear(room, strip.box, 0).filter((w) => segmentClearance(strip, w) === 0);
    const built = room.room.obstacles.filter((o) => clearOf(strip, o.outline) < 0);
    const reach = [
      ...walls.map((w) => segmentClearance(polygonShape(line), w)), ...built.map((o) => Math.max(0, clearOf(polygonShape(line), o.outline))),
    ];
    const gap = Math.min(...reach);
    if (reach.length > 0 && gap < endWall - 1) out.push(endFinding(v, e, { code: "end-wall", gap, limit: endWall, other: null, at: middleOut }));
    for (const f of all) {
      if (f.table === e.table || f.table.room !== e.table.room || !boxesNear(e.box, f.box, endEnd) || e.out[0] * f.out[0] + e.out[1] * f.out[1] > -0.7) continue;
      const g = clearance(polygonShape(line), polygonShape(stripOf(f, 1))) + 2;
      const key = [e.table.id, f.table.id].sort().join("|");
      if (g >= endEnd - 1 || g <= JOINED + 2 || told.has(key)) continue;
      if (clearance(polygonShape(narrow(stripOf(e, endEnd))), polygonShape(stripOf(f, 1))) >= 0) continue;
      told.add(key);
      out.push(endFinding(v, e, { code: "end-end", gap: g, limit: endEnd, other: f.table.id, at: middleOut }));
    }
  }
  return out;
}

function narrow(p: Polygon): Polygon {
  const c = middle(p[0] ?? [0, 0], p[2] ?? [0, 0]);
  return p.map((q) => add(c, scale(sub(q, c), 0.998)));
}

type EndGap = { readonly code: "end-wall" | "end-end"; readonly gap: number; readonly limit: number; readonly other: string | null; readonly at: Point };
const endFinding = (v: SceneView, e: End, g: EndGap): Raw => ({
  code: g.code, level: "must", source: "common practice, no source", scene: v.scene.id, items: g.other ? [e.table.id, g.other] : [e.table.id], at: placed(g.at),
  measured: Math.round(g.gap), limit: g.limit, unit: "mm", data: { a: e.table.id, gap: Math.round(g.gap), limit: g.limit, ...(g.other ? { b: g.other } : {}) },
});
