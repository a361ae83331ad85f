import {
  add, boxesNear, clearance, distance, edges, insideBy, pointClearance, polygonShape, segmentClearance, turn,
  type Point, type Polygon, type Shape,
} from "../../geometry";
import { footprint, isRound, seatPolygon, type Item } from "../../layout";
import { END_END, END_WALL } from "./hall";
import type { SeatingAsk, SeatingSpace } from "./types";

export type Fault = { readonly code: string; readonly items: readonly string[]; readonly measured: number; readonly limit: number };

/** Soft conversions and whole millimetres: this much is let go. */
const GO = 1;
/** Tables nearer than this are joined. */
const JOINED = 3;

const ROUNDED = 2;

type Side = { readonly seats: number; readonly polygon: (reach: number) => Polygon; readonly end: boolean };
type Table = { readonly item: Item; readonly shape: Shape; readonly sides: readonly Side[]; readonly chairs: readonly Shape[] };

/** The strip that lies before each side of a straight table, and how many places that side has. */
function sidesOf(item: Item): readonly Side[] {
  if (isRound(item.shape)) return [];
  const { width: w, depth: d } = item.shape;
  const rows = [[0, w, d], [90, d, w], [180, w, d], [270, d, w]] as const;
  return rows.map(([a, along, across]) => {
    const out = turn([0, -1], a + item.angle);
    const seats = item.seats.filter((s) => { const f = turn([1, 0], s.facing); return f[0] * out[0] + f[1] * out[1] < -0.9; }).length;
    const corner = (x: number, y: number): Point => add(item.at, turn([x, y], a + item.angle));
    return {
      seats, end: along === d && d !== w,
      // Drawn in at both ends by what rounding may move, so that a table just beside the strip is not before it.
      polygon: (reach) => [corner(ROUNDED - along / 2, -across / 2 - reach), corner(along / 2 - ROUNDED, -across / 2 - reach), corner(along / 2 - ROUNDED, -across / 2), corner(ROUNDED - along / 2, -across / 2)],
    };
  });
}

/** What of the seating rules a set of tables breaks, measured one by one on the finished plan. */
export function auditTables(space: SeatingSpace, ask: Pick<SeatingAsk, "gaps" | "chair">, items: readonly Item[]): readonly Fault[] {
  const out: Fault[] = [];
  const say = (code: string, ids: readonly string[], measured: number, limit: number): void => { if (measured < limit - GO) out.push({ code, items: ids, measured, limit }); };
  const all: Table[] = items.map((item) => ({ item, shape: footprint(item), sides: sidesOf(item), chairs: item.seats.map((s) => polygonShape(seatPolygon(s, ask.chair))) }));
  const walls = space.floor.flatMap((p) => [p.outer, ...p.holes]).flatMap((r) => edges(r));
  const solids = space.solids.map(polygonShape), zones = space.zones.map((z) => ({ ...z, shape: polygonShape(z.polygon) }));
  const onFloor = (s: Shape): number => Math.max(...space.floor.map((p) => Math.min(insideBy(s, p.outer), ...p.holes.map((h) => clearance(s, polygonShape(h))))));
  for (const t of all) {
    const id = [t.item.id];
    say("table-on-floor", id, onFloor(t.shape), 0);
    for (const c of t.chairs) say("chair-on-floor", id, onFloor(c), 0);
    for (const s of solids) for (const c of [t.shape, ...t.chairs]) say("overlaps-solid", id, clearance(c, s), 0);
    for (const z of zones) {
      say("zone-clear", id, clearance(t.shape, z.shape), z.tableClear);
      for (const c of t.chairs) say("chair-in-zone", id, clearance(c, z.shape), 0);
    }
    const { wallGap } = ask.gaps;
    if (t.sides.length === 0) {
      for (const w of walls) say("wall-gap", id, segmentClearance(t.shape, w), wallGap);
      for (const s of solids) say("wall-gap", id, clearance(t.shape, s), wallGap);
    } else for (const side of t.sides) {
      const reach = side.seats > 0 ? wallGap : all.some((o) => o !== t && clearance(o.shape, t.shape) < JOINED && clearance(polygonShape(side.polygon(4)), o.shape) < 0) ? 0 : END_WALL;
      if (reach <= 2) continue;
      const strip = polygonShape(side.polygon(reach - GO));
      for (const w of walls) if (segmentClearance(strip, w) <= 0) say("wall-gap", id, Math.min(segmentClearance(t.shape, w), reach - 2), reach);
      for (const s of solids) if (clearance(strip, s) < -0.01) say("wall-gap", id, Math.min(clearance(t.shape, s), reach - 2), reach);
    }
    t.item.seats.forEach((s) => {
      const p: Point = [s.x, s.y];
      const d = t.shape.kind === "disc" ? distance(p, t.shape.at) - t.shape.radius : pointClearance(p, t.shape.points);
      const [lo, hi] = s.place === "chair" ? [100, 450] : [0, 700];
      say("seat-too-near", id, d, lo);
      say("seat-too-far", id, -d, -hi);
      const ahead = add(p, turn([hi + 60, 0], s.facing));
      const e = t.shape.kind === "disc" ? distance(ahead, t.shape.at) - t.shape.radius : pointClearance(ahead, t.shape.points);
      say("seat-faces-away", id, -e, 0);
    });
    t.chairs.forEach((c, i) => t.chairs.forEach((d, j) => { if (j > i) say("chairs-overlap", id, clearance(c, d), 0); }));
  }
  // Farther apart than gap, end and the chairs of both nothing is to be measured.
  const far = Math.max(ask.gaps.tableGap, END_END) + 2 * (450 + ask.chair.depth + ask.chair.width);
  for (let i = 0; i < all.length; i++) for (let j = i + 1; j < all.length; j++) {
    const a = all[i] as Table, b = all[j] as Table;
    if (!boxesNear(a.shape.box, b.shape.box, far)) continue;
    const ids = [a.item.id, b.item.id];
    const d = clearance(a.shape, b.shape);
    say("tables-overlap", ids, d, 0);
    for (const c of a.chairs) { say("chair-on-table", ids, clearance(c, b.shape), 0); for (const e of b.chairs) say("chairs-overlap", ids, clearance(c, e), 0); }
    for (const c of b.chairs) say("chair-on-table", ids, clearance(c, a.shape), 0);
    if (d < JOINED) continue;
    if ((a.sides.length === 0 && a.item.seats.length > 0) || (b.sides.length === 0 && b.item.seats.length > 0)) { say("table-gap", ids, d, ask.gaps.tableGap); continue; }
    for (const [t, o] of [[a, b], [b, a]] as const) for (const side of t.sides) {
      const joined = side.end && all.some((q) => q !== t && clearance(q.shape, t.shape) < JOINED && clearance(polygonShape(side.polygon(4)), q.shape) < 0);
      const reach = side.seats > 0 ? ask.gaps.tableGap : side.end && !joined ? END_END : 0;
      if (reach > 0 && clearance(polygonShape(side.polygon(reach - GO)), o.shape) < -0.01) say(side.seats > 0 ? "table-gap" : "end-gap", ids, Math.min(d, reach - 2), reach);
    }
  }
  return out;
}
