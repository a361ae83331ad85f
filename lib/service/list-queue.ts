import { folded, ok } from "../base";
import { deadlineAt, todayAt, shownNames, type State } from "../booking";
import { queue, venues, type HistoryRow } from "../store";
import type { VenueVersion } from "../store/venues";
import { deskGate } from "./gate";
import { sayEntry } from "./said";
import type { House } from "./house";
import type { Actor, MailView, Outcome, QueueFilter, QueueRow, QueueView } from "./types";

type Wanted = {
  readonly filter?: QueueFilter; readonly search?: string; /** One venue alone, by its id. */ readonly venue?: string;
  readonly sort?: "due" | "day"; /** From 1. */ readonly page?: number;
};
/** Lines on one page: a screen or three of them. */
const PAGE = 50;
const OPEN: readonly State[] = ["invited", "started", "returned"];

/** One page of bookings by due date, with the count of every filter. */
export async function listQueue(house: House, actor: Actor, { filter = "all", search = "", venue, sort = "due", page: wanted = 1 }: Wanted): Promise<Outcome<QueueView>> {
  const desk = deskGate(actor, "queue");
  if (!desk.ok) return desk;
  const { db } = house.store;
  const known = new Map((await venues.list(db)).map((one) => [one.id, one]));
  const now = house.clock.now();
  const today = Object.fromEntries([...known.values()].map((one) => [one.id, todayAt(one.venue.timeZone, now)]));
  const only = folded(search) === "" ? undefined : (await queue.searched(db)).filter((row) => matches(row, search)).map((row) => row.reference);
  const counts = countsOf(await queue.counts(db, { venue, today, only }));
  const pages = Math.max(1, Math.ceil(counts[filter] / PAGE)), page = Math.min(Math.max(1, Math.floor(wanted)), pages);
  const lines = await queue.lines(db, { ...chosenBy(filter), venue, today, only, sort, limit: PAGE, skip: (page - 1) * PAGE });
  const last = await queue.lastOf(db, lines.map((one) => one.reference));
  const zone = (venue === undefined ? [...known.values()][0] : known.get(venue))?.venue.timeZone ?? "UTC";
  return ok({
    rows: lines.map((line) => rowOf(line, { venue: known.get(line.venue), mail: last.mails.get(line.reference), last: last.lines.get(line.reference), now })),
    counts, page, pages, today: todayAt(zone, now), venues: [...known.values()].map((one) => ({ id: one.id, name: one.venue.name })),
  });
}

function countsOf(found: readonly queue.Count[]): Readonly<Record<QueueFilter, number>> {
  const of = (state: State): number => found.find((one) => one.state === state)?.all ?? 0;
  return {
    all: found.reduce((sum, one) => sum + one.all, 0), overdue: found.reduce((sum, one) => sum + (OPEN.includes(one.state) ? one.late : 0), 0), waiting: of("sent"),
    invited: of("invited"), started: of("started"), sent: of("sent"), returned: of("returned"), agreed: of("agreed"), closed: of("closed"),
  };
}

function chosenBy(filter: QueueFilter): Pick<queue.QueueAsk, "states" | "late"> {
  if (filter === "all") return {};
  if (filter === "overdue") return { states: OPEN, late: true };
  return { states: [filter === "waiting" ? "sent" : filter] };
}

function matches(row: Pick<queue.QueueLine, "reference" | "names" | "email">, search: string): boolean {
  const wanted = folded(search);
  return [row.reference, row.email, ...row.names].some((text) => folded(text).includes(wanted));
}

/** Letters without their accents and capitals: whoever types "Zoe" finds "Zoë". */

type Beside = { readonly venue: VenueVersion | undefined; readonly mail: { readonly state: string; readonly why: string | null } | undefined; readonly last: HistoryRow | undefined; readonly now: number };
function rowOf(booking: queue.QueueLine, { venue, mail, last, now }: Beside): QueueRow {
  const { daysLeft, overdue } = deadlineAt(booking.dueDate, venue?.venue.timeZone ?? "UTC", now);
  const answered = booking.draft.guests;
  return {
    reference: booking.reference, names: shownNames(booking.names), email: booking.email, venueName: venue?.venue.name ?? booking.venue,
    packageName: venue?.venue.packages.find((one) => one.id === booking.package)?.name ?? booking.package,
    date: booking.eventDate, dueDate: booking.dueDate, daysLeft,
    // What was sent, agreed or closed waits for no couple any more.
    overdue: overdue && OPEN.includes(booking.state),
    asked: waitingOf(booking),
    state: booking.state, guests: answered?.adults === undefined ? undefined : answered.adults + (answered.children ?? 0),
    mail: mail && { state: fateOf(mail.state), why: mail.why ?? undefined }, last: last && sayEntry(last), lastAt: last?.at ?? booking.changedAt,
  };
}

/** What they asked of the desk, where it is still the desk's to answer. */
function waitingOf({ asked, state }: Pick<queue.QueueLine, "asked" | "state">): QueueRow["asked"] {
  if (asked?.what === "change") return state === "agreed" ? "change" : undefined;
  if (asked?.what === "draft") return OPEN.includes(state) ? "draft" : undefined;
  return asked?.what;
}

/** A letter on its way is queued to whoever looks. */
export const fateOf = (state: string): MailView["state"] => (state === "sent" || state === "failed" ? state : "queued");
