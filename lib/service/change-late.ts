import { fail, ok, type Result } from "../base";
import { readStep } from "../brief/draft";
import { briefSchema, type BriefFile } from "../brief";
import type { ArrangeResult, Layout } from "../layout";
import { bookings, lateChanges, lateWorks, revisions, venues, type BookingRow, type Handle, type RevisionRow } from "../store";
import type { VenueVersion } from "../store/venues";
import { gate } from "./gate";
import type { House } from "./house";
import { dropLate, workOutWaiting } from "./late-works";
import { nowIso } from "./moment";
import { record, type SentRevision } from "./send-request";
import type { Actor, FormValues, Outcome, Refusal } from "./types";
import { arrangementKey, briefOf } from "./view";

export type LateChange = {
  /** The agreed revision that it starts from. */
  readonly from: number;
  readonly was: Layout; readonly guestsWere: number; readonly guests: number;
  /** The numbers that it was worked out for, as they were typed. */
  readonly numbers: BriefFile["guests"];
  /** The layout for the new number; absent where none was found. */
  readonly layout?: Layout;
  readonly result: ArrangeResult;
  readonly venueVersion: number; readonly madeAt: string;
};

type Agreed = { readonly revision: RevisionRow; readonly venue: VenueVersion };

/**
 * Asks for the smallest change of what is agreed for new numbers of guests. It is worked out meanwhile, by this process or another, and
 * kept to be looked at. Nothing agreed is touched.
 */
export async function workOutChange(house: House, actor: Actor, { reference, values }: { readonly reference: string; readonly values: FormValues }): Promise<Outcome<null>> {
  const { db } = house.store;
  const held = await gate(db, actor, { reference, action: "change-late" });
  if (!held.ok) return held;
  const agreed = await agreedOf(db, held.value);
  if (!agreed.ok) return agreed;
  const { revision } = agreed.value;
  const read = readStep("guests", values);
  if (!read.ok) return fail({ code: "invalid", errors: read.error });
  const guests = read.value;
  if (guests?.adults === undefined) return fail({ code: "invalid", errors: [{ field: "adults", message: "Adults: type how many come now." }] });
  const file: BriefFile = { ...revision.brief, guests: { ...revision.brief.guests, ...bare(guests), adults: guests.adults, children: guests.children ?? 0 } };
  briefSchema.parse(file);
  const asked = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const now = await gate(tx, actor, { reference, action: "change-late", hold: true });
    if (!now.ok) return now;
    await lateWorks.ask(tx, { booking: reference, number: revision.number, brief: file, askedAt: nowIso(house), askedBy: actor.kind });
    return ok(null);
  });
  // The answer does not wait: what breaks is noted with the work, and whoever looks is told.
  if (asked.ok) workOutWaiting(house).catch(() => undefined);
  return asked;
}

const bare = <T extends object>(one: T): Partial<T> => JSON.parse(JSON.stringify(one));

/** A change that is asked for and not there yet; `failed`: it could not be worked out, and has to be asked again. */
export type LateWork = { readonly state: "working" | "failed"; readonly guests: number; readonly askedAt: string };

/** How far the last change that was asked for is; null where none waits. */
export async function lateWorkOf(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<LateWork | null>> {
  const { db } = house.store;
  const held = await gate(db, actor, { reference, action: "change-late" });
  if (!held.ok) return held;
  const work = await lateWorks.find(db, reference);
  return ok(work ? { state: work.fault === null ? "working" : "failed", guests: count(work.brief), askedAt: work.askedAt } : null);
}

const count = (file: BriefFile): number => file.guests.adults + (file.guests.children ?? 0);

/** What was last worked out, or null. */
export async function lateChangeOf(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<LateChange | null>> {
  const { db } = house.store;
  const held = await gate(db, actor, { reference, action: "change-late" });
  if (!held.ok) return held;
  const kept = await lateChanges.find(db, reference), revision = kept && (await revisions.find(db, reference, kept.number));
  if (!kept || !revision) return ok(null);
  return ok({ from: kept.number, was: revision.layout, guestsWere: count(revision.brief), guests: count(kept.brief), numbers: kept.brief.guests, layout: kept.result.layouts[0], result: kept.result, venueVersion: revision.venueVersion, madeAt: kept.madeAt });
}

/** Takes it: checked and priced anew by the agreed venue and prices, it becomes a further revision that waits to be agreed. The agreed one holds until then. */
export async function takeChange(house: House, actor: Actor, { reference, seen }: { readonly reference: string; /** When the change that was looked at was made. */ readonly seen: string }): Promise<Outcome<SentRevision>> {
  const { db } = house.store;
  const before = await gate(db, actor, { reference, action: "change-late" });
  if (!before.ok) return before;
  const kept = await lateChanges.find(db, reference), agreed = await agreedOf(db, before.value), layout = kept?.result.layouts[0];
  if (!agreed.ok) return agreed;
  if (!kept || !layout || kept.madeAt !== seen || kept.number !== agreed.value.revision.number) return fail({ code: "stale", revision: before.value.revision });
  const { venue } = agreed.value, brief = briefSchema.parse(kept.brief);
  const findings = await house.works.check(venue.venue, layout, brief), quote = await house.works.quote(venue.venue, brief, layout);
  const done = await house.store.transaction(async (tx): Promise<Outcome<SentRevision>> => {
    const held = await gate(tx, actor, { reference, action: "change-late", hold: true });
    if (!held.ok) return held;
    const whole = { ...layout, findings, quote };
    const sent = await record(tx, house, { actor, booking: held.value, as: "changed", ready: { venue, file: kept.brief, layout: whole, quote, findings } });
    if (!sent.ok) return sent;
    await followOn(tx, house, { booking: held.value, layout: whole, brief: kept.brief });
    await dropLate(tx, reference);
    return sent;
  });
  house.poke();
  return done;
}

/** Should it come back to the couple, they go on from the new numbers and the new layout. */
async function followOn(tx: Handle, house: House, { booking, layout, brief }: { readonly booking: BookingRow; readonly layout: Layout; readonly brief: BriefFile }): Promise<void> {
  const { adults, children } = brief.guests;
  const draft = { ...booking.draft, guests: { ...booking.draft.guests, ...bare(brief.guests), adults, children } };
  const asked = briefOf({ ...booking, draft }), now = await venues.find(tx, booking.venue);
  const key = asked && now ? arrangementKey(house.works.engineVersion, now, asked) : (booking.chosenKey ?? "");
  await bookings.change(tx, booking.reference, { draft, chosen: { layout, key }, asked: "done", at: nowIso(house) });
}

/** Lets what was worked out go. */
export async function dropChange(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<null>> {
  return house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "change-late", hold: true });
    if (!held.ok) return held;
    await dropLate(tx, reference);
    return ok(null);
  });
}

async function agreedOf(db: Handle, booking: BookingRow): Promise<Result<Agreed, Refusal>> {
  const revision = (await revisions.listOf(db, booking.reference)).findLast((one) => one.agreedAt !== null);
  const venue = revision && (await venues.find(db, booking.venue, revision.venueVersion));
  return revision && venue ? ok({ revision, venue }) : fail({ code: "not-found" });
}
