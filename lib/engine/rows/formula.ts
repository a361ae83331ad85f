const INCH = 25.4;
/** Least clear floor ahead of a row chair, mm: 12 in (IBC 2018 1029.13.2). */
export const LEAST_CLEAR = 12 * INCH;
/** Most clear floor that the formula ever asks, inches: 22 (IBC 2018 1029.13.2). */
const CAP = 22;
/** Most seats in a row with an aisle at both ends (IBC 2018 1029.13.2.1). */
export const MOST_IN_ROW = 100;

export type RowEnds = 1 | 2;

/**
 * Clear floor that a row of n seats needs ahead of it, inches; null past 100 seats.
 * IBC 2018 1029.13.2.1 (aisle at both ends: 12 + 0.3 a seat past 14) and 1029.13.2.2 (one end: 12 + 0.6 a seat past 7), never over 22.
 */
export function rowClearInches(n: number, ends: RowEnds): number | null {
  if (n > MOST_IN_ROW) return null;
  const more = ends === 2 ? 0.3 * Math.max(0, n - 14) : 0.6 * Math.max(0, n - 7);
  return Math.min(CAP, 12 + more);
}
/** The same in millimetres. */
export const rowClear = (n: number, ends: RowEnds): number | null => {
  const inches = rowClearInches(n, ends);
  return inches === null ? null : inches * INCH;
};

/** Most seats that a row may hold with this much clear floor ahead, mm; 0 when even one has too little. */
export function mostInRow(clear: number, ends: RowEnds): number {
  let n = 0;
  // A hair is let go, so that 304.8 mm given as a whole 305 or computed with dust is 12 in.
  while (n < MOST_IN_ROW && (rowClear(n + 1, ends) ?? Infinity) <= clear + 1e-6) n++;
  return n;
}

/**
 * Wheelchair spaces that an assembly area with chairs in rows needs (2010 ADA Standards, table 221.2.1.1).
 */
export function wheelchairSpacesNeeded(seats: number): number {
  if (seats < 4) return 0;
  const steps: readonly (readonly [number, number])[] = [[25, 1], [50, 2], [150, 4], [300, 5], [500, 6]];
  for (const [upTo, spaces] of steps) if (seats <= upTo) return spaces;
  return seats <= 5000 ? 6 + Math.ceil((seats - 500) / 150) : 36 + Math.ceil((seats - 5000) / 200);
}
