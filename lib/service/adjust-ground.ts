import { fail, ok, type Result } from "../base";
import { sha256 } from "../access";
import { canonicalJson } from "../booking";
import { briefSchema, type Brief } from "../brief";
import { beginWork, type Work } from "../hand";
import type { Layout } from "../layout";
import { adjustments, revisions, venues, type AdjustmentRow, type BookingRow, type Handle, type RevisionRow } from "../store";
import type { VenueVersion } from "../store/venues";
import type { House } from "./house";
import type { Refusal } from "./types";
import { briefOf, chosenOf } from "./view";

/** What a layout under the hand rests on: where it begins, and whose answers it is for. */
export type AdjustGround = {
  readonly booking: BookingRow; readonly venue: VenueVersion; readonly brief: Brief; readonly base: Layout;
  /** The revision that is adjusted at the desk; absent where it is the couple's own choice, not sent. */
  readonly sent?: RevisionRow;
};
/** It with what was done so far. `seen`: names this state; hand it back with the next deed. */
export type AdjustBench = AdjustGround & { readonly work: Work; readonly row: AdjustmentRow | undefined; readonly start: string; readonly from: Layout; readonly seen: string };

/** Names a layout by where everything stands in it. */
export const standsHash = (layout: Layout): string => sha256(canonicalJson([layout.scenes, layout.wet?.scenes ?? []]));

async function groundOf(house: House, db: Handle, booking: BookingRow): Promise<Result<AdjustGround, Refusal>> {
  const venue = await venues.find(db, booking.venue);
  if (!venue) return fail({ code: "not-found" });
  if (booking.state === "sent") {
    const sent = await revisions.find(db, booking.reference, await revisions.lastNumber(db, booking.reference));
    return sent ? ok({ booking, venue, brief: briefSchema.parse(sent.brief), base: sent.layout, sent }) : fail({ code: "incomplete", missing: ["layout"] });
  }
  const brief = briefOf(booking);
  if (!brief) return fail({ code: "incomplete", missing: ["guests"] });
  const chosen = chosenOf(house, booking, { venue, brief });
  if (!chosen) return fail({ code: "incomplete", missing: ["layout"] });
  return chosen.outdated ? fail({ code: "incomplete", missing: ["layout-outdated"] }) : ok({ booking, venue, brief, base: chosen.layout });
}

/** The work as it was left, while it still belongs to the layout that speaks for the booking; else that layout untouched. */
export async function benchFor(house: House, db: Handle, booking: BookingRow): Promise<Result<AdjustBench, Refusal>> {
  const ground = await groundOf(house, db, booking);
  if (!ground.ok) return ground;
  const row = await adjustments.find(db, booking.reference);
  const now = standsHash(ground.value.base);
  const goesOn = row !== undefined && (row.start === now || row.taken === now);
  const start = goesOn ? row.start : now;
  return ok({
    ...ground.value, row, start, from: goesOn ? row.base : ground.value.base,
    work: goesOn ? row.work : beginWork(ground.value.base), seen: `${row?.revision ?? 0}.${start.slice(0, 12)}`,
  });
}
