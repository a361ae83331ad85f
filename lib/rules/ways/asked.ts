import type { Item } from "../../layout";
import type { FloorMap } from "./map";

type Find<T> = (item: Item, find: () => readonly T[]) => readonly T[];

/**
 * Holds what was found for the places of pieces on a map, by what was asked of it. What stands on a map is the same wherever the map is, so
 * that a piece is asked once for all parts of the day that share it.
 */
export function answersOn<T>(): (map: FloorMap, what: string) => Find<T> {
  const asked = new WeakMap<FloorMap, Map<string, WeakMap<Item, readonly T[]>>>();
  return (map, what) => {
    const of = asked.get(map) ?? new Map<string, WeakMap<Item, readonly T[]>>(), known = of.get(what) ?? new WeakMap<Item, readonly T[]>();
    asked.set(map, of);
    of.set(what, known);
    return (item, find) => {
      const found = known.get(item) ?? find();
      known.set(item, found);
      return found;
    };
  };
}
