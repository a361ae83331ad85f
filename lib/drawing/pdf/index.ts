export { paint, plainRuns, type Colours } from "./paint";
export { toPoints, turnOf, type Placing } from "./points";
export type { Font, PdfSurface, Pen, Words } from "./surface";
