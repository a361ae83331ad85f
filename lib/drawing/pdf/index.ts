export { paint, type Colours } from "./paint";
export { toPoints, type Placing } from "./points";
export type { Font, PdfSurface, Pen, Words } from "./surface";
