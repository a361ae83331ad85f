export { paint, type Colours } from "./paint";
export { IN_PLACE, placed, POINTS_PER_MM, toPoints, type Placing } from "./points";
export type { Font, PdfSurface, Pen, Words } from "./surface";
