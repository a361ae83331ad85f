import { Temporal } from "temporal-polyfill";

type Asked = {
  /** The day, YYYY-MM-DD. */
  readonly date: string;
  /** The couple's own hours, HH:MM, where they gave both. */
  readonly times?: { readonly access?: string; readonly clear?: string };
  /** The package's: from one hour to another, or so many in all. */
  readonly hours?: number | { readonly from: string; readonly to: string };
};

/** A venue's day runs from six to six; common practice, no source. */
const DAY_STARTS = "06:00";

/**
 * How long an agreed booking holds its rooms, by the venue's clocks ("2027-06-12 06:00"): from access to clearing where both are
 * known, else the package's hours of the day, else the whole day; a package of more than 24 hours as many days as they take.
 */
export function heldTime({ date, times, hours }: Asked): { readonly starts: string; readonly ends: string } {
  if (times?.access !== undefined && times.clear !== undefined) return between(date, times.access, times.clear);
  if (typeof hours === "object") return between(date, hours.from, hours.to);
  const days = Math.max(1, Math.ceil((hours ?? 24) / 24));
  return { starts: `${date} ${DAY_STARTS}`, ends: `${later(date, days)} ${DAY_STARTS}` };
}

/** An end that is no later than the start is of the next day. */
const between = (date: string, from: string, to: string): { readonly starts: string; readonly ends: string } =>
  ({ starts: `${date} ${from}`, ends: `${to <= from ? later(date, 1) : date} ${to}` });
const later = (date: string, days: number): string => Temporal.PlainDate.from(date).add({ days }).toString();
