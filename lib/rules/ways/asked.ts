import type { Item } from "../../layout";
import type { FloorMap } from "./map";
import { asBefore } from "./since";

/** Where an answer for the places of a piece is decided: floor of a level, and what stands there, so many mm about the places. */
type Near = { readonly level: number; readonly reach: number };
type Find<T> = (item: Item, near: Near | null, find: () => readonly T[]) => readonly T[];
type Known<T> = WeakMap<Item, readonly T[]>;

/**
 * Holds what was found for the places of pieces on a map, by what was asked of it. What stands on a map is the same wherever the map is, so
 * that a piece is asked once for all parts of the day that share it; and where a map is as an earlier one about a piece, not even that.
 */
export function answersOn<T>(): (map: FloorMap, what: string) => Find<T> {
  const asked = new WeakMap<FloorMap, Map<string, Known<T>>>();
  return (map, what) => {
    const of = asked.get(map) ?? new Map<string, Known<T>>(), known: Known<T> = of.get(what) ?? new WeakMap<Item, readonly T[]>();
    asked.set(map, of);
    of.set(what, known);
    return (item, near, find) => {
      const before = known.has(item) || !near ? null : asBefore(map, near.level, about(item, near.reach));
      const found = known.get(item) ?? (before ? asked.get(before)?.get(what)?.get(item) : undefined) ?? find();
      known.set(item, found);
      return found;
    };
  };
}

/** Heights between which the places of a piece lie, with some floor about them, mm. */
function about({ at, seats }: Item, reach: number): { readonly minY: number; readonly maxY: number } {
  let minY = at[1], maxY = at[1];
  for (const { y } of seats) { if (y < minY) minY = y; if (y > maxY) maxY = y; }
  return { minY: minY - reach, maxY: maxY + reach };
}
