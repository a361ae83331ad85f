import type { Around, Size } from "../place";

/** A piece's own size and the floor it needs about it; where each figure comes from stands beside it. */
export type Sized = Size & { readonly around: Around; readonly source: string };

const none: Around = { front: 0, back: 0, side: 0 };

/**
 * DJ: 100 to 150 sq ft with the floor around, table 6 to 8 ft (rental trade's charts, second-hand). The spot below is the table
 * with the person and the loudspeakers; with 325 mm each side and 1550 mm before it, which dancers may share, it makes
 * 3.05 x 3.05 m = 100 sq ft.
 */
export const DJ: Sized = { width: 2400, depth: 1500, around: { front: 1550, back: 0, side: 325 }, source: "rental trade charts: 100 sq ft with surround" };

/** Bands by players: 2 on 3 x 2 m, 4 to 5 on 4 x 3 m (a band's own page); 6 on 16 x 12 ft, 7-8 on 24 x 16 ft, more on 24 x 20 ft (another's). */
export function bandSize(players: number): Sized {
  const n = players > 0 ? players : 4;
  const [width, depth] = n <= 2 ? [3000, 2000] : n <= 5 ? [4000, 3000] : n <= 6 ? [4877, 3658] : n <= 8 ? [7315, 4877] : [7315, 6096];
  return { width, depth, around: { front: 600, back: 0, side: 0 }, source: "bands' own pages" };
}

/** Floor behind a bar for those who serve and before it for those who wait: 800 mm (common practice, no source), 1220 mm (queue lane 4 ft, UFC 4-722-01). */
export const BAR_AROUND: Around = { front: 1220, back: 800, side: 0 };
/** A buffet is served from one side: the lane before it is 4 ft, and 36 in at the least (UFC 4-722-01; 1991 ADA figure 53). */
export const BUFFET_AROUND: Around = { front: 1220, back: 0, side: 0 };
/** One buffet line serves about 120 guests (a university union's practice); two tables make a line. */
export const GUESTS_A_BUFFET_LINE = 120;

/** Where the venue owns no such thing, what is brought: sizes from memory, unconfirmed, unless said. */
export const BROUGHT = {
  "photo-booth": { width: 2440, depth: 2440, around: { front: 900, back: 0, side: 0 }, source: "8 x 8 ft, from memory" },
  lounge: { width: 1800, depth: 800, around: { front: 600, back: 0, side: 0 }, source: "a sofa, from memory" },
  easel: { width: 700, depth: 600, around: { front: 900, back: 0, side: 0 }, source: "common practice, no source" },
  "children-corner": { width: 2000, depth: 2000, around: none, source: "common practice, no source" },
  display: { width: 1220, depth: 610, around: { front: 600, back: 0, side: 0 }, source: "common practice, no source" },
  "cocktail-table": { width: 762, depth: 762, around: none, source: "30 in round, rental trade" },
} as const satisfies Record<string, Sized>;

/** One dancer takes 4.5 sq ft (five rental houses): 0.418 sq m. */
export const DANCER_AREA = 4.5 * 0.09290304;
/** Floor that those who look at a display stand on. */
export const DISPLAY_AROUND: Around = { front: 600, back: 0, side: 0 };
/** Panel taken where the venue owns none: 3 x 3 ft. */
export const PANEL = 914;
