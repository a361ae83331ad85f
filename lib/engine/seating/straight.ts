import { boxesNear, clearance, type Point, type Shape } from "../../geometry";
import { isRound, shapeAt } from "../../layout";
import { imageIn } from "./grids";
import { groundFor, LINE_OUT, roundFooting, type Footing, type Ground, type Hall } from "./hall";
import { groupsIn } from "./items";
import type { Laid } from "./types";
import { footingOf } from "./units";

/** Off a line by less than this looks like a slip, mm; by more it looks meant. Common practice, no source. */
export const SLIP = 300;
/** Neighbours along a line: from edge to edge no farther apart than this, mm. */
const BESIDE = 2_600;
/** Nearer than this is on the line: turned rooms have whole millimetres of their own. */
const ON = 2;
/** Two tables so far apart leave way enough for the longest path to an aisle: 21 in at 30 ft, between lines 483 mm out from both (IBC 2018, 1029.13.1 to 1029.13.1.3), mm. */
const ANY = 2 * LINE_OUT + 534;
/** A way behind the ends of runs that have one is kept, mm. */
const END_WALLS = [790, 0] as const;

/** Tables that move as one: a round, or a straight run. `ground` is null where they may not move. */
type Body = { readonly tables: readonly Laid[]; readonly at: Point; readonly size: Point; readonly ground: Ground | null };
type Pair = readonly [Body, Body];
type Axis = 0 | 1;

/**
 * Tables that stand off their neighbours' line by a hand's breadth brought onto it, where the floor and the gaps let them; fewer such
 * slips than before, or the same list. In the hall's frame; order, places and groups stay. What has its mirror image keeps it.
 */
export function straightened(hall: Hall, laid: readonly Laid[]): readonly Laid[] {
  const rough = groupsIn(laid).map(bodyOf);
  if (slips(rough) === 0) return laid;
  let bodies: readonly Body[] = rough.map((b) => ({ ...b, ground: groundOf(hall, b) }));
  const even = symmetric(hall, bodies), ample = Math.max(hall.tableGap + Math.max(0, hall.slack), ANY);
  for (let left = slips(bodies), better = true; left > 0 && better;) {
    better = false;
    for (const moves of options(bodies)) {
      const next = moved(bodies, moves), now = slips(next);
      if (now >= left || !stands(next, bodies, ample) || (even && !symmetric(hall, next))) continue;
      bodies = next; left = now; better = true;
      break;
    }
  }
  const to = new Map(bodies.flatMap((b, i) => b.tables.map((l, k) => [rough[i]?.tables[k], l] as const)));
  return laid.map((l) => to.get(l) ?? l);
}

/** The middle and extent of a group. */
function bodyOf(tables: readonly Laid[]): Body {
  const boxes = tables.map((l) => shapeOf(l).box);
  const low: Point = [Math.min(...boxes.map((b) => b.minX)), Math.min(...boxes.map((b) => b.minY))], high: Point = [Math.max(...boxes.map((b) => b.maxX)), Math.max(...boxes.map((b) => b.maxY))];
  return { tables, at: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2], size: [high[0] - low[0], high[1] - low[1]], ground: null };
}

const shapeOf = (l: Laid): Shape => shapeAt(l.family.shape, l.at, isRound(l.family.shape) ? 0 : l.angle);

/** Where its middle may be for walls, pieces and the couple: with all that it has where it stands. Null for forms of several runs. */
function groundOf(hall: Hall, b: Body): Ground | null {
  const first = b.tables[0];
  if (!first) return null;
  const { shape } = first.family, upright = first.angle === 90;
  if (!isRound(shape) && (!b.tables.every((l) => l.angle === first.angle) || (first.angle !== 0 && !upright))) return null;
  const asked: readonly Footing[] = isRound(shape) ? [roundFooting(hall, shape.diameter, first.ring)]
    : END_WALLS.map((endWall) => footingOf(hall, { w: shape.width * b.tables.length, d: shape.depth, ends: b.tables.some((l) => l.sides[1] + l.sides[3] > 0), endWall }, upright));
  for (const f of asked) {
    const ground = groundFor(hall, f);
    if (ground && lies(ground, b.at)) return ground;
  }
  return null;
}

const lies = (ground: Ground, [x, y]: Point): boolean => ground.level.at(y).some(([l, r]) => x >= l - 0.01 && x <= r + 0.01);

/** Whether two stand side by side along the other axis, and by how little they miss one line across it: middles, or either edges; 0 where on it or not near. */
function slip(a: Body, b: Body, k: Axis): number {
  const o = (1 - k) as Axis, apart = Math.abs(a.at[o] - b.at[o]) - (a.size[o] + b.size[o]) / 2;
  if (apart < 0 || apart > BESIDE) return 0;
  const middles = Math.abs(a.at[k] - b.at[k]), edges = Math.abs(a.size[k] - b.size[k]) / 2;
  const off = Math.min(middles, Math.abs(middles - edges));
  return off > ON && off < SLIP ? off : 0;
}

const AXES = [0, 1] as const;
const pairs = (n: number): readonly (readonly [number, number])[] => Array.from({ length: n }, (_, i) => Array.from({ length: n - i - 1 }, (__, j) => [i, i + 1 + j] as const)).flat();

function slips(bodies: readonly Body[]): number {
  let n = 0;
  for (let i = 0; i < bodies.length; i++) for (let j = i + 1; j < bodies.length; j++) for (const k of AXES) if (slip(bodies[i] as Body, bodies[j] as Body, k) > 0) n++;
  return n;
}

type Moves = { readonly k: Axis; readonly to: number; readonly who: readonly number[] };

/** What may be tried: all that lie near one line brought onto it, else the two that slipped, one to the other or both half way. */
function* options(bodies: readonly Body[]): Generator<Moves> {
  for (const k of AXES) for (const [i, j] of pairs(bodies.length)) {
    const a = bodies[i] as Body, b = bodies[j] as Body;
    if (slip(a, b, k) === 0) continue;
    const near = bodies.flatMap((c, n) => (Math.min(Math.abs(c.at[k] - a.at[k]), Math.abs(c.at[k] - b.at[k])) < SLIP ? [n] : []));
    const half = Math.round((a.at[k] + b.at[k]) / 2);
    for (const to of [a.at[k], b.at[k], half]) yield { k, to, who: near };
    for (const [to, who] of [[a.at[k], [j]], [b.at[k], [i]], [half, [i, j]]] as const) yield { k, to, who };
  }
}

function moved(bodies: readonly Body[], { k, to, who }: Moves): readonly Body[] {
  return bodies.map((b, i): Body => {
    const by = who.includes(i) ? Math.round(to - b.at[k]) : 0;
    if (by === 0) return b;
    const go = ([x, y]: Point): Point => (k === 0 ? [x + by, y] : [x, y + by]);
    return { ...b, at: go(b.at), tables: b.tables.map((l) => ({ ...l, at: go(l.at) })) };
  });
}

/** Whether all that moved lies on its ground and no way beside it has grown too narrow. */
const stands = (now: readonly Body[], was: readonly Body[], ample: number): boolean => now.every((b, i) => b === was[i]
  || (b.ground !== null && lies(b.ground, b.at) && now.every((o, j) => j === i || wayKept([b, o], [was[i] as Body, was[j] as Body], ample))));

/** No way between two tables grows narrower than it was: it may carry many. One that is ample may, down to that. */
function wayKept(now: Pair, was: Pair, ample: number): boolean {
  const wide = wayBetween(now, ample);
  return wide >= ample || wide >= wayBetween(was, ample) - 0.01;
}

/** Least distance between the tables of two groups, as far as `most`. */
function wayBetween([a, b]: Pair, most: number): number {
  let least = most;
  for (const l of a.tables) for (const m of b.tables) {
    const p = shapeOf(l), q = shapeOf(m);
    if (boxesNear(p.box, q.box, least)) least = Math.min(least, clearance(p, q));
  }
  return least;
}

function symmetric(hall: Hall, bodies: readonly Body[]): boolean {
  if (hall.mirrorX === null && hall.mirrorY === null) return false;
  return bodies.every((b) => { const [x, y] = imageIn(hall, b.at); return bodies.some((o) => Math.abs(o.at[0] - x) <= ON && Math.abs(o.at[1] - y) <= ON); });
}
