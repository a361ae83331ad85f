import { fail, ok, type Result } from "../base";
import { sha256 } from "../access";
import { canonicalJson } from "../booking";
import { briefSchema, type Brief } from "../brief";
import { beginWork, type Work } from "../hand";
import type { Layout } from "../layout";
import { adjustments, revisions, venueDrafts, venues, type AdjustmentRow, type BookingRow, type Handle, type RevisionRow } from "../store";
import type { VenueVersion } from "../store/venues";
import type { House } from "./house";
import { deskGate, gate } from "./gate";
import { mostSeats, standardBrief } from "./standard-brief";
import type { Actor, Refusal } from "./types";
import { briefOf, chosenOf } from "./view";

type Bench = { readonly actor: Actor; readonly subject: string; readonly hold?: boolean };

/** What a layout under the hand rests on: where it begins, and whose answers it is for. */
export type AdjustGround = {
  /** The booking's reference; of a venue's standard layout its key. */
  readonly subject: string;
  /** Absent where it is a venue's standard layout. */
  readonly booking?: BookingRow;
  readonly venue: VenueVersion; readonly brief: Brief; readonly base: Layout;
  /** The draft of the venue that it stands in, 0 for none. */
  readonly draft?: number;
  /** The revision that is adjusted at the desk; absent where it is the couple's own choice, not sent. */
  readonly sent?: RevisionRow;
};
/** It with what was done so far. `seen`: names this state; hand it back with the next deed. */
export type AdjustBench = AdjustGround & { readonly work: Work; readonly row: AdjustmentRow | undefined; readonly start: string; readonly from: Layout; readonly seen: string };

/** Names a layout by where everything stands in it. */
export function standsHash(layout: Layout): string {
  const known = hashes.get(layout) ?? sha256(canonicalJson([layout.scenes, layout.wet?.scenes ?? []]));
  hashes.set(layout, known);
  return known;
}
const hashes = new WeakMap<Layout, string>();

/** How a venue's standard layout is named where a booking's reference is asked. */
export const standardKey = (venue: string): string => `venue/${venue}`;
const standardOf = (subject: string): string | undefined => (subject.startsWith("venue/") ? subject.slice("venue/".length) : undefined);

/** What may be adjusted under a name, for whoever may; a booking's row is held where that is wanted. */
async function groundFor(house: House, db: Handle, { actor, subject, hold }: Bench): Promise<Result<AdjustGround, Refusal>> {
  const standard = standardOf(subject);
  if (standard !== undefined) return standardGround(db, actor, standard);
  const booking = await gate(db, actor, { reference: subject, action: "adjust", hold });
  return booking.ok ? groundOf(house, db, booking.value) : booking;
}

async function standardGround(db: Handle, actor: Actor, id: string): Promise<Result<AdjustGround, Refusal>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  const now = await venues.find(db, id), draft = await venueDrafts.find(db, id), venue = draft?.venue ?? now?.venue;
  if (!venue) return fail({ code: "not-found" });
  const base = venue.standardLayout;
  if (!base) return fail({ code: "incomplete", missing: ["layout"] });
  return ok({ subject: standardKey(id), venue: { id, version: now?.version ?? 0, hash: "", venue }, brief: standardBrief(venue, { guests: mostSeats(base) }), base, draft: draft?.number ?? 0 });
}

async function groundOf(house: House, db: Handle, booking: BookingRow): Promise<Result<AdjustGround, Refusal>> {
  const subject = booking.reference;
  const venue = await venues.find(db, booking.venue);
  if (!venue) return fail({ code: "not-found" });
  if (booking.state === "sent") {
    const sent = await revisions.find(db, booking.reference, await revisions.lastNumber(db, booking.reference));
    return sent ? ok({ subject, booking, venue, brief: briefSchema.parse(sent.brief), base: sent.layout, sent }) : fail({ code: "incomplete", missing: ["layout"] });
  }
  const brief = briefOf(booking);
  if (!brief) return fail({ code: "incomplete", missing: ["guests"] });
  const chosen = chosenOf(house, booking, { venue, brief });
  if (!chosen) return fail({ code: "incomplete", missing: ["layout"] });
  return chosen.outdated ? fail({ code: "incomplete", missing: ["layout-outdated"] }) : ok({ subject, booking, venue, brief, base: chosen.layout });
}

/** The work as it was left, while it still belongs to the layout that speaks for the booking; else that layout untouched. */
export async function benchFor(house: House, db: Handle, ask: Bench): Promise<Result<AdjustBench, Refusal>> {
  const ground = await groundFor(house, db, ask);
  if (!ground.ok) return ground;
  const row = await adjustments.find(db, ground.value.subject);
  const now = standsHash(ground.value.base);
  const goesOn = row !== undefined && (row.start === now || row.taken === now);
  const start = goesOn ? row.start : now;
  return ok({
    ...ground.value, row, start, from: goesOn ? row.base : ground.value.base,
    work: goesOn ? row.work : beginWork(ground.value.base), seen: `${row?.revision ?? 0}.${start.slice(0, 12)}`,
  });
}
