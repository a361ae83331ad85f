import type { Item, Scene } from "../../layout";
import { contextOf, judge } from "../../rules";
import type { Place } from "./place";

/** Rules that judge where things stand; stock, loads and the brief are the ceiling's and the caller's. */
const GEOMETRY = ["inRoom", "builtIn", "overlap", "doorClear", "seats", "tablePlaces", "gaps", "ends", "rowClear", "ways"] as const;
/** Rounds of leaving out what breaks a rule: each takes at least one item out. */
const ROUNDS = 12;

/**
 * The items that are left once those with a `must` finding are gone: of two that clash the one that clashes more goes first.
 */
export function cleanOf(place: Place, scene: "meal" | "ceremony", items: readonly Item[]): readonly Item[] {
  let kept = items;
  for (let k = 0; k < ROUNDS && kept.length > 0; k++) {
    const bad = faulty(place, scene, kept);
    if (bad.size === 0) return kept;
    const worst = Math.max(...bad.values());
    // All that stand apart as badly go at once; a lone clash costs one of the two.
    const out = new Set([...bad].filter(([, n]) => n === worst).map(([id]) => id));
    const first = [...out][0];
    const clash = worst === 1 && out.size > 1;
    kept = kept.filter((i) => (clash ? i.id !== first : !out.has(i.id)));
  }
  const bad = faulty(place, scene, kept);
  return kept.filter((i) => !bad.has(i.id));
}

function faulty(place: Place, id: "meal" | "ceremony", items: readonly Item[]): ReadonlyMap<string, number> {
  const own = new Set(items.map((i) => i.id));
  const scene: Scene = {
    id, title: id, rooms: [place.room.id], drapes: place.drape === null ? [] : [place.drape], items: [...items, ...place.standing],
    seats: items.reduce((n, i) => n + i.seats.length, 0), numbers: [],
  };
  const context = contextOf(place.venue, { id: "fit", title: "", why: [], scenes: [scene], turnovers: [], findings: [] });
  const view = context.scenes[0];
  const count = new Map<string, number>();
  if (!view) return count;
  for (const f of judge(context, view, GEOMETRY)) {
    if (f.level !== "must") continue;
    for (const i of f.items) if (own.has(i)) count.set(i, (count.get(i) ?? 0) + 1);
  }
  return count;
}
