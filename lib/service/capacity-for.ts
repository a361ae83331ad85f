import { fail, ok } from "../base";
import type { Capacity } from "../layout";
import type { VenueVersion } from "../store/venues";
import { gate } from "./gate";
import { venueOf } from "./get-booking";
import type { House } from "./house";
import type { Actor, Outcome } from "./types";

/** Counts of a venue version, kept in memory: they depend on nothing else. */
const kept = new Map<string, Promise<Capacity>>();

/** The counts of all rooms of a venue version, worked out once. */
export function countsOf(house: House, venue: Pick<VenueVersion, "hash" | "venue">): Promise<Capacity> {
  const key = `${house.works.engineVersion} ${venue.hash}`;
  const counted = kept.get(key) ?? house.works.capacity(venue.venue);
  kept.set(key, counted);
  counted.catch(() => kept.delete(key));
  return counted;
}

/** How many fit, by room and style, in the rooms of the booking's package. */
export async function capacityFor(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<Capacity>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "look" });
  if (!booking.ok) return booking;
  const venue = await venueOf(db, booking.value);
  if (!venue) return fail({ code: "not-found" });
  const rooms = venue.venue.packages.find((one) => one.id === booking.value.package)?.rooms ?? [];
  const all = await countsOf(house, venue);
  return ok({ ...all, rooms: all.rooms.filter((one) => rooms.includes(one.room)) });
}
