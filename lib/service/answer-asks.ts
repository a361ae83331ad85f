import { DESK_LINKS_AN_HOUR, hashCode, HOUR, LIFETIMES, makeCode } from "../access";
import { messages } from "../mail";
import { bookings, history, linkAsks, links, venues, type BookingRow, type Handle, type LinkAskRow } from "../store";
import { deskLink } from "./desk-link";
import { deskRole } from "./desk-people";
import type { House } from "./house";
import { iso, nowIso } from "./moment";
import { aboutOf, queueMail, replacingLink } from "./post";

/** Writes the letters of all links that were asked for, each ask in a transaction of its own; how many asks there were. An ask of an hour ago is let go. */
export async function answerAsks(house: House): Promise<number> {
  await linkAsks.forget(house.store.db, iso(house.clock.now() - HOUR));
  const next = (): Promise<boolean> => house.store.transaction(async (tx) => {
    const ask = await linkAsks.take(tx);
    if (ask) await answer(tx, house, ask);
    return ask !== undefined;
  });
  let answered = 0;
  while (await next()) answered += 1;
  return answered;
}

async function answer(tx: Handle, house: House, { side, address, booking: reference, browser }: LinkAskRow): Promise<void> {
  if (side === "desk") { await mailDesk(tx, house, { person: address ?? "", browser }); return; }
  const one = reference === null ? undefined : await bookings.find(tx, reference);
  for (const booking of one ? [one] : await bookings.ofAddress(tx, address ?? "")) await mailCouple(tx, house, booking);
}

/** A sign-in link, and a code where the mail is read on another machine, to whoever is of the desk. Both open in the browser that asked. */
async function mailDesk(tx: Handle, house: House, { person, browser }: { readonly person: string; readonly browser: string | null }): Promise<void> {
  if (!(await deskRole(house, tx, person))) return;
  if ((await links.countOf(tx, person, iso(house.clock.now() - HOUR))) >= DESK_LINKS_AN_HOUR) return;
  const href = await deskLink(tx, house, { person, lastsMs: LIFETIMES.deskLink, once: true, browser });
  const code = makeCode();
  await links.add(tx, {
    hash: hashCode(person, code), purpose: "desk", booking: null, person, once: true, label: "code", browser, madeAt: nowIso(house), expiresAt: iso(house.clock.now() + LIFETIMES.deskLink),
  });
  const venueName = (await venues.list(tx))[0]?.venue.name ?? "Marquetry";
  await queueMail(tx, house, { message: messages.deskSignIn(venueName, { href, code, minutes: LIFETIMES.deskLink / 60_000 }), to: person, fromName: venueName, booking: null });
}

/** A link that was asked for from outside goes to the address on the booking alone, and not time after time. */
async function mailCouple(tx: Handle, house: House, booking: BookingRow): Promise<void> {
  if (booking.state === "closed") return;
  if ((await links.countOfBooking(tx, booking.reference, iso(house.clock.now() - HOUR))) >= DESK_LINKS_AN_HOUR) return;
  const about = await aboutOf(tx, booking);
  const href = await replacingLink(tx, house, booking);
  await queueMail(tx, house, { message: messages.invitation(about, href), to: booking.email, fromName: about.venueName, booking: booking.reference });
  await history.add(tx, { booking: booking.reference, at: nowIso(house), who: "couple", what: "link-asked" });
}
