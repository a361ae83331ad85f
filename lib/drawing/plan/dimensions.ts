import { add, boxOf, bearing, clockwise, contains, distance, dot, edges, inwardNormal, lerp, middle, scale, sinCos, sub, unit, type Box, type Point } from "../../geometry";
import { isRound, type Item } from "../../layout";
import { formatLength } from "../../measure";
import type { Room } from "../../venue";
import type { Mark, Paper, Step } from "../display";
import { line } from "../paths";
import { textWidth, type Type } from "../metrics";
import type { Rect } from "./ground";
import { toPaper, type Frame, type Hand } from "./hand";
import { upright } from "./lettering";
import type { Run } from "./numbers";

type Side = "top" | "bottom" | "left" | "right";
type Stop = { readonly mm: number; /** Where its extension line starts: the wall's outer face, mm. */ readonly foot: number };
type Furniture = { readonly items: readonly Item[]; readonly runs: readonly Run[] };
type Chain = { readonly stops: readonly Stop[]; readonly gaps: readonly (readonly [number, number])[] };
export type Strings = { readonly marks: readonly Mark[]; /** Every line of them, two points each. */ readonly lines: readonly (readonly [Paper, Paper])[]; /** The paper that they take, bands and all. */ readonly takes: readonly Rect[] };

const isAligned = (room: Room): boolean => edges(room.outline).every(([a, b]) => distance(a, b) < 1_500 || Math.abs(a[0] - b[0]) < 2 || Math.abs(a[1] - b[1]) < 2);
const turnedRoom = (room: Room): boolean => edges(room.outline).every(([a, b]) => distance(a, b) < 600 || (Math.abs(a[0] - b[0]) > 2 && Math.abs(a[1] - b[1]) > 2));

/** Rooms whose whole width can be seen from a side: nothing stands between them and the dimension line. */
function exposed(rooms: readonly Room[], side: Side): readonly Room[] {
  const across = side === "top" || side === "bottom" ? 0 : 1;
  const boxes = rooms.map((room) => {
    const b = boxOf(room.outline);
    return { room, from: across === 0 ? b.minX : b.minY, to: across === 0 ? b.maxX : b.maxY, near: across === 0 ? (side === "top" ? b.minY : -b.maxY) : side === "left" ? b.minX : -b.maxX };
  });
  const cuts = [...new Set(boxes.flatMap((b) => [b.from, b.to]))].sort((a, b) => a - b);
  const hidden = new Set<Room>();
  for (let i = 0; i + 1 < cuts.length; i++) {
    const mid = ((cuts[i] ?? 0) + (cuts[i + 1] ?? 0)) / 2;
    const here = boxes.filter((b) => b.from < mid && b.to > mid).sort((a, b) => a.near - b.near);
    for (const b of here.slice(1)) hidden.add(b.room);
  }
  return boxes.filter((b) => !hidden.has(b.room)).map((b) => b.room);
}

const unique = (list: readonly number[], within: number): readonly number[] =>
  [...list].sort((a, b) => a - b).reduce<number[]>((out, v) => { const last = out.at(-1); if (last === undefined || v - last > within) out.push(v); return out; }, []);

/** Two rows of tables are further apart than this, mm (a rule of ours). */
const ROW_APART = 800;

/** Where the tables of a room stand along a side, if the figures between them can be written; else those of the row by that wall; else nothing. */
function inner(room: Room, { items, runs }: Furniture, { side, least }: { readonly side: Side; readonly least: number }): readonly number[] {
  const axis = side === "top" || side === "bottom" ? 0 : 1;
  const b = boxOf(room.outline);
  const [from, to] = axis === 0 ? [b.minX, b.maxX] : [b.minY, b.maxY];
  const fits = (stops: readonly number[]): boolean => [...stops, to].every((v, i) => v - (i === 0 ? from : (stops[i - 1] ?? from)) >= least);
  // Middles that follow each other closely are of tables that stand in no row: a string of them would help nobody.
  const inRows = (stops: readonly number[]): boolean => fits(stops) && stops.every((v, i) => i === 0 || v - (stops[i - 1] ?? v) >= ROW_APART);
  const corners = unique(room.outline.map((p) => p[axis]), 20).filter((v) => v > from + 20 && v < to - 20);
  if (corners.length > 0) return fits(corners) ? corners : [];
  const tables = items.filter((i) => i.room === room.id && i.kind === "table" && i.seats.length > 0);
  if (tables.length === 0) return [];
  // Of a run the middle of the whole counts; the couple's table joins in where there is room for its figure.
  const middles = runs.filter((r) => r.items.some((i) => i.room === room.id)).map((r) => r.at[axis]);
  for (const set of [[...middles, ...tables.filter((t) => t.role === "top").map((t) => t.at[axis])], middles]) {
    const all = unique(set, 60);
    if (all.length > 0 && all.length <= 8 && inRows(all)) return all;
  }
  const other = axis === 0 ? 1 : 0;
  const depths = tables.map((t) => t.at[other]);
  const edge = side === "top" || side === "left" ? Math.min(...depths) : Math.max(...depths);
  const row = unique(tables.filter((t) => Math.abs(t.at[other] - edge) < 300).map((t) => t.at[axis]), 60);
  return row.length <= 10 && inRows(row) ? row : [];
}

const OUTER_WALL = 500;

/** The chains of one level: each indoor room's size once along and once down, and where the tables of the fullest room stand. */
function chains(rooms: readonly Room[], furniture: Furniture, frame: Frame, hand: Hand): ReadonlyMap<Side, readonly Chain[]> {
  const least = (textWidth(formatLength(2_650, hand.lengths), { size: hand.note, face: "sans" }) + 1.2) / frame.perMm;
  const { items } = furniture;
  const straight = rooms.filter((r) => !r.outdoor && !turnedRoom(r));
  const seats = (r: Room): number => items.filter((i) => i.room === r.id).reduce((n, i) => n + i.seats.length, 0);
  const main = [...straight].sort((a, b) => seats(b) - seats(a))[0];
  const out = new Map<Side, readonly Chain[]>();
  for (const pair of [["top", "bottom"], ["left", "right"]] as const) {
    const done: (readonly [number, number])[] = [];
    let innerDone = false;
    for (const side of pair) {
      const axis = side === "top" || side === "bottom" ? 0 : 1;
      const open = exposed(straight, side).filter((r) => {
        const b = boxOf(r.outline);
        const [from, to] = axis === 0 ? [b.minX, b.maxX] : [b.minY, b.maxY];
        if (done.some(([f, t]) => Math.abs(f - from) < 20 && Math.abs(t - to) < 20)) return false;
        done.push([from, to]);
        return true;
      });
      if (open.length === 0) continue;
      const foot = (r: Room): number => {
        const b = boxOf(r.outline);
        return side === "top" ? b.minY - OUTER_WALL : side === "bottom" ? b.maxY + OUTER_WALL : side === "left" ? b.minX - OUTER_WALL : b.maxX + OUTER_WALL;
      };
      const span = (r: Room): readonly [number, number] => { const b = boxOf(r.outline); return axis === 0 ? [b.minX, b.maxX] : [b.minY, b.maxY]; };
      const outer: Chain = {
        stops: open.flatMap((r) => span(r).map((mm) => ({ mm, foot: foot(r) }))),
        gaps: open.map(span),
      };
      const list: Chain[] = [];
      if (main && open.includes(main) && !innerDone) {
        const stops = inner(main, furniture, { side, least });
        if (stops.length > 0) {
          const [from, to] = span(main);
          const all = [from, ...stops, to];
          list.push({ stops: all.map((mm) => ({ mm, foot: foot(main) })), gaps: all.slice(1).map((v, i) => [all[i] ?? from, v] as const) });
          innerDone = true;
        }
      }
      out.set(side, [...list, outer]);
    }
  }
  return out;
}

const FIRST = 4.6, NEXT = 5;

/** Dimension strings outside the walls, totals outermost. `plan` is the box of walls, swings and terraces in mm of the venue. */
export function dimensionStrings({ rooms, items, runs, plan, sweeps, frame, hand }: Furniture & {
  readonly rooms: readonly Room[]; readonly plan: Box; /** Corners of what swings or steps out of the walls. */ readonly sweeps: readonly Point[]; readonly frame: Frame; readonly hand: Hand;
}): Strings {
  const marks: Mark[] = [];
  const takes: Rect[] = [];
  const lines: Step[] = [], ticks: Step[] = [];
  const type: Type = { size: hand.note, face: "sans" };
  for (const [side, list] of chains(rooms, { items, runs }, frame, hand)) {
    const flat = side === "top" || side === "bottom";
    const sign = side === "top" || side === "left" ? -1 : 1;
    const edgeMm = side === "top" ? plan.minY : side === "bottom" ? plan.maxY : side === "left" ? plan.minX : plan.maxX;
    const edge = toPaper(frame, flat ? [0, edgeMm] : [edgeMm, 0])[flat ? 1 : 0];
    const put = (mm: number): number => toPaper(frame, flat ? [mm, 0] : [0, mm])[flat ? 0 : 1];
    const footOf = (mm: number): number => toPaper(frame, flat ? [0, mm] : [mm, 0])[flat ? 1 : 0];
    const P = (along: number, across: number): Paper => (flat ? [along, across] : [across, along]);
    list.forEach((chain, k) => {
      const at = edge + sign * (FIRST + k * NEXT);
      for (const s of chain.stops) {
        const x = put(s.mm);
        if (k === list.length - 1 || list.length === 1) lines.push(...line(P(x, at - sign * 0), P(x, footOf(s.foot) + sign * 0.8)));
        else lines.push(...line(P(x, at), P(x, footOf(s.foot) + sign * 0.8)));
        const c = P(x, at);
        ticks.push(...line([c[0] - 0.8, c[1] + 0.8], [c[0] + 0.8, c[1] - 0.8]));
      }
      for (const [from, to] of chain.gaps) {
        lines.push(...line(P(put(from), at), P(put(to), at)));
        const text = formatLength(Math.round(to) - Math.round(from), hand.lengths);
        const mid = (put(from) + put(to)) / 2;
        if (textWidth(text, type) + 0.6 > Math.abs(put(to) - put(from))) continue;
        const angle = flat ? undefined : -90;
        const where: Paper = flat ? [mid, at - 0.9] : [at - 0.9, mid];
        marks.push({ kind: "text", at: where, text, ...type, anchor: "middle", ink: "ink-2", ...(angle === undefined ? {} : { angle }) });
      }
      const ends = chain.stops.map((s) => put(s.mm));
      const a = Math.min(...ends), b = Math.max(...ends);
      const above = hand.note + 1.1;
      takes.push(flat ? { x: a - 1, y: at - above, width: b - a + 2, height: above + 1 } : { x: at - above, y: a - 1, width: above + 1, height: b - a + 2 });
    });
    // Between the walls and the first string only extension lines run; words are kept out of there all the same.
    const out = list.at(-1);
    if (out) {
      const ends = out.stops.map((s) => put(s.mm));
      const a = Math.min(...ends), b = Math.max(...ends), far = edge + sign * FIRST;
      const lo = Math.min(edge, far), hi = Math.max(edge, far);
      takes.push(flat ? { x: a - 1, y: lo, width: b - a + 2, height: hi - lo } : { x: lo, y: a - 1, width: hi - lo, height: b - a + 2 });
    }
  }
  for (const room of rooms.filter((r) => !r.outdoor && !isAligned(r))) slanted(room, { frame, hand, lines, ticks, marks, takes, sweeps, others: rooms.filter((r) => r !== room), tables: tablesOf(room, { items, runs }) });
  return {
    marks: [{ kind: "path", steps: lines, stroke: { ink: "ink-3", weight: hand.fine } }, { kind: "path", steps: ticks, stroke: { ink: "ink", weight: hand.mid } }, ...marks],
    takes,
    lines: lines.flatMap((s, i): readonly (readonly [Paper, Paper])[] => { const next = lines[i + 1]; return s.op === "M" && next?.op === "L" ? [[s.to, next.to]] : []; }),
  };
}

type Draft = { readonly frame: Frame; readonly hand: Hand; readonly lines: Step[]; readonly ticks: Step[]; readonly marks: Mark[]; readonly takes: Rect[]; readonly sweeps: readonly Point[]; /** Rooms that no string may run through. */ readonly others: readonly Room[]; /** The middles of its tables, joined ones as one. */ readonly tables: readonly Point[] };

const tablesOf = (room: Room, { items, runs }: Furniture): readonly Point[] => [
  ...runs.filter((r) => r.items.some((i) => i.room === room.id)).map((r) => r.at),
  ...items.filter((i) => i.room === room.id && i.role === "top" && i.seats.length > 0).map((i) => i.at),
];

/** Where tables stand along a wall that runs askew, mm from its beginning: all of them if their figures can be written, else the row by the wall. */
function alongWall(tables: readonly Point[], [from, to]: readonly [Point, Point], { along, inward, least }: { readonly along: Point; readonly inward: Point; readonly least: number }): readonly number[] {
  const long = distance(from, to);
  const put = tables.map((p) => ({ t: dot(sub(p, from), along), deep: dot(sub(p, from), inward) })).filter(({ t }) => t > 60 && t < long - 60);
  const edge = Math.min(...put.map((p) => p.deep));
  for (const set of [put, put.filter((p) => p.deep < edge + 300)]) {
    const stops = unique(set.map((p) => p.t), 60);
    if (stops.length > 0 && stops.length <= 8 && [...stops, long].every((v, i) => v - (stops[i - 1] ?? 0) >= (i === 0 || i === stops.length ? least : Math.max(least, ROW_APART)))) return stops;
  }
  return [];
}

/** The length of a wall that runs askew is written along it; of a room turned as a whole, its two longest that are not parallel. */
function slanted(room: Room, { frame, hand, lines, ticks, marks, takes, sweeps, others, tables }: Draft): void {
  const askew = edges(clockwise(room.outline)).filter(([a, b]) => distance(a, b) >= 1_500 && Math.abs(a[0] - b[0]) > 2 && Math.abs(a[1] - b[1]) > 2);
  const longest = [...askew].sort((e, f) => distance(...f) - distance(...e));
  const chosen = turnedRoom(room)
    ? longest.filter((e, i) => i === 0 || (i === longest.findIndex((f) => Math.abs(sinCos(bearing(sub(f[1], f[0])) - bearing(sub((longest[0] ?? f)[1], (longest[0] ?? f)[0]))).sin) > 0.3)))
    : longest.slice(0, 3);
  for (const e of chosen) {
    const outward = scale(inwardNormal(e), -1);
    const along = unit(sub(e[1], e[0])), long = distance(...e);
    // What swings or steps out of this wall pushes the string further off.
    const deepest = sweeps.reduce((deep, p) => {
      const q = sub(p, e[0]), t = dot(q, along);
      return t > 0 && t < long && dot(q, outward) < 4_000 ? Math.max(deep, dot(q, outward)) : deep;
    }, OUTER_WALL);
    const least = (textWidth(formatLength(2_650, hand.lengths), { size: hand.note, face: "sans" }) + 1.2) / frame.perMm;
    const stops = turnedRoom(room) ? alongWall(tables, e, { along, inward: scale(outward, -1), least }) : [];
    const near = deepest * frame.perMm + 4.2, off = near + (stops.length > 0 ? NEXT : 0);
    const face = OUTER_WALL * frame.perMm + 0.8;
    const reach = (off + 1) / frame.perMm;
    if (others.some((r) => [0, 0.25, 0.5, 0.75, 1].some((t) => [0.4, 0.7, 1].some((k) => contains(r.outline, add(lerp(e[0], e[1], t), scale(outward, reach * k))))))) continue;
    const a = toPaper(frame, e[0]), b = toPaper(frame, e[1]);
    const A = add(a, scale(outward, off)), B = add(b, scale(outward, off));
    lines.push(...line(add(a, scale(outward, face)), A), ...line(add(b, scale(outward, face)), B));
    const d: Point = [(along[0] - along[1]) * 0.8, (along[1] + along[0]) * 0.8];
    const angle = upright(bearing(along));
    const { sin, cos } = sinCos(angle);
    const up: Point = [sin, -cos];
    /** One string so far off the wall: ticks at its stops, the figures between them above its line. */
    const string = (at: number, marksAt: readonly number[]): void => {
      const on = (mm: number): Paper => add(add(a, scale(along, mm * frame.perMm)), scale(outward, at));
      lines.push(...line(on(0), on(long)));
      marksAt.forEach((mm, i) => {
        ticks.push(...line(sub(on(mm), d), add(on(mm), d)));
        const before = marksAt[i - 1];
        if (before === undefined) return;
        marks.push({ kind: "text", at: add(middle(on(before), on(mm)), scale(up, 0.9)), text: formatLength(Math.round(mm) - Math.round(before), hand.lengths), size: hand.note, face: "sans", anchor: "middle", angle, ink: "ink-2" });
      });
    };
    if (stops.length > 0) {
      string(near, [0, ...stops, long]);
      lines.push(...stops.flatMap((mm) => { const at = add(a, scale(along, mm * frame.perMm)); return line(add(at, scale(outward, face)), add(at, scale(outward, near))); }));
    }
    string(off, [0, long]);
    const n = Math.max(1, Math.ceil(distance(A, B) / 6));
    for (const back of stops.length > 0 ? [0, NEXT] : [0]) for (let i = 0; i < n; i++) {
      const to = scale(outward, -back);
      const box = boxOf([add(lerp(A, B, i / n), to), add(lerp(A, B, (i + 1) / n), to)]);
      takes.push({ x: box.minX - 2.4, y: box.minY - 2.4, width: box.maxX - box.minX + 4.8, height: box.maxY - box.minY + 4.8 });
    }
  }
}

export type Gap = { readonly from: Point; readonly to: Point; readonly mm: number };

/** The least clear way between two seated tables of a room along its axes, once across and once down the page. */
export function leastGaps(room: Room, items: readonly Item[]): readonly Gap[] {
  const tables = items.filter((i) => i.room === room.id && i.kind === "table" && i.seats.length > 0 && (isRound(i.shape) || i.angle % 90 === 0));
  const half = (i: Item, axis: 0 | 1): number => {
    if (isRound(i.shape)) return i.shape.diameter / 2;
    const turned = Math.abs(i.angle % 180) === 90;
    return (axis === 0) !== turned ? i.shape.width / 2 : i.shape.depth / 2;
  };
  const out: Gap[] = [];
  for (const axis of [0, 1] as const) {
    const other = axis === 0 ? 1 : 0;
    let best: Gap | null = null;
    for (const a of tables) for (const b of tables) {
      if (b.at[axis] <= a.at[axis] || Math.abs(a.at[other] - b.at[other]) > 60) continue;
      const mm = b.at[axis] - half(b, axis) - a.at[axis] - half(a, axis);
      if (mm < 400 || mm > 2_500 || (best && mm >= best.mm - 1)) continue;
      const at = (v: number): Point => (axis === 0 ? [v, a.at[1]] : [a.at[0], v]);
      best = { from: at(a.at[axis] + half(a, axis)), to: at(b.at[axis] - half(b, axis)), mm };
    }
    if (best) out.push(best);
  }
  return out;
}
