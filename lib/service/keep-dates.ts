import { deadlineAt, dueDate, isMailHour, isOpenToCouple, REMIND_AT, reminderFor, todayAt } from "../booking";
import { messages } from "../mail";
import { bookings, history, revisions, venues, type BookingRow, type Handle } from "../store";
import type { VenueVersion } from "../store/venues";
import { noticed } from "./desk-people";
import type { House } from "./house";
import { iso, nowIso } from "./moment";
import { aboutOf, bookingLink, coupleLink, deskPage, queueMail } from "./post";

const DAY = 24 * 3_600_000;
export type DatesKept = { readonly reminded: number; readonly overdue: number };

/**
 * Reminds whom a reminder is due, and puts the venue's standard layout down where nothing had come. Each happens once, however often
 * and in however many processes this runs: a reminder by the key of its mail, the rest by the booking's own row.
 */
export async function keepDates(house: House): Promise<DatesKept> {
  const kept = { reminded: 0, overdue: 0 };
  // A day more than the longest notice: a zone may be ahead of ours.
  const horizon = iso(house.clock.now() + (Math.max(...REMIND_AT) + 1) * DAY).slice(0, 10);
  for (const { reference } of await bookings.open(house.store.db, horizon)) {
    const done = await house.store.transaction((tx) => keepOne(tx, house, reference));
    if (done) kept[done] += 1;
  }
  for (const { reference } of await bookings.numbersOpen(house.store.db, horizon)) {
    if (await house.store.transaction((tx) => askNumbers(tx, house, reference))) kept.reminded += 1;
  }
  if (kept.reminded + kept.overdue > 0) house.poke();
  return kept;
}

/** Days before final numbers are due on which they are asked for; common practice, no source. */
const NUMBERS_AT: readonly number[] = [7, 2];

/** Asks for final numbers, once at each point; never of those who told them. */
async function askNumbers(tx: Handle, house: House, reference: string): Promise<boolean> {
  const booking = await bookings.hold(tx, reference), venue = booking && (await venues.find(tx, booking.venue));
  const days = venue?.venue.packages.find((one) => one.id === booking?.package)?.finalNumbersDays;
  if (!booking || !venue || days === undefined || booking.finalGuests !== null || booking.quietAt !== null) return false;
  const now = house.clock.now(), due = dueDate(booking.eventDate, days), { daysLeft } = deadlineAt(due, venue.venue.timeZone, now);
  const point = [...NUMBERS_AT].sort((a, b) => a - b).find((one) => daysLeft <= one);
  if (point === undefined || daysLeft < 0 || !isMailHour(venue.venue.timeZone, now)) return false;
  const about = await aboutOf(tx, booking);
  const queued = await queueMail(tx, house, { message: messages.numbersDue(about, { days: daysLeft, due, href: await coupleLink(tx, house, booking) }), to: booking.email, fromName: about.venueName, booking: reference, onceKey: `numbers ${reference} ${due} ${point}` });
  if (queued) await history.add(tx, { booking: reference, at: nowIso(house), who: "clock", what: "numbers-asked", data: { days: daysLeft } });
  return queued;
}

async function keepOne(tx: Handle, house: House, reference: string): Promise<keyof DatesKept | undefined> {
  const booking = await bookings.hold(tx, reference);
  const venue = booking && (await venues.find(tx, booking.venue));
  if (!booking || !venue || !isOpenToCouple(booking.state)) return undefined;
  const now = house.clock.now();
  const { timeZone } = venue.venue;
  if (!isMailHour(timeZone, now)) return undefined;
  const { daysLeft, overdue } = deadlineAt(booking.dueDate, timeZone, now);
  if (overdue) return (await nothingCame(tx, house, { booking, venue })) ? "overdue" : undefined;
  const addedDaysAgo = Math.floor((now - Date.parse(booking.createdAt)) / DAY);
  const point = reminderFor({ state: booking.state, daysLeft, addedDaysAgo });
  return point !== undefined && booking.quietAt === null && (await remind(tx, house, { booking, point, daysLeft })) ? "reminded" : undefined;
}

type Remind = { readonly booking: BookingRow; readonly point: number; readonly daysLeft: number };
async function remind(tx: Handle, house: House, { booking, point, daysLeft }: Remind): Promise<boolean> {
  const { reference } = booking;
  if ((await history.listOf(tx, reference)).some((one) => one.what === "reminded" && one.data["point"] === point && one.data["due"] === booking.dueDate)) return false;
  const about = await aboutOf(tx, booking);
  const unsubscribe = await bookingLink(tx, house, booking, { purpose: "quiet" });
  const queued = await queueMail(tx, house, {
    message: messages.reminder(about, { days: daysLeft, begun: booking.state !== "invited", href: await coupleLink(tx, house, booking), quiet: unsubscribe }), unsubscribe,
    to: booking.email, fromName: about.venueName, booking: reference, onceKey: `reminder ${reference} ${booking.dueDate} ${point}`,
  });
  if (queued) await history.add(tx, { booking: reference, at: nowIso(house), who: "clock", what: "reminded", data: { days: daysLeft, point, due: booking.dueDate } });
  return queued;
}

/** Only where no revision was ever sent: one that was returned is with the couple and the coordinator, and they know of it. */
async function nothingCame(tx: Handle, house: House, { booking, venue }: { readonly booking: BookingRow; readonly venue: VenueVersion }): Promise<boolean> {
  const { reference } = booking;
  if ((await revisions.lastNumber(tx, reference)) > 0 || booking.eventDate < todayAt(venue.venue.timeZone, house.clock.now())) return false;
  const about = await aboutOf(tx, booking);
  const layout = venue.venue.standardLayout;
  const mail = { fromName: about.venueName, booking: reference };
  const onceKey = `overdue ${reference} ${booking.dueDate}`;
  const told = { title: layout?.title };
  const queued = await queueMail(tx, house, { ...mail, to: booking.email, onceKey, message: messages.overdue(about, { ...told, href: await coupleLink(tx, house, booking) }) });
  if (!queued) return false;
  for (const person of await noticed(house, tx)) await queueMail(tx, house, { ...mail, to: person, message: messages.overdueToDesk(about, { ...told, href: deskPage(house, reference) }) });
  const at = nowIso(house);
  if (layout) await bookings.setByVenue(tx, reference, { layout, version: venue.version, at });
  await history.add(tx, { booking: reference, at, who: "clock", what: layout ? "set-by-venue" : "overdue", data: layout ? { title: layout.title, venueVersion: venue.version } : {} });
  return true;
}
