/** A day of the calendar (YYYY-MM-DD) in words, with its weekday unless `form` is "date". Days have no time zone: the same text gives the same words everywhere. */
export function formatDay(date: string, locale: string, form: "full" | "short" | "date" = "full"): string {
  const at = instant(date);
  if (at === null) return date;
  const options: Intl.DateTimeFormatOptions = form === "full"
    ? { weekday: "long", day: "numeric", month: "long", year: "numeric" }
    : form === "date" ? { day: "numeric", month: "long", year: "numeric" } : { weekday: "short", day: "numeric", month: "short" };
  const key = `${locale} ${form}`, format = formats.get(key) ?? new Intl.DateTimeFormat(locale, { ...options, timeZone: "UTC", calendar: "gregory" });
  formats.set(key, format);
  // English with the day first is written with a comma by some versions of the Unicode data and without by others: "Saturday 12 June 2027" everywhere.
  return locale.startsWith("en") ? format.format(at).replace(/^(\p{L}+),(?= \d)/u, "$1") : format.format(at);
}

/** A format is dear to make and cheap to use: each is made once. */
const formats = new Map<string, Intl.DateTimeFormat>();

function instant(date: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  return parts ? Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])) : null;
}
