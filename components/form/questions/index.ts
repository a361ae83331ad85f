import type { StepId } from "@/lib/brief/draft";
import type { Asked, Asking } from "./ask";
import { askCeremony } from "./ceremony";
import { askDisplays, askExtras } from "./displays";
import { askGuests } from "./guests";
import { askMeal } from "./meal";
import { askMusic } from "./music";

export type { Asked, Asking } from "./ask";

/** The questions of each step that asks something. */
export const QUESTIONS: Readonly<Record<StepId, (asking: Asking) => Asked>> = {
  guests: askGuests, ceremony: askCeremony, meal: askMeal, music: askMusic, displays: askDisplays, extras: askExtras,
};
