import { ok } from "../base";
import { deadlineAt, STATES, todayAt, shownNames } from "../booking";
import { bookings, history, outbox, venues, type BookingRow, type HistoryRow } from "../store";
import type { VenueVersion } from "../store/venues";
import { deskGate } from "./gate";
import { sayEntry } from "./said";
import type { House } from "./house";
import type { Actor, MailView, Outcome, QueueFilter, QueueRow, QueueView } from "./types";

type Wanted = { readonly filter?: QueueFilter; readonly search?: string; /** One venue alone, by its id. */ readonly venue?: string };
const FILTERS: readonly QueueFilter[] = ["all", "overdue", "waiting", ...STATES];

/** Bookings by due date, with the count of every filter. */
export async function listQueue(house: House, actor: Actor, { filter = "all", search = "", venue }: Wanted): Promise<Outcome<QueueView>> {
  const desk = deskGate(actor, "queue");
  if (!desk.ok) return desk;
  const { db } = house.store;
  const known = new Map((await venues.list(db)).map((one) => [one.id, one]));
  const fates = await outbox.lastFates(db);
  const lasts = await history.lasts(db);
  const now = house.clock.now();
  const rows = (await bookings.list(db)).filter((booking) => venue === undefined || booking.venue === venue).map((booking) => rowOf(booking, { venue: known.get(booking.venue), mail: fates.get(booking.reference), last: lasts.get(booking.reference), now }));
  const found = rows.filter((row) => matches(row, search));
  const zone = (venue === undefined ? [...known.values()][0] : known.get(venue))?.venue.timeZone ?? "UTC";
  return ok({
    rows: found.filter((row) => isIn(row, filter)),
    counts: countsOf(found), today: todayAt(zone, now), venues: [...known.values()].map((one) => ({ id: one.id, name: one.venue.name })),
  });
}

function countsOf(rows: readonly QueueRow[]): Readonly<Record<QueueFilter, number>> {
  const none = { all: 0, overdue: 0, waiting: 0, invited: 0, started: 0, sent: 0, returned: 0, agreed: 0, closed: 0 };
  return FILTERS.reduce((counts, filter) => ({ ...counts, [filter]: rows.filter((row) => isIn(row, filter)).length }), none);
}

function isIn(row: QueueRow, filter: QueueFilter): boolean {
  if (filter === "all") return true;
  if (filter === "overdue") return row.overdue;
  if (filter === "waiting") return row.state === "sent";
  return row.state === filter;
}

function matches(row: QueueRow, search: string): boolean {
  const wanted = plain(search);
  return wanted === "" || [row.reference, row.email, ...row.names].some((text) => plain(text).includes(wanted));
}

/** Letters without their accents and capitals: whoever types "Zoe" finds "Zoë". */
const plain = (text: string): string => text.normalize("NFKD").replace(/\p{Mark}/gu, "").toLowerCase().trim();

type Beside = { readonly venue: VenueVersion | undefined; readonly mail: { readonly state: string; readonly why: string | null } | undefined; readonly last: HistoryRow | undefined; readonly now: number };
function rowOf(booking: BookingRow, { venue, mail, last, now }: Beside): QueueRow {
  const { daysLeft, overdue } = deadlineAt(booking.dueDate, venue?.venue.timeZone ?? "UTC", now);
  const answered = booking.draft.guests;
  return {
    reference: booking.reference, names: shownNames(booking.names), email: booking.email, venueName: venue?.venue.name ?? booking.venue,
    packageName: venue?.venue.packages.find((one) => one.id === booking.package)?.name ?? booking.package,
    date: booking.eventDate, dueDate: booking.dueDate, daysLeft,
    // What was sent, agreed or closed waits for no couple any more.
    overdue: overdue && ["invited", "started", "returned"].includes(booking.state),
    state: booking.state, guests: answered?.adults === undefined ? undefined : answered.adults + (answered.children ?? 0),
    mail: mail && { state: fateOf(mail.state), why: mail.why ?? undefined }, last: last && sayEntry(last), lastAt: last?.at ?? booking.changedAt,
  };
}

/** A letter on its way is queued to whoever looks. */
export const fateOf = (state: string): MailView["state"] => (state === "sent" || state === "failed" ? state : "queued");
