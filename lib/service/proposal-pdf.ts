import { ok } from "../base";
import { briefSchema } from "../brief";
import { mannerOf } from "../words/pages";
import { chosenBy } from "./chosen-words";
import { gate } from "./gate";
import type { House } from "./house";
import { daysOf, seenLayout } from "./seen-layout";
import type { Actor, Outcome } from "./types";

type Wanted = { readonly reference: string; readonly number?: number };
export type Pdf = { readonly bytes: Uint8Array; readonly fileName: string };

/** The proposal of a revision, or of what is chosen now when no number is given. In the language that the couple read, whoever asks; in it a revision prints the same bytes every time, and once agreed, it says so. */
export async function proposalPdfFor(house: House, actor: Actor, { reference, number }: Wanted): Promise<Outcome<Pdf>> {
  const booking = await gate(house.store.db, actor, { reference, action: "look" });
  if (!booking.ok) return booking;
  const seen = await seenLayout(house, booking.value, { number });
  if (!seen.ok) return seen;
  const { venue, brief, layout, fingerprint, sentAt, number: revision } = seen.value;
  const { locale, lengths } = mannerOf(venue.venue, chosenBy(booking.value));
  const quote = seen.value.quote ?? await house.works.quote(venue.venue, briefSchema.parse(brief), layout);
  const bytes = await house.works.proposalPdf({
    venue: { ...venue.venue, locale, lengths }, paperLocale: venue.venue.locale, brief, layout, quote, reference, revision, fingerprint,
    ...daysOf(house, seen.value),
    // A bare address: it holds no secret, and asks whoever follows it for a fresh link.
    url: `${house.origin}/request`,
    now: sentAt === undefined ? house.clock.now() : Date.parse(sentAt),
  });
  return ok({ bytes, fileName: `${reference}-${revision === 0 ? "draft" : `revision-${revision}`}.pdf` });
}
