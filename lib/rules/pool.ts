import type { Item, Scene, Seat } from "../layout";

/** Pieces seen so far, by their names: a name may stand for a few, one in each part of the day. What joins it stands apart from what it began with. */
export type Pool = { readonly begun: Named; readonly joined: Map<string, Item[]> };
type Named = ReadonlyMap<string, readonly Item[]>;

const kept = new WeakMap<object, Named>();

/** The pieces of parts of a day that have been looked at. */
export function poolOf(seen: readonly { readonly scene: Scene }[]): Pool {
  const begun = kept.get(seen) ?? named(seen);
  kept.set(seen, begun);
  return { begun, joined: new Map() };
}

function named(seen: readonly { readonly scene: Scene }[]): Named {
  const of = new Map<string, Item[]>();
  for (const { scene } of seen) for (const i of scene.items) {
    const list = of.get(i.id);
    if (!list) of.set(i.id, [i]); else if (!list.includes(i)) list.push(i);
  }
  return of;
}

/** A part of the day whose pieces are those of the pool wherever one is the same in all that is written of it; the others join the pool. */
export function withKnown(pool: Pool, scene: Scene): Scene {
  const items = scene.items.map((i) => known(pool, i));
  return items.every((i, k) => i === scene.items[k]) ? scene : { ...scene, items };
}

/** What a piece was last found to be the same as: pieces are never changed once made. */
const twins = new WeakMap<Item, Item>();

function known({ begun, joined }: Pool, item: Item): Item {
  const before = begun.get(item.id), since = joined.get(item.id), twin = twins.get(item);
  if (before?.includes(item) || since?.includes(item)) return item;
  if (twin && before?.includes(twin)) return twin;
  const alike = before?.find((i) => same(i, item)) ?? since?.find((i) => same(i, item));
  if (alike) { twins.set(item, alike); return alike; }
  if (since) since.push(item); else joined.set(item.id, [item]);
  return item;
}

function same(a: Item, b: Item): boolean {
  // What differs most often is asked first.
  if (a.at[0] !== b.at[0] || a.at[1] !== b.at[1] || a.angle !== b.angle || a.room !== b.room || a.seats.length !== b.seats.length) return false;
  for (let k = 0; k < a.seats.length; k++) if (!sameSeat(a.seats[k], b.seats[k])) return false;
  return sameFields(a, b) && sameFields(b, a);
}

/** True where every field of a piece but its places is written alike in another. */
function sameFields(a: Item, b: Item): boolean {
  for (const name of Object.keys(a) as (keyof Item)[]) {
    const mine: unknown = a[name], theirs: unknown = b[name];
    if (name !== "seats" && mine !== theirs && !(typeof mine === "object" && JSON.stringify(mine) === JSON.stringify(theirs))) return false;
  }
  return true;
}

function sameSeat(a: Seat | undefined, b: Seat | undefined): boolean {
  return a !== undefined && b !== undefined && a.x === b.x && a.y === b.y && a.facing === b.facing && a.place === b.place;
}
