export { seatTables } from "./seat";
export { ringMost, ringTuck, seatsAround } from "./seats";
export type { ChairSize, Family, FormWanted, Seated, SeatingAsk, SeatingOptions, SeatingSpace, Sides, TableKind, TablesWanted, Zone } from "./types";
export { reached } from "./ways";
