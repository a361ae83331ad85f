/** Dates, money and counts as people read them. Locale and zone are always given: nothing is taken from the machine. */
export type Speech = { readonly locale: string; readonly timeZone: string; readonly currency: string };

const noon = (date: string): Date => new Date(`${date}T12:00:00Z`);

/** Saturday 12 June 2027: a day of the calendar, the same in every zone. */
export const sayDay = (date: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { weekday: "long", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" }).format(noon(date)).replace(/,(?= \d)/, "");

export const sayShortDay = (date: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" }).format(noon(date)).replace(/,(?= \d)/, "");

/** A moment (ISO 8601, UTC) in the venue's zone: 9 May 2027, 16:20. */
export const sayMoment = (at: string, s: Speech): string =>
  new Intl.DateTimeFormat(s.locale, { day: "numeric", month: "long", year: "numeric", hour: "2-digit", minute: "2-digit", timeZone: s.timeZone }).format(new Date(at));

export const sayClock = (at: string, s: Speech): string =>
  new Intl.DateTimeFormat(s.locale, { hour: "2-digit", minute: "2-digit", timeZone: s.timeZone }).format(new Date(at));

/** Minor units of the currency as money; the number of decimals is the currency's own. */
export function sayMoney(minor: number, s: Pick<Speech, "locale" | "currency">): string {
  const format = new Intl.NumberFormat(s.locale, { style: "currency", currency: s.currency });
  return format.format(minor / 10 ** (format.resolvedOptions().maximumFractionDigits ?? 2));
}

const FEW = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
/** A small count in words, a larger one in figures. */
export const inWords = (n: number): string => FEW[n] ?? String(n);
export const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** How far off a due date is: "in 5 days", "today", "3 days late". */
export function sayLeft(days: number): string {
  if (days === 0) return "today";
  if (days === 1) return "tomorrow";
  if (days > 1) return `in ${days} days`;
  return days === -1 ? "1 day late" : `${-days} days late`;
}

/** Lengths from millimetres, in the venue's own system; feet and inches never show 12 inches. */
export function sayLength(mm: number, system: "metric" | "imperial"): string {
  if (system === "metric") return `${(mm / 1000).toFixed(2)} m`;
  const inches = Math.round(mm / 25.4);
  const [feet, rest] = [Math.floor(inches / 12), inches % 12];
  return rest === 0 ? `${feet}′` : feet === 0 ? `${rest}″` : `${feet}′ ${rest}″`;
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A fingerprint in groups of four, as far as is shown. */
export const sayFingerprint = (hex: string, groups = 4): string => (hex.slice(0, groups * 4).match(/.{1,4}/g) ?? []).join(" ");
