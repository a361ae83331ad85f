/** Most discs of diameter 1 in a square of area n = 1 ... 30: OEIS A084616. */
export const A084616 = [1, 1, 2, 4, 4, 5, 5, 6, 9, 9, 9, 10, 12, 13, 14, 16, 16, 16, 18, 19, 20, 21, 22, 23, 25, 25, 26, 27, 28, 30] as const;

/**
 * Most rounds that a search of sixty times the usual steps from four seeds has found in each of the bench's rooms (25 November 2026): the
 * best known to this project, no proved bound.
 */
export const KNOWN: Readonly<Record<string, number>> = {
  "oblong 16.2 x 9.4 m": 17, "oblong 24 x 11 m": 31, "oblong 31 x 17.5 m": 67, "L of 18 x 14 m": 21, "L of 26 x 20 m": 47, "T of 20 x 15 m": 22,
  "six columns in 19.5 x 12.2 m": 25, "four columns in 14 x 14 m": 21, "slanted wall, 17 x 12 m": 21, "two slanted walls, 22 x 13 m": 26,
  "dance floor of 5.4 m in 16 x 16 m": 24, "dance floor of 6.3 x 4.5 m in 22 x 13 m": 28, "octagon of 15 m": 21,
};

/**
 * The most long tables known in each of the rooms. No table of such figures is published: these are the engine's own at 60 times its
 * effort (3,000 clearings, 5 to 18 s a room, 30 November 2026), and so a mark to be held, not a bound.
 */
export const KNOWN_LONG: Readonly<Record<string, number>> = {
  "oblong 16.2 x 9.4 m": 28,
  "oblong 24 x 11 m": 55,
  "oblong 31 x 17.5 m": 112,
  "L of 18 x 14 m": 36,
  "L of 26 x 20 m": 74,
  "T of 20 x 15 m": 39,
  "six columns in 19.5 x 12.2 m": 41,
  "four columns in 14 x 14 m": 35,
  "slanted wall, 17 x 12 m": 33,
  "two slanted walls, 22 x 13 m": 39,
  "dance floor of 5.4 m in 16 x 16 m": 37,
  "dance floor of 6.3 x 4.5 m in 22 x 13 m": 45,
  "octagon of 15 m": 29,
};
