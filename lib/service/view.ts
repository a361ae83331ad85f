import { deadlineAt, dueDate, isOpenToCouple, shownNames } from "../booking";
import { ANSWER_STEPS, briefFileOfDraft, type DraftFacts } from "../brief/draft";
import { briefSchema, LAYOUTS, questionOf, SEED } from "../brief";
import { sha256 } from "../access";
import { canonicalJson } from "../booking";
import type { BookingRow, history, MailRow, RevisionRow } from "../store";
import type { VenueVersion } from "../store/venues";
import type { Brief } from "../brief";
import type { Layout } from "../layout";
import { chosenBy } from "./chosen-words";
import type { House } from "./house";
import { fateOf } from "./list-queue";
import type { BookingView, ChosenView, HistoryView, MailView, RevisionView } from "./types";

export const factsOf = (booking: BookingRow): DraftFacts =>
  ({ package: booking.package, date: booking.eventDate, couple: booking.names, reference: booking.reference });

/** The answers of a booking as a brief, or undefined while the number of adults is not known. */
export function briefOf(booking: BookingRow): Brief | undefined {
  const file = briefFileOfDraft(booking.draft, factsOf(booking));
  return file && briefSchema.parse(file);
}

/** One key for one question to the engine: the same venue, answers and engine have the same answer. */
export function arrangementKey(engineVersion: string, venue: VenueVersion, brief: Brief): string {
  return sha256(canonicalJson({ engine: engineVersion, seed: SEED, layouts: LAYOUTS, venue: venue.hash, brief: questionOf(brief) }));
}

type Parts = {
  readonly booking: BookingRow; readonly venue: VenueVersion; readonly revisions: readonly RevisionRow[];
  readonly history: readonly history.Line[]; readonly mails: readonly MailRow[];
};

/** A booking as pages show it. */
export function viewOf(house: House, { booking, venue, revisions, history, mails }: Parts): BookingView {
  const brief = briefOf(booking);
  const { daysLeft, overdue } = deadlineAt(booking.dueDate, venue.venue.timeZone, house.clock.now());
  const pack = venue.venue.packages.find((one) => one.id === booking.package);
  return {
    reference: booking.reference, names: shownNames(booking.names), email: booking.email, venue: venue.venue, venueVersion: venue.version,
    package: { id: booking.package, name: pack?.name ?? booking.package, coordinator: pack?.coordinator ?? false },
    date: booking.eventDate, dueDate: booking.dueDate, daysLeft, overdue: overdue && isOpenToCouple(booking.state),
    state: booking.state, open: isOpenToCouple(booking.state), revision: booking.revision, savedAt: booking.changedAt, reads: chosenBy(booking), draft: booking.draft,
    closedReason: booking.closedReason ?? undefined, erasedAt: booking.erasedAt ?? undefined,
    answered: ANSWER_STEPS.filter((one) => booking.draft[one] !== undefined),
    brief, chosen: chosenOf(house, booking, { venue, brief }),
    finalNumbers: finalOf(house, booking, venue), setByVenue: setOf(booking, revisions), asked: askedOf(booking, revisions),
    revisions: revisions.map(revisionView), history: history.map(historyView), mails: mails.map(mailView),
  };
}

/** What they asked of the desk, as long as no revision was sent after it; what they want erased stays asked for. */
function askedOf({ asked }: BookingRow, sent: readonly RevisionRow[]): BookingView["asked"] {
  return asked === null || (asked.what !== "erase" && sent.some((one) => one.sentAt > asked.at)) ? undefined : asked;
}

/** Final numbers as they stand: due so many days before the day, by the package. */
function finalOf(house: House, booking: BookingRow, venue: VenueVersion): BookingView["finalNumbers"] {
  const days = venue.venue.packages.find((one) => one.id === booking.package)?.finalNumbersDays;
  if (days === undefined && booking.finalGuests === null) return undefined;
  const due = dueDate(booking.eventDate, days ?? 0);
  return { dueDate: due, daysLeft: deadlineAt(due, venue.venue.timeZone, house.clock.now()).daysLeft, told: booking.finalGuests ?? undefined, toldAt: booking.finalAt ?? undefined };
}

/** What pieces of a layout are called; a table by its number as well. */
export function labelsOf(layout: Layout, ids: readonly string[]): readonly string[] {
  return ids.map((id) => layout.scenes.flatMap((scene) => scene.items).find((item) => item.id === id)?.label ?? id);
}

function setOf({ setLayout, setAt }: BookingRow, sent: readonly RevisionRow[]): BookingView["setByVenue"] {
  // Once a layout has been sent, that one is talked about: what was set before stands in the history.
  return setLayout === null || setAt === null || sent.length > 0 ? undefined : { layout: setLayout, at: setAt };
}

export function chosenOf(house: House, booking: BookingRow, now: { readonly venue: VenueVersion; readonly brief: Brief | undefined }): ChosenView | undefined {
  if (booking.chosen === null) return undefined;
  const key = now.brief && arrangementKey(house.works.engineVersion, now.venue, now.brief);
  // Once sent or agreed it stands as it was sent; only an open one can fall behind its answers.
  return { layout: booking.chosen, outdated: isOpenToCouple(booking.state) && booking.chosenKey !== key };
}

export function revisionView(row: RevisionRow): RevisionView {
  return {
    number: row.number, brief: briefSchema.parse(row.brief), layout: row.layout, quote: row.quote, findings: row.findings,
    venueVersion: row.venueVersion, fingerprint: row.fingerprint, sentAt: row.sentAt,
    returnedAt: row.returnedAt ?? undefined, agreedAt: row.agreedAt ?? undefined, reason: row.reason ?? undefined, pieces: row.pieces ? labelsOf(row.layout, row.pieces) : undefined,
  };
}

const historyView = (row: history.Line): HistoryView => ({ at: row.at, who: row.who, by: row.person ?? undefined, what: row.what, data: row.data });

export function mailView(row: MailRow): MailView {
  return {
    id: row.id, to: row.recipient, subject: row.subject, kind: row.kind, reference: row.booking ?? undefined, text: row.bodyText, html: row.bodyHtml,
    state: fateOf(row.state), why: row.why ?? undefined, attempts: row.attempts, queuedAt: row.queuedAt, sentAt: row.sentAt ?? undefined,
  };
}
