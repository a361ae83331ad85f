import { distance } from "../../geometry";
import { widthOf, type Item, type Scene } from "../../layout";
import type { Site } from "../../venue";
import type { FloorMap, WalkMap } from "./map";
import { chairsOf, isSolid, joinedRows, piecesOnFloor, TOUCHING } from "./solids";

/** What stands in a walker's way: one object wherever the same pieces stand at one site, so that all that was drawn of it is found again. */
export type Stand = {
  readonly items: readonly Item[]; readonly exact: Map<string, WalkMap>; readonly quick: Map<string, FloorMap>;
  /** The last stand before it that differs by a few pieces alone. */
  readonly near: () => Stand | null;
};
const lists = new WeakMap<readonly Item[], WeakMap<Site, Stand>>();
const known = new WeakMap<Site, Map<string, Stand>>();
/** Stands of pieces remembered for one site: those of a day's parts, of a few days. */
const KEPT = 24;
/** By so many pieces a stand differs from another at the most for that to be near. */
const FEW = 6;

/** Pieces in one order whatever the order of the list, so that the same pieces give the same map. */
export function standOf(site: Site, scene: Pick<Scene, "rooms" | "items">): Stand {
  const all = piecesOnFloor(site, scene);
  const of = lists.get(all) ?? new WeakMap<Site, Stand>();
  lists.set(all, of);
  const before = of.get(site);
  if (before) return before;
  const sorted = joinedRows(all.filter(isSolid)).map((item) => ({ item, key: keyOf(item) })).sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  const alike = known.get(site) ?? new Map<string, Stand>(), name = sorted.map((s) => s.key).join(" ");
  known.set(site, alike);
  const stand = alike.get(name) ?? makeStand(sorted.map((s) => s.item), alike);
  // The oldest is let go: a search looks back at its last few layouts, not at all of them.
  if (!alike.has(name) && alike.size >= KEPT) for (const first of alike.keys()) { alike.delete(first); break; }
  alike.set(name, stand);
  of.set(site, stand);
  return stand;
}

function makeStand(items: readonly Item[], others: ReadonlyMap<string, Stand>): Stand {
  const has = new Set(items), close = [...others].reverse().find(([, o]) => isNear(has, o.items))?.[0];
  // Looked up by its name: else each would hold the one before it for as long as it lives.
  return { items, exact: new Map(), quick: new Map(), near: () => (close === undefined ? null : (others.get(close) ?? null)) };
}

function isNear(has: ReadonlySet<Item>, items: readonly Item[]): boolean {
  let common = 0, other = 0;
  for (const i of items) if (has.has(i)) common++; else if (++other > FEW) return false;
  return has.size - common <= FEW;
}

/** All that a piece's footprint on a map follows from; and of a run, how its chairs stand where some stand in one another. */
function keyOf(item: Item): string {
  const key = keys.get(item) ?? [written(item), ...pushed(chairsOf(item))].join("+");
  keys.set(item, key);
  return key;
}
const keys = new WeakMap<Item, string>();
const written = ({ kind, room, shape, at, angle, seats }: Item): string =>
  `${kind}/${room}/${"diameter" in shape ? shape.diameter : `${shape.width}x${shape.depth}`}@${at[0]},${at[1]},${angle}${seats.length > 0 ? "s" : ""}`;
const pushed = (run: readonly Item[]): readonly string[] =>
  run.some((i, k) => { const left = run[k - 1]; return left !== undefined && distance(left.at, i.at) < widthOf(i.shape) - TOUCHING; }) ? run.map(written) : [];
