import { fail, ok } from "../base";
import { arrangements } from "../store";
import type { VenueVersion } from "../store/venues";
import { LAYOUTS, questionOf, SEED, type Brief } from "../brief";
import type { ArrangeResult } from "../layout";
import { gate } from "./gate";
import { venueOf } from "./get-booking";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Arranged, Outcome } from "./types";
import { arrangementKey, briefOf } from "./view";

/** `waitMs`: no longer than this for an answer; the engine goes on meanwhile, and "working" means to ask again. Left out: until it is there. */
type Question = { readonly reference: string; readonly waitMs?: number };

/** Runs the engine on the answers so far. Its answer is kept while answers, venue and engine stay the same. */
export async function arrangeFor(house: House, actor: Actor, { reference, waitMs }: Question): Promise<Outcome<Arranged>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "arrange" });
  if (!booking.ok) return booking;
  const venue = await venueOf(db, booking.value);
  if (!venue) return fail({ code: "not-found" });
  const brief = briefOf(booking.value);
  if (!brief) return fail({ code: "incomplete", missing: ["guests"] });
  const result = await within(arranged(house, venue, brief), waitMs);
  return result ? ok({ brief, result, venue: venue.venue, venueVersion: venue.version }) : fail({ code: "working" });
}

/** Questions being worked on: who asks the same meanwhile waits for the one answer. */
const underWay = new Map<string, Promise<ArrangeResult>>();

async function arranged(house: House, venue: VenueVersion, brief: Brief): Promise<ArrangeResult> {
  const key = arrangementKey(house.works.engineVersion, venue, brief);
  const kept = await arrangements.find(house.store.db, key);
  if (kept) return kept;
  const running = underWay.get(key) ?? work(house, { key, venue, brief }).finally(() => underWay.delete(key));
  underWay.set(key, running);
  return running;
}

async function work(house: House, { key, venue, brief }: { readonly key: string; readonly venue: VenueVersion; readonly brief: Brief }): Promise<ArrangeResult> {
  const result = await house.works.arrange(venue.venue, questionOf(brief), { seed: SEED, layouts: LAYOUTS });
  await arrangements.keep(house.store.db, { key, result, at: nowIso(house) });
  return result;
}

/** The value, or undefined when it is not there in time. A failure that comes later than that is met by whoever asks again. */
async function within<T>(work: Promise<T>, ms: number | undefined): Promise<T | undefined> {
  if (ms === undefined) return work;
  work.catch(() => undefined);
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<undefined>((resolve) => { timer = setTimeout(() => resolve(undefined), ms); });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
