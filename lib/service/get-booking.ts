import { fail, ok } from "../base";
import { history, outbox, revisions, venues, type BookingRow, type Handle } from "../store";
import type { VenueVersion } from "../store/venues";
import { gate } from "./gate";
import type { House } from "./house";
import type { Actor, BookingView, Outcome } from "./types";
import { pricedToday } from "./priced";
import { viewOf } from "./view";

/** A booking with all that belongs to it. A couple sees its own, and no mails. */
export async function getBooking(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<BookingView>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "look" });
  if (!booking.ok) return booking;
  const venue = await venueOf(db, booking.value);
  if (!venue) return fail({ code: "not-found" });
  return ok(await pricedToday(house, viewOf(house, {
    booking: booking.value, venue,
    revisions: await revisions.listOf(db, reference),
    history: (await history.listOf(db, reference)).map((line) => (actor.kind === "desk" ? line : { ...line, person: null })),
    mails: actor.kind === "desk" && actor.role !== "desk-look" ? await outbox.list(db, { booking: reference }) : [],
  })));
}

/** The venue as a booking sees it: the version of the agreed revision once there is one, else the current one. */
export async function venueOf(db: Handle, booking: BookingRow): Promise<VenueVersion | undefined> {
  if (booking.state !== "agreed") return venues.find(db, booking.venue);
  const agreed = (await revisions.listOf(db, booking.reference)).findLast((one) => one.agreedAt !== null);
  return venues.find(db, booking.venue, agreed?.venueVersion);
}
