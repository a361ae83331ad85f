const INCH = 25.4, FOOT = 304.8;

/**
 * Least width of an accessway between tables, inches, by its length in feet from the middle of the farthest seat to the aisle:
 * 12 in, and 0.5 in for each foot or part of a foot past 12 ft. IBC 2018 1029.13.1.1.
 */
export const accesswayInches = (feet: number): number => 12 + 0.5 * Math.max(0, Math.ceil(feet - 12 - 1e-9));
/** The same in millimetres, for a length in millimetres. */
export const accesswayWidth = (length: number): number => accesswayInches(length / FOOT) * INCH;

/**
 * Clear floor ahead of a row of n loose chairs, inches; null past 100 chairs. IBC 2018 1029.13.2.1 (aisles at both ends: 0.3 in
 * a seat past 14) and 1029.13.2.2 (one end: 0.6 in a seat past 7), never more than 22 in asked.
 */
export function rowClearInches(n: number, ends: 1 | 2): number | null {
  if (n > 100) return null;
  return Math.min(22, 12 + (ends === 2 ? 0.3 * Math.max(0, n - 14) : 0.6 * Math.max(0, n - 7)));
}

/**
 * Least width of a level aisle, inches, by the places it serves and on how many sides they are; 0.2 in a person past that.
 * IBC 2018 1029.9.1(4), (5) and 1029.6.1(4). An accessible route is never under 36 in.
 */
export function aisleInches(served: number, sides: 1 | 2, accessible: boolean): number {
  const least = served < 15 && !accessible ? 30 : sides === 1 || served < 50 ? 36 : 42;
  return Math.max(least, 0.2 * served);
}

/** Most people for a floor of net area (m2) at so much floor a person (m2), whole people. IBC 2018 Table 1004.5 counts a part of a person as one. */
export const occupantLoad = (net: number, factor: number): number => Math.ceil(net / factor - 1e-9);

/** Wheelchair spaces among so many seats in rows. 2010 ADA Standards Table 221.2.1.1: 1 to 25 seats, 2 to 50, 4 to 150, 5 to 300, 6 to 500, one more for each 150 or part of them. */
export function wheelchairSpaces(seats: number): number {
  if (seats < 4) return 0;
  const steps: readonly (readonly [number, number])[] = [[25, 1], [50, 2], [150, 4], [300, 5], [500, 6]];
  return steps.find(([to]) => seats <= to)?.[1] ?? 6 + Math.ceil((seats - 500) / 150);
}
