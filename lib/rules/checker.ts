import type { Brief } from "../brief";
import type { Finding, Item, Layout, SceneId } from "../layout";
import type { Venue } from "../venue";
import { judgeDay, judgeScene, told } from "./check";
import { contextOf, type Context, type Raw, type SceneView } from "./context";

/** A layout that has been checked and is being changed by hand. Every answer equals that of `check` on the same day. */
export type Checker = {
  readonly layout: Layout;
  readonly findings: readonly Finding[];
  /**
   * The findings if one piece of a part of the day stood as given, with its seats where they would then be; everything else as it is.
   * For a piece that is being dragged: nothing is kept of it. A piece that the part does not have is added.
   */
  readonly move: (scene: SceneId, item: Item) => readonly Finding[];
  /** The checker of a later layout of the same venue and brief. Parts of the day that are the same objects are not judged again. */
  readonly next: (layout: Layout) => Checker;
};

/** A checker for a venue, the couple's answers (or null) and a layout. The first look is a whole check; what follows costs what has changed. */
export const checker = (venue: Venue, brief: Brief | null, layout: Layout): Checker => after(contextOf(venue, layout, brief ?? undefined), new Map());

type Judged = ReadonlyMap<SceneView, readonly Raw[]>;

function after(c: Context, known: Judged): Checker {
  const judged = new Map(c.scenes.map((v) => [v, known.get(v) ?? judgeScene(c, v)]));
  const follow = (layout: Layout): Checker => after(contextOf(c.venue, layout, c.brief, c), judged);
  return {
    layout: c.layout,
    findings: told(c, [...[...judged.values()].flat(), ...judgeDay(c)]),
    move: (scene, item) => follow(withPiece(c.layout, scene, item)).findings,
    next: follow,
  };
}

/** The layout with one piece of a part of the day as given. */
function withPiece(layout: Layout, scene: SceneId, item: Item): Layout {
  return {
    ...layout,
    scenes: layout.scenes.map((s) => {
      if (s.id !== scene) return s;
      const there = s.items.some((i) => i.id === item.id);
      return { ...s, items: there ? s.items.map((i) => (i.id === item.id ? item : i)) : [...s.items, item] };
    }),
  };
}
