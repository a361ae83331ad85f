import { type Point } from "../../geometry";
import { isRound } from "../../layout";
import { END_END, LINE_OUT, WAY, roundFooting, runFooting, type Footing, type Hall } from "./hall";
import { ringMost, ringReach, shareSides, sideReach } from "./seats";
import type { ChairSize, Family, Laid, SeatingAsk, Sides } from "./types";

/** Tables that are moved as one: a single table, or a run of them end to end. */
export type Unit = {
  readonly family: Family;
  readonly count: number;
  readonly round: boolean;
  readonly places: number;
  readonly perTable: number;
  /** Extents along x and y, mm. */
  readonly w: number;
  readonly h: number;
  /** Least pitch along x and y, mm. */
  readonly px: number;
  readonly py: number;
  readonly upright: boolean;
  readonly ends: boolean;
  readonly footing: Footing;
  /** Forms of several runs: where each table stands about the reference point. */
  readonly spots?: readonly Spot[];
};
export type Spot = { readonly at: Point; readonly angle: number; readonly sides: Sides };

/** Places laid at one table of a family; no more than leaves tables enough for the wheelchairs, two of which share one at the most. */
export function placesAt(family: Family, ask: SeatingAsk, chair: ChairSize): number {
  const asked = ask.perTable === "comfort" ? family.places.comfort : ask.perTable === "most" ? family.places.most : Math.min(ask.perTable, family.places.most);
  const wanted = ask.places === "most" || ask.places === 0 || ask.wheelchairs === 0 ? asked : Math.min(asked, Math.ceil(ask.places / Math.ceil(ask.wheelchairs / 2)));
  return isRound(family.shape) ? Math.min(wanted, ringMost(family.shape.diameter, chair)) : wanted;
}

export function roundUnit(hall: Hall, family: Family, places: number): Unit | null {
  if (!isRound(family.shape) || places < 1) return null;
  const d = family.shape.diameter;
  const gap = Math.max(hall.tableGap, 2 * ringReach(d, places, hall.chair) + 10);
  const p = Math.ceil(d + gap + Math.max(0, hall.slack));
  return { family, count: 1, round: true, places, perTable: places, w: d, h: d, px: p, py: p, upright: false, ends: false, footing: roundFooting(hall, d, places) };
}

/** Places of a run: only its two outer ends are laid, where the table's ends are laid at all. */
export function runPlaces(family: Family, tables: number, perTable: number): { readonly side: number; readonly end: number; readonly total: number } {
  if (isRound(family.shape)) return { side: 0, end: 0, total: 0 };
  const one = shareSides(family.shape, perTable, [true, family.ends, true, family.ends], 0);
  const end = family.ends ? Math.max(one[1], one[3]) : 0;
  const side = one[0] + one[2];
  return { side, end, total: side * tables + one[1] + one[3] };
}

/** What a run of joined tables asks of the floor, lying level or upright. */
export function footingOf(hall: Hall, run: Parameters<typeof runFooting>[1], upright: boolean): Footing {
  const level = runFooting(hall, run), flip = (q: Point): Point => [-q[1], q[0]];
  return !upright ? level : {
    key: `upright ${level.key}`, round: null, tableRound: null, wall: level.wall.map((l) => l.map(flip)), zone: (c) => level.zone(c).map((l) => l.map(flip)), table: level.table.map((l) => l.map(flip)),
  };
}

export function runUnit(hall: Hall, family: Family, opts: { readonly tables: number; readonly perTable: number; readonly upright: boolean; readonly endWall?: number }): Unit | null {
  if (isRound(family.shape) || opts.perTable < 1) return null;
  const { width, depth } = family.shape;
  const w = width * opts.tables;
  const p = runPlaces(family, opts.tables, opts.perTable);
  const ends = p.end > 0;
  const chairs = 2 * sideReach(hall.chair) + 10;
  const s = Math.ceil(Math.max(0, hall.slack));
  const gap = Math.max(hall.tableGap, chairs) + s;
  const along = ends ? gap : Math.max(END_END, 2 * LINE_OUT + WAY + 1) + s;
  const footing = footingOf(hall, { w, d: depth, ends, endWall: opts.endWall ?? 0 }, opts.upright);
  return {
    family, count: opts.tables, round: false, places: p.total, perTable: opts.perTable, upright: opts.upright, ends, footing,
    w: opts.upright ? depth : w, h: opts.upright ? w : depth,
    px: opts.upright ? depth + gap : w + along, py: opts.upright ? w + along : depth + gap,
  };
}

/** The tables of a unit standing at a point, laid with `places` (or as many as it takes). */
export function layUnit(unit: Unit, at: Point, group: number): readonly Laid[] {
  const f = unit.family;
  if (isRound(f.shape)) return [{ family: f, at, angle: 0, ring: unit.places, sides: [0, 0, 0, 0], group }];
  if (unit.spots) return unit.spots.map((s) => ({ family: f, at: [at[0] + s.at[0], at[1] + s.at[1]] as const, angle: s.angle, ring: 0, sides: s.sides, group }));
  const one = shareSides(f.shape, unit.perTable, [true, f.ends, true, f.ends], 0);
  const { width } = f.shape;
  return Array.from({ length: unit.count }, (_, i) => {
    const s = (i - (unit.count - 1) / 2) * width;
    const sides = [one[0], i === unit.count - 1 ? one[1] : 0, one[2], i === 0 ? one[3] : 0] as const;
    return {
      family: f, at: unit.upright ? [at[0], at[1] + s] as const : [at[0] + s, at[1]] as const,
      angle: unit.upright ? 90 : 0, ring: 0, sides, group,
    };
  });
}
