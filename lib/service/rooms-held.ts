import { heldTime } from "../booking";
import { briefSchema } from "../brief";
import { heldRooms, venues, type BookingRow, type Handle, type RevisionRow } from "../store";
import type { Refusal } from "./types";

type Hold = Parameters<typeof heldRooms.hold>[1];

/** The rooms that a revision takes, and when: those of its package and any other that its layout uses. */
export async function roomsOf(db: Handle, booking: BookingRow, revision: RevisionRow): Promise<Hold> {
  const venue = (await venues.find(db, booking.venue, revision.venueVersion))?.venue;
  const brief = briefSchema.parse(revision.brief);
  const pack = venue?.packages.find((one) => one.id === brief.package);
  const rooms = [...new Set([...(pack?.rooms ?? []), ...revision.layout.scenes.flatMap((scene) => scene.rooms)])];
  return { booking: booking.reference, venue: booking.venue, rooms, ...heldTime({ date: booking.eventDate, times: brief.times, hours: pack?.hours }) };
}

/** The refusal where another booking holds one of the rooms then. */
export async function takenBy(db: Handle, wanted: Hold): Promise<Extract<Refusal, { code: "taken" }> | undefined> {
  const found = await heldRooms.clashes(db, wanted);
  const by = found[0]?.booking;
  if (by === undefined) return undefined;
  const rooms = (await venues.find(db, wanted.venue))?.venue.rooms ?? [];
  return { code: "taken", by, rooms: found.filter((one) => one.booking === by).map((one) => rooms.find((r) => r.id === one.room)?.name ?? one.room) };
}
