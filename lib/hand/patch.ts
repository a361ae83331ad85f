import { canonical } from "./same";
import type { Scene } from "../layout";
import type { Patch, Standing } from "./types";

type OfScene = Patch["scenes"][number];
type Splice = OfScene["items"];

/** The shortest run in which two lists differ, between what they share at either end. */
function spliceOf(was: Scene["items"], now: Scene["items"]): Splice {
  const same = (a: number, b: number): boolean => was[a] === now[b] || canonical(was[a]) === canonical(now[b]);
  const shorter = Math.min(was.length, now.length);
  let from = 0, tail = 0;
  while (from < shorter && same(from, from)) from++;
  while (tail < shorter - from && same(was.length - 1 - tail, now.length - 1 - tail)) tail++;
  return { from, was: was.slice(from, was.length - tail), now: now.slice(from, now.length - tail) };
}

function betweenScenes(was: readonly Scene[], now: readonly Scene[], wet: boolean): readonly OfScene[] {
  return now.flatMap((n): readonly OfScene[] => {
    const w = was.find((s) => s.id === n.id);
    if (!w || w === n) return [];
    const items = spliceOf(w.items, n.items);
    const renumbered = canonical(w.numbers) !== canonical(n.numbers);
    if (items.was.length + items.now.length === 0 && w.seats === n.seats && !renumbered) return [];
    return [{ scene: n.id, wet, items, seats: [w.seats, n.seats], ...(renumbered ? { numbers: [w.numbers, n.numbers] } : {}) }];
  });
}

/** What has to be changed to make one state of the same day into the other. */
export function patchBetween(was: Standing, now: Standing): Patch {
  return {
    scenes: [...betweenScenes(was.layout.scenes, now.layout.scenes, false), ...betweenScenes(was.layout.wet?.scenes ?? [], now.layout.wet?.scenes ?? [], true)],
    ...(canonical(was.held) === canonical(now.held) ? {} : { held: [was.held, now.held] }),
  };
}

/** The patch that takes another back. */
export const inverse = (p: Patch): Patch => ({
  scenes: p.scenes.map((s) => ({
    ...s, items: { from: s.items.from, was: s.items.now, now: s.items.was }, seats: [s.seats[1], s.seats[0]],
    ...(s.numbers ? { numbers: [s.numbers[1], s.numbers[0]] } : {}),
  })),
  ...(p.held ? { held: [p.held[1], p.held[0]] } : {}),
});

function patched(scenes: readonly Scene[], patch: Patch, wet: boolean): readonly Scene[] {
  return scenes.map((s) => patch.scenes.filter((p) => p.wet === wet && p.scene === s.id).reduce((scene, p): Scene => ({
    ...scene,
    items: [...scene.items.slice(0, p.items.from), ...p.items.now, ...scene.items.slice(p.items.from + p.items.was.length)],
    seats: p.seats[1], numbers: p.numbers?.[1] ?? scene.numbers,
  }), s));
}

/** The state after a patch. Only what the patch names is another object. */
export function applyPatch(now: Standing, patch: Patch): Standing {
  const { layout } = now;
  const scenes = patched(layout.scenes, patch, false);
  const wet = layout.wet && { ...layout.wet, scenes: patched(layout.wet.scenes, patch, true) };
  return { layout: { ...layout, scenes, ...(wet ? { wet } : {}) }, held: patch.held?.[1] ?? now.held };
}

/** Whether nothing is changed by it. */
export const isEmpty = (p: Patch): boolean => p.scenes.length === 0 && p.held === undefined;

