/**
 * All tolerances of the house. Lengths are millimetres.
 * Inputs are whole millimetres; positions that come out of trigonometry carry rounding below 1e-6 mm.
 */
/** Two lengths nearer than this are the same length: standards print soft conversions (36 in is 914 or 915 mm), so 1 mm is let go. */
export const LET_GO = 1;
/** Slack for touching: shapes that meet along an edge do not overlap. */
export const TOUCH = 0.5;
/** Floating-point dust. */
export const DUST = 1e-6;
/** Clipper works on whole numbers: 1 mm is this many of its units. */
export const CLIP_SCALE = 100;
