/** The store as the use cases see it: a handle, a transaction, and one file of questions an aggregate. */
export type { AskedOfDesk, BookingRow, Database, HistoryRow, LinkRow, MailRow, RevisionRow, SessionRow } from "./database";
export type { Handle, Store } from "./store";
export * as bookings from "./bookings";
export * as revisions from "./revisions";
export * as venues from "./venues";
export * as links from "./links";
export * as sessions from "./sessions";
export * as outbox from "./outbox";
export * as history from "./history";
export * as counts from "./counts";
export * as adjustments from "./adjustments";
export type { AdjustmentRow } from "./database";
export * as heldRooms from "./held-rooms";
export * as people from "./people";
export * as lateChanges from "./late-changes";
export type { FinalGuests, LateChangeRow, PersonRow } from "./database";
export * as arrangements from "./arrangements";
export { isClash } from "./clash";
