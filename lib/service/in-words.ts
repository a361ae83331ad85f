import type { Layout } from "../layout";
import type { Venue } from "../venue";
import { layoutIn } from "../words/layout";
import { mannerOf, sayIn, type Chosen } from "../words/pages";

/** How a drawing is to be worded, and whether its wet-weather twin is meant. Without `words`: as the venue itself speaks. */
export type InWords = { readonly words?: Chosen; readonly wet?: boolean };
type Drawn = { readonly layout: Layout; readonly venue: Venue };

/** A layout and its venue in a reader's words. */
export function inWords({ layout, venue }: Drawn, { words, wet = false }: InWords): Drawn {
  const meant: Layout = wet && layout.wet ? { ...layout, scenes: layout.wet.scenes, turnovers: layout.wet.turnovers } : layout;
  if (!words) return { layout: meant, venue };
  const { language, locale, lengths } = mannerOf(venue, words);
  const spoken = { ...venue, locale, lengths };
  return { layout: layoutIn(meant, { venue: spoken, say: sayIn(language) }), venue: spoken };
}
