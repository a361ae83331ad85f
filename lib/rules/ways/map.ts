import {
  boxOf, boxesNear, contains, edges, minus, nearestOnSegment, pieceContains, segmentDistance, subtract, union, unite,
  type Piece, type Point, type Polygon, type Region, type Segment,
} from "../../geometry";
import type { Scene } from "../../layout";
import type { Site } from "../../venue";
import { doorPoints, exitsOf, groundsOf, levelLinks, type Ground, type Walker } from "./ground";
import { grownFootprint } from "./grow";
import { isSeatedTable, isSolid, piecesOnFloor } from "./solids";

export type WalkOptions = {
  /** Width of the walker, mm. */
  readonly width: number;
  /** How far the line of a table with places lies out from its edge, mm. */
  readonly tableLine: number;
  /** Width that doors may have, mm; the full width when left out. */
  readonly doorWidth?: number;
  /** "wheels" keeps off steps and service doors. */
  readonly walker?: Walker;
};

/** One connected piece of floor on which the centre of the walker's disc may be. */
export type WalkPiece = {
  readonly index: number;
  readonly level: number;
  readonly piece: Piece;
  /** Pieces joined by stairs or lifts share a component. */
  readonly component: number;
  readonly exits: readonly string[];
  /** Its boundary as x1, y1, x2, y2 … for quick search. */
  readonly lines: Float64Array;
};

export type WalkMap = {
  readonly options: WalkOptions;
  readonly pieces: readonly WalkPiece[];
  readonly grounds: readonly Ground[];
  /** Ids of the ways out that the map knows, reachable or not. */
  readonly exits: readonly string[];
  /** Pieces that come within a distance (mm) of a point or polygon on a level. */
  readonly reaches: (target: Point | Polygon, within: number, level?: number) => readonly WalkPiece[];
};

const isPoint = (t: Point | Polygon): t is Point => typeof t[0] === "number";

function linesOf(piece: Piece): Float64Array {
  const all: Segment[] = [piece.outer, ...piece.holes].flatMap((ring) => [...edges(ring)]);
  const out = new Float64Array(all.length * 4);
  all.forEach(([a, b], i) => out.set([a[0], a[1], b[0], b[1]], i * 4));
  return out;
}

/**
 * Where a walker can be: floor less what stands on it, drawn in by half the width (less 0.25 mm, so that a gap of the
 * exact width passes). Exact but for arcs, which are within 0.1 mm. Cost: one boolean per level; grounds are remembered.
 */
export function walkMap(site: Site, scene: Pick<Scene, "rooms" | "items">, options: WalkOptions): WalkMap {
  const walker = options.walker ?? "anyone";
  const doorWidth = options.doorWidth ?? options.width;
  const grounds = groundsOf(site, { width: options.width, doorWidth, walker });
  const radius = (options.width - 0.5) / 2, doorRadius = (doorWidth - 0.5) / 2;
  const solid = piecesOnFloor(site, scene).filter(isSolid);
  const levelOf = (room: string): number => site.rooms.get(room)?.room.level ?? 0;
  const found: { level: number; piece: Piece }[] = [];
  for (const ground of grounds) {
    const here = solid.filter((i) => levelOf(i.room) === ground.level);
    const grown = (by: number): readonly Polygon[] => here.map((i) => grownFootprint(i, by + (isSeatedTable(i) ? options.tableLine : 0)));
    let free = subtract(ground.eroded, grown(radius));
    if (ground.nearDoors.length > 0) {
      const zone = boxOf(ground.nearDoors.flatMap((p) => p.outer));
      const near = grown(doorRadius).filter((p) => boxesNear(boxOf(p), zone, 0));
      free = unite(free, near.length === 0 ? ground.nearDoors : minus(ground.nearDoors, union(near)));
    }
    for (const piece of free) found.push({ level: ground.level, piece });
  }
  return assemble(site, { options, grounds, found, walker, radius: Math.min(radius, doorRadius) });
}

type Parts = {
  readonly options: WalkOptions; readonly grounds: readonly Ground[]; readonly walker: Walker; readonly radius: number;
  readonly found: readonly { readonly level: number; readonly piece: Piece }[];
};

function assemble(site: Site, { options, grounds, found, walker, radius }: Parts): WalkMap {
  const parent = found.map((_, i) => i);
  const root = (i: number): number => { let k = i; while (parent[k] !== undefined && parent[k] !== k) k = parent[k] ?? k; return k; };
  const at = (p: Point, level: number): number => found.findIndex((f) => f.level === level && pieceContains(f.piece, p));
  const levelOf = (room: string): number => site.rooms.get(room)?.room.level ?? 0;
  for (const [a, b] of levelLinks(site, walker)) {
    const inside = (g: typeof a): number => at([g.at[0] + g.inward[0] * (radius + 1), g.at[1] + g.inward[1] * (radius + 1)], levelOf(g.room));
    const i = inside(a), j = inside(b);
    if (i >= 0 && j >= 0) parent[root(i)] = root(j);
  }
  const exits = exitsOf(site, walker);
  const byRoot = new Map<number, Set<string>>();
  for (const exit of exits) for (const p of doorPoints(exit.gate, radius)) {
    const i = at(p, exit.level);
    if (i < 0) continue;
    const set = byRoot.get(root(i)) ?? new Set<string>();
    byRoot.set(root(i), set.add(exit.id));
  }
  const pieces = found.map((f, index): WalkPiece => ({
    index, level: f.level, piece: f.piece, component: root(index), exits: [...(byRoot.get(root(index)) ?? [])].sort(), lines: linesOf(f.piece),
  }));
  return {
    options, pieces, grounds, exits: exits.map((e) => e.id),
    reaches: (target, within, level) => pieces.filter((p) => (level === undefined || p.level === level) &&
      (isPoint(target) ? nearestOnPiece(p, target, within) !== null : polygonNear(p, target, within))),
  };
}

/** The point of a piece nearest to a point, or null where it is farther than `within`. */
export function nearestOnPiece(p: WalkPiece, at: Point, within: number): Point | null {
  const { box } = p.piece;
  const [x, y] = at;
  if (x < box.minX - within || x > box.maxX + within || y < box.minY - within || y > box.maxY + within) return null;
  if (pieceContains(p.piece, at)) return at;
  return boundaryPoints(p, at, within)[0] ?? null;
}

/** Nearest point of each boundary line of a piece within a distance, nearest first. */
export function boundaryPoints(p: WalkPiece, [x, y]: Point, within: number): readonly Point[] {
  const { lines } = p;
  const near: { at: Point; d: number }[] = [];
  for (let i = 0; i < lines.length; i += 4) {
    const x1 = lines[i] ?? 0, y1 = lines[i + 1] ?? 0, x2 = lines[i + 2] ?? 0, y2 = lines[i + 3] ?? 0;
    if ((x1 < x - within && x2 < x - within) || (x1 > x + within && x2 > x + within)) continue;
    if ((y1 < y - within && y2 < y - within) || (y1 > y + within && y2 > y + within)) continue;
    const q = nearestOnSegment([x, y], [[x1, y1], [x2, y2]]);
    const d = Math.hypot(q[0] - x, q[1] - y);
    if (d <= within) near.push({ at: q, d });
  }
  return near.sort((a, b) => a.d - b.d).map((n) => n.at);
}

function polygonNear(p: WalkPiece, target: Polygon, within: number): boolean {
  const box = boxOf(target);
  if (!boxesNear(box, p.piece.box, within)) return false;
  if (target.some((v) => pieceContains(p.piece, v))) return true;
  const first = p.piece.outer[0];
  if (first && contains(target, first)) return true;
  const sides = edges(target);
  const { lines } = p;
  for (let i = 0; i < lines.length; i += 4) {
    const a: Point = [lines[i] ?? 0, lines[i + 1] ?? 0], b: Point = [lines[i + 2] ?? 0, lines[i + 3] ?? 0];
    if (!boxesNear(boxOf([a, b]), box, within)) continue;
    if (sides.some((s) => segmentDistance(s, [a, b]) <= within)) return true;
  }
  return false;
}

export const regionOfMap = (map: WalkMap): Region => map.pieces.map((p) => p.piece);
