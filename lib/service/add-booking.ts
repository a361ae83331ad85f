import { fail, ok, type Result } from "../base";
import { BOOKING_FORM, dueDate, makeReference, readNames, todayAt } from "../booking";
import { messages, singleAddress } from "../mail";
import { bookings, history, venues, type BookingRow, type Handle } from "../store";
import type { VenueVersion } from "../store/venues";
import { deskGate, whoIs } from "./gate";
import { isLanguage, type Language } from "../words/pages";
import type { House } from "./house";
import { nowIso } from "./moment";
import { aboutOf, queueMail, replacingLink } from "./post";
import type { Actor, Draft, FieldError, FormValues, Outcome, Refusal } from "./types";

/** Adds a booking, and mails its link when `mail` is "yes". Fields: names, email, package, date, venue (the first when left out), language (as the venue speaks when left out), mail. */
export async function addBooking(house: House, actor: Actor, { values }: { readonly values: FormValues }): Promise<Outcome<{ readonly reference: string }>> {
  const desk = deskGate(actor, "add");
  if (!desk.ok) return desk;
  const done = await house.store.transaction(async (tx): Promise<Outcome<{ readonly reference: string }>> => {
    const read = await readForm(tx, house, values);
    if (!read.ok) return read;
    return ok({ reference: await addRead(tx, house, { read: read.value, actor, mail: values.mail === "yes" }) });
  });
  house.poke();
  return done;
}

type Adding = { readonly read: Read; readonly draft?: Draft; readonly actor: Actor; readonly mail: boolean };

/** Adds what was read, under a reference of its own, in the transaction given. */
export async function addRead(tx: Handle, house: House, { read, draft, actor, mail }: Adding): Promise<string> {
  const at = nowIso(house), reference = await freeReference(tx, house);
  await bookings.add(tx, { ...read, draft, reference, createdAt: at });
  await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "added" });
  if (mail) await invite(tx, house, { reference, actor });
  return reference;
}

/** Mails the couple a link, in the transaction given. */
export async function invite(tx: Handle, house: House, { reference, actor }: { readonly reference: string; readonly actor: Actor }): Promise<void> {
  const booking = await bookings.find(tx, reference);
  if (!booking) return;
  const about = await aboutOf(tx, booking);
  const href = await replacingLink(tx, house, booking);
  await queueMail(tx, house, { message: messages.invitation(about, href), to: booking.email, fromName: about.venueName, booking: reference });
  await history.add(tx, { booking: reference, at: nowIso(house), who: whoIs(actor), what: "link-mailed" });
}

export type Read = Pick<BookingRow, "venue" | "names" | "email" | "package" | "eventDate" | "dueDate"> & { readonly language?: Language };

async function readForm(tx: Handle, house: House, values: FormValues): Promise<Result<Read, Refusal>> {
  const venue = await venueOf(tx, typeof values.venue === "string" ? values.venue.trim() : "");
  if (!venue) return fail({ code: "invalid", errors: [{ field: "venue", message: "Choose one of the venues shown." }] });
  const read = readBooking(venue, values, house.clock.now());
  return read.ok ? read : fail({ code: "invalid", errors: read.error });
}

/** A booking of a venue as typed, or everything that is amiss with it. `now` in milliseconds since 1970 UTC. */
export function readBooking(venue: VenueVersion, values: FormValues, now: number): Result<Read, readonly FieldError[]> {
  const errors: FieldError[] = [];
  const wrong = (name: string, message: string): void => { if (!errors.some((one) => one.field === name)) errors.push({ field: name, message }); };
  const read = BOOKING_FORM.safeParse(values);
  for (const issue of read.error?.issues ?? []) wrong(String(issue.path[0] ?? ""), issue.message);
  // What the schema let pass is looked at further even where another field is amiss: everything is told at once.
  const { email, date, package: packId } = BOOKING_FORM.shape;
  const address = email.safeParse(values.email), day = date.safeParse(values.date), chosen = packId.safeParse(values.package);
  if (address.success && !singleAddress(address.data).ok) wrong("email", "Type one mail address, such as ana@example.org.");
  const pack = venue.venue.packages.find((one) => one.id === chosen.data);
  if (!pack) wrong("package", "Choose one of the packages shown.");
  if (day.success && day.data < todayAt(venue.venue.timeZone, now)) wrong("date", "The day lies in the past.");
  if (errors.length > 0 || !pack || !read.success) return fail(errors);
  const language = typeof values.language === "string" && isLanguage(values.language) ? { language: values.language } : {};
  return ok({ ...language, venue: venue.id, names: readNames(read.data.names), email: read.data.email, package: pack.id, eventDate: read.data.date, dueDate: dueDate(read.data.date, pack.dueDays) });
}

async function venueOf(tx: Handle, id: string): Promise<VenueVersion | undefined> {
  return id === "" ? (await venues.list(tx))[0] : venues.find(tx, id);
}

async function freeReference(tx: Handle, house: House): Promise<string> {
  for (;;) {
    const reference = makeReference(house.random);
    if (!(await bookings.find(tx, reference))) return reference;
  }
}
