import { boxesNear, boxOf, distance, minus, pieceContains, pointClearance, subtract, union, unite, type Piece, type Point, type Polygon } from "../../geometry";
import { footprint, type Item, type Scene } from "../../layout";
import { levelOf, type Site } from "../../venue";
import { outlinedFloor, type Floor } from "./floor";
import { doorPoints, exitsOf, groundsOf, levelLinks, type Ground, type Walker } from "./ground";
import { grownFootprint } from "./grow";
import { noteSince } from "./since";
import { isSeatedTable } from "./solids";
import { standOf } from "./stands";
import { stripFloors } from "./strip-floor";
import { stripsOf, type Strips } from "./strips";

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
export type FloorPiece = {
  readonly index: number;
  readonly level: number;
  readonly floor: Floor;
  /** Pieces joined by stairs or lifts share a component. */
  readonly component: number;
  readonly exits: readonly string[];
};
/** The same with its outline. */
export type WalkPiece = FloorPiece & { readonly piece: Piece };

/** Where a walker can be, as the rules ask it. */
export type FloorMap = {
  readonly options: WalkOptions;
  /** True where the floor is drawn smaller than it is: what can be reached on it can be reached, and the rest is not known. */
  readonly coarse: boolean;
  /** The quick map of the same floor, of an exact one: a place that it serves need not be asked again. */
  readonly quick: (() => FloorMap) | null;
  readonly pieces: readonly FloorPiece[];
  readonly grounds: readonly Ground[];
  /** Ids of the ways out that the map knows, reachable or not. */
  readonly exits: readonly string[];
  /** Pieces that come within a distance (mm) of a point or polygon on a level. */
  readonly reaches: (target: Point | Polygon, within: number, level?: number) => readonly FloorPiece[];
};
/** The exact map. */
export type WalkMap = Omit<FloorMap, "pieces" | "reaches"> & { readonly pieces: readonly WalkPiece[]; readonly reaches: (target: Point | Polygon, within: number, level?: number) => readonly WalkPiece[] };

const isPoint = (t: Point | Polygon): t is Point => typeof t[0] === "number";

/**
 * Where a walker can be: floor less what stands on it, drawn in by half the width (less 0.25 mm, so that a gap of the
 * exact width passes). Exact but for arcs, which are within 0.1 mm. Cost: one boolean per level; grounds are remembered.
 */
export function walkMap(site: Site, scene: Pick<Scene, "rooms" | "items">, options: WalkOptions): WalkMap {
  const { exact, items } = standOf(site, scene), key = optionsKey(options), map = exact.get(key) ?? { ...drawn(site, items, options), quick: () => quickMap(site, scene, options) };
  exact.set(key, map);
  return map;
}

/** How high the strips of a quick map are at most, mm. */
const HIGH = 40;

/** The same by strips of floor (`stripsOf`): several times as quick, and never freer than the exact map. */
export function quickMap(site: Site, scene: Pick<Scene, "rooms" | "items">, options: WalkOptions): FloorMap {
  const stand = standOf(site, scene), { quick, items } = stand, key = optionsKey(options), map = quick.get(key) ?? cut(site, items, options, stand.near()?.quick.get(key) ?? null);
  quick.set(key, map);
  return map;
}

const optionsKey = (o: WalkOptions): string => `${o.width} ${o.tableLine} ${o.doorWidth ?? ""} ${o.walker ?? ""}`;

type Measures = { readonly walker: Walker; readonly radius: number; readonly doorRadius: number; readonly grounds: readonly Ground[] };
function measures(site: Site, options: WalkOptions): Measures {
  const walker = options.walker ?? "anyone", doorWidth = options.doorWidth ?? options.width;
  return { walker, radius: (options.width - 0.5) / 2, doorRadius: (doorWidth - 0.5) / 2, grounds: groundsOf(site, { width: options.width, doorWidth, walker }) };
}
const onLevel = (site: Site, solid: readonly Item[], level: number): readonly Item[] => solid.filter((i) => levelOf(site, i.room) === level);

function drawn(site: Site, solid: readonly Item[], options: WalkOptions): WalkMap {
  const m = measures(site, options);
  const found: { level: number; floor: Floor; piece: Piece }[] = [];
  for (const ground of m.grounds) {
    const here = onLevel(site, solid, ground.level);
    const grown = (by: number): readonly Polygon[] => here.map((i) => grownFootprint(i, by + (isSeatedTable(i) ? options.tableLine : 0)));
    let free = subtract(ground.eroded, grown(m.radius));
    if (ground.nearDoors.length > 0) {
      const zone = boxOf(ground.nearDoors.flatMap((p) => p.outer));
      const near = grown(m.doorRadius).filter((p) => boxesNear(boxOf(p), zone, 0));
      free = unite(free, near.length === 0 ? ground.nearDoors : minus(ground.nearDoors, union(near)));
    }
    for (const piece of free) found.push({ level: ground.level, floor: outlinedFloor(piece), piece });
  }
  return assemble(site, { options, found, ...m }, false);
}

const strips = new WeakMap<FloorMap, readonly Strips[]>();

function cut(site: Site, solid: readonly Item[], options: WalkOptions, earlier: FloorMap | null): FloorMap {
  const m = measures(site, options), before = earlier ? strips.get(earlier) : undefined;
  const line = (i: Item): number => (isSeatedTable(i) ? options.tableLine : 0);
  const levels = m.grounds.filter((g) => g.eroded.length > 0 || g.nearDoors.length > 0).map((ground, k) =>
    ({ level: ground.level, ...stripsOf(ground, onLevel(site, solid, ground.level), { radius: m.radius, doorRadius: m.doorRadius, line, high: HIGH }, before?.[k] ?? null) }));
  const map = assemble(site, { options, found: levels.flatMap(({ level, strips }) => stripFloors(strips).map((floor) => ({ level, floor }))), ...m }, true);
  strips.set(map, levels.map((l) => l.strips));
  let now = 0, then = 0;
  const shared = levels.flatMap(({ level, common, strips }, k) => {
    const first = { now, then };
    now += strips.pieces; then += before?.[k]?.pieces ?? 0;
    return common ? [{ level, common, first }] : [];
  });
  if (earlier && shared.length === levels.length) noteSince(map, earlier, shared);
  return map;
}

type Found = { readonly level: number; readonly floor: Floor };
type Parts<F extends Found> = Measures & { readonly options: WalkOptions; readonly found: readonly F[] };
type Joined = { readonly index: number; readonly component: number; readonly exits: readonly string[] };

function assemble<F extends Found>(site: Site, { options, grounds, found, walker, radius: wide, doorRadius }: Parts<F>, coarse: boolean) {
  const radius = Math.min(wide, doorRadius);
  const parent = found.map((_, i) => i);
  const root = (i: number): number => { let k = i; while (parent[k] !== undefined && parent[k] !== k) k = parent[k] ?? k; return k; };
  const at = (p: Point, level: number): number => found.findIndex((f) => f.level === level && f.floor.has(p));
  for (const [a, b] of levelLinks(site, walker)) {
    const inside = (g: typeof a): number => at([g.at[0] + g.inward[0] * (radius + 1), g.at[1] + g.inward[1] * (radius + 1)], levelOf(site, g.room));
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
  const pieces = found.map((f, index): F & Joined => ({ ...f, index, component: root(index), exits: [...(byRoot.get(root(index)) ?? [])].sort() }));
  return {
    options, coarse, quick: null, pieces, grounds, exits: exits.map((e) => e.id),
    reaches: (target: Point | Polygon, within: number, level?: number) => pieces.filter((p) => (level === undefined || p.level === level) &&
      (isPoint(target) ? p.floor.within(target, within) : p.floor.meets(target, within))),
  };
}

/** Spots for the middle of a wide walker lie so far apart, mm. */
const SPOT = 500;
const spotsOf = new WeakMap<Ground, readonly Point[]>();

/** Spots of a ground, one or more to each piece of it. */
function groundSpots(g: Ground): readonly Point[] {
  const spots = spotsOf.get(g) ?? g.eroded.flatMap((piece): readonly Point[] => {
    const { minX, minY, maxX, maxY } = piece.box, across = Math.floor((maxX - minX) / SPOT), down = Math.floor((maxY - minY) / SPOT);
    return Array.from({ length: across * down }, (_, k): Point => [minX + ((k % across) + 0.5) * SPOT, minY + (Math.floor(k / across) + 0.5) * SPOT]).filter((p) => pieceContains(piece, p));
  });
  spotsOf.set(g, spots);
  return spots;
}

/** For some levels a spot on which the middle of a walker may be, whether or not he gets there; levels without one that was found are left out. */
export function wideSpots(site: Site, scene: Pick<Scene, "rooms" | "items">, options: WalkOptions, levels: ReadonlySet<number>): ReadonlyMap<number, Point> {
  const { items } = standOf(site, scene), m = measures(site, options);
  return new Map(m.grounds.filter((g) => levels.has(g.level)).flatMap((g): readonly (readonly [number, Point])[] => {
    const here = onLevel(site, items, g.level).map((i) => ({ shape: footprint(i), by: m.radius + (isSeatedTable(i) ? options.tableLine : 0) }));
    const spot = groundSpots(g).find((p) => here.every(({ shape, by }) => (shape.kind === "disc" ? distance(p, shape.at) - shape.radius : pointClearance(p, shape.points)) > by));
    return spot ? [[g.level, spot]] : [];
  }));
}

/** The point of a piece nearest to a point, or null where it is farther than `within`. */
export const nearestOnPiece = (p: FloorPiece, at: Point, within: number): Point | null => p.floor.near(at, within)[0] ?? null;
