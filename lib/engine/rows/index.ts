export { rowPlans, seatRows } from "./seat-rows";
export { mostInRow, rowClear, rowClearInches, wheelchairSpacesNeeded, type RowEnds } from "./formula";
export type { RowAsk, RowPlan, RowSpace } from "./types";
export { standsAmong } from "./looks";
export { AHEAD } from "./slots";
export { rowPieceIn } from "./left";
