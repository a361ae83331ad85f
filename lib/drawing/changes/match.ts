import { distance } from "../../geometry";
import { isRound, type Item, type ItemShape, type Scene } from "../../layout";

/** A piece in two revisions; one side is missing where it was added or taken away. */
export type Pair = { readonly was?: Item; readonly now?: Item };

const sameShape = (a: ItemShape, b: ItemShape): boolean =>
  isRound(a) ? isRound(b) && a.diameter === b.diameter : !isRound(b) && a.width === b.width && a.depth === b.depth;
const key = (i: Item): string => `${i.kind}/${i.role ?? ""}/${JSON.stringify(i.from)}/${i.label.replace(/\d+\s*$/, "")}`;

/**
 * Which piece of one revision is which of the other. The same id and kind is the same piece; of what is left, pieces of one
 * sort are paired nearest first, so that a table that got another id has moved and was not taken away and brought again.
 * Chairs in rows are left out: they are counted.
 */
export function pairsOf(was: Pick<Scene, "items">, now: Pick<Scene, "items">): readonly Pair[] {
  const before = was.items.filter((i) => i.kind !== "chair"), after = now.items.filter((i) => i.kind !== "chair");
  const known = new Map(before.map((i) => [i.id, i]));
  const partner = new Map<Item, Item>();
  for (const n of after) {
    const w = known.get(n.id);
    if (w && w.kind === n.kind && (w.role ?? "") === (n.role ?? "")) partner.set(n, w);
  }
  const taken = new Set(partner.values());
  const loose = before.filter((i) => !taken.has(i));
  const near = after.filter((n) => !partner.has(n)).flatMap((n) => loose
    .filter((w) => key(w) === key(n) && sameShape(w.shape, n.shape))
    .map((w) => ({ w, n, far: distance(w.at, n.at) + (w.room === n.room ? 0 : 1e6) }))).sort((a, b) => a.far - b.far);
  for (const { w, n } of near) if (!partner.has(n) && !taken.has(w)) { partner.set(n, w); taken.add(w); }
  return [
    ...after.map((n): Pair => { const w = partner.get(n); return w ? { was: w, now: n } : { now: n }; }),
    ...before.filter((w) => !taken.has(w)).map((w): Pair => ({ was: w })),
  ];
}

/** Chairs in rows that stand in one revision only, by room. */
export function loneChairs(was: Pick<Scene, "items">, now: Pick<Scene, "items">): { readonly gone: readonly Item[]; readonly come: readonly Item[] } {
  const spot = (i: Item): string => `${i.room}/${i.at[0]}/${i.at[1]}/${i.angle}`;
  const rows = (s: Pick<Scene, "items">): readonly Item[] => s.items.filter((i) => i.kind === "chair");
  const before = new Set(rows(was).map(spot)), after = new Set(rows(now).map(spot));
  return { gone: rows(was).filter((i) => !after.has(spot(i))), come: rows(now).filter((i) => !before.has(spot(i))) };
}
