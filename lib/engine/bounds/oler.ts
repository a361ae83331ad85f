import {
  area, boxOf, convexHull, cross, intersect, offset, perimeter, sub, subtract, turn, type Point, type Polygon, type Region,
} from "../../geometry";

/** Layouts are judged with 1 mm let go, so the bound lets go as much. */
const LET = 1;
const DEGENERATE = 1e-6;

/**
 * Most points that lie in a convex figure of this area and perimeter, each at least p from every other:
 * N <= 2/sqrt(3) A/p^2 + P/(2p) + 1 (Oler 1961; Groemer's theorem is its twin for circles). mm2, mm, mm.
 */
export const olerPoints = (figure: { readonly area: number; readonly perimeter: number }, p: number): number =>
  Math.floor((2 / Math.sqrt(3)) * (figure.area / (p * p)) + figure.perimeter / (2 * p) + 1 + DEGENERATE);

const hullBound = (rings: readonly Polygon[], p: number): number => {
  const hull = convexHull(rings.flat());
  if (hull.length === 0) return 0;
  // A segment's perimeter counts both of its sides, a point's is 0: the formula then gives floor(length / p) + 1, and 1.
  const around = hull.length === 2 ? 2 * Math.hypot((hull[0]?.[0] ?? 0) - (hull[1]?.[0] ?? 0), (hull[0]?.[1] ?? 0) - (hull[1]?.[1] ?? 0)) : perimeter(hull);
  return olerPoints({ area: hull.length < 3 ? 0 : area(hull), perimeter: around }, p);
};

/** The sum over a region's connected pieces, each within its own hull. */
export const piecesBound = (r: Region, p: number): number => r.reduce((n, piece) => n + hullBound([piece.outer], p), 0);

/**
 * Where the drawn-in floor turns inward: a corner that juts into the room draws in as an arc, of which the two ends are given. A cut
 * there may leave two parts nearer to their hulls.
 */
function reflex(r: Region): readonly Point[] {
  return r.flatMap(({ outer }) => {
    const n = outer.length;
    const at = (i: number): Point => outer[((i % n) + n) % n] ?? [0, 0];
    const sign = Math.sign(outer.reduce((s, a, i) => s + cross(a, at(i + 1)), 0));
    const inward = outer.map((b, i) => cross(sub(b, at(i - 1)), sub(at(i + 1), b)) * sign < 0);
    return outer.filter((_, i) => inward[i] && !(inward[(i + 1) % n] && inward[(i - 1 + n) % n]));
  });
}

function halves(r: Region, at: Point, angle: number): readonly [Region, Region] {
  const box = boxOf(r.flatMap((p) => p.outer));
  const far = 2 * Math.max(box.maxX - box.minX, box.maxY - box.minY, 1);
  const side = (s: 1 | -1): Polygon => [[-far, 0], [far, 0], [far, s * far], [-far, s * far]].map((q) => {
    const t = turn([q[0] ?? 0, q[1] ?? 0], angle);
    return [t[0] + at[0], t[1] + at[1]] as const;
  });
  return [intersect(r, [side(1)]), intersect(r, [side(-1)])];
}

function cutBound(r: Region, p: number, axis: number, depth: number): number {
  const whole = piecesBound(r, p);
  if (depth === 0 || r.length === 0) return whole;
  let best = whole;
  for (const at of reflex(r).slice(0, 8)) for (const angle of [axis, axis + 90]) {
    const [a, b] = halves(r, at, angle);
    if (a.length === 0 || b.length === 0) continue;
    best = Math.min(best, cutBound(a, p, axis, depth - 1) + cutBound(b, p, axis, depth - 1));
  }
  return best;
}

export type RoundAsk = { readonly diameter: number; readonly tableGap: number; readonly wallGap: number; readonly axis?: number };

/**
 * Most round tables, laid all round, that can stand on a floor: their edges tableGap apart and wallGap off walls and solids, because
 * a place of each faces every way.
 *
 * Why it holds in any room: the centres lie in the floor drawn in by radius + wallGap and are diameter + tableGap apart. Oler's
 * theorem wants a convex figure. Whatever way the drawn-in floor is cut into parts, each centre lies in a part and each part in its
 * convex hull, so the sum of the hulls' bounds is a bound; holes only add floor to a hull. The least over the cuts tried (none, at
 * the corners that turn inward) is therefore one too.
 */
export function olerRounds(floor: Region, solids: readonly Polygon[], ask: RoundAsk): number {
  const centres = offset(subtract(floor, solids), -(ask.diameter / 2 + ask.wallGap - LET));
  const p = ask.diameter + ask.tableGap - LET;
  if (centres.length === 0) return 0;
  return Math.min(hullBound(centres.map((c) => c.outer), p), cutBound(centres, p, ask.axis ?? 0, 2));
}
