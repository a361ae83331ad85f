import {
  add, clockwise, distance, dot, inwardNormal, middle, pointSegmentDistance, scale, sub, unit, type Point, type Segment,
} from "../../geometry";
import type { Frame } from "./ground";
import { frontCost } from "./looks";
import type { RowSpace, Stretch } from "./types";

export type FrontKind = "feature" | "window" | "short wall" | "wall" | "corner";
export type Front = { readonly frame: Frame; readonly kind: FrontKind; readonly rank: number; readonly off: number; readonly door: boolean };

const NARROWEST = 1800;
/** Half of the floor kept for the couple, mm. */
const BESIDE_COUPLE = 1000;
/** A backdrop counts for a wall when it lies within this of it, mm. */
const ON = 60;

const frameOf = (origin: Point, back: Point): Frame => ({ origin, back, across: [back[1], -back[0]] });

const onWall = (wall: Segment, s: Stretch): boolean =>
  pointSegmentDistance(s.from, wall) <= ON && pointSegmentDistance(s.to, wall) <= ON;

/** The middle of the room's extent along a wall: the axis of symmetry of a plain room. */
function middleAlong(wall: Segment, points: readonly Point[]): number {
  const t = unit(sub(wall[1], wall[0]));
  let least = Infinity, most = -Infinity;
  for (const p of points) {
    const s = dot(sub(p, wall[0]), t);
    if (s < least) least = s;
    if (s > most) most = s;
  }
  return (least + most) / 2;
}

/**
 * Every place where a couple could stand before rows of chairs, the likeliest first: features, windows, short walls, other walls,
 * each tried at its own middle, at the middle of the room and a little to either side (a column may stand in the aisle); a door behind the
 * couple puts a front back, and corners come last.
 */
export function frontsOf(space: RowSpace): readonly Front[] {
  const out: Front[] = [];
  for (const piece of space.floor) {
    const outline = clockwise(piece.outer);
    const walls = outline.map((a, i): Segment => [a, outline[(i + 1) % outline.length] ?? a]);
    const longest = Math.max(...walls.map(([a, b]) => distance(a, b)));
    walls.forEach((wall, i) => {
      const long = distance(wall[0], wall[1]);
      const n = inwardNormal(wall), t = unit(sub(wall[1], wall[0]));
      const push = (s: number, kind: FrontKind, rank: number, off: number): void => {
        if (s < NARROWEST / 2 || s > long - NARROWEST / 2) return;
        const door = space.gates.some((g) => pointSegmentDistance(g.at, wall) <= ON && Math.abs(dot(sub(g.at, wall[0]), t) - s) < g.width / 2 + BESIDE_COUPLE);
        out.push({ frame: frameOf(add(wall[0], scale(t, s)), n), kind, rank, off, door });
      };
      if (long >= NARROWEST) {
        const along = (p: Point): number => dot(sub(p, wall[0]), t);
        for (const f of space.features) if (onWall(wall, f)) {
          const s = along(middle(f.from, f.to));
          push(s, "feature", 0, 0);
          for (const by of [600, 1200]) { push(s - by, "feature", 0.4, by); push(s + by, "feature", 0.4, by); }
        }
        const centre = middleAlong(wall, outline);
        for (const w of space.windows) if (onWall(wall, w)) push(along(middle(w.from, w.to)), "window", 2, Math.abs(along(middle(w.from, w.to)) - centre));
        const short = long <= longest * 0.8;
        const kind = short ? "short wall" : "wall", rank = short ? 1 : 3;
        for (const s of new Set([Math.round(long / 2), Math.round(centre)])) {
          push(s, kind, rank, Math.abs(s - centre));
          for (const by of [700, 1400]) { push(s - by, kind, rank + 0.5, by); push(s + by, kind, rank + 0.5, by); }
        }
      }
      const next = walls[(i + 1) % walls.length];
      if (!next) return;
      const m = inwardNormal(next);
      const bend = dot(n, m);
      const inner = dot(sub(next[1], next[0]), n) > 0;
      if (inner && bend > -0.5 && bend < 0.8 && long > 3000 && distance(next[0], next[1]) > 3000) {
        out.push({ frame: frameOf(wall[1], unit(add(n, m))), kind: "corner", rank: 5, off: 0, door: false });
      }
    });
  }
  return out.sort((a, b) => frontCost(a) - frontCost(b));
}
