import {
  add, aroundCircle, bearing, boxOf, convexHull, cross, edges, intersect, offset, rectangle, regionArea, scale, subtract, turn,
  type Point, type Polygon, type Region,
} from "../../geometry";
import { isRound } from "../../layout";
import { linesOf, uprightLines, without, type Lines } from "./lines";
import { ringReach, sideReach } from "./seats";
import type { ChairSize, SeatingAsk, SeatingSpace, Zone } from "./types";

/** Lines 483 mm out from seated tables, and 305 mm of way between them: IBC 2018, 1029.13.1 and 1029.13.1.1 (19 in, 12 in). */
export const LINE_OUT = 483;
export const WAY = 305;
/** An end without places from a wall, and from an end that is not joined to it, mm (the project's file format). */
export const END_WALL = 450;
export const END_END = 914;

/** Let go at walls, so that a table that fits to the millimetre is found. */
const HAIR = 0.4;

/** A table that stands already, in the hall's frame. */
export type Standing = { readonly polygon: Polygon; readonly round: { readonly at: Point; readonly radius: number } | null };

/** The space turned so that the room's main axis is level; all the search happens here. */
export type Hall = {
  readonly space: SeatingSpace;
  readonly turned: number;
  readonly floor: Region;
  readonly solids: readonly Polygon[];
  readonly zones: readonly Zone[];
  readonly fixed: readonly Standing[];
  readonly exits: readonly Point[];
  /** x of an upright line of symmetry, or y of a level one. */
  readonly mirrorX: number | null;
  readonly mirrorY: number | null;
  /** How much of the floor has its mirror image, from 0 to 1: where the room itself is uneven nobody looks for symmetry. 1 where there is no mirror. */
  readonly even: number;
  readonly focus: Point | null;
  readonly chair: ChairSize;
  readonly tableGap: number;
  readonly wallGap: number;
  /** Added to gaps where positions must be rounded after turning back. */
  readonly slack: number;
  /** How many of `fixed` stood there from the first; floor found for a footing with those alone. */
  readonly own: number;
  readonly known: Map<string, Base>;
  /** The hall before the last tables were put in, and the floor left for each footing with them: what is found is not found again. */
  readonly before: Hall | null;
  readonly left: Map<string, Ground | null>;
};

/** Floor found for a footing with nothing standing but what stood there from the first: as outlines, and as lines both ways. */
type Base = { readonly region: () => Region; readonly lines: () => Ground | null };
/** Where the reference point of a unit may be, by level and by upright lines. */
export type Ground = { readonly level: Lines; readonly upright: Lines };

const turnPolygon = (p: Polygon, by: number): Polygon => p.map((q) => turn(q, by));
export const turnRegion = (r: Region, by: number): Region => by === 0 ? r : r.map((p) => {
  const outer = turnPolygon(p.outer, by);
  return { outer, holes: p.holes.map((h) => turnPolygon(h, by)), box: boxOf(outer) };
});

const grounds = new WeakMap<SeatingSpace, Map<string, Map<string, Base>>>();
/** Floor found for footings on one space, by all that it follows from beside the space and the footing itself. */
function knownFor(space: SeatingSpace, { gaps, chair }: SeatingAsk): Map<string, Base> {
  const of = grounds.get(space) ?? new Map<string, Map<string, Base>>();
  grounds.set(space, of);
  const key = `${gaps.tableGap} ${gaps.wallGap} ${chair.width} ${chair.depth}`, known = of.get(key) ?? new Map<string, Base>();
  of.set(key, known);
  return known;
}

/** From half of the floor on, the share that has its image counts. */
function evenness(floor: Region, mirrorX: number | null, mirrorY: number | null): number {
  if (mirrorX === null && mirrorY === null) return 1;
  const image = ([x, y]: Point): Point => [mirrorX === null ? x : 2 * mirrorX - x, mirrorY === null ? y : 2 * mirrorY - y];
  const both = intersect(floor, floor.map((p) => p.outer.map(image)));
  return Math.max(0, 2 * (regionArea(both) / Math.max(1, regionArea(floor))) - 1);
}

export function hallOf(space: SeatingSpace, ask: SeatingAsk): Hall {
  const axis = ((space.axis % 90) + 90) % 90;
  const off = space.mirror ? ((((space.mirror.angle - axis) % 180) + 180) % 180) : null;
  const at = space.mirror ? turn(space.mirror.at, -axis) : null;
  const floor = turnRegion(space.floor, -axis);
  const mirrorX = at && off !== null && Math.abs(off - 90) < 0.5 ? at[0] : null, mirrorY = at && off !== null && (off < 0.5 || off > 179.5) ? at[1] : null;
  return {
    space, turned: -axis, floor, mirrorX, mirrorY, even: evenness(floor, mirrorX, mirrorY),
    solids: space.solids.map((s) => turnPolygon(s, -axis)),
    zones: space.zones.map((z) => ({ ...z, polygon: turnPolygon(z.polygon, -axis) })),
    fixed: (space.fixed ?? []).map((i) => ({
      polygon: turnPolygon(isRound(i.shape) ? aroundCircle(i.at, i.shape.diameter / 2) : rectangle(i.at, i.shape.width, i.shape.depth, i.angle), -axis),
      round: isRound(i.shape) ? { at: turn(i.at, -axis), radius: i.shape.diameter / 2 } : null,
    })),
    exits: (space.exits ?? []).map((e) => turn(e, -axis)),
    focus: space.focus ? turn(space.focus, -axis) : null,
    chair: ask.chair,
    tableGap: Math.max(ask.gaps.tableGap, 2 * LINE_OUT + WAY + 1), wallGap: ask.gaps.wallGap,
    slack: axis === 0 ? -HAIR : 1.5, own: (space.fixed ?? []).length, known: knownFor(space, ask), before: null, left: new Map(),
  };
}

/** Edges of a clockwise polygon walked from its top: those that go down the page come first. */
const upward = (d: Point): number => (d[1] > 0 || (d[1] === 0 && d[0] > 0) ? 0 : 1);
/** Minkowski sum of two convex polygons, both clockwise on the page: their edges merged by direction. */
export function convexSum(p: Polygon, q: Polygon): Polygon {
  const lowest = (r: Polygon): number => r.reduce((m, v, i) => { const b = r[m] as Point; return v[1] < b[1] || (v[1] === b[1] && v[0] < b[0]) ? i : m; }, 0);
  const i0 = lowest(p), j0 = lowest(q), out: Point[] = [];
  const at = (r: Polygon, k: number): Point => r[k % r.length] as Point;
  for (let i = 0, j = 0; i < p.length || j < q.length;) {
    const a = at(p, i0 + i), b = at(q, j0 + j), a2 = at(p, i0 + i + 1), b2 = at(q, j0 + j + 1);
    out.push([a[0] + b[0], a[1] + b[1]]);
    const u: Point = [a2[0] - a[0], a2[1] - a[1]], v: Point = [b2[0] - b[0], b2[1] - b[1]];
    const c = i >= p.length ? -1 : j >= q.length ? 1 : upward(v) - upward(u) || cross(u, v);
    if (c >= 0) i++;
    if (c <= 0) j++;
  }
  return out;
}

const mirrored = new WeakMap<Polygon, Polygon>();
/** A convex part turned about its reference point: what may not stand where it would. */
function away(part: Polygon): Polygon {
  const known = mirrored.get(part) ?? part.map((q) => scale(q, -1));
  mirrored.set(part, known);
  return known;
}
const wallShadow = (outline: Polygon, part: Polygon): Polygon[] => {
  const back = away(part);
  return edges(outline).map((edge) => convexSum(edge, back));
};

/** Where the reference point may not be, so that a convex part (about it) stays off a polygon. */
function shadow(p: Polygon, part: Polygon): Polygon[] {
  // One sum will do for a convex outline; others need their edges one by one.
  const h = convexHull(p);
  return h.length === p.length ? [convexSum(h, away(part))] : [p, ...wallShadow(p, part)];
}

/** What a unit asks of the floor: convex parts about its reference point. */
export type Footing = {
  /** Equal keys ask for the same floor. */
  readonly key: string;
  /** Rounds: what their centre keeps off walls, mm. */
  readonly round: number | null;
  /** Must lie on the floor and off the solids. */
  readonly wall: readonly Polygon[];
  /** Must lie off a zone with this clearance. */
  readonly zone: (clear: number) => readonly Polygon[];
  /** Must lie off tables that stand already. */
  readonly table: readonly Polygon[];
  /** The same between rounds: from centre to the other's edge, mm. */
  readonly tableRound: number | null;
};

function baseOf(hall: Hall, f: Footing): Base {
  const known = hall.known.get(f.key);
  if (known) return known;
  let region: Region | null = null, ground: Ground | null | undefined;
  const outline = (): Region => (region ??= subtract(withinWalls(hall, f), taken(hall, f)));
  const base: Base = {
    region: outline,
    lines: () => (ground === undefined ? (ground = groundIn(outline())) : ground),
  };
  hall.known.set(f.key, base);
  return base;
}

const flipped = (list: readonly Polygon[]): readonly Polygon[] => list.map((p) => p.map(([x, y]): Point => [y, x]));
const groundIn = (region: Region): Ground | null => (region.length === 0 ? null : { level: linesOf(region), upright: uprightLines(region) });

/** Positions of the reference point where a unit may stand. */
export const placesFor = (hall: Hall, f: Footing): Region => subtract(baseOf(hall, f).region(), hall.fixed.slice(hall.own).flatMap((t) => tableShadow(t, f)));

/** The same as lines, which is quicker; null where a unit may stand nowhere. */
export function groundFor(hall: Hall, f: Footing): Ground | null {
  const found = hall.left.get(f.key);
  if (found !== undefined) return found;
  const ground = hall.before ? lessTables(groundFor(hall.before, f), hall.fixed.slice(hall.before.fixed.length), f) : baseOf(hall, f).lines();
  hall.left.set(f.key, ground);
  return ground;
}

function lessTables(ground: Ground | null, tables: readonly Standing[], f: Footing): Ground | null {
  if (!ground || tables.length === 0) return ground;
  const gone = tables.flatMap((t) => tableShadow(t, f));
  return { level: without(ground.level, gone), upright: without(ground.upright, flipped(gone)) };
}

/** The hall with more tables standing in it. */
export const hallAfter = (hall: Hall, more: readonly Standing[]): Hall => ({ ...hall, fixed: [...hall.fixed, ...more], before: hall, left: new Map() });

function tableShadow(t: Standing, f: Footing): Polygon[] {
  if (t.round && f.tableRound !== null) return [aroundCircle(t.round.at, t.round.radius + f.tableRound, 72)];
  return f.table.map((part) => convexSum(t.polygon, away(part)));
}

const walled = new WeakMap<Region, Map<string, Region>>();
/** Where the reference point may be for the walls alone: a room is laid again and again with other pieces in it. */
function withinWalls(hall: Hall, f: Footing): Region {
  const of = walled.get(hall.space.floor) ?? new Map<string, Region>();
  walled.set(hall.space.floor, of);
  const key = `${f.key} ${hall.turned} ${hall.wallGap} ${hall.slack} ${hall.chair.width} ${hall.chair.depth}`, known = of.get(key);
  if (known) return known;
  const outlines = hall.floor.flatMap((p) => [p.outer, ...p.holes]);
  const region = f.round === null ? subtract(hall.floor, f.wall.flatMap((part) => outlines.flatMap((o) => wallShadow(o, part)))) : offset(hall.floor, -f.round);
  of.set(key, region);
  return region;
}

/** Where the reference point may not be, for pieces, zones and what stood there from the first. */
function taken(hall: Hall, f: Footing): readonly Polygon[] {
  const out: Polygon[] = [];
  for (const part of f.wall) for (const s of hall.solids) out.push(...shadow(s, part));
  for (const z of hall.zones) for (const part of f.zone(z.tableClear)) out.push(...shadow(z.polygon, part));
  for (const t of hall.fixed.slice(0, hall.own)) out.push(...tableShadow(t, f));
  return out;
}

const box = (w: number, h: number): Polygon => [[-w / 2, -h / 2], [w / 2, -h / 2], [w / 2, h / 2], [-w / 2, h / 2]];
export const boxAt = (at: Point, w: number, h: number): Polygon => box(w, h).map((q) => add(q, at));
export const arc = (r: number): Polygon => aroundCircle([0, 0], r, 72);

export function roundFooting(hall: Hall, diameter: number, places: number): Footing {
  const reach = ringReach(diameter, places, hall.chair);
  const r = diameter / 2 + Math.max(hall.wallGap, reach + 2) + hall.slack;
  const table = diameter / 2 + Math.max(hall.tableGap, 2 * reach + 10) + hall.slack;
  return {
    key: `round ${diameter} ${reach}`, round: r, wall: [arc(r)],
    zone: (clear) => [arc(diameter / 2 + Math.max(clear, reach + 2) + hall.slack)],
    table: [arc(table)], tableRound: table,
  };
}

/** A group of tables, each with sides that are laid or bare, turned by quarters about their own centres. */
export function groupFooting(hall: Hall, key: string, shape: { readonly width: number; readonly depth: number }, spots: readonly { readonly at: Point; readonly angle: number; readonly laid: readonly boolean[] }[]): Footing {
  const reach = sideReach(hall.chair) + 2, s = hall.slack;
  const wall = Math.max(hall.wallGap, reach, LINE_OUT + WAY + 2) + s;
  const each = (make: (laid: readonly boolean[]) => readonly Polygon[]): Polygon[] =>
    spots.flatMap((t) => make(t.laid).map((p) => convexHull(p.map((q) => add(t.at, turn(q, t.angle))))));
  const strip = (laid: readonly boolean[], by: number): Polygon => {
    const x = shape.width / 2, y = shape.depth / 2, out = (i: number): number => (laid[i] ? by : Math.max(0, s));
    return [[-x - out(3), -y - out(0)], [x + out(1), -y - out(0)], [x + out(1), y + out(2)], [-x - out(3), y + out(2)]];
  };
  const size = { w: shape.width, d: shape.depth };
  return {
    key, round: null, tableRound: null,
    wall: each((l) => [strip(l, wall), grown(size, END_WALL + s)]),
    zone: (clear) => each((l) => [strip(l, Math.max(clear, reach) + s), grown(size, clear + Math.max(0, s))]),
    table: each(() => [grown(size, hall.tableGap + s)]),
  };
}

const END_STRIP = 40;
/** A rectangle grown by a distance all round. */
const grown = (r: { readonly w: number; readonly d: number }, by: number): Polygon =>
  by <= 0 ? box(r.w, r.d) : convexSum(convexHull(box(r.w, r.d)), convexHull(aroundCircle([0, 0], by, 8)));

/** A run of joined tables lying level: w along x, d along y. */
export function runFooting(hall: Hall, run: { readonly w: number; readonly d: number; readonly ends: boolean; readonly endWall: number }): Footing {
  const reach = sideReach(hall.chair) + 2;
  const s = hall.slack;
  const wall = Math.max(hall.wallGap, reach, run.w > 3_000 ? LINE_OUT + WAY + 2 : 0) + s;
  const end = run.ends ? Math.max(hall.wallGap, reach) : Math.max(END_WALL, run.endWall);
  return {
    key: `run ${run.w} ${run.d} ${run.ends} ${run.endWall}`, round: null, tableRound: null,
    // The strip before a side is a little wider than the side, so that a corner of the room just beside it counts.
    wall: [box(run.w + 2 * Math.max(END_STRIP, s), run.d + 2 * wall), grown(run, end + s)],
    zone: (clear) => [
      box(run.w + 2 * Math.max(0, s), run.d + 2 * (Math.max(clear, reach) + s)), grown(run, clear + Math.max(0, s)),
      ...(run.ends ? [box(run.w + 2 * (Math.max(clear, reach) + s), run.d + 2 * Math.max(0, s))] : []),
    ],
    table: [box(run.w + 2 * (hall.tableGap + s), run.d + 2 * (hall.tableGap + s))],
  };
}

export const backToRoom = (hall: Hall, p: Point): Point => turn(p, -hall.turned);
export const backAngle = (hall: Hall, angle: number): number => bearing(turn([1, 0], angle - hall.turned));
