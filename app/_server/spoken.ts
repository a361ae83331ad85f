import type { AdjustView, BookingView, Glance } from "@/lib/service";
import type { ArrangeResult, Layout } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { labelsIn, layoutIn, resultIn } from "@/lib/words/layout";
import type { Speech } from "./words";

/** The venue as this visitor reads it: its facts are its own, figures and lengths are written as the visitor wants them. */
export const venueIn = <V extends Pick<Venue, "locale" | "lengths">>(venue: V, { locale, lengths }: Pick<Speech, "locale" | "lengths">): V => ({ ...venue, locale, lengths });

/** A booking in the visitor's words. */
export function bookingIn(booking: BookingView, speech: Speech): BookingView {
  const venue = venueIn(booking.venue, speech);
  const said = (layout: Layout): Layout => layoutIn(layout, { venue, say: speech.say });
  return {
    ...booking, venue,
    chosen: booking.chosen && { ...booking.chosen, layout: said(booking.chosen.layout) },
    setByVenue: booking.setByVenue && { ...booking.setByVenue, layout: said(booking.setByVenue.layout) },
    revisions: booking.revisions.map((one) => {
      const layout = said({ ...one.layout, findings: [...one.findings] });
      return { ...one, layout, findings: layout.findings, pieces: one.pieces && labelsIn(one.pieces, one.layout, layout) };
    }),
  };
}

/** A layout under the couple's own hand in their words. Lengths stay the venue's, in which they are typed and read back. */
export function handIn(view: AdjustView, speech: Speech): AdjustView {
  const venue = { ...view.venue, locale: speech.locale }, how = { venue, say: speech.say };
  const layout = layoutIn(view.layout, how);
  // What the page is woken from names the same scenes once.
  return { ...view, venue, layout, was: { scenes: view.was.scenes === view.layout.scenes ? layout.scenes : layoutIn({ ...view.layout, scenes: view.was.scenes }, how).scenes } };
}

export function glanceIn(seen: Glance, speech: Speech): Glance {
  const venue = venueIn(seen.venue, speech);
  return { ...seen, venue, layout: seen.layout && layoutIn(seen.layout, { venue, say: speech.say }) };
}

/** The engine's answer in the visitor's words. */
export const answerIn = (result: ArrangeResult, { venue, say }: { readonly venue: Venue; readonly say: Speech["say"] }): ArrangeResult => resultIn(result, { venue, say });
