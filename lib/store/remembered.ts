import type { Handle } from "./store";

type Read<T> = (db: Handle, key: string) => Promise<T | undefined>;

/**
 * Reads rows that never change once they are written, and holds the `most` last used of each database: a long answer is then neither
 * fetched nor parsed for every page that shows a part of it. What is not there yet is asked for again.
 */
export function remembered<T>(most: number, read: Read<T>): Read<T> {
  const held = new WeakMap<Handle, Map<string, T>>();
  return async (db, key) => {
    const mine = held.get(db) ?? new Map<string, T>();
    held.set(db, mine);
    const found = mine.get(key) ?? (await read(db, key));
    if (found === undefined) return undefined;
    // A map keeps the order of what was put in: the oldest stands first.
    mine.delete(key);
    mine.set(key, found);
    for (const old of mine.keys()) if (mine.size > most) mine.delete(old);
    return found;
  };
}
