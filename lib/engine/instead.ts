import { briefSchema, people, type Brief } from "../brief";
import type { ArrangeResult, Instead } from "../layout";
import type { Venue } from "../venue";
import { proofs } from "./bounds";
import { changesOf, type Change } from "./changes";
import { inBritish, tell } from "./tell";

/** Changes that are run for the sake of better advice, at the most, and those offered besides fewer guests. */
const RUNS = 8, OFFERED = 3;
/** Runs in search of the most guests that are seated. */
const COUNTS = 6;

/** A brief with some fields changed, each named by its path. */
export function changed(brief: Brief, change: Readonly<Record<string, unknown>>): Brief | null {
  const copy: Record<string, unknown> = JSON.parse(JSON.stringify(brief)) as Record<string, unknown>;
  for (const [path, value] of Object.entries(change)) {
    const keys = path.split(".");
    let at: Record<string, unknown> = copy;
    for (const k of keys.slice(0, -1)) at = at[k] as Record<string, unknown>;
    at[keys[keys.length - 1] as string] = value;
  }
  const parsed = briefSchema.safeParse(copy);
  return parsed.success ? parsed.data : null;
}

type Ask = {
  readonly run: (brief: Brief) => ArrangeResult;
  /** Guests whom the closest attempt at the whole brief seats; null where none was made. */
  readonly seated: number | null;
  readonly stop?: (() => boolean) | undefined;
};

/**
 * The smallest changes of the brief that were run and found to work, the cheapest for the couple first: at most three, and the fewest
 * guests less. Each text names one change; none is offered that was not arranged.
 */
export function insteadOf(venue: Venue, brief: Brief, ask: Ask): readonly Instead[] {
  const out: Instead[] = [];
  let runs = 0;
  // One change of a kind is enough: a dance floor that is smaller by less comes first.
  const kinds = new Set<string>();
  for (const c of changesOf(venue, brief)) {
    if (runs >= RUNS || out.length >= OFFERED || ask.stop?.()) break;
    const next = kinds.has(c.kind) ? null : changed(brief, c.change);
    // What a bound refuses need not be run.
    if (!next || proofs(venue, next).length > 0) continue;
    runs++;
    if (ask.run(next).status !== "arranged") continue;
    out.push(offer(venue, c));
    kinds.add(c.kind);
  }
  // Where something else does as well, the fewest need not be found out to a guest.
  const fewer = fewerGuests(venue, brief, { ...ask, counts: out.length > 0 ? COUNTS / 2 : COUNTS });
  return fewer ? [...out, fewer] : out;
}

const offer = (venue: Venue, { change, told }: Pick<Change, "change" | "told">): Instead => ({ change, text: inBritish(venue, told), told });

/** The same day with so many adults; counts that hang on them follow. */
function withAdults(brief: Brief, adults: number): { readonly change: Readonly<Record<string, unknown>>; readonly brief: Brief | null } {
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

/**
 * The fewest guests less with whom the day is arranged: from what the bounds let in and what the closest attempt seated, on until
 * one more was tried in vain; nearly so where the runs give out.
 */
function fewerGuests(venue: Venue, brief: Brief, { run, seated, stop, counts }: Ask & { readonly counts: number }): Instead | null {
  const fixed = people(brief) - brief.guests.adults;
  const proved = (adults: number): boolean => { const b = withAdults(brief, adults).brief; return b === null || proofs(venue, b).length > 0; };
  let low = 0, high = brief.guests.adults;
  const most = lastFor(brief.guests.adults - 1, (n) => !proved(n));
  high = Math.min(high, most + 1);
  let probe = seated === null ? most : Math.min(most, Math.max(1, seated - fixed));
  for (let i = 0; i < counts && high - low > 1 && probe >= 1 && !stop?.(); i++) {
    const next = withAdults(brief, probe).brief;
    const result = next ? run(next) : null;
    if (result?.status === "arranged") {
      low = probe;
      probe = Math.floor((low + high) / 2);
      continue;
    }
    high = probe;
    const seats = result?.closest?.scenes.find((s) => s.id === "meal")?.seats;
    // What the closest attempt seated is mostly all that can be: after it one more is tried, and no longer the middle.
    const hint = seats === undefined ? Math.floor((low + high) / 2) : seats - fixed;
    probe = Math.min(high - 1, Math.max(low + 1, hint));
  }
  if (low < 1) return null;
  const less = brief.guests.adults - low;
  return offer(venue, { change: withAdults(brief, low).change, told: tell("fewer-guests", { less, seated: low + fixed }) });
}

/** The largest whole number from 1 to `most` that holds, where all below it do; 0 where none does. */
function lastFor(most: number, holds: (n: number) => boolean): number {
  let low = 0, high = most + 1;
  while (high - low > 1) { const n = Math.floor((low + high) / 2); if (holds(n)) low = n; else high = n; }
  return low;
}
