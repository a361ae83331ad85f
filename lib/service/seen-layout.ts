import { fail, ok, type Result } from "../base";
import { todayAt } from "../booking";
import { briefFileOfDraft } from "../brief/draft";
import type { BriefFile } from "../brief";
import type { Layout, Quote } from "../layout";
import { lateChanges, revisions, venues, type BookingRow } from "../store";
import type { VenueVersion } from "../store/venues";
import { venueOf } from "./get-booking";
import { foundFor } from "./arranging";
import { gate } from "./gate";
import type { House } from "./house";
import type { Actor, Refusal } from "./types";
import { arrangementKey, briefOf, factsOf } from "./view";

/** Which layout is meant: a revision by its number, one now offered by its id, or else the newest that speaks for the booking. */
export type Which = { readonly layout?: string; readonly number?: number };
export type Seen = {
  readonly venue: VenueVersion; readonly layout: Layout; readonly brief: BriefFile; readonly quote?: Quote;
  readonly number: number; readonly fingerprint?: string; readonly sentAt?: string; readonly agreedAt?: string;
};

/** The days that papers and plans bear, at the venue, YYYY-MM-DD: what was not sent is drawn today. */
export function daysOf(house: House, { venue, sentAt, agreedAt }: Pick<Seen, "venue" | "sentAt" | "agreedAt">): { readonly sentOn?: string; readonly drawnOn: string; readonly agreedOn?: string } {
  const dayOf = (at: string): string => todayAt(venue.venue.timeZone, Date.parse(at));
  const sentOn = sentAt && dayOf(sentAt);
  return { sentOn, drawnOn: sentOn ?? todayAt(venue.venue.timeZone, house.clock.now()), agreedOn: agreedAt && dayOf(agreedAt) };
}

/** What a plan is drawn from. `set`: the layout that the venue itself put down when nothing had come, for which there need be no answers. `since`: the number of an earlier revision, to draw what changed. */
/** `late`: a change of what is agreed, worked out and not taken. */
export type PlanWhich = Which & { readonly set?: boolean; readonly late?: boolean; readonly since?: number };
export type PlanSeen = Pick<Seen, "venue" | "layout" | "number" | "fingerprint" | "sentAt" | "agreedAt"> & { readonly brief?: BriefFile; readonly was?: Layout };

/** Finds a layout that is to be drawn, and the earlier one that it is held against. */
export async function planSeen(house: House, booking: BookingRow, { set = false, late = false, since, ...which }: PlanWhich): Promise<Result<PlanSeen, Refusal>> {
  const seen = late ? await lateSeen(house, booking) : set ? await setSeen(house, booking) : await seenLayout(house, booking, which);
  if (!seen.ok || since === undefined) return seen;
  const earlier = await revisions.find(house.store.db, booking.reference, since);
  return earlier ? ok({ ...seen.value, was: earlier.layout }) : fail({ code: "not-found" });
}

/** The same for whoever asks by a booking's reference. */
export async function planFor(house: House, actor: Actor, { reference, ...which }: PlanWhich & { readonly reference: string }): Promise<Result<PlanSeen, Refusal>> {
  const booking = await gate(house.store.db, actor, { reference, action: "glance" });
  if (!booking.ok) return booking;
  // Who may only look sees what speaks for the booking now, and no other.
  return planSeen(house, booking.value, actor.kind === "look" ? { set: which.set } : { ...which, late: which.late === true && actor.kind === "desk" });
}

async function lateSeen(house: House, booking: BookingRow): Promise<Result<PlanSeen, Refusal>> {
  const { db } = house.store;
  const kept = await lateChanges.find(db, booking.reference), agreed = kept && (await revisions.find(db, booking.reference, kept.number));
  const venue = agreed && (await venues.find(db, booking.venue, agreed.venueVersion)), layout = kept?.result.layouts[0] ?? kept?.result.closest;
  return venue && layout ? ok({ venue, layout, brief: kept.brief, number: 0 }) : fail({ code: "not-found" });
}

async function setSeen(house: House, booking: BookingRow): Promise<Result<PlanSeen, Refusal>> {
  const venue = booking.setVersion === null ? undefined : await venues.find(house.store.db, booking.venue, booking.setVersion);
  return venue && booking.setLayout !== null ? ok({ venue, layout: booking.setLayout, number: 0 }) : fail({ code: "not-found" });
}

/** Finds it, with the venue and the answers that it was made from. */
export async function seenLayout(house: House, booking: BookingRow, which: Which): Promise<Result<Seen, Refusal>> {
  const { db } = house.store;
  if (which.number !== undefined) return revisionSeen(house, booking, which.number);
  const venue = await venueOf(db, booking);
  const brief = briefFileOfDraft(booking.draft, factsOf(booking));
  if (!venue || !brief) return fail({ code: "incomplete", missing: ["guests"] });
  if (which.layout !== undefined) {
    const now = briefOf(booking);
    const offered = now && (await foundFor(db, arrangementKey(house.works.engineVersion, venue, now)));
    const layout = [...(offered?.layouts ?? []), ...(offered?.closest ? [offered.closest] : [])].find((one) => one.id === which.layout);
    return layout ? ok({ venue, layout, brief, quote: layout.quote, number: 0 }) : fail({ code: "not-found" });
  }
  if (booking.state === "sent" || booking.state === "agreed") return revisionSeen(house, booking, await revisions.lastNumber(db, booking.reference));
  if (booking.chosen === null) return fail({ code: "incomplete", missing: ["layout"] });
  return ok({ venue, layout: booking.chosen, brief, quote: booking.chosen.quote, number: 0 });
}

async function revisionSeen(house: House, booking: BookingRow, number: number): Promise<Result<Seen, Refusal>> {
  const { db } = house.store;
  const row = await revisions.find(db, booking.reference, number);
  const venue = row && (await venues.find(db, booking.venue, row.venueVersion));
  if (!row || !venue) return fail({ code: "not-found" });
  return ok({ venue, layout: row.layout, brief: row.brief, quote: row.quote, number: row.number, fingerprint: row.fingerprint, sentAt: row.sentAt, ...(row.agreedAt === null ? {} : { agreedAt: row.agreedAt }) });
}
