import type { Venue } from "../../venue";

/** What handling costs, in minutes of one person: common practice, no source. A venue's own `crew.minutes` goes before. */
export const HANDLING = {
  /** Set up or strike one table. */
  table: 1.5,
  /** Set out, stack or put away one chair. */
  chair: 0.25,
  /** Lay or lift one panel of a dance floor or stage. */
  panel: 1,
  /** Move one heavy or awkward piece: bar unit, stage, settle, band's or DJ's set. */
  heavy: 4,
  /** Lay one place: cutlery, glass, napkin. */
  cover: 0.5,
  /** Put on one cloth. */
  cloth: 1,
} as const;

/** Pieces one person carries at a time, and people one piece takes: common practice, no source. */
export const CARRY = {
  chair: { atATime: 4, people: 1 },
  panel: { atATime: 1, people: 1 },
  table: { atATime: 1, people: 2 },
  heavy: { atATime: 1, people: 4 },
} as const;

/** Walking with or without a load, metres a second: common practice, no source. */
export const WALK = 1.2;
/** Seconds lost at a door by each passage: more at a narrow one (common practice, no source). */
export const doorSeconds = (width: number): number => 3 * Math.max(1, 1200 / Math.max(1, width));
/** People who leave through each metre of door in a second: common practice, no source. */
export const FLOW = 1;
/** Crew where the venue names none: common practice, no source. */
export const CREW = 4;

export type Family = keyof typeof CARRY;
export type Rates = { readonly [K in keyof typeof HANDLING]: number };
export const ratesOf = (venue: Venue): Rates => ({ ...HANDLING, ...definedOnly(venue.crew?.minutes ?? {}) });

function definedOnly(given: NonNullable<NonNullable<Venue["crew"]>["minutes"]>): Partial<Rates> {
  const out: { -readonly [K in keyof Rates]?: number } = {};
  for (const key of ["table", "chair", "panel", "heavy", "cover", "cloth"] as const) {
    const v = given[key];
    if (v !== undefined) out[key] = v;
  }
  return out;
}
