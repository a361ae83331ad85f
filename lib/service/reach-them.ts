import { fail, ok } from "../base";
import { DESK_LINKS_AN_HOUR, HOUR } from "../access";
import { mailAddress } from "../base/schema";
import { deadlineAt, isOpenToCouple } from "../booking";
import { messages, singleAddress } from "../mail";
import { bookings, history, links, venues, type Handle } from "../store";
import { invite } from "./add-booking";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { iso, nowIso } from "./moment";
import { aboutOf, bookingLink, coupleLink, queueMail } from "./post";
import type { Actor, FormValues, Outcome } from "./types";

/** Puts another mail address in place of one that was wrong, and mails a fresh link there; those mailed before open nothing any more. Field: email. */
export async function changeAddress(house: House, actor: Actor, { reference, values }: { readonly reference: string; readonly values: FormValues }): Promise<Outcome<null>> {
  const email = typeof values.email === "string" ? values.email.trim() : "";
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "invite", hold: true });
    if (!held.ok) return held;
    if (!mailAddress.safeParse(email).success || !singleAddress(email).ok) return fail({ code: "invalid", errors: [{ field: "email", message: "Mail address: type one, such as ana@example.org." }] });
    if (email === held.value.email) return fail({ code: "invalid", errors: [{ field: "email", message: "Mail address: this is the one that stands." }] });
    const at = nowIso(house);
    await bookings.change(tx, reference, { email, at });
    // Of addresses the history tells only that one was changed: what it holds cannot be erased.
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "address-changed" });
    await invite(tx, house, { reference, actor });
    return ok(null);
  });
  house.poke();
  return done;
}

/** Reminds a couple by hand, who have not sent yet. No more than a few times an hour. */
export async function remindNow(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<null>> {
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "invite", hold: true });
    if (!held.ok) return held;
    const booking = held.value, venue = await venues.find(tx, booking.venue);
    if (!venue) return fail({ code: "not-found" });
    if (!isOpenToCouple(booking.state)) return fail({ code: "wrong-state", state: booking.state });
    // The postman would take it back, and the desk would wait for an answer to a mail that never left.
    if (booking.quietAt !== null) return fail({ code: "invalid", errors: [{ field: "mail", message: "Mail: this couple want no more reminders. A fresh link can still be mailed." }] });
    if (await tooMany(tx, house, reference)) return fail({ code: "invalid", errors: [TOO_MANY] });
    const about = await aboutOf(tx, booking), { daysLeft } = deadlineAt(booking.dueDate, venue.venue.timeZone, house.clock.now());
    const href = await coupleLink(tx, house, booking), quiet = await bookingLink(tx, house, booking, { purpose: "quiet" });
    const message = daysLeft < 0 ? messages.overdue(about, { href }) : messages.reminder(about, { days: daysLeft, begun: booking.state !== "invited", href, quiet });
    await queueMail(tx, house, { message, unsubscribe: quiet, to: booking.email, fromName: about.venueName, booking: reference });
    await history.add(tx, { booking: reference, at: nowIso(house), who: whoIs(actor), what: "reminded", data: { days: daysLeft } });
    return ok(null);
  });
  house.poke();
  return done;
}

export const TOO_MANY = { field: "mail", message: `Mail: ${DESK_LINKS_AN_HOUR} letters with a link went to this couple within the hour. Wait a while before another.` };
export const tooMany = async (tx: Handle, house: House, reference: string): Promise<boolean> =>
  (await links.countOfBooking(tx, reference, iso(house.clock.now() - HOUR))) >= DESK_LINKS_AN_HOUR;
