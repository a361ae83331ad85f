import { Temporal } from "temporal-polyfill";

export type Deadline = {
  /** Whole days from today in the venue's zone; 0 on the due date itself, negative after it. */
  readonly daysLeft: number;
  readonly overdue: boolean;
};

/** The day a layout is due: so many days of the calendar before the event. Both YYYY-MM-DD. */
export function dueDate(eventDate: string, dueDays: number): string {
  return Temporal.PlainDate.from(eventDate).subtract({ days: dueDays }).toString();
}

/** Today's date at the venue, YYYY-MM-DD. `now` is a moment in milliseconds since 1970 UTC. */
export function todayAt(timeZone: string, now: number): string {
  return Temporal.Instant.fromEpochMilliseconds(now).toZonedDateTimeISO(timeZone).toPlainDate().toString();
}

/** The moment from which a due date is past: the first one of the day after it, at the venue. Milliseconds since 1970 UTC. */
export function overdueFrom(due: string, timeZone: string): number {
  return Temporal.PlainDate.from(due).add({ days: 1 }).toZonedDateTime({ timeZone }).startOfDay().epochMilliseconds;
}

/** How a due date stands now. */
export function deadlineAt(due: string, timeZone: string, now: number): Deadline {
  const today = Temporal.PlainDate.from(todayAt(timeZone, now));
  const daysLeft = today.until(Temporal.PlainDate.from(due), { largestUnit: "day" }).days;
  return { daysLeft, overdue: now >= overdueFrom(due, timeZone) };
}

/**
 * The day on which a couple answered, at the venue, YYYY-MM-DD: that of their first sending, so that a request which was in time and came
 * back is in time still; today where nothing was sent yet. `firstSent` is a moment as ISO 8601, `now` milliseconds since 1970 UTC.
 */
export function answeredOn(timeZone: string, { firstSent, now }: { readonly firstSent: string | undefined; readonly now: number }): string {
  return todayAt(timeZone, firstSent === undefined ? now : Temporal.Instant.from(firstSent).epochMilliseconds);
}
