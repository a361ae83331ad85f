import type { Brief } from "../../brief";
import type { Layout, Scene } from "../../layout";
import { contextOf, DAY_RULES, SCENE_RULES, type Raw, type SceneView } from "../../rules";
import type { Venue } from "../../venue";

/** What a late change works with. `fixed`: pieces that stay exactly where they are. */
export type Bench = {
  readonly venue: Venue;
  readonly brief: Brief;
  readonly fixed: ReadonlySet<string>;
  /** Must findings of a part of the day, kept by the part: scenes are never changed once made. */
  readonly known: WeakMap<Scene, Judged>;
  /** Judgements left before the search gives up: effort is budgeted in steps. */
  readonly budget: { left: number };
};
type Judged = { readonly quick: readonly Raw[]; whole: readonly Raw[] | null; readonly view: SceneView };

/** Rules that need no walk through the free floor. */
const QUICK = ["ids", "rooms", "inRoom", "builtIn", "overlap", "doorClear", "seats", "tablePlaces", "gaps", "ends", "rowClear", "stock", "standing", "places", "centreAisle"] as const;
const SLOW: readonly string[] = Object.keys(SCENE_RULES).filter((n) => !QUICK.some((q) => q === n));
/** Rules over the whole day that a piece's place decides; turnovers are worked out anew at the end. */
const DAY = ["scenesAsked", "asked", "danceFloor"] as const;

export const benchOf = (venue: Venue, brief: Brief, fixed: readonly string[], budget: number): Bench =>
  ({ venue, brief, fixed: new Set(fixed), known: new WeakMap(), budget: { left: budget } });

const musts = (list: readonly Raw[]): readonly Raw[] => list.filter((f) => f.level === "must");

function judged(b: Bench, layout: Layout, scene: Scene): Judged {
  const known = b.known.get(scene);
  if (known) return known;
  const c = contextOf(b.venue, { ...layout, scenes: [scene] }, b.brief);
  const view = c.scenes[0];
  if (!view) throw new Error("a layout of one part of the day has that part");
  const one: Judged = { quick: musts(QUICK.flatMap((n) => SCENE_RULES[n]?.(view, c) ?? [])), whole: null, view };
  b.known.set(scene, one);
  return one;
}

function whole(b: Bench, layout: Layout, scene: Scene): readonly Raw[] {
  const one = judged(b, layout, scene);
  if (one.whole) return one.whole;
  b.budget.left--;
  const c = contextOf(b.venue, { ...layout, scenes: [scene] }, b.brief);
  one.whole = [...one.quick, ...musts(SLOW.flatMap((n) => SCENE_RULES[n]?.(one.view, c) ?? []))];
  return one.whole;
}

/** Every must of the day but those about turnovers. */
export function mustsOf(b: Bench, layout: Layout): readonly Raw[] {
  const c = contextOf(b.venue, { ...layout, scenes: [] }, b.brief);
  return [
    ...layout.scenes.flatMap((s) => whole(b, layout, s)),
    ...musts(DAY.flatMap((n) => DAY_RULES[n]?.({ ...c, layout, scenes: layout.scenes.map((s) => judged(b, layout, s).view) }) ?? [])),
  ];
}

/** What tells one finding from another, its measure apart. */
export const keyOf = (f: Raw): string =>
  JSON.stringify([f.code, f.scene, [...f.items].sort(), f.data?.["door"], f.data?.["obstacle"], f.data?.["part"], f.data?.["what"]]);

/** Whether a change brings no must that was not there, the quick rules first; places too few are not its fault. */
export function addsNone(b: Bench, before: Layout, after: Layout, without: (f: Raw) => boolean = () => false): boolean {
  const old = new Set(before.scenes);
  const fresh = after.scenes.filter((s) => !old.has(s));
  const were = (pick: (s: Scene) => readonly Raw[]): ReadonlyMap<string, number> => new Map(before.scenes.flatMap(pick).map((f) => [keyOf(f), f.measured ?? 0]));
  const quickWere = were((s) => judged(b, before, s).quick);
  // A finding that was there already may stay, and may shrink; a distance short by more is a new fault.
  const isNew = (list: ReadonlyMap<string, number>) => (f: Raw): boolean => without(f) || !list.has(keyOf(f));
  if (fresh.some((s) => judged(b, after, s).quick.some(isNew(quickWere)))) return false;
  const wholeWere = were((s) => whole(b, before, s));
  return !fresh.some((s) => whole(b, after, s).some(isNew(wholeWere)));
}
