import { movedTo as moved, standsAs, type Item, type Layout, type Scene, type SceneId } from "../../layout";
import { guestSeats } from "../../rules";
import { rowPieceIn } from "../rows";

export { moved, standsAs };

const withItems = (scene: Scene, items: readonly Item[]): Scene => ({ ...scene, items, seats: guestSeats(items), numbers: scene.numbers.filter((id) => items.some((i) => i.id === id)) });

/** Changes a piece wherever in the day it stands as it stands here; null takes it away. Parts of the day without it stay the same objects. */
export function mapPiece(layout: Layout, was: Item, change: (item: Item) => Item | null): Layout {
  return {
    ...layout,
    scenes: layout.scenes.map((s) => s.items.some((i) => standsAs(i, was))
      ? withItems(s, s.items.flatMap((i) => { const next = standsAs(i, was) ? change(i) : i; return next ? [next] : []; })) : s),
  };
}

/** Adds a piece to some parts of the day. */
export function addPiece(layout: Layout, item: Item, scenes: ReadonlySet<SceneId>): Layout {
  return { ...layout, scenes: layout.scenes.map((s) => (scenes.has(s.id) ? withItems(s, [...s.items, rowPieceIn(s.id, item)]) : s)) };
}

/** Places counted anew in every part of the day. */
export const recounted = (layout: Layout): Layout => ({ ...layout, scenes: layout.scenes.map((s) => (s.seats === guestSeats(s.items) ? s : { ...s, seats: guestSeats(s.items) })) });

export const sceneOf = (layout: Layout, id: SceneId): Scene | undefined => layout.scenes.find((s) => s.id === id);

/** A name that no piece of the day bears yet. */
export function freshId(layout: Layout, stem: string): string {
  const taken = new Set(layout.scenes.flatMap((s) => s.items.map((i) => i.id)));
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!taken.has(id)) return id;
  }
}

const spot = (i: Item): string => JSON.stringify([i.room, i.at, i.angle, i.shape]);
const stands = (layout: Layout): ReadonlyMap<string, string> => new Map(layout.scenes.flatMap((s) => s.items.map((i) => [`${s.id} ${i.id}`, spot(i)] as const)));

/** Pieces that stand elsewhere, are new, or are gone, in any part of the day; a table laid for more or fewer has not moved. */
export function movedIds(before: Layout, after: Layout): readonly string[] {
  const [a, b] = [stands(before), stands(after)];
  const keys = [...new Set([...a.keys(), ...b.keys()])].filter((k) => a.get(k) !== b.get(k));
  return [...new Set(keys.map((k) => k.slice(k.indexOf(" ") + 1)))].sort();
}

const places = (layout: Layout): ReadonlyMap<string, string> => new Map(layout.scenes.flatMap((s) => s.items.map((i) => [`${s.id} ${i.id}`, `${i.seats.length} ${i.seats.filter((p) => p.place === "wheelchair").length}`] as const)));

/** Tables that stand where they stood and are laid for more, for fewer, or for a wheelchair. */
export function relaidIds(before: Layout, after: Layout): readonly string[] {
  const gone = new Set(movedIds(before, after)), [a, b] = [places(before), places(after)];
  return [...new Set([...a].filter(([k, n]) => b.has(k) && b.get(k) !== n).map(([k]) => k.slice(k.indexOf(" ") + 1)))].filter((id) => !gone.has(id)).sort();
}
