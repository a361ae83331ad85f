import { fail, ok } from "../base";
import { withoutNames } from "../booking";
import { briefSchema } from "../brief";
import { adjustments, bookings, history, links, outbox, revisions, sessions, type BookingRow, type Handle, type RevisionRow } from "../store";
import { fingerprintOf } from "./agree-revision";
import { closeHeld } from "./close-booking";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { dropLate } from "./late-works";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";

/**
 * Takes names, addresses and free words out of a closed booking for good; an open one is closed first where its couple asked for this.
 * What stays is a stub: day, package, counts, layouts, prices and the history of what happened. Each revision's fingerprint still comes
 * out of what stays.
 */
export async function eraseBooking(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<null>> {
  return house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const open = await gate(tx, actor, { reference, action: "close", hold: true });
    if (open.ok && open.value.asked?.what === "erase") {
      const closed = await closeHeld(tx, house, { booking: open.value, who: whoIs(actor), reason: "" });
      if (!closed.ok) return closed;
    }
    const held = await gate(tx, actor, { reference, action: "erase", hold: true });
    if (!held.ok) return held;
    if (held.value.erasedAt !== null) return fail({ code: "not-found" });
    await eraseHeld(tx, house, { booking: held.value, who: whoIs(actor) });
    return ok(null);
  });
}

/** The same, of a booking whose row is held. Throws, and so leaves all as it was, where a fingerprint would no longer come out. */
export async function eraseHeld(tx: Handle, house: House, { booking, who }: { readonly booking: BookingRow; readonly who: history.Doer }): Promise<void> {
  const { reference } = booking;
  const at = nowIso(house);
  // What was noted on a piece may name a guest.
  await adjustments.drop(tx, reference);
  await dropLate(tx, reference);
  for (const row of await revisions.listOf(tx, reference)) if (row.erasedAt === null) await eraseRevision(tx, booking, { row, at });
  await outbox.removeOf(tx, reference);
  await links.removeOf(tx, reference);
  await sessions.removeOf(tx, reference);
  await bookings.erase(tx, reference, at);
  await history.add(tx, { booking: reference, at, who, what: "erased" });
}

async function eraseRevision(tx: Handle, { venue, reference }: BookingRow, { row, at }: { readonly row: RevisionRow; readonly at: string }): Promise<void> {
  const left = withoutNames(row);
  if (!briefSchema.safeParse(left.brief).success) throw new Error(`without its names the brief of revision ${row.number} of ${reference} could not be read`);
  await revisions.erase(tx, { booking: reference, number: row.number, at, ...left });
  const now = await revisions.find(tx, reference, row.number);
  // Revisions from before the hash of the whole was kept lose their proof with their names; what they were agreed by is still printed.
  if (row.whole !== null && (!now || (await fingerprintOf(tx, venue, now)) !== row.fingerprint)) {
    throw new Error(`without its names revision ${row.number} of ${reference} no longer gives its fingerprint`);
  }
}
