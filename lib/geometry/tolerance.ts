/**
 * Tolerances. Lengths are millimetres. Inputs are whole millimetres; positions that come out of trigonometry carry rounding
 * below 1e-6 mm. Standards print soft conversions (36 in is 914 or 915 mm), so the rules let 1 mm go; shapes that meet along
 * an edge do not overlap.
 */
/** Clipper works on whole numbers: 1 mm is this many of its units. */
export const CLIP_SCALE = 100;
