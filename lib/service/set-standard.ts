import { fail, ok } from "../base";
import { deadlineAt, todayAt } from "../booking";
import { messages } from "../mail";
import { bookings, history, revisions, venues } from "../store";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { aboutOf, coupleLink, queueMail } from "./post";
import type { Actor, Outcome } from "./types";

/**
 * Puts the venue's standard layout down by hand, for a booking past its due date of which nothing was sent: one that was late before
 * there was a standard layout, or one that has a newer. The couple are told; it is set by the venue and agreed by nobody.
 */
export async function setStandard(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<null>> {
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "set-standard", hold: true });
    if (!held.ok) return held;
    const booking = held.value, venue = await venues.find(tx, booking.venue);
    if (!venue) return fail({ code: "not-found" });
    // One that was returned is with the couple, and they know of it.
    if ((await revisions.lastNumber(tx, reference)) > 0) return fail({ code: "wrong-state", state: booking.state });
    const layout = venue.venue.standardLayout, { timeZone } = venue.venue, now = house.clock.now();
    const refused = (message: string): Outcome<null> => fail({ code: "invalid", errors: [{ field: "standard", message: `Standard layout: ${message}` }] });
    if (!deadlineAt(booking.dueDate, timeZone, now).overdue) return refused("it is set once the due date has passed, not before.");
    if (booking.eventDate < todayAt(timeZone, now)) return refused("the day itself has passed.");
    if (!layout) return refused("this venue has none yet. It is made on the venue’s pages.");
    const at = nowIso(house);
    if (!(await bookings.setByVenue(tx, reference, { layout, version: venue.version, at, again: true }))) return refused("this very one is set already.");
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "set-by-venue", data: { title: layout.title, venueVersion: venue.version } });
    const about = await aboutOf(tx, booking);
    await queueMail(tx, house, { message: messages.overdue(about, { title: layout.title, href: await coupleLink(tx, house, booking) }), to: booking.email, fromName: about.venueName, booking: reference });
    return ok(null);
  });
  house.poke();
  return done;
}
