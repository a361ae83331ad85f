import { fail, ok } from "../base";
import type { Layout } from "../layout";
import { bookings, venues, type BookingRow, type Handle } from "../store";
import { isLanguage, type Chosen } from "../words/pages";
import { gate, roleFor } from "./gate";
import type { House } from "./house";
import { inWords } from "./in-words";
import type { Actor, Outcome } from "./types";

/** What a booking's couple chose to read; what was left open goes by their venue. */
export function chosenBy(booking: Pick<BookingRow, "language" | "lengths">): Chosen {
  const language = booking.language ?? undefined;
  return { language: isLanguage(language) ? language : undefined, lengths: booking.lengths ?? undefined };
}

/** Keeps with a couple's booking what they chose to read, so that mails and papers follow. What is left out stays as it is. */
export async function keepWords(house: House, actor: Actor, { reference, chosen }: { readonly reference: string; readonly chosen: Chosen }): Promise<Outcome<null>> {
  if (roleFor(actor, reference) !== "couple") return fail({ code: "not-allowed" });
  const booking = await gate(house.store.db, actor, { reference, action: "look" });
  if (!booking.ok) return booking;
  const { language, lengths } = booking.value;
  await bookings.keepWords(house.store.db, reference, { language: chosen.language ?? language, lengths: chosen.lengths ?? lengths });
  return ok(null);
}

/** A layout as a booking's couple read it. */
export async function layoutFor(db: Handle, booking: BookingRow, layout: Layout): Promise<Layout> {
  const found = await venues.find(db, booking.venue);
  return found ? inWords({ layout, venue: found.venue }, { words: chosenBy(booking) }).layout : layout;
}
