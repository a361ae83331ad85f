import { distance, edges, middle, nearestOnSegment, unit, sub, add, scale, type Box, type Point, type Shape } from "../geometry";
import { footprint, type Item } from "../layout";
import type { Room } from "../venue";
import { extentOf, frameOf, intoFrame, nearWalls, outOfFrame, type RoomFrame } from "./walls";

/** Why a piece was drawn to a spot, with the line that shows it, in the venue's frame. `mm`: the gap that is equal to another. */
export type Hint = { readonly kind: "axis" | "line" | "gap"; readonly from: Point; readonly to: Point; readonly mm?: number };
export type Snapped = { readonly at: Point; readonly hints: readonly Hint[] };
/** A clear distance to be shown while a piece moves: from its edge to a wall or to its neighbour. */
export type DimensionString = { readonly to: "wall" | "piece"; readonly from: Point; readonly end: Point; readonly mm: number };

/** Neighbours farther off than this are not lined up with, mm. */
const REACH = 9_000;
type Pull = { readonly v: number; readonly rank: number; readonly hints: (at: Point) => readonly Hint[] };

const span = (b: Box, x: boolean): readonly [number, number] => (x ? [b.minX, b.maxX] : [b.minY, b.maxY]);
const centre = (b: Box, x: boolean): number => (x ? b.minX + b.maxX : b.minY + b.maxY) / 2;
const across = (a: Box, b: Box, x: boolean): boolean => { const [p, q] = span(a, !x), [r, s] = span(b, !x); return p < s && r < q; };

type Ask = { readonly f: RoomFrame; readonly own: Box; readonly others: readonly Box[]; readonly x: boolean };

/** Everything along one axis that would draw the piece's middle to itself. */
function pulls({ f, own, others, x }: Ask): readonly Pull[] {
  const half = (span(own, x)[1] - span(own, x)[0]) / 2, mid = centre(own, !x);
  const point = (v: number, w: number): Point => outOfFrame(f, x ? [v, w] : [w, v]);
  const out: Pull[] = [];
  const axis = centre(f.box, x), [lo, hi] = span(f.box, !x);
  out.push({ v: axis, rank: 1, hints: () => [{ kind: "axis", from: point(axis, lo), to: point(axis, hi) }] });
  for (const o of others) {
    const c = centre(o, x), far = centre(o, !x);
    const line = (v: number): readonly Hint[] => [{ kind: "line", from: point(v, far), to: point(v, mid) }];
    out.push({ v: c, rank: 2, hints: () => line(c) });
    const [a, b] = span(o, x);
    out.push({ v: a + half, rank: 3, hints: () => line(a) }, { v: b - half, rank: 3, hints: () => line(b) });
  }
  return [...out, ...gapPulls({ f, own, others, x }, half, point)];
}

/** Equal gaps: midway between two neighbours, or as far from one as that one is from its next. */
function gapPulls({ own, others, x }: Ask, half: number, point: (v: number, w: number) => Point): readonly Pull[] {
  const row = others.filter((o) => across(own, o, x)), c = centre(own, x), mid = centre(own, !x);
  const before = row.filter((o) => centre(o, x) < c).sort((a, b) => span(b, x)[1] - span(a, x)[1]);
  const after = row.filter((o) => centre(o, x) >= c).sort((a, b) => span(a, x)[0] - span(b, x)[0]);
  const gap = (a: number, b: number): Hint => ({ kind: "gap", from: point(a, mid), to: point(b, mid), mm: Math.round(Math.abs(b - a)) });
  const out: Pull[] = [];
  const [p, q] = [before[0], after[0]];
  if (p && q) {
    const v = (span(p, x)[1] + span(q, x)[0]) / 2;
    if (span(q, x)[0] - span(p, x)[1] > 2 * half) out.push({ v, rank: 0, hints: () => [gap(span(p, x)[1], v - half), gap(v + half, span(q, x)[0])] });
  }
  for (const [list, way] of [[before, 1], [after, -1]] as const) {
    const [near, next] = list;
    if (!near || !next) continue;
    const edge = span(near, x)[way === 1 ? 1 : 0], other = span(near, x)[way === 1 ? 0 : 1], far = span(next, x)[way === 1 ? 1 : 0];
    const g = Math.abs(other - far);
    if (g <= 0) continue;
    const v = edge + way * (g + half);
    out.push({ v, rank: 0, hints: () => [gap(far, other), gap(edge, v - way * half)] });
  }
  return out;
}

type Near = { readonly room: Room; readonly item: Item; readonly others: readonly Item[]; /** How far off a spot still draws the piece to it, mm. */ readonly within: number };

/** The spot that a piece is drawn to from where it is held, along each of the room's axes by itself: equal gaps first, then the room's middle, then its neighbours. */
export function snap({ room, item, others, within }: Near): Snapped {
  const f = frameOf(room);
  const boxes = others.filter((o) => o.room === item.room && o.id !== item.id && o.kind !== "chair" && distance(o.at, item.at) <= REACH).map((o) => extentOf(f, o));
  const own = extentOf(f, item), [x, y] = intoFrame(f, item.at);
  const best = (isX: boolean, from: number): Pull | null => pulls({ f, own, others: boxes, x: isX })
    .filter((p) => Math.abs(p.v - from) <= within)
    .sort((a, b) => a.rank - b.rank || Math.abs(a.v - from) - Math.abs(b.v - from))[0] ?? null;
  const bx = best(true, x), by = best(false, y);
  const [px, py] = outOfFrame(f, [bx?.v ?? x, by?.v ?? y]);
  const at: Point = [Math.round(px), Math.round(py)];
  return { at, hints: [...(bx?.hints(at) ?? []), ...(by?.hints(at) ?? [])] };
}

/** The nearest points of two bodies. */
function nearestPair(a: Shape, b: Shape): readonly [Point, Point] {
  if (a.kind === "disc" && b.kind === "disc") { const u = unit(sub(b.at, a.at)); return [add(a.at, scale(u, a.radius)), sub(b.at, scale(u, b.radius))]; }
  if (a.kind === "disc" && b.kind === "polygon") {
    const on = edges(b.points).map((e) => nearestOnSegment(a.at, e)).reduce((p, q) => (distance(q, a.at) < distance(p, a.at) ? q : p));
    return [add(a.at, scale(unit(sub(on, a.at)), a.radius)), on];
  }
  if (a.kind === "polygon" && b.kind === "disc") { const [p, q] = nearestPair(b, a); return [q, p]; }
  if (a.kind !== "polygon" || b.kind !== "polygon") return [[0, 0], [0, 0]];
  let best: readonly [Point, Point] = [a.points[0] ?? [0, 0], b.points[0] ?? [0, 0]];
  const take = (p: Point, q: Point): void => { if (distance(p, q) < distance(...best) - 1e-9) best = [p, q]; };
  for (const p of a.points) for (const e of edges(b.points)) take(p, nearestOnSegment(p, e));
  for (const q of b.points) for (const e of edges(a.points)) take(nearestOnSegment(q, e), q);
  return slid(best, a.points, b.points);
}

/** Where two edges run side by side, the pair in the middle of what they share: the string then does not stand at a corner. */
function slid(pair: readonly [Point, Point], a: readonly Point[], b: readonly Point[]): readonly [Point, Point] {
  const d = distance(...pair);
  const as = a.filter((p) => edges(b).some((e) => Math.abs(distance(p, nearestOnSegment(p, e)) - d) < 0.5)), bs = b.filter((q) => edges(a).some((e) => Math.abs(distance(q, nearestOnSegment(q, e)) - d) < 0.5));
  const feet = [...as.map((p): readonly [Point, Point] => [p, closest(p, b)]), ...bs.map((q): readonly [Point, Point] => [closest(q, a), q])];
  const [one, two] = [feet[0], feet.at(-1)];
  return one && two && feet.length > 1 ? [middle(one[0], two[0]), middle(one[1], two[1])] : pair;
}
const closest = (p: Point, of: readonly Point[]): Point => edges(of).map((e) => nearestOnSegment(p, e)).reduce((x, y) => (distance(y, p) < distance(x, p) ? y : x));

/** Neighbours nearer than this have their distance shown, mm. */
const SHOWN = 3_000;

/** The strings to be shown of a piece: clear floor to the nearer of each two facing walls, and to the nearest other piece. */
export function stringsOf(room: Room, item: Item, others: readonly Item[]): readonly DimensionString[] {
  const f = frameOf(room), box = extentOf(f, item), mid: Point = [centre(box, true), centre(box, false)];
  // Through a wall there is no clear floor to show: that it stands outside the check says.
  const walls = nearWalls(room, item).filter((w) => w.mm >= 0).map(({ wall, mm }): DimensionString => {
    const ends: Readonly<Record<typeof wall, readonly [Point, Point]>> = {
      left: [[box.minX, mid[1]], [box.minX - mm, mid[1]]], right: [[box.maxX, mid[1]], [box.maxX + mm, mid[1]]],
      upper: [[mid[0], box.minY], [mid[0], box.minY - mm]], lower: [[mid[0], box.maxY], [mid[0], box.maxY + mm]],
    };
    const [from, end] = ends[wall];
    return { to: "wall", from: outOfFrame(f, from), end: outOfFrame(f, end), mm: Math.round(mm) };
  });
  const own = footprint(item);
  const near = others.filter((o) => o.id !== item.id && o.room === item.room && o.kind !== "chair" && o.kind !== "dance-floor" && distance(o.at, item.at) < REACH)
    .map((o) => { const [from, end] = nearestPair(own, footprint(o)); return { from, end, mm: distance(from, end) }; })
    .filter((s) => s.mm > 0 && s.mm <= SHOWN).sort((a, b) => a.mm - b.mm)[0];
  return near ? [...walls, { to: "piece", from: near.from, end: near.end, mm: Math.round(near.mm) }] : walls;
}
