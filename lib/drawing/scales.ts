/** Scales that a sheet is drawn at: the reducing ones of ISO 5455 (1:50, 1:100, 1:200, 1:500, 1:1000) and those that venues need between. */
export const SCALES = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000] as const;
/** A plan that is carried has its distances in figures: between 1:150 and 1:250 it may take a scale that a rule does not have. */
export const CARRIED_SCALES = [...SCALES, 175, 225].sort((a, b) => a - b);
