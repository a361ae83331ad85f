import { add, aroundCircle, convexHull, dot, polygonClearance, polygonShape, scale, sinCos, type Point, type Shape } from "../geometry";
import { depthOf, widthOf, type Item } from "../layout";
import { middleOf, placed, type Context, type Part, type Raw, type SceneView } from "./context";
import { near } from "./near";
import { clearOf, share, shareWith, sticksOut } from "./meet";
import { isRowChair, isWheelchairSpace } from "./ways";

export const lookOf = (facing: number): Point => { const { sin, cos } = sinCos(facing); return [cos, sin]; };

/** A strip of floor before a chair: from `from` to `to` mm ahead of its front edge, as wide as the chair less 2 x `trim`. */
function ahead(chair: Item, facing: number, span: { readonly from: number; readonly to: number; readonly trim: number }): Shape {
  const f = lookOf(facing), side: Point = [-f[1], f[0]];
  const front = depthOf(chair.shape) / 2, w = widthOf(chair.shape) / 2 - span.trim;
  const corner = (x: number, y: number): Point => add(chair.at, add(scale(side, x), scale(f, front + y)));
  return polygonShape([corner(-w, span.from), corner(w, span.from), corner(w, span.to), corner(-w, span.to)]);
}

/** Clear floor ahead of each chair of a row: IBC 2018 1029.13.2 (12 in, seat to the back of the row ahead). */
export function rowClear(v: SceneView, c: Context): readonly Raw[] {
  const limit = c.values.rowClear;
  return v.scene.items.filter(isRowChair).flatMap((chair): readonly Raw[] => {
    const facing = chair.seats[0]?.facing;
    if (facing === undefined) return [];
    const strip = ahead(chair, facing, { from: 1, to: limit - 1, trim: 1 });
    const blocks = (p: Part): boolean => p.item !== chair && p.item.kind !== "dance-floor" && p.item.room === chair.room && share(strip, p.shape);
    const other = near(v, strip.box).find(blocks);
    const room = v.site.rooms.get(chair.room);
    const built = room?.room.obstacles.find((o) => shareWith(strip, o.outline));
    const out = room ? sticksOut(strip, () => strip, room.floor) : 0;
    if (!other && !built && out === 0) return [];
    const measured = other ? firstMet(chair, facing, other, limit) : built ? Math.max(0, Math.round(clearOf(ahead(chair, facing, { from: 0, to: 1, trim: 1 }), built.outline))) : Math.max(0, limit - Math.round(out));
    return [{
      code: "row-clear", level: "must", source: "IBC 2018 1029.13.2", scene: v.scene.id, items: other ? [chair.id, other.item.id] : [chair.id],
      at: placed(chair.at), measured, limit, unit: "mm",
      data: { a: chair.id, clear: measured, limit, ...(other ? { b: other.item.id } : {}) },
    }];
  });
}

/** How far ahead the body stands, along the chair's look. */
function firstMet(chair: Item, facing: number, other: Part, limit: number): number {
  const f = lookOf(facing), front = dot(chair.at, f) + depthOf(chair.shape) / 2;
  const near = other.shape.kind === "disc" ? dot(other.shape.at, f) - other.shape.radius : Math.min(...other.shape.points.map((p) => dot(p, f)));
  return Math.max(0, Math.min(limit - 2, Math.round(near - front)));
}

/** The ceremony's rows as one block: which way they look, and what they hold. */
export type Block = { readonly look: Point; readonly side: Point; readonly seats: readonly Item[]; readonly from: number; readonly to: number };
const blocks = new WeakMap<readonly Item[], { readonly block: Block | null }>();
export function blockOf(items: readonly Item[]): Block | null {
  const known = blocks.get(items) ?? { block: makeBlock(items) };
  blocks.set(items, known);
  return known.block;
}

function makeBlock(items: readonly Item[]): Block | null {
  const chairs = items.filter(isRowChair);
  if (chairs.length === 0) return null;
  const sum = chairs.reduce<Point>((s, i) => add(s, lookOf(i.seats[0]?.facing ?? 0)), [0, 0]);
  const n = Math.hypot(sum[0], sum[1]);
  if (n < chairs.length * 0.5) return null;
  // Snap the common look to the middle chair's where they agree, so that rounding does not tilt the aisle.
  const look: Point = [sum[0] / n, sum[1] / n];
  const seats = items.filter((i) => isRowChair(i) || isWheelchairSpace(i));
  const along = chairs.flatMap((i) => { const d = dot(i.at, look), h = depthOf(i.shape) / 2; return [d - h, d + h]; });
  return { look, side: [-look[1], look[0]], seats, from: Math.min(...along), to: Math.max(...along) };
}

function spanOn(shape: Shape, axis: Point): readonly [number, number] {
  if (shape.kind === "disc") { const d = dot(shape.at, axis); return [d - shape.radius, d + shape.radius]; }
  const all = shape.points.map((p) => dot(p, axis));
  return [Math.min(...all), Math.max(...all)];
}

/** Straight clear width of the centre aisle: IBC 2018 1029.9.1(4) (42 in, seats on both sides), for more than 50 seats. */
export function centreAisle(v: SceneView, c: Context): readonly Raw[] {
  if (v.scene.id !== "ceremony" || !c.brief || c.brief.ceremony.aisle !== "centre") return [];
  if (c.brief.ceremony.seating !== "rows" && c.brief.ceremony.seating !== "curve") return [];
  const block = blockOf(v.scene.items);
  if (!block || block.seats.length <= c.values.aisleFrom) return [];
  const width = aisleWidth(v, block);
  if (width >= c.values.centreAisle - 1) return [];
  const middle = middleOf(v.parts.find((p) => p.item === block.seats[Math.floor(block.seats.length / 2)])?.shape ?? polygonShape([[0, 0], [0, 0], [0, 0]]));
  return [{
    code: "centre-aisle", level: "must", source: "IBC 2018 1029.9.1(4)", scene: v.scene.id, items: [], at: middle,
    measured: Math.floor(width), limit: c.values.centreAisle, unit: "mm", data: { width: Math.floor(width), limit: c.values.centreAisle },
  }];
}

/**
 * The widest straight strip between seats on both sides, from the last row's back to the first row's front; 0 when there is none. Bent
 * rows with more on one side look a little askew as a whole: the strip is then as wide as the two halves are apart.
 */
export function aisleWidth(v: SceneView, block: Block): number {
  const seats = new Set(block.seats);
  const spans: { readonly lo: number; readonly hi: number; readonly seat: boolean; readonly shape: Shape }[] = [];
  const add1 = (shape: Shape, seat: boolean): void => {
    const [f, t] = spanOn(shape, block.look);
    if (!seat && (t <= block.from + 1 || f >= block.to - 1)) return;
    const [lo, hi] = spanOn(shape, block.side);
    spans.push({ lo, hi, seat, shape });
  };
  // Only what stands in the rows' own rooms can stand in their aisle: a neighbour or a loft above projects onto the same strip.
  const rooms = new Set(block.seats.map((i) => i.room));
  for (const p of v.parts) if (rooms.has(p.item.room) && p.item.kind !== "dance-floor" && p.item.kind !== "arch") add1(p.shape, seats.has(p.item));
  for (const r of rooms) for (const o of v.site.rooms.get(r)?.room.obstacles ?? []) add1(polygonShape(o.outline), false);
  const lo = Math.min(...spans.filter((s) => s.seat).map((s) => s.lo)), hi = Math.max(...spans.filter((s) => s.seat).map((s) => s.hi));
  const between = spans.filter((x) => x.hi > lo && x.lo < hi).sort((a, b) => a.lo - b.lo);
  let reach = lo, widest = 0, end = 0;
  for (const s of between) {
    if (s.lo - reach > widest) { widest = s.lo - reach; end = s.lo; }
    reach = Math.max(reach, s.hi);
  }
  // Rows that all look one way are as far apart as the strip between them.
  if (widest === 0 || block.seats.every((i) => i.angle === block.seats[0]?.angle)) return widest;
  const half = (right: boolean): readonly Point[] => convexHull(between.filter((s) => (s.lo >= end) === right).flatMap((s) => (s.shape.kind === "disc" ? aroundCircle(s.shape.at, s.shape.radius) : s.shape.points)));
  return Math.max(widest, polygonClearance(half(false), half(true)));
}
