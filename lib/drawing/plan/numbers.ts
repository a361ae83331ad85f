import { distance, type Point } from "../../geometry";
import { isRound, type Item, type Scene } from "../../layout";

/** The figure on a table's medallion, by item: that of its label where it ends in one, else its place in the scene's numbering. */
export function numbersOf(scene: Scene): ReadonlyMap<string, string> {
  const out = new Map<string, string>();
  scene.numbers.forEach((id, i) => {
    const item = scene.items.find((it) => it.id === id);
    const written = item && /(\d+)\s*$/.exec(item.label)?.[1];
    out.set(id, written ?? String(i + 1));
  });
  // Tables that are joined bear the label of the one that is numbered.
  const byLabel = new Map(scene.items.flatMap((i) => { const n = out.get(i.id); return n === undefined ? [] : [[`${i.room}/${i.label}`, n] as const]; }));
  for (const i of scene.items) {
    const n = byLabel.get(`${i.room}/${i.label}`);
    if (n !== undefined && i.kind === "table" && !out.has(i.id)) out.set(i.id, n);
  }
  return out;
}

export type Run = { readonly number: string; readonly items: readonly Item[]; /** Where its one medallion goes. */ readonly at: Point };

/** Tables that share a number are one run, numbered once: at its middle, if that lies on one of them, else on the first. */
export function runsOf(scene: Scene, numbers: ReadonlyMap<string, string>): readonly Run[] {
  const groups = new Map<string, Item[]>();
  for (const item of scene.items) {
    const n = numbers.get(item.id);
    if (n !== undefined) groups.set(n, [...(groups.get(n) ?? []), item]);
  }
  return [...groups].map(([number, items]) => {
    const mean: Point = [items.reduce((s, i) => s + i.at[0], 0) / items.length, items.reduce((s, i) => s + i.at[1], 0) / items.length];
    const near = items.reduce((a, b) => (distance(b.at, mean) < distance(a.at, mean) ? b : a));
    const reach = isRound(near.shape) ? near.shape.diameter / 2 : Math.min(near.shape.width, near.shape.depth);
    return { number, items, at: distance(near.at, mean) <= reach + 700 && items.length > 1 ? mean : near.at };
  });
}
