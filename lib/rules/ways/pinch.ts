import { boundaryDistance, contains, distance, edges, lerp, pointClearance, type Point, type Polygon } from "../../geometry";
import { footprint, type Scene } from "../../layout";
import { levelOf, type Site } from "../../venue";
import { nearestOnPiece, type WalkMap, type WalkPiece } from "./map";
import { isSeatedTable, isSolid, piecesOnFloor } from "./solids";

/** The narrowest place on the straight way over from floor that a walker reaches to floor with a way out. Millimetres. */
export type Pinch = { readonly at: Point; readonly width: number };

/** Farthest that two pieces of floor may lie apart for the place between them to be one pinch, mm. */
const ACROSS = 6000;
/** Steps along the way over; then halved about the narrowest. */
const STEPS = 48, FINER = 12;

/**
 * Where the floor of a map is too narrow between `from` (a place or piece that no way out is reached from) and the nearest floor
 * that has one, and how wide it is there: twice the distance to the nearest wall, obstacle, piece, or line of a laid table. Null
 * where walls or pieces stand across the straight way over, or the floors lie too far apart.
 */
export function pinchOf(site: Site, scene: Pick<Scene, "rooms" | "items">, map: WalkMap, from: { readonly target: Point | Polygon; readonly within: number; readonly level: number }): Pinch | null {
  const shut = map.reaches(from.target, from.within, from.level).filter((p) => p.exits.length === 0);
  const open = map.pieces.filter((p) => p.level === from.level && p.exits.length > 0);
  const best = shut.flatMap((a) => open.map((b) => nearest(a, b))).filter((n) => n !== null).sort((x, y) => x.far - y.far)[0];
  if (!best) return null;
  const free = clearanceOn(site, scene, map, from.level);
  let low = 0, high = 1, at = 0.5;
  for (let round = 0, steps = STEPS; round < 3; round++, steps = FINER) {
    const [a, b] = [low, high];
    const along = Array.from({ length: steps + 1 }, (_, k) => { const t = a + ((b - a) * k) / steps; return { t, w: free(lerp(best.a, best.b, t)) }; });
    const least = Math.min(...along.map((s) => s.w));
    // Between two long sides the floor is as narrow all along: the middle of that stretch stands for it.
    const narrow = along.filter((s) => s.w <= least + 0.5);
    at = narrow[Math.floor((narrow.length - 1) / 2)]?.t ?? at;
    low = Math.max(0, at - (b - a) / steps);
    high = Math.min(1, at + (b - a) / steps);
  }
  const p = lerp(best.a, best.b, at), width = 2 * free(p);
  return width <= 0 ? null : { at: p, width };
}

/** The two nearest points of two pieces of floor, by the corners of either. */
function nearest(a: WalkPiece, b: WalkPiece): { readonly a: Point; readonly b: Point; readonly far: number } | null {
  let best: { readonly a: Point; readonly b: Point; readonly far: number } | null = null;
  const look = (corners: WalkPiece, lines: WalkPiece, turned: boolean): void => {
    for (const p of [corners.piece.outer, ...corners.piece.holes].flat()) {
      const q = nearestOnPiece(lines, p, best ? best.far : ACROSS);
      if (!q) continue;
      const far = distance(p, q);
      if (!best || far < best.far) best = turned ? { a: q, b: p, far } : { a: p, b: q, far };
    }
  };
  look(a, b, false);
  look(b, a, true);
  return best;
}

/** How far a point lies from the nearest wall, obstacle, piece, or line of a laid table; negative inside one. */
function clearanceOn(site: Site, scene: Pick<Scene, "rooms" | "items">, map: WalkMap, level: number): (p: Point) => number {
  const solids = piecesOnFloor(site, scene).filter((i) => isSolid(i) && levelOf(site, i.room) === level).map((i) => ({ shape: footprint(i), line: isSeatedTable(i) ? map.options.tableLine : 0 }));
  const built = [...site.rooms.values()].filter((r) => r.room.level === level).flatMap((r) => r.room.obstacles.map((o) => o.outline));
  const ground = map.grounds.find((g) => g.level === level);
  const rings = (ground?.floor ?? []).flatMap((f) => [f.outer, ...f.holes]);
  rings.forEach((r) => edges(r));
  return (p) => {
    const inside = (ground?.floor ?? []).some((f) => contains(f.outer, p) && !f.holes.some((h) => contains(h, p)));
    let least = inside ? Infinity : -1;
    for (const r of rings) least = Math.min(least, boundaryDistance(r, p));
    for (const o of built) least = Math.min(least, pointClearance(p, o));
    for (const { shape, line } of solids) {
      const d = shape.kind === "disc" ? distance(shape.at, p) - shape.radius : pointClearance(p, shape.points);
      least = Math.min(least, d - line);
    }
    return least;
  };
}
