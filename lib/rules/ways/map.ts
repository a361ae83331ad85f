import { boxesNear, boxOf, minus, subtract, union, unite, type Piece, type Point, type Polygon } from "../../geometry";
import type { Item, Scene } from "../../layout";
import type { Site } from "../../venue";
import { outlinedFloor, type Floor } from "./floor";
import { doorPoints, exitsOf, groundsOf, levelLinks, type Ground, type Walker } from "./ground";
import { grownFootprint } from "./grow";
import { isSeatedTable, isSolid, joinedRows, piecesOnFloor } from "./solids";
import { stripFloors, stripsOf } from "./strips";

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
  return remembered(exact, site, solids(site, scene), options, drawn);
}

/** How high the strips of a quick map are at most, mm. */
const HIGH = 40;

/** The same by strips of floor (`stripsOf`): several times as quick, and never freer than the exact map. */
export function quickMap(site: Site, scene: Pick<Scene, "rooms" | "items">, options: WalkOptions): FloorMap {
  return remembered(quick, site, solids(site, scene), options, cut);
}

type Solid = { readonly item: Item; readonly key: string };
const lists = new WeakMap<readonly Item[], WeakMap<Site, readonly Solid[]>>();

/** What stands in a walker's way, in one order whatever the order of the list, so that the same pieces give the same map. */
function solids(site: Site, scene: Pick<Scene, "rooms" | "items">): readonly Solid[] {
  const all = piecesOnFloor(site, scene);
  const of = lists.get(all) ?? new WeakMap<Site, readonly Solid[]>();
  lists.set(all, of);
  const known = of.get(site);
  if (known) return known;
  const list = joinedRows(all.filter(isSolid)).map((item) => ({ item, key: keyOf(item) })).sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  of.set(site, list);
  return list;
}

/** Maps remembered for one site: those of a day's parts, of a few days. */
const KEPT = 32;
const exact = new WeakMap<Site, Map<string, WalkMap>>(), quick = new WeakMap<Site, Map<string, FloorMap>>();

function remembered<M>(kept: WeakMap<Site, Map<string, M>>, site: Site, solid: readonly Solid[], options: WalkOptions, draw: (site: Site, solid: readonly Item[], options: WalkOptions) => M): M {
  const known = kept.get(site) ?? new Map<string, M>();
  kept.set(site, known);
  const key = `${options.width} ${options.tableLine} ${options.doorWidth ?? ""} ${options.walker ?? ""} ${solid.map((s) => s.key).join(" ")}`;
  const found = known.get(key);
  if (found) return found;
  const map = draw(site, solid.map((s) => s.item), options);
  // The oldest is let go: a search looks back at its last few layouts, not at all of them.
  if (known.size >= KEPT) for (const first of known.keys()) { known.delete(first); break; }
  known.set(key, map);
  return map;
}

/** All that a piece's footprint on a map follows from. */
const keyOf = ({ kind, room, shape, at, angle, seats }: Item): string =>
  `${kind}/${room}/${"diameter" in shape ? shape.diameter : `${shape.width}x${shape.depth}`}@${at[0]},${at[1]},${angle}${seats.length > 0 ? "s" : ""}`;

type Measures = { readonly walker: Walker; readonly radius: number; readonly doorRadius: number; readonly grounds: readonly Ground[] };
function measures(site: Site, options: WalkOptions): Measures {
  const walker = options.walker ?? "anyone", doorWidth = options.doorWidth ?? options.width;
  return { walker, radius: (options.width - 0.5) / 2, doorRadius: (doorWidth - 0.5) / 2, grounds: groundsOf(site, { width: options.width, doorWidth, walker }) };
}
const onLevel = (site: Site, solid: readonly Item[], level: number): readonly Item[] => solid.filter((i) => (site.rooms.get(i.room)?.room.level ?? 0) === level);

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

function cut(site: Site, solid: readonly Item[], options: WalkOptions): FloorMap {
  const m = measures(site, options);
  const line = (i: Item): number => (isSeatedTable(i) ? options.tableLine : 0);
  const found = m.grounds.flatMap((ground) => ground.eroded.length === 0 && ground.nearDoors.length === 0 ? []
    : stripFloors(stripsOf(ground, onLevel(site, solid, ground.level), { radius: m.radius, doorRadius: m.doorRadius, line, high: HIGH })).map((floor) => ({ level: ground.level, floor })));
  return assemble(site, { options, found, ...m }, true);
}

type Found = { readonly level: number; readonly floor: Floor };
type Parts<F extends Found> = Measures & { readonly options: WalkOptions; readonly found: readonly F[] };
type Joined = { readonly index: number; readonly component: number; readonly exits: readonly string[] };

function assemble<F extends Found>(site: Site, { options, grounds, found, walker, radius: wide, doorRadius }: Parts<F>, coarse: boolean) {
  const radius = Math.min(wide, doorRadius);
  const parent = found.map((_, i) => i);
  const root = (i: number): number => { let k = i; while (parent[k] !== undefined && parent[k] !== k) k = parent[k] ?? k; return k; };
  const at = (p: Point, level: number): number => found.findIndex((f) => f.level === level && f.floor.has(p));
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
  const pieces = found.map((f, index): F & Joined => ({ ...f, index, component: root(index), exits: [...(byRoot.get(root(index)) ?? [])].sort() }));
  return {
    options, coarse, pieces, grounds, exits: exits.map((e) => e.id),
    reaches: (target: Point | Polygon, within: number, level?: number) => pieces.filter((p) => (level === undefined || p.level === level) &&
      (isPoint(target) ? p.floor.within(target, within) : p.floor.meets(target, within))),
  };
}

/** The point of a piece nearest to a point, or null where it is farther than `within`. */
export const nearestOnPiece = (p: FloorPiece, at: Point, within: number): Point | null => p.floor.near(at, within)[0] ?? null;
