import type { z } from "zod";
import type { Item, Layout, SceneId } from "../layout";
import type { additionSchema, editSchema, entrySchema, patchSchema } from "./schema";

/** What somebody does to a plan, in the venue's frame: whole millimetres, degrees clockwise. */
export type Edit = z.output<typeof editSchema>;
/** Where a piece that is added comes from. */
export type Addition = z.output<typeof additionSchema>;
/** What changed between two states of the work, so that either can be made from the other, byte for byte. */
export type Patch = z.output<typeof patchSchema>;
/** One deed with its patch. */
export type Entry = z.output<typeof entrySchema>;

/** A plan being worked on: as it stands, what is held fixed, what was done, and how much of that stands done. */
export type Work = {
  readonly layout: Layout;
  readonly held: readonly string[];
  readonly entries: readonly Entry[];
  /** Entries before this index are done; those from it on were undone and can be done again. */
  readonly done: number;
};
export type Standing = Pick<Work, "layout" | "held">;

/** Why a deed cannot be done. */
export type EditFault =
  | { readonly code: "no-such-piece" }
  /** The venue never moves it. */
  | { readonly code: "fixed"; readonly item: Item }
  /** Held by hand: let it go first. */
  | { readonly code: "held"; readonly item: Item }
  | { readonly code: "no-such-room" }
  | { readonly code: "none-left" }
  /** No free floor of the room takes it. */
  | { readonly code: "no-floor" }
  | { readonly code: "places"; readonly most: number }
  /** Two walls that face each other, or a wall that is not there. */
  | { readonly code: "walls" }
  | { readonly code: "same" };

export type { SceneId };
