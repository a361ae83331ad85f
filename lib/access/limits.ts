const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** Lifetimes in milliseconds. A session ends when it idles too long, and in any case at its absolute age. */
export const LIFETIMES = {
  /** A sign-in to the desk, mailed; opens once. */
  deskLink: 10 * MINUTE,
  /** A couple's link outlives the day by this, so that the papers can still be read. */
  coupleLinkAfterEvent: 30 * DAY,
  couple: { idle: 14 * DAY, absolute: 90 * DAY },
  look: { idle: 14 * DAY, absolute: 90 * DAY },
  desk: { idle: 8 * HOUR, absolute: 3 * DAY },
  /** How stale the note of a session's last use may be: not every look is a write. */
  seenEvery: 5 * MINUTE,
} as const;

/** Sign-in mails to one person of the desk in an hour. */
export const DESK_LINKS_AN_HOUR = 6;
/** Look-only links that a couple may make in an hour, and that may stand at once. */
export const LOOK_LINKS = { anHour: 12, standing: 24 } as const;
export { HOUR };
