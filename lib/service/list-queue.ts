import { folded, ok } from "../base";
import { deadlineAt, isOpenToCouple, OPEN_TO_COUPLE, todayAt, shownNames, STATES, type State } from "../booking";
import { queue, search, venues, type HistoryRow } from "../store";
import type { VenueVersion } from "../store/venues";
import { deskGate } from "./gate";
import { sayEntry } from "./said";
import type { House } from "./house";
import type { Actor, MailView, Outcome, QueueFilter, QueueRow, QueueView } from "./types";

type Wanted = {
  readonly filter?: QueueFilter; readonly search?: string; /** One venue alone, by its id. */ readonly venue?: string;
  readonly sort?: "due" | "day";
  /** Where the page begins, as the page before or after it told; "last": the last page. */ readonly from?: string;
};
/** More than these are not told apart by a search: more of it has to be typed. */
const MOST_FOUND = 400;
/** Lines on one page: a screen or three of them. */
const PAGE = 50;

/** One page of bookings by due date, with the count of every filter. */
export async function listQueue(house: House, actor: Actor, { filter = "all", search: term = "", venue, sort = "due", from: asked }: Wanted): Promise<Outcome<QueueView>> {
  const desk = deskGate(actor, "queue");
  if (!desk.ok) return desk;
  const { db } = house.store;
  const known = new Map((await venues.list(db)).map((one) => [one.id, one]));
  const now = house.clock.now();
  const today = Object.fromEntries([...known.values()].map((one) => [one.id, todayAt(one.venue.timeZone, now)]));
  const found = folded(term) === "" ? undefined : await search.matching(db, term, MOST_FOUND + 1), only = found?.slice(0, MOST_FOUND);
  const counts = countsOf(await queue.counts(db, { venue, today, only })), from = readFrom(asked), back = from !== undefined && "before" in from;
  // One line more than a page holds tells whether there is another page.
  const more = await queue.lines(db, { ...chosenBy(filter), venue, today, only, sort, limit: PAGE + 1, from });
  const lines = back ? more.slice(-PAGE) : more.slice(0, PAGE), first = lines[0], end = lines.at(-1), over = more.length > PAGE;
  const last = await queue.lastOf(db, lines.map((one) => one.reference));
  const zone = (venue === undefined ? [...known.values()][0] : known.get(venue))?.venue.timeZone ?? "UTC";
  return ok({
    rows: lines.map((line) => rowOf(line, { venue: known.get(line.venue), mail: last.mails.get(line.reference), last: last.lines.get(line.reference), now })),
    counts, found: found !== undefined && found.length > MOST_FOUND ? "too many" : "all",
    earlier: first && (back ? over : from !== undefined) ? `before~${placeText(queue.placeOf(first, sort))}` : undefined,
    later: end && (back ? from.before !== "the end" : over) ? `after~${placeText(queue.placeOf(end, sort))}` : undefined,
    today: todayAt(zone, now), venues: [...known.values()].map((one) => ({ id: one.id, name: one.venue.name })),
  });
}

const placeText = ({ rank, day, reference }: queue.Place): string => `${rank}~${day}~${reference}`;
const PLACE = /^(after|before)~([012])~(\d{4}-\d\d-\d\d)~([A-Z0-9-]{1,20})$/;

/** Where a page begins, from its address; anything else is the beginning. */
function readFrom(text: string | undefined): queue.From | undefined {
  if (text === "last") return { before: "the end" };
  const [, way, rank, day, reference] = PLACE.exec(text ?? "") ?? [];
  if (day === undefined || reference === undefined || Number.isNaN(Date.parse(day))) return undefined;
  const at = { rank: Number(rank), day, reference };
  return way === "before" ? { before: at } : { after: at };
}

function countsOf({ states, late }: queue.Counts): Readonly<Record<QueueFilter, number>> {
  const of = (state: State): number => states.get(state) ?? 0;
  return {
    all: STATES.reduce((sum, state) => sum + of(state), 0), overdue: late, waiting: of("sent"),
    invited: of("invited"), started: of("started"), sent: of("sent"), returned: of("returned"), agreed: of("agreed"), closed: of("closed"),
  };
}

function chosenBy(filter: QueueFilter): Pick<queue.QueueAsk, "states" | "late"> {
  if (filter === "all") return {};
  if (filter === "overdue") return { states: OPEN_TO_COUPLE, late: true };
  return { states: [filter === "waiting" ? "sent" : filter] };
}

type Beside = { readonly venue: VenueVersion | undefined; readonly mail: { readonly state: string; readonly why: string | null } | undefined; readonly last: HistoryRow | undefined; readonly now: number };
function rowOf(booking: queue.QueueLine, { venue, mail, last, now }: Beside): QueueRow {
  const { daysLeft, overdue } = deadlineAt(booking.dueDate, venue?.venue.timeZone ?? "UTC", now);
  const answered = booking.draft.guests;
  return {
    reference: booking.reference, names: shownNames(booking.names), email: booking.email, venueName: venue?.venue.name ?? booking.venue,
    packageName: venue?.venue.packages.find((one) => one.id === booking.package)?.name ?? booking.package,
    date: booking.eventDate, dueDate: booking.dueDate, daysLeft,
    // What was sent, agreed or closed waits for no couple any more.
    overdue: overdue && isOpenToCouple(booking.state),
    asked: waitingOf(booking),
    state: booking.state, guests: answered?.adults === undefined ? undefined : answered.adults + (answered.children ?? 0),
    mail: mail && { state: fateOf(mail.state), why: mail.why ?? undefined }, last: last && sayEntry(last), lastAt: last?.at ?? booking.changedAt,
  };
}

/** What they asked of the desk, where it is still the desk's to answer. */
function waitingOf({ asked, state }: Pick<queue.QueueLine, "asked" | "state">): QueueRow["asked"] {
  if (asked?.what === "change") return state === "agreed" ? "change" : undefined;
  if (asked?.what === "draft") return isOpenToCouple(state) ? "draft" : undefined;
  return asked?.what;
}

/** A letter on its way is queued to whoever looks. */
export const fateOf = (state: string): MailView["state"] => (state === "sent" || state === "failed" ? state : "queued");
