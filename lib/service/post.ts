import { randomBytes } from "node:crypto";
import { hashSecret, LIFETIMES, makeSecret } from "../access";
import { asHtml, asText, type About } from "../mail";
import type { Message } from "../mail/message";
import { bookings, links, outbox, venues, type BookingRow, type Handle } from "../store";
import { mannerOf } from "../words/pages";
import { chosenBy } from "./chosen-words";
import type { House } from "./house";
import { iso, nowIso } from "./moment";

export type Addressed = { readonly message: Message; readonly to: string; readonly fromName: string; readonly booking: string | null;
  /** Of all mails with this key only the first is queued. */
  readonly onceKey?: string;
  /** Where they say that they want no more of these. */
  readonly unsubscribe?: string;
};

/** Queues a message in the transaction of what it tells of; false where its key was used before. */
export async function queueMail(tx: Handle, house: House, { message, to, fromName, booking, onceKey, unsubscribe }: Addressed): Promise<boolean> {
  const domain = house.mailFrom.slice(house.mailFrom.lastIndexOf("@") + 1);
  return outbox.queue(tx, {
    kind: message.kind, booking, recipient: to, fromName, subject: message.subject, bodyText: asText(message), bodyHtml: asHtml(message),
    messageId: `<${randomBytes(16).toString("hex")}@${domain}>`, queuedAt: nowIso(house),
    replyTo: await contactOf(tx, booking), onceKey: onceKey ?? null, unsubscribe: unsubscribe ?? null,
  });
}

/** The person at the venue whom a reader's answer reaches. */
async function contactOf(tx: Handle, reference: string | null): Promise<string | null> {
  const booking = reference === null ? undefined : await bookings.find(tx, reference);
  const venue = booking && (await venues.find(tx, booking.venue));
  return venue?.venue.contact?.email ?? null;
}

/** What mails about a booking speak of. */
export async function aboutOf(db: Handle, booking: BookingRow): Promise<About> {
  const found = await venues.find(db, booking.venue);
  if (!found) throw new Error(`booking ${booking.reference} is of venue ${booking.venue}, which is not there`);
  const pack = found.venue.packages.find((one) => one.id === booking.package);
  return {
    reference: booking.reference, names: booking.names, venueName: found.venue.name, packageName: pack?.name ?? booking.package,
    coordinator: pack?.coordinator ?? false, date: booking.eventDate, dueDate: booking.dueDate, locale: found.venue.locale, reader: mannerOf(found.venue, chosenBy(booking)),
  };
}

/** A fresh link in place of all older ones: what was mailed before opens nothing any more. */
export async function replacingLink(tx: Handle, house: House, booking: BookingRow): Promise<string> {
  await links.revokeOf(tx, booking.reference, nowIso(house), "couple");
  return coupleLink(tx, house, booking);
}

/** A link of the couple's own beside those they have, as a notice carries it. */
export const coupleLink = (tx: Handle, house: House, booking: BookingRow): Promise<string> => bookingLink(tx, house, booking, { purpose: "couple" });

type BookingLink = { readonly purpose: "couple" | "look" | "quiet"; /** For whom it was made, as the couple put it. */ readonly label?: string };

/** A fresh link about one booking, until the papers of its day need no more be read. Only its hash is kept. */
export async function bookingLink(tx: Handle, house: House, booking: BookingRow, { purpose, label }: BookingLink): Promise<string> {
  const secret = makeSecret();
  const from = Math.max(Date.parse(`${booking.eventDate}T00:00:00Z`), house.clock.now());
  await links.add(tx, {
    hash: hashSecret(secret), purpose, booking: booking.reference, person: null, once: false, label, madeAt: nowIso(house), expiresAt: iso(from + LIFETIMES.coupleLinkAfterEvent),
  });
  return linkTo(house, purpose, secret);
}

const WAYS_IN = { couple: "/open", look: "/open", desk: "/desk/open", quiet: "/quiet" } as const;
export const linkTo = (house: Pick<House, "origin">, purpose: keyof typeof WAYS_IN, secret: string): string => `${house.origin}${WAYS_IN[purpose]}/${secret}`;
export const deskPage = (house: Pick<House, "origin">, reference: string): string => `${house.origin}/desk/bookings/${encodeURIComponent(reference)}`;
