import { formatDay, formatLength, formatMoney } from "@/lib/measure";
import { sayLeft as leftIn } from "@/lib/words/left";
import { ENGLISH, type Say } from "@/lib/words/pages/say";

/** Dates, money and counts as people read them. Locale and zone are always given: nothing is taken from the machine. */
export type Speech = { readonly locale: string; readonly timeZone: string; readonly currency: string };

const formats = new Map<string, Intl.DateTimeFormat>();
type How = { readonly locale: string; readonly timeZone: string; readonly options: Intl.DateTimeFormatOptions };
/** A format is dear to make and cheap to use: each is made once. */
function written(at: Date, { locale, timeZone, options }: How): string {
  const key = JSON.stringify([locale, timeZone, options]);
  const format = formats.get(key) ?? new Intl.DateTimeFormat(locale, { ...options, timeZone });
  formats.set(key, format);
  return format.format(at);
}

const CLOCK: Intl.DateTimeFormatOptions = { hour: "2-digit", minute: "2-digit" };

/** Saturday 12 June 2027. */
export const sayDay = (date: string, locale: string): string => formatDay(date, locale);

export const sayShortDay = (date: string, locale: string): string => formatDay(date, locale, "short");

/** A moment (ISO 8601, UTC) in the venue's zone: 9 May 2027, 16:20. */
export const sayMoment = (at: string, s: Speech): string =>
  written(new Date(at), { ...s, options: { day: "numeric", month: "long", year: "numeric", ...CLOCK } });

export const sayClock = (at: string, s: Speech): string => written(new Date(at), { ...s, options: CLOCK });

/** Minor units of the currency as money; the number of decimals is the currency's own. */
export const sayMoney = (minor: number, s: Pick<Speech, "locale" | "currency">): string => formatMoney(minor, s.currency, s.locale);

const FEW = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"] as const;
/** A small count in words, a larger one in figures. */
export function inWords(n: number, say: Say = ENGLISH): string {
  const word = FEW[n];
  return word === undefined ? String(n) : say(word);
}
export const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** How far off a due date is: "in 5 days", "in about 9 months", "3 days late". */
export const sayLeft = (days: number, say: Say = ENGLISH): string => leftIn(days, say);

/** Lengths from millimetres, as the reader measures; feet and inches never show 12 inches. */
export const sayLength = (mm: number, { lengths, locale }: { readonly lengths: "metric" | "imperial"; readonly locale: string }): string =>
  formatLength(mm, { system: lengths, locale, unit: true });

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A fingerprint in groups of four, as far as is shown. */
export const sayFingerprint = (hex: string, groups = 4): string => (hex.slice(0, groups * 4).match(/.{1,4}/g) ?? []).join(" ");
