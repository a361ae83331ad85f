import type { Brief } from "../brief";
import type { Layout, SceneId } from "../layout";
import type { Venue } from "../venue";
import { additionsOf, type Offer } from "./additions";
import { lastDone, nextUndone } from "./log";
import type { Work } from "./types";

/** A layout under the hand, as pages show it. */
export type HandView = {
  readonly reference: string; readonly venue: Venue; readonly brief: Brief;
  readonly layout: Layout; readonly held: readonly string[];
  /** The version before: what was and what is now are told against it. */
  readonly was: Pick<Layout, "scenes">;
  /** Names this state; a deed that names an older one is refused as stale. */
  readonly seen: string;
  /** What undo and redo would do, in words. */
  readonly undo?: string; readonly redo?: string;
  /** Everything done so far, oldest first. */
  readonly done: readonly string[];
  /** What can be added, by part of the day. */
  readonly offers: Readonly<Partial<Record<SceneId, readonly Offer[]>>>;
  /** It is what speaks for the booking already. */
  readonly taken: boolean;
  /** The number of the revision that is adjusted at the desk. */
  readonly sent?: number;
};

type About = Pick<HandView, "reference" | "venue" | "brief" | "was" | "seen" | "taken" | "sent"> & { readonly work: Work };

export function viewOfWork({ work, ...about }: About): HandView {
  const { layout, held, entries, done } = work;
  const last = lastDone(work), next = nextUndone(work);
  return {
    ...about, layout, held,
    ...(last ? { undo: last.said } : {}), ...(next ? { redo: next.said } : {}),
    done: entries.slice(0, done).map((e) => e.said),
    offers: Object.fromEntries(layout.scenes.map((scene) => [scene.id, additionsOf(about.venue, { layout, scene, brought: about.brief.brought ?? [] })])),
  };
}
