import { boxesNear, boxOf, distance, edges, nearestOnSegment, segmentClearance, type Box, type Point, type Polygon, type Segment, type Shape } from "../geometry";
import { footprint, type Item } from "../layout";
import { levelOf, type Site } from "../venue";
import { isSeatedTable, isSolid, joinedRows, piecesOnFloor } from "./ways";
import type { Context, SceneView } from "./context";

/** Where a stretch of floor between two things is narrowest: the segment across it, mm. The line of seated chairs counts as the table's. */
export type Stretch = { readonly across: Segment; readonly width: number; readonly items: readonly string[] };

/** A thing on the floor, with how far its line lies out; `item` is null for a wall or what is built in. */
type Thing = { readonly item: Item | null; readonly shape: Shape; readonly line: number; readonly box: Box };

/** Chairs of a row between which nobody passes are one thing. */
function thingsOn(v: SceneView, c: Context, level: number): readonly Thing[] {
  const here = (room: string): boolean => levelOf(v.site, room) === level;
  const pieces = joinedRows(piecesOnFloor(v.site, v.scene).filter((i) => isSolid(i) && here(i.room)), c.values.path - 2);
  return [...pieces.map((item) => thingOf(item, isSeatedTable(item) ? c.values.tableLine : 0)), ...builtOn(v.site, level)];
}

const things = new WeakMap<Item, Thing>(), built = new WeakMap<Site, Map<number, readonly Thing[]>>();

/** The same object wherever the piece stands as it does, so that what was measured from it is found again. */
function thingOf(item: Item, line: number): Thing {
  const known = things.get(item);
  if (known?.line === line) return known;
  const shape = footprint(item), thing: Thing = { item, shape, line, box: shape.box };
  things.set(item, thing);
  return thing;
}

/** Walls and what is built in, side by side. */
function builtOn(site: Site, level: number): readonly Thing[] {
  const of = built.get(site) ?? new Map<number, readonly Thing[]>(), known = of.get(level);
  if (known) return known;
  const rooms = [...site.rooms.values()].filter((r) => r.room.level === level);
  const sides = rooms.flatMap((r) => [...r.room.obstacles.flatMap((o) => [...edges(o.outline)]), ...r.floor.flatMap((p) => [p.outer, ...p.holes].flatMap((ring) => [...edges(ring)]))]);
  const all = sides.map((e): Thing => { const box = boxOf(e); return { item: null, shape: { kind: "polygon", points: e, box }, line: 0, box }; });
  built.set(site, of.set(level, all));
  return all;
}

/** Segments between two things: of the corners of either to the other, and of a round one's middle; those of parallel sides lie at both ends of where they face. */
function between(a: Thing, b: Thing): readonly Segment[] {
  const ring = (t: Thing): Polygon | null => (t.shape.kind === "disc" ? null : t.shape.points);
  const p = ring(a), q = ring(b);
  if (a.shape.kind === "disc" && b.shape.kind === "disc") return [[a.shape.at, b.shape.at]];
  if (a.shape.kind === "disc" && q) return [[a.shape.at, nearestOf(q, a.shape.at)]];
  if (b.shape.kind === "disc" && p) return [[nearestOf(p, b.shape.at), b.shape.at]];
  return p && q ? [...p.map((at): Segment => [at, nearestOf(q, at)]), ...q.map((at): Segment => [nearestOf(p, at), at])] : [];
}

function nearestOf(ring: Polygon, at: Point): Point {
  let best = ring[0] ?? at, d = Infinity;
  for (const e of edges(ring)) { const q = nearestOnSegment(at, e), k = distance(q, at); if (k < d) { d = k; best = q; } }
  return best;
}

/** How much of a segment from a thing's middle or edge lies in the thing or within its line. */
const own = (t: Thing): number => t.line + (t.shape.kind === "disc" ? t.shape.radius : 0);

/** Which stretches are asked for: those narrower than `under`, mm, where floor within a box is `busy`. */
type Asked = { readonly level: number; readonly under: number; readonly busy: (box: Box) => boolean };

/**
 * Stretches of free floor on a level between a piece and another, or a wall, that someone can pass, one or more to a pair; where a
 * third thing stands in between it bounds narrower ones.
 */
export function stretchesOn(v: SceneView, c: Context, { level, under, busy }: Asked): readonly Stretch[] {
  const all = thingsOn(v, c, level), order = new Map(all.map((t, i) => [t, i] as const)), out: Stretch[] = [];
  for (const a of all) {
    if (!a.item || !busy(wider(a.box, under))) continue;
    const near = all.filter((b) => b !== a && boxesNear(a.box, b.box, under + a.line + b.line)), to = stretchesFrom(a, near, { over: c.values.path - 1, under });
    for (const b of near) if (!(b.item && (order.get(b) ?? 0) < (order.get(a) ?? 0)) && busy(wider(b.box, under))) out.push(...to(b));
  }
  return out;
}

/** Widths between which stretches are asked for, mm. */
type Widths = { readonly over: number; readonly under: number };
type From = Widths & { readonly near: readonly Thing[]; readonly to: Map<Thing, readonly Stretch[]> };
const measured = new WeakMap<Thing, From>();

/** Stretches from a thing to another, kept for as long as the same things stand about it: mostly one alone is moved. */
function stretchesFrom(a: Thing, near: readonly Thing[], { over, under }: Widths): (b: Thing) => readonly Stretch[] {
  const known = measured.get(a);
  const from: From = known?.over === over && known.under === under && known.near.length === near.length && known.near.every((t, i) => t === near[i])
    ? known : { over, under, near, to: new Map() };
  measured.set(a, from);
  return (b) => {
    const found = from.to.get(b) ?? between(a, b).flatMap((across): readonly Stretch[] => {
      const width = distance(...across) - own(a) - own(b);
      if (width < over || width >= under || near.some((t) => t !== b && stands(t, across))) return [];
      return [{ across: clipped(across, own(a), own(b)), width, items: [a, b].flatMap((t) => (t.item ? [t.item.id] : [])) }];
    });
    from.to.set(b, found);
    return found;
  };
}

const wider = (b: Box, by: number): Box => ({ minX: b.minX - by, minY: b.minY - by, maxX: b.maxX + by, maxY: b.maxY + by });
const stands = (t: Thing, across: Segment): boolean => boxesNear(t.box, boxOf(across), t.line) && segmentClearance(t.shape, across) <= Math.max(0.01, t.line);

/** The segment without what lies within the two things' own lines. */
function clipped([from, to]: Segment, near: number, far: number): Segment {
  const n = distance(from, to), at = (d: number): Point => [from[0] + ((to[0] - from[0]) * d) / n, from[1] + ((to[1] - from[1]) * d) / n];
  return n === 0 ? [from, to] : [at(near), at(n - far)];
}

/** True where a step crosses a stretch; of steps that follow on one another exactly one does. */
export function crosses([p, q]: Segment, { across: [a, b] }: Stretch): boolean {
  const dx = b[0] - a[0], dy = b[1] - a[1], s = dx * (p[1] - a[1]) - dy * (p[0] - a[0]), t = dx * (q[1] - a[1]) - dy * (q[0] - a[0]);
  if (s >= 0 === t >= 0) return false;
  const k = s / (s - t), x = p[0] + (q[0] - p[0]) * k, y = p[1] + (q[1] - p[1]) * k, n = dx * dx + dy * dy, along = (x - a[0]) * dx + (y - a[1]) * dy;
  return along >= 0 && along <= n;
}
