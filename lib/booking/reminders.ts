import { Temporal } from "temporal-polyfill";
import { isOpenToCouple, type State } from "./state";

/** Whole days before the due date on which a couple is reminded; common practice, no source. */
export const REMIND_AT: readonly number[] = [14, 7, 2];
/** Hours of the day, at the venue, in which mails of our own accord leave. */
const FROM_HOUR = 9;
const TO_HOUR = 20;

type Asked = { readonly state: State; readonly daysLeft: number; readonly addedDaysAgo: number };

/**
 * The reminder that stands at this moment, by its days before the due date, or none. Only the nearest: whoever was away for a week
 * is not reminded three times. Nor is anyone reminded of what their invitation told them less than three days ago.
 */
export function reminderFor({ state, daysLeft, addedDaysAgo }: Asked): number | undefined {
  if (!isOpenToCouple(state) || daysLeft < 0 || addedDaysAgo < 3) return undefined;
  return [...REMIND_AT].sort((a, b) => a - b).find((days) => daysLeft <= days);
}

/** Is it an hour for mails at the venue? `now` in milliseconds since 1970 UTC. */
export function isMailHour(timeZone: string, now: number): boolean {
  const { hour } = Temporal.Instant.fromEpochMilliseconds(now).toZonedDateTimeISO(timeZone);
  return hour >= FROM_HOUR && hour < TO_HOUR;
}
