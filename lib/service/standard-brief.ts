import { briefSchema, type Brief } from "../brief";
import type { Layout } from "../layout";
import type { Venue } from "../venue";

/** The most guests that a layout has places for, in any part of the day. */
export const mostSeats = (layout: Layout): number => Math.max(1, ...layout.scenes.map((scene) => scene.seats));

/** The answers that a venue's own layout is worked out from: so many guests, everything else as it is taken where nothing is said. */
export function standardBrief(venue: Venue, { guests, pack = venue.packages[0]?.id ?? "" }: { readonly guests: number; readonly pack?: string }): Brief {
  // A day that no season and no late charge hangs on: the layout is nobody's yet.
  return briefSchema.parse({ format: "marquetry.brief/1", package: pack, date: "2000-01-01", guests: { adults: Math.min(guests, 5_000) } });
}
