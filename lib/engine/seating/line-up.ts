import { boxOf, type Point } from "../../geometry";
import { isRound } from "../../layout";
import { fieldOf, type Field } from "./field";
import { imageIn } from "./grids";
import { END_END, groundFor, LINE_OUT, placesFor, roundFooting, WAY, type Footing, type Hall } from "./hall";
import { groupsIn, hallWith, standingOf } from "./items";
import { inRanks, type Apart, type Body, type Mirror } from "./ranks";
import { ringReach, sideReach } from "./seats";
import { settle } from "./settle";
import type { Laid } from "./types";
import { footingOf, roundUnit } from "./units";

/** Fewer bodies than this make no row; with more the eye finds rows by itself. */
const FEWEST = 3, MOST = 40;
/** This near to one line is on it, mm; so many make a line, and in a room of so few two do. */
const ON = 30, LINE = 3, FEW = 5;
/** The share that may stand off every line of what looks composed. */
const STRAY = 0.2;
/** A way behind the ends of runs that have one is kept, mm. */
const END_WALLS = [790, 0] as const;

/** Tables that move as one, with their extent and what their sides and ends keep from others, mm. */
type Group = Body & { readonly tables: readonly Laid[]; readonly size: Point; readonly keeps: Point; readonly round: boolean };

/**
 * Tables that stand wherever they went, brought into common rows and columns as far as the floor and the gaps let them; what room is left
 * over is shared out between them. Forms of several runs stay where they are. Pre: all stand where they may. Post: so they do, or the same list.
 */
export function linedUp(hall: Hall, laid: readonly Laid[]): readonly Laid[] {
  const all = groupsIn(laid);
  if (all.length < FEWEST || all.length > MOST) return laid;
  const movable = all.filter(straight), held = hallWith(hall, all.filter((g) => !straight(g)).flat()), fields = new Map<string, Field>();
  const groups = movable.flatMap((tables) => groupOf(held, tables, fields) ?? []);
  if (groups.length < movable.length || groups.length < FEWEST) return laid;
  const before = groups.map((g) => g.at), keeps = groups.map((a) => groups.map((b) => apart(a, b)));
  const ranks = inRanks({ bodies: groups, apart: (i, j) => keeps[i]?.[j] ?? 0 }, mirrorOf(hall, groups));
  if (!ranks) return laid;
  const points = evened(held, groups, ranks);
  if (linesIn(points) >= linesIn(before)) return laid;
  const to = new Map(groups.flatMap((g, i) => g.tables.map((l): readonly [Laid, Laid] => {
    const [x, y] = points[i] ?? g.at;
    return [l, { ...l, at: [l.at[0] + x - g.at[0], l.at[1] + y - g.at[1]] }];
  })));
  return laid.map((l) => to.get(l) ?? l);
}

/** A round or one straight run, true to the axes. */
export const straight = (tables: readonly Laid[]): boolean => tables.every((l) => isRound(l.family.shape) || (l.angle === tables[0]?.angle && l.angle % 90 === 0));

/** With the floor that it may take; null where it does not stand on it. Floors found are kept in `fields`. */
export function groupOf(hall: Hall, tables: readonly Laid[], fields: Map<string, Field>): Group | null {
  const [first] = tables, box = boxOf(tables.flatMap((l) => standingOf(l).polygon));
  if (!first) return null;
  const { shape } = first.family, fieldFor = (f: Footing): Field => { const known = fields.get(f.key) ?? fieldOf(placesFor(hall, f)); fields.set(f.key, known); return known; };
  if (isRound(shape)) {
    const keep = Math.max(hall.tableGap, 2 * ringReach(shape.diameter, first.ring, hall.chair) + 10) + Math.max(0, hall.slack);
    return { tables, at: first.at, size: [shape.diameter, shape.diameter], keeps: [keep, keep], round: true, field: fieldFor(roundFooting(hall, shape.diameter, first.ring)) };
  }
  const at: Point = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2], upright = first.angle % 180 === 90, ends = tables.some((l) => l.sides[1] + l.sides[3] > 0);
  const side = Math.max(hall.tableGap, 2 * sideReach(hall.chair) + 10) + Math.max(0, hall.slack), end = ends ? side : Math.max(END_END, 2 * LINE_OUT + WAY + 1) + Math.max(0, hall.slack);
  for (const endWall of END_WALLS) {
    const field = fieldFor(footingOf(hall, { w: shape.width * tables.length, d: shape.depth, ends, endWall }, upright));
    if (field.holds(at)) return { tables, at, size: [box.maxX - box.minX, box.maxY - box.minY], keeps: upright ? [side, end] : [end, side], round: false, field };
  }
  return null;
}

/** What two keep between their middles. Those that stand nearer already may do so: along the way on which they are farther apart. */
function apart(a: Group, b: Group): Apart {
  const need = ([0, 1] as const).map((k) => Math.ceil((a.size[k] + b.size[k]) / 2 + Math.max(a.keeps[k], b.keeps[k]))) as [number, number];
  if (a.round && b.round) return need[0];
  const off = ([0, 1] as const).map((k) => Math.floor(Math.abs(a.at[k] - b.at[k])));
  const over = ([0, 1] as const).map((k) => need[k] - (off[k] ?? 0)) as [number, number];
  return over[0] <= 0 || over[1] <= 0 ? need : over[0] < over[1] ? [need[0] - over[0], need[1]] : [need[0], need[1] - over[1]];
}

/** The line of symmetry, where each has its image about it: of its own kind, standing the same way. */
function mirrorOf(hall: Hall, groups: readonly Group[]): Mirror | null {
  const about = hall.mirrorX ?? hall.mirrorY;
  if (about === null) return null;
  const whole = groups.every((g) => { const [x, y] = imageIn(hall, g.at); return groups.some((o) => o.field === g.field && Math.abs(o.at[0] - x) <= 1 && Math.abs(o.at[1] - y) <= 1); });
  return whole ? { axis: hall.mirrorX === null ? 1 : 0, double: Math.round(2 * about) } : null;
}

/** Gaps between rounds of one kind evened out line by line. */
function evened(hall: Hall, groups: readonly Group[], points: readonly Point[]): readonly Point[] {
  const rounds = groups.flatMap((g) => (g.round ? g.tables : [])), [first] = rounds;
  const unit = first && rounds.length === groups.length && rounds.every((l) => l.family === first.family) ? roundUnit(hall, first.family, Math.max(...rounds.map((l) => l.ring))) : null;
  const ground = unit && groundFor(hall, unit.footing);
  return unit && ground ? settle(points, { unit, level: ground.level, upright: ground.upright, hall }, { align: false }) : points;
}

/** How many rows and columns there are, of one and more. */
const linesIn = (points: readonly Point[]): number => ([0, 1] as const).reduce<number>((n, k) => n + points.filter((p, i) => points.findIndex((q) => Math.abs(q[k] - p[k]) <= ON) === i).length, 0);

/** Whether all but a few of the tables, runs taken as one, stand on a row or a column of others. */
export function inLines(laid: readonly Laid[]): boolean {
  const at = groupsIn(laid).map((tables): Point => { const b = boxOf(tables.flatMap((l) => standingOf(l).polygon)); return [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]; });
  const wanted = at.length <= FEW ? 1 : LINE - 1;
  const stray = at.filter((p) => ([0, 1] as const).every((k) => at.filter((q) => q !== p && Math.abs(q[k] - p[k]) <= ON).length < wanted));
  return stray.length <= STRAY * at.length;
}
