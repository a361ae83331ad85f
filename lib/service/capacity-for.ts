import { fail, ok } from "../base";
import type { Capacity } from "../layout";
import { counts, venues } from "../store";
import type { VenueVersion } from "../store/venues";
import { gate } from "./gate";
import { venueOf } from "./get-booking";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";

/** Counts being worked out: who asks meanwhile waits for the same ones. */
const underWay = new Map<string, Promise<Capacity>>();

/** The counts of all rooms of a venue version. They depend on nothing but venue and engine: worked out once, and kept. */
export async function countsOf(house: House, venue: Pick<VenueVersion, "hash" | "venue">): Promise<Capacity> {
  const key = `${house.works.engineVersion} ${venue.hash}`;
  const kept = await counts.find(house.store.db, key);
  if (kept) return kept;
  const running = underWay.get(key) ?? count(house, key, venue).finally(() => underWay.delete(key));
  underWay.set(key, running);
  return running;
}

async function count(house: House, key: string, { venue }: Pick<VenueVersion, "venue">): Promise<Capacity> {
  const result = await house.works.capacity(venue);
  await counts.keep(house.store.db, { key, result, at: nowIso(house) });
  return result;
}

/** Counts every venue ahead of the first who asks. */
export async function countAhead(house: House): Promise<void> {
  for (const venue of await venues.list(house.store.db)) await countsOf(house, venue);
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
