import { sql } from "kysely";
import type { Handle } from "./store";

export type Hold = { readonly booking: string; readonly venue: string; readonly rooms: readonly string[]; /** By the venue's clocks: "2027-06-12 06:00". */ readonly starts: string; readonly ends: string };

/** Holds rooms for a booking in place of those it held. The database refuses it where another booking holds one of them then (`isClash`). */
export async function hold(tx: Handle, { booking, venue, rooms, starts, ends }: Hold): Promise<void> {
  await release(tx, booking);
  if (rooms.length > 0) await tx.insertInto("heldRooms").values(rooms.map((room) => ({ booking, venue, room, starts, ends }))).execute();
}

export async function release(tx: Handle, booking: string): Promise<void> {
  await tx.deleteFrom("heldRooms").where("booking", "=", booking).execute();
}

/** Who holds any of these rooms at the time, other than the booking itself. */
export function clashes(db: Handle, { booking, venue, rooms, starts, ends }: Hold): Promise<{ readonly booking: string; readonly room: string }[]> {
  if (rooms.length === 0) return Promise.resolve([]);
  return db.selectFrom("heldRooms").select(["booking", "room"]).where("venue", "=", venue).where("room", "in", [...rooms]).where("booking", "!=", booking)
    .where(sql<boolean>`tsrange(starts, ends) && tsrange(${starts}::timestamp, ${ends}::timestamp)`).orderBy("booking").orderBy("room").execute();
}
