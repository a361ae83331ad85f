import { footprintPolygon, type Item } from "../../layout";
import { meets } from "../place";

/** A piece on its way: from where it stood, unless it comes from the store, to where it will stand. */
export type OnItsWay<T> = { readonly task: T; readonly stage: number; readonly old: Item | null; readonly now: Item };
export type Order<T> = {
  /** One after another, each to a spot that is free by then. */
  readonly steps: readonly OnItsWay<T>[];
  /** Pieces put aside with the clearing, since another must stand where they stood before they can go. */
  readonly aside: ReadonlySet<OnItsWay<T>>;
};

/** Whether a piece in its new place would stand on another in its old one. A floor is walked on, yet nothing is laid under a table. */
const blocks = (now: Item, old: Item): boolean => meets(footprintPolygon(now), footprintPolygon(old));

/**
 * An order that can be done: stage by stage, each piece set down only where nothing stands that is still to go. Where pieces wait for
 * one another in a ring, or for one of a later stage, the one in the way is put aside at the start. The order hangs on places alone, so
 * minutes never fall because an order changed.
 */
export function orderOf<T>(list: readonly OnItsWay<T>[]): Order<T> {
  const left = [...list].sort((a, b) => a.stage - b.stage);
  const steps: OnItsWay<T>[] = [];
  const aside = new Set<OnItsWay<T>>();
  while (left.length > 0) {
    const stage = left[0]?.stage;
    const inTheWay = (p: OnItsWay<T>): OnItsWay<T> | undefined => left.find((o) => o !== p && o.old !== null && !aside.has(o) && blocks(p.now, o.old));
    const k = left.findIndex((p) => p.stage === stage && inTheWay(p) === undefined);
    const next = k >= 0 ? left.splice(k, 1)[0] : undefined;
    if (next) { steps.push(next); continue; }
    const first = left[0], blocker = first && inTheWay(first);
    // Every piece of the stage is blocked by some other: one of them goes aside, and the search goes on.
    if (!blocker) break;
    aside.add(blocker);
  }
  return { steps, aside };
}

/** What stands on the floor after the clearing and after each step, pieces that stay among it. */
export function statesOf<T>(stay: readonly Item[], { steps, aside }: Order<T>): readonly (readonly Item[])[] {
  // A floor of several loads is one piece.
  const once = (list: readonly Item[]): readonly Item[] => list.filter((x, i) => list.findIndex((y) => y === x) === i);
  return [-1, ...steps.keys()].map((done) => once([
    ...stay, ...steps.flatMap((s, i) => (i <= done ? [s.now] : s.old !== null && !aside.has(s) ? [s.old] : [])),
  ]));
}
