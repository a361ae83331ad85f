export { seatRows, FRONT_DEPTH } from "./seat-rows";
export { LEAST_CLEAR, MOST_IN_ROW, mostInRow, rowClear, rowClearInches, wheelchairSpacesNeeded, type RowEnds } from "./formula";
export type { RowAsk, RowPlan, RowSpace } from "./types";
