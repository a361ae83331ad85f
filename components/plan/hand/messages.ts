import type { Brief } from "@/lib/brief";
import type { Drawing } from "@/lib/drawing";
import type { Edit } from "@/lib/hand";
import type { Layout, SceneId } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import type { Told } from "./told";

export type ToHand =
  | { readonly kind: "about"; readonly venue: Venue; readonly brief: Brief; readonly was: Pick<Layout, "scenes"> }
  /** Draws a part of the day; `settle`: what follows from where things stand is worked out first. */
  | { readonly kind: "show"; readonly ask: number; readonly layout: Layout; readonly held: readonly string[]; readonly scene: SceneId; readonly width: number; readonly changes: boolean; readonly settle: boolean }
  /** What the check would say if this were done to what was shown last. */
  | { readonly kind: "try"; readonly ask: number; readonly edit: Edit };

export type FromHand =
  | { readonly kind: "ready" }
  | { readonly kind: "shown"; readonly ask: number; readonly drawing: Drawing; readonly told: Told }
  | { readonly kind: "tried"; readonly ask: number; readonly musts: number; readonly shoulds: number; /** The weightiest thing found about the piece, in words. */ readonly first: string | null };
