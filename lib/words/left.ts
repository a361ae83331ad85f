/** What a voice must know to say how long it is to a due date, and how long that is past. */
type Ahead = "today" | "tomorrow" | "in {n} days" | "in about {n} months" | "in about {n} years" | "in about {n} and a half years";
type Late = "{n} days late" | "about {n} months late" | "about {n} years late";
type Saying<P> = (phrase: P, values?: { readonly n: number }) => string;

const YEAR = 365.25;
/** From so many days on nobody counts days, and from so many months on not months either. */
const MONTHS_FROM = 60, YEARS_FROM = 24;
const months = (days: number): number => Math.round((12 * days) / YEAR);

/** How long it is to a day, in whole days, as a person gives it beside the date: "today", "in 5 days", "in about 9 months", "in about 2 and a half years". */
export function sayAhead(days: number, say: Saying<Ahead>): string {
  if (days <= 0) return say("today");
  if (days === 1) return say("tomorrow");
  if (days < MONTHS_FROM) return say("in {n} days", { n: days });
  if (months(days) < YEARS_FROM) return say("in about {n} months", { n: months(days) });
  const halves = Math.round((2 * days) / YEAR);
  return say(halves % 2 === 1 ? "in about {n} and a half years" : "in about {n} years", { n: Math.floor(halves / 2) });
}

/** The same of a day that may be past: "3 days late". */
export function sayLeft(days: number, say: Saying<Ahead | Late>): string {
  if (days >= 0) return sayAhead(days, say);
  if (-days < MONTHS_FROM) return say("{n} days late", { n: -days });
  return months(-days) < YEARS_FROM ? say("about {n} months late", { n: months(-days) }) : say("about {n} years late", { n: Math.round(-days / YEAR) });
}
