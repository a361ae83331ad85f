import { briefSchema } from "../brief";
import { bookings, lateChanges, lateWorks, revisions, venues, type Handle, type LateWorkRow } from "../store";
import type { House } from "./house";
import { iso, nowIso } from "./moment";

/** Far longer than a change takes; whoever claims and stops is followed by another after it. */
const CLAIM_MS = 3 * 60_000;
const MOST_TRIES = 3;
const running = new WeakMap<House, Promise<number>>();

/** Lets go of a change of what is agreed, worked out or still waiting to be. */
export async function dropLate(tx: Handle, reference: string): Promise<void> {
  await lateChanges.drop(tx, reference);
  await lateWorks.drop(tx, reference);
}

/** Works out every change that waits, one after the other; how many were. A call during another comes after it. */
export function workOutWaiting(house: House): Promise<number> {
  const before = running.get(house) ?? Promise.resolve(0);
  const next = before.catch(() => 0).then(() => all(house));
  running.set(house, next);
  return next;
}

async function all(house: House): Promise<number> {
  for (let done = 0; ; done += 1) {
    const now = house.clock.now(), work = await lateWorks.claim(house.store.db, { now: iso(now), until: iso(now + CLAIM_MS) });
    if (!work) return done;
    await one(house, work);
  }
}

/** The engine has thought outside any transaction: what was asked may have been replaced, or the booking closed, meanwhile. */
async function one(house: House, work: LateWorkRow): Promise<void> {
  const { db } = house.store, { booking: reference, number, brief } = work;
  try {
    const booking = await bookings.find(db, reference), revision = await revisions.find(db, reference, number);
    const venue = booking && revision && (await venues.find(db, booking.venue, revision.venueVersion));
    if (!venue || !revision) throw new Error(`revision ${number} of ${reference} is not there`);
    const result = await house.works.change(venue.venue, revision.layout, briefSchema.parse(brief));
    await house.store.transaction(async (tx) => {
      const now = await bookings.hold(tx, reference);
      if (!(await lateWorks.end(tx, work)) || now?.state !== "agreed") return;
      await lateChanges.keep(tx, { booking: reference, number, brief, result, madeAt: nowIso(house), madeBy: work.askedBy });
    });
  } catch (error) {
    await lateWorks.broke(db, { ...work, fault: error instanceof Error ? error.message : String(error), last: work.tries >= MOST_TRIES });
  }
}
