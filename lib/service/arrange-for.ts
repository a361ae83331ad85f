import { fail, ok } from "../base";
import { arrangements } from "../store";
import type { VenueVersion } from "../store/venues";
import { LAYOUTS, questionOf, SEED, type Brief } from "../brief";
import type { ArrangeResult } from "../layout";
import { foundFor, join, progressOf, resume, stop, wasStopped } from "./arranging";
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
  const asked = await questionFor(house, actor, reference);
  if (!asked.ok) return asked;
  const { venue, brief } = asked.value;
  const result = await within(arranged(house, asked.value, reference), waitMs);
  return result ? ok({ brief, result, venue: venue.venue, venueVersion: venue.version }) : fail({ code: "working" });
}

async function arranged(house: House, { venue, brief, key }: Asked, asker: string): Promise<ArrangeResult> {
  const look = (): Promise<ArrangeResult | undefined> => foundFor(house.store.db, key);
  const found = await look();
  if (found) return found;
  return join({
    key, asker, look,
    start: ({ flag, onProgress }) => house.works.arrange(venue.venue, questionOf(brief), { seed: SEED, layouts: LAYOUTS, flag, onProgress }),
    keep: (result) => arrangements.keep(house.store.db, { key, result, at: nowIso(house) }),
  });
}

type Asked = { readonly venue: VenueVersion; readonly brief: Brief; readonly key: string };

/** The question that a booking's answers ask the engine, and its key; a refusal where they ask none yet. */
async function questionFor(house: House, actor: Actor, reference: string): Promise<Outcome<Asked>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "arrange" });
  if (!booking.ok) return booking;
  const venue = await venueOf(db, booking.value);
  if (!venue) return fail({ code: "not-found" });
  const brief = briefOf(booking.value);
  return brief ? ok({ venue, brief, key: arrangementKey(house.works.engineVersion, venue, brief) }) : fail({ code: "incomplete", missing: ["guests"] });
}

export type ArrangingView = { readonly state: "here" | "working" | "none"; /** Stopped by the couple before its end. */ readonly stopped: boolean; readonly done: number; readonly of: number };

/** How far the engine is with a booking's answers. It starts nothing. */
export async function arrangingOf(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<ArrangingView>> {
  const asked = await questionFor(house, actor, reference);
  if (!asked.ok) return asked;
  const { key } = asked.value;
  const progress = progressOf(key);
  if (progress) return ok({ state: "working", stopped: false, ...progress });
  const here = (await foundFor(house.store.db, key)) !== undefined;
  return ok({ state: here ? "here" : "none", stopped: wasStopped(key), done: 0, of: 0 });
}

/** Ends the search, to show what has been found; or takes it up again from the start. */
export async function stopArranging(house: House, actor: Actor, { reference, again = false }: { readonly reference: string; readonly again?: boolean }): Promise<Outcome<null>> {
  const asked = await questionFor(house, actor, reference);
  if (!asked.ok) return asked;
  if (again) resume(asked.value.key); else stop(asked.value.key);
  return ok(null);
}

/** The value, or undefined when it is not there in time. A failure that comes later than that is met by whoever asks again. */
async function within<T>(work: Promise<T>, ms: number | undefined): Promise<T | undefined> {
  if (ms === undefined) return work;
  work.catch(() => undefined);
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<undefined>((resolve) => { timer = setTimeout(() => resolve(undefined), ms); });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
