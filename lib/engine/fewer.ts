import { people, type Brief } from "../brief";
import type { ArrangeResult } from "../layout";
import { changed, type Ask, type Change } from "./changes";
import { tell } from "./tell";

/** The same day with so many adults; counts that hang on them follow. */
function withAdults(brief: Brief, adults: number): { readonly change: Change["change"]; readonly brief: Brief | null } {
  const { guests } = brief, all = adults + guests.children;
  const cut = (n: number): number => Math.max(0, n - (guests.adults - adults));
  const change = {
    "guests.adults": adults,
    ...(guests.wheelchairs > all ? { "guests.wheelchairs": all } : {}),
    ...(guests.ceremony === undefined ? {} : { "guests.ceremony": cut(guests.ceremony) }),
    ...(guests.evening === undefined ? {} : { "guests.evening": cut(guests.evening) }),
    ...(guests.quiet !== undefined && guests.quiet > all ? { "guests.quiet": all } : {}),
  };
  return { change, brief: changed(brief, change) };
}

/** The most adults, as many as are asked for at the most, with whom no proof stands against the day; 0 where there is always one. */
export const mostUnproved = (brief: Brief, proved: Ask["proved"]): number =>
  lastFor(brief.guests.adults, (n) => { const b = withAdults(brief, n).brief; return b !== null && proved(b).length === 0; });

/** How many guests fewer an answer hints at: those whom its closest attempt leaves out, or whom the rows did not take. */
function short(guests: number, result: ArrangeResult): number | null {
  const seats = result.closest?.scenes.find((s) => s.id === "meal")?.seats;
  const all = [
    ...(seats === undefined ? [] : [guests - seats]),
    ...result.reasons.filter((f) => f.code === "rows-not-found" || f.code === "places-not-found").flatMap((f) => (f.measured && f.limit ? [f.limit - f.measured] : [])),
  ].filter((n) => n > 0);
  return all.length === 0 ? null : Math.max(...all);
}

/**
 * The fewest guests less with whom the day is arranged: from what the bounds let in and what the closest attempt seated, on until
 * one more was tried in vain; nearly so where the runs (`counts` of them) give out. Null where none of them worked, or none with more
 * adults than `above`.
 */
export function fewerGuests(brief: Brief, { run, proved, seated, stop, counts, above = 0 }: Ask & { readonly counts: number; readonly above?: number }): Change | null {
  const fixed = people(brief) - brief.guests.adults;
  const most = Math.min(brief.guests.adults - 1, mostUnproved(brief, proved));
  let low = above, high = Math.min(brief.guests.adults, most + 1), hinted = false, step = 0;
  let probe = seated === null ? most : Math.min(most, Math.max(1, seated - fixed));
  for (let i = 0; i < counts && high - low > 1 && probe >= 1 && !stop?.(); i++) {
    const next = withAdults(brief, probe).brief;
    const result = next ? run(next) : null;
    if (result?.status === "arranged") {
      low = probe;
      // What the closest attempt held is mostly all that can be: after it one more is tried, and only then the middle.
      probe = hinted ? low + 1 : Math.floor((low + high) / 2);
      hinted = false;
      continue;
    }
    high = probe;
    const less = result && short(probe + fixed, result);
    // A hint that was wrong is doubled, as long as that asks for more guests than the middle does.
    const middle = Math.floor((low + high) / 2);
    step = less === null ? 0 : step === 0 ? less : Math.max(less, 2 * step);
    hinted = step > 0 && probe - step > middle;
    probe = hinted ? probe - step : middle;
  }
  if (low <= above) return null;
  return { kind: "guests", change: withAdults(brief, low).change, told: tell("fewer-guests", { less: brief.guests.adults - low, seated: low + fixed }) };
}

/** The largest whole number from 1 to `most` that holds, where all below it do; 0 where none does. */
function lastFor(most: number, holds: (n: number) => boolean): number {
  let low = 0, high = most + 1;
  while (high - low > 1) { const n = Math.floor((low + high) / 2); if (holds(n)) low = n; else high = n; }
  return low;
}
