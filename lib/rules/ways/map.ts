import {
  boxOf, boxesNear, contains, edges, minus, pieceContains, pointSegmentDistance, segmentDistance, subtract, union, unite,
  type Piece, type Point, type Polygon, type Region,
} from "../../geometry";
import type { Item, Scene } from "../../layout";
import type { Site } from "../../venue";
import { doorPoints, exitsOf, groundsOf, levelLinks, type Ground, type Walker } from "./ground";
import { grownCoarsely, grownFootprint } from "./grow";
import { eachLine, insideLines, linesOf, nearestPoints, type Lines } from "./lines";
import { isSeatedTable, isSolid, joinedRows, piecesOnFloor } from "./solids";

export type WalkOptions = {
  /** Width of the walker, mm. */
  readonly width: number;
  /** How far the line of a table with places lies out from its edge, mm. */
  readonly tableLine: number;
  /** Width that doors may have, mm; the full width when left out. */
  readonly doorWidth?: number;
  /** "wheels" keeps off steps and service doors. */
  readonly walker?: Walker;
  /** Draws pieces about their true outlines by few corners: quick, and never freer than the exact map. */
  readonly coarse?: boolean;
};

/** One connected piece of floor on which the centre of the walker's disc may be. */
export type WalkPiece = {
  readonly index: number;
  readonly level: number;
  readonly piece: Piece;
  /** Pieces joined by stairs or lifts share a component. */
  readonly component: number;
  readonly exits: readonly string[];
  readonly lines: Lines;
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

/**
 * Where a walker can be: floor less what stands on it, drawn in by half the width (less 0.25 mm, so that a gap of the
 * exact width passes). Exact but for arcs, which are within 0.1 mm. Cost: one boolean per level; grounds are remembered.
 */
export function walkMap(site: Site, scene: Pick<Scene, "rooms" | "items">, options: WalkOptions): WalkMap {
  // In one order whatever the order of the list, so that the same pieces give the same map.
  const solid = joinedRows(piecesOnFloor(site, scene).filter(isSolid)).map((item) => ({ item, key: keyOf(item) })).sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  const known = maps.get(site) ?? new Map<string, WalkMap>();
  maps.set(site, known);
  const key = `${options.width} ${options.tableLine} ${options.doorWidth ?? ""} ${options.walker ?? ""} ${options.coarse ?? ""} ${solid.map((s) => s.key).join(" ")}`;
  const found = known.get(key);
  if (found) return found;
  const map = drawn(site, solid.map((s) => s.item), options);
  // The oldest is let go: a search looks back at its last few layouts, not at all of them.
  if (known.size >= KEPT) for (const first of known.keys()) { known.delete(first); break; }
  known.set(key, map);
  return map;
}

/** Maps remembered for one site: those of a day's parts, of a few days. */
const KEPT = 32;
const maps = new WeakMap<Site, Map<string, WalkMap>>();

/** All that a piece's footprint on a map follows from. */
const keyOf = ({ kind, room, shape, at, angle, seats }: Item): string =>
  `${kind}/${room}/${"diameter" in shape ? shape.diameter : `${shape.width}x${shape.depth}`}@${at[0]},${at[1]},${angle}${seats.length > 0 ? "s" : ""}`;

function drawn(site: Site, solid: readonly Item[], options: WalkOptions): WalkMap {
  const walker = options.walker ?? "anyone";
  const doorWidth = options.doorWidth ?? options.width;
  const grounds = groundsOf(site, { width: options.width, doorWidth, walker });
  const radius = (options.width - 0.5) / 2, doorRadius = (doorWidth - 0.5) / 2;
  const draw = options.coarse ? grownCoarsely : grownFootprint;
  const levelOf = (room: string): number => site.rooms.get(room)?.room.level ?? 0;
  const found: { level: number; piece: Piece }[] = [];
  for (const ground of grounds) {
    const here = solid.filter((i) => levelOf(i.room) === ground.level);
    const grown = (by: number): readonly Polygon[] => here.map((i) => draw(i, by + (isSeatedTable(i) ? options.tableLine : 0)));
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
      (isPoint(target) ? pieceWithin(p, target, within) : polygonNear(p, target, within))),
  };
}

/** The point of a piece nearest to a point, or null where it is farther than `within`. */
export function nearestOnPiece(p: WalkPiece, at: Point, within: number): Point | null {
  const { box } = p.piece;
  if (at[0] < box.minX - within || at[0] > box.maxX + within || at[1] < box.minY - within || at[1] > box.maxY + within) return null;
  return insideLines(p.lines, at) ? at : (boundaryPoints(p, at, within)[0] ?? null);
}

/** True when a piece comes within a distance of a point: stops at the first line that does. */
export function pieceWithin(p: WalkPiece, at: Point, within: number): boolean {
  const box = { minX: at[0] - within, minY: at[1] - within, maxX: at[0] + within, maxY: at[1] + within };
  if (!boxesNear(box, p.piece.box, 0)) return false;
  return eachLine(p.lines, box, (a, b) => pointSegmentDistance(at, [a, b]) <= within) || insideLines(p.lines, at);
}

/** Nearest point of each boundary line of a piece within a distance, nearest first. */
export const boundaryPoints = (p: WalkPiece, at: Point, within: number): readonly Point[] => nearestPoints(p.lines, at, within);

function polygonNear(p: WalkPiece, target: Polygon, within: number): boolean {
  const box = boxOf(target);
  if (!boxesNear(box, p.piece.box, within)) return false;
  if (target.some((v) => insideLines(p.lines, v))) return true;
  const first = p.piece.outer[0];
  if (first && contains(target, first)) return true;
  const sides = edges(target);
  const wide = { minX: box.minX - within, minY: box.minY - within, maxX: box.maxX + within, maxY: box.maxY + within };
  return eachLine(p.lines, wide, (a, b) => sides.some((s) => segmentDistance(s, [a, b]) <= within));
}

export const regionOfMap = (map: WalkMap): Region => map.pieces.map((p) => p.piece);
