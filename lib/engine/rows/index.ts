export { seatRows } from "./seat-rows";
export { mostInRow, rowClear, rowClearInches, wheelchairSpacesNeeded, type RowEnds } from "./formula";
export type { RowAsk, RowPlan, RowSpace } from "./types";
export { rowPieceIn } from "./left";
