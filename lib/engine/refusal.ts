import type { Finding } from "../layout";
import type { Venue } from "../venue";
import { findingText } from "../words/findings";

/** A finding of the engine's own, which belongs to no layout, with its British sentence: why nothing can be, or what was not found. */
export const refusal = (venue: Venue, f: Omit<Finding, "text">): Finding => ({ ...f, text: findingText(f, { venue: { ...venue, locale: "en-GB" }, layout: { scenes: [] } }) });
