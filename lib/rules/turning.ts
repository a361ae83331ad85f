import { add, distance, edges, scale, turn, type Point } from "../geometry";
import type { Item } from "../layout";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { aislesOf, onAisles } from "./maps";
import { ALONG, gridOf, leastWalk, quickMap, spread, straightWalk, walkMap, ZIGZAG, type FloorMap, type FloorPiece, type WalkMap, type WalkOptions } from "./ways";

/** A circle in which a wheelchair turns, 60 in, and as long a bar of a T: 2010 ADA Standards 304.3.1, 304.3.2, mm. */
const CIRCLE = 1525, BAR = 1525;
/** The farthest that one goes backwards out of a lane: as long as an aisle may be that leads nowhere, 20 ft. IBC 2018 1029.9.5, mm. */
const BACK = 6096;
/** How far from a place the route is looked for; spots for a T lie so far apart; how closely its arms are looked along, mm. */
const ASIDE = 1300, SPOT = 150, CLOSE = 76;
/** Sides of floor shorter than this are parts of arcs; a spot beside a side lies so far on, so that it is on the floor and not on its edge, mm. */
const SHORT = 40, HAIR = 0.3;
/** Side of a cell of the walk to a T, and how far its middle may lie off the floor: half of it, so that no lane falls between cells, mm. */
const CELL = 200, BESIDE = 101;

type Place = { readonly item: Item; readonly at: Point; readonly facing: number; readonly level: number };

/**
 * Floor in which a wheelchair turns lies on its route no farther from its place than a lane may be long that leads nowhere: else its
 * guest goes out backwards. A circle of 60 in, or a T of bars as wide as the route (its outer corners taken as rounded by half that
 * width): 2010 ADA Standards 304.3. The Standards ask for it where rooms are built; here it is a should, judged where the brief names
 * guests in wheelchairs. The walk is the least there may be, so that what is told is so.
 */
export function turning(v: SceneView, c: Context): readonly Raw[] {
  if (!c.brief || c.brief.guests.wheelchairs === 0) return [];
  const places = v.scene.items.flatMap((item) => item.seats.flatMap((s): readonly Place[] =>
    (s.place === "wheelchair" ? [{ item, at: [s.x, s.y], facing: s.facing, level: levelOf(v.site, item.room) }] : [])));
  return places.length === 0 ? [] : onAisles(v, c, (map) => turningOn(v, c, { map, places }));
}

function turningOn(v: SceneView, c: Context, { map, places }: { readonly map: FloorMap; readonly places: readonly Place[] }): readonly Raw[] {
  const straight = straightWalk(v.site, v.scene, map), wide = c.values.route;
  const far = places.flatMap((p): readonly (Place & { readonly walk: number })[] => {
    const open = (to: Point): boolean => straight(p.item, p.at, to);
    const route = map.pieces.filter((f) => f.level === p.level && f.exits.length > 0 && f.floor.within(p.at, ASIDE));
    // A place that no route reaches is told of by the route's own rule.
    if (route.length === 0 || SOON.some((d) => turnsAt(route, add(p.at, d), wide) && open(add(p.at, d)))) return [];
    const near = walkedFrom(route, p.at, open);
    if (near.cells().some((q) => turnsAt(route, q, wide))) return [];
    const walk = leastWalk(map, p.level, circlesOf(v, c, map).pieces, { reaches: [ASIDE] })(p.at, ASIDE, open);
    return walk <= BACK || teeNear(route, p, { wide, reached: near.reached, sides: map.coarse ? NONE : sidesOf(aislesOf(v, c)) }) ? [] : [{ ...p, walk }];
  });
  const worst = [...far].sort((a, b) => b.walk - a.walk)[0];
  if (!worst) return [];
  const told = worst.walk < Infinity ? Math.round(worst.walk) : null;
  return [{
    code: "turning", level: "should", source: "2010 ADA Standards 304.3; IBC 2018 1029.9.5", scene: v.scene.id, items: [...new Set(far.map((f) => f.item.id))], at: placed(worst.at),
    ...(told === null ? {} : { measured: told }), limit: BACK, unit: "mm", data: { a: worst.item.id, wide: CIRCLE, limit: BACK, ...(told === null ? {} : { distance: told }) },
  }];
}

/** The floor for the middle of the circle. */
function circlesOf(v: SceneView, c: Context, { coarse }: FloorMap): FloorMap {
  const walker: WalkOptions = { width: CIRCLE, tableLine: c.values.tableLine, doorWidth: c.values.routeDoor, walker: "wheels" };
  return coarse ? quickMap(v.site, v.scene, walker) : walkMap(v.site, v.scene, walker);
}

/** Points of a ring so far out about the middle of a free circle lie on the route's floor. */
const RING = Array.from({ length: 16 }, (_, k) => turn([1, 0], k * 22.5));
/**
 * Whether the circle is free about a point, told from the route's floor alone: where that floor lies about it half the difference of the
 * two widths far. What takes floor from the route is round by half the route's width at least, so that of 16 points on a ring 4 in a
 * hundred wider one is met by all that comes nearer: never freer than it is.
 */
function turnsAt(route: readonly FloorPiece[], q: Point, wide: number): boolean {
  const ring = ((CIRCLE - wide) / 2) * 1.04;
  return route.some((f) => f.floor.has(q) && RING.every((d) => f.floor.has(add(q, scale(d, ring)))));
}

/** Spots about a place that are tried before any walk, nearest first: most places have floor to turn on in a straight line from them, mm. */
const SOON: readonly Point[] = Array.from({ length: 17 * 17 }, (_, k): Point => [((k % 17) - 8) * 350, (Math.floor(k / 17) - 8) * 350]).sort((a, b) => distance(a, [0, 0]) - distance(b, [0, 0]));

/** Where on a route one comes to from a place without walking farther than one goes backwards: the middles of cells, nearest first. */
type Walked = { readonly cells: () => readonly Point[]; readonly reached: (q: Point) => boolean };
function walkedFrom(route: readonly FloorPiece[], at: Point, open: (to: Point) => boolean): Walked {
  const g = gridOf(route, CELL, BESIDE), { across, down, marked, x0, y0 } = g, within = Math.ceil(ASIDE / CELL);
  const middleOf = (k: number): Point => [x0 + ((k % across) + 0.5) * CELL, y0 + (Math.floor(k / across) + 0.5) * CELL];
  const starts: { readonly k: number; readonly aside: number }[] = [], cx = Math.floor((at[0] - x0) / CELL), cy = Math.floor((at[1] - y0) / CELL);
  for (let y = Math.max(0, cy - within); y <= Math.min(down - 1, cy + within); y++) for (let x = Math.max(0, cx - within); x <= Math.min(across - 1, cx + within); x++) {
    const k = y * across + x;
    const aside = distance(middleOf(k), at);
    if (marked[k] === 1 && aside <= ASIDE && open(middleOf(k))) starts.push({ k, aside });
  }
  // The first step leads on to the nearest floor, and counts.
  const first = Math.min(ASIDE, ...starts.map((s) => s.aside)), most = ((BACK - first) / CELL) * ALONG;
  const { far, order } = spread(g, starts.filter((s) => s.aside <= first + CELL).map((s) => s.k));
  return {
    cells: () => order.filter((k) => (far[k] ?? 0) <= most).map(middleOf),
    reached: (q) => { const k = Math.floor((q[1] - y0) / CELL) * across + Math.floor((q[0] - x0) / CELL), d = far[k] ?? -1; return d >= 0 && d <= most * ZIGZAG; },
  };
}

/** Where the straight sides of floor lie along x and along y. A lane no wider than the route is a line: no lattice meets it, but these do. */
type Sides = readonly [readonly number[], readonly number[]];
const NONE: Sides = [[], []];
function sidesOf(map: WalkMap): Sides {
  const lines = map.pieces.flatMap(({ piece }) => [piece.outer, ...piece.holes].flatMap((ring) => [...edges(ring)]));
  const along = (axis: 0 | 1): readonly number[] => lines.filter(([a, b]) => Math.abs(a[axis] - b[axis]) < 0.01 && distance(a, b) > SHORT).flatMap(([a]) => [a[axis] - HAIR, a[axis] + HAIR]);
  return [along(0), along(1)];
}

type Tee = Pick<Walked, "reached"> & { readonly wide: number; readonly sides: Sides };

/** Whether a T lies on the route within reach of a place, its arms along the place or across it. */
function teeNear(route: readonly FloorPiece[], p: Place, { wide, reached, sides }: Tee): boolean {
  const has = (q: Point): boolean => route.some((f) => f.floor.has(q)), half = (BAR - wide) / 2;
  const arm = (from: Point, out: Point, long: number): boolean => {
    const parts = Math.max(1, Math.ceil(long / CLOSE));
    return Array.from({ length: parts }, (_, k) => add(from, scale(out, (long * (k + 1)) / parts))).every(has);
  };
  const outs = [0, 90, 180, 270].map((a) => turn([1, 0], p.facing + a));
  const fits = (q: Point): boolean => {
    const free = outs.map((out) => arm(q, out, half));
    return outs.some((out, k) => free[(k + 1) % 4] === true && free[(k + 3) % 4] === true && arm(q, out, BAR - wide));
  };
  const lattice = Array.from({ length: Math.floor((2 * BACK) / SPOT) }, (_, k) => k * SPOT - BACK);
  const spots = (axis: 0 | 1): readonly number[] => [...new Set([...sides[axis].filter((d) => Math.abs(d - p.at[axis]) <= BACK), ...lattice.map((d) => p.at[axis] + d)])];
  const xs = spots(0);
  return spots(1).some((y) => xs.some((x) => reached([x, y]) && has([x, y]) && fits([x, y])));
}
