/**
 * What one arrangement may still spend, in steps of about a millisecond of a quiet core. Counted by what is done, never by a clock,
 * so that the same files stop at the same place everywhere.
 */
export type Effort = { left: number };

/** A day at the mill in three layouts takes 500 to 2,100 steps, 400 guests in one hall 1,000; a day that will not come out ends here. */
export const EFFORT = 12_000;
/** A change of the brief that is only tried out. */
export const TRIED_EFFORT = 1_500;

export const effortOf = (left: number = EFFORT): Effort => ({ left });
export const spent = (e: Effort): boolean => e.left <= 0;

/** What a piece of work is counted as: measured on days at the mill, in halls of 50 to 400 guests and in random houses. */
export const STEPS = {
  /** Tables sought for one floor: by the places wanted, and by the search on top of the patterns. */
  tables: (places: number, search: number): number => 20 + places / 4 + 200 * search,
  /** Rows sought before every wall of a room. */
  rows: (people: number, wheelchairs: number): number => 20 + people / 4 + 15 * wheelchairs,
  /** Ways judged with so many pieces in the rooms: by the quick floor, and by the exact one where that is not content. */
  quick: (pieces: number): number => 2 + pieces / 25,
  exact: (pieces: number): number => 5 + pieces / 4,
  /** A day made whole: turnovers, words, and the check of all its parts. */
  whole: (pieces: number): number => 50 + pieces,
} as const;

/** Takes a piece of work off what is left. */
export const spend = (e: Effort, steps: number): void => { e.left -= steps; };
