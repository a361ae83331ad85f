import type { Draft, DraftFacts, FormValues, StepId } from "@/lib/brief/draft";
import type { Drawing } from "@/lib/drawing";
import type { Capacity } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import type { Language } from "@/lib/words/pages/language";
import type { EffectView } from "../effect";

/** What the worker must know before it is asked anything. */
export type LiveFacts = { readonly venue: Venue; readonly draft: Draft; readonly capacity: Capacity | null; readonly booking: DraftFacts; readonly language: Language };

export type ToWorker =
  | { readonly kind: "facts"; readonly facts: LiveFacts }
  | { readonly kind: "ask"; readonly ask: number; readonly step: StepId; readonly values: FormValues; readonly width: number }
  /** The answers as they are saved. */
  | { readonly kind: "draw"; readonly ask: number; readonly width: number };

export const isFacts = (x: unknown): x is LiveFacts => typeof x === "object" && x !== null && "venue" in x && "draft" in x;

export type LivePlan = { readonly drawing: Drawing; readonly idPrefix: string };
export type FromWorker =
  | { readonly kind: "progress"; readonly ask: number; readonly done: number; readonly of: number }
  /** `done` false: sentence and measure are there already, the plan is still being laid. */
  | { readonly kind: "effect"; readonly ask: number; readonly done: boolean; readonly view: EffectView; readonly plan: LivePlan | null }
  /** The answers cannot be read as they stand; what was shown stays. */
  | { readonly kind: "unread"; readonly ask: number };
