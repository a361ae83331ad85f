import { ok } from "../base";
import { DESK_LINKS_AN_HOUR, hashCode, hashSecret, HOUR, isSecret, LIFETIMES, makeCode, makeSecret } from "../access";
import { messages } from "../mail";
import { bookings, history, links, venues, type BookingRow, type Handle } from "../store";
import { deskRole } from "./desk-people";
import type { House } from "./house";
import { iso, nowIso } from "./moment";
import { aboutOf, linkTo, queueMail, replacingLink } from "./post";
import type { Outcome } from "./types";

/** Mails a one-time sign-in link if the address belongs to the desk; answers the same either way. */
export async function askDeskLink(house: House, { email }: { readonly email: string }): Promise<Outcome<null>> {
  const person = email.trim().toLowerCase();
  if (!(await deskRole(house, house.store.db, person))) return ok(null);
  await house.store.transaction(async (tx) => {
    if ((await links.countOf(tx, person, iso(house.clock.now() - HOUR))) >= DESK_LINKS_AN_HOUR) return;
    const href = await deskLink(tx, house, { person, lastsMs: LIFETIMES.deskLink, once: true });
    const code = makeCode();
    await links.add(tx, {
      hash: hashCode(person, code), purpose: "desk", booking: null, person, once: true, label: "code", madeAt: nowIso(house), expiresAt: iso(house.clock.now() + LIFETIMES.deskLink),
    });
    const venueName = (await venues.list(tx))[0]?.venue.name ?? "Marquetry";
    await queueMail(tx, house, { message: messages.deskSignIn(venueName, { href, code, minutes: LIFETIMES.deskLink / 60_000 }), to: person, fromName: venueName, booking: null });
  });
  house.poke();
  return ok(null);
}

/** A link that signs a person in to the desk. */
export async function deskLink(tx: Handle, house: House, how: { readonly person: string; readonly lastsMs: number; readonly once: boolean }): Promise<string> {
  const secret = makeSecret();
  await links.add(tx, {
    hash: hashSecret(secret), purpose: "desk", booking: null, person: how.person, once: how.once,
    madeAt: nowIso(house), expiresAt: iso(house.clock.now() + how.lastsMs),
  });
  return linkTo(house, "desk", secret);
}

/** Mails a fresh link in place of one that ran out or was replaced. Answers the same whether the key is known or not. */
export async function renewLink(house: House, { key }: { readonly key: string }): Promise<Outcome<null>> {
  const { db } = house.store;
  const link = isSecret(key) ? await links.find(db, hashSecret(key)) : undefined;
  if (!link) return ok(null);
  if (link.person !== null) return askDeskLink(house, { email: link.person });
  const booking = link.booking === null ? undefined : await bookings.find(db, link.booking);
  if (booking) await mailAgain(house, booking);
  return ok(null);
}

/** Mails a fresh link for every open booking of an address. Answers the same whether there is one or not. */
export async function askCoupleLink(house: House, { email }: { readonly email: string }): Promise<Outcome<null>> {
  const wanted = email.trim().toLowerCase();
  for (const booking of await bookings.list(house.store.db)) {
    if (booking.email.toLowerCase() === wanted) await mailAgain(house, booking);
  }
  return ok(null);
}

/** A link that was asked for from outside goes to the address on the booking alone, and not time after time. */
async function mailAgain(house: House, booking: BookingRow): Promise<void> {
  if (booking.state === "closed") return;
  await house.store.transaction(async (tx) => {
    if ((await links.countOfBooking(tx, booking.reference, iso(house.clock.now() - HOUR))) >= DESK_LINKS_AN_HOUR) return;
    const about = await aboutOf(tx, booking);
    const href = await replacingLink(tx, house, booking);
    await queueMail(tx, house, { message: messages.invitation(about, href), to: booking.email, fromName: about.venueName, booking: booking.reference });
    await history.add(tx, { booking: booking.reference, at: nowIso(house), who: "couple", what: "link-asked" });
  });
  house.poke();
}
