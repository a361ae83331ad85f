import { fail, ok } from "../base";
import { sha256 } from "../access";
import { sealedText, sealedTextBefore, step as advance, wholeText } from "../booking";
import { bookings, heldRooms, history, isClash, revisions, venues, type Handle, type RevisionRow } from "../store";
import { carryOut } from "./effects";
import { gate, whoIs } from "./gate";
import { roomsOf, takenBy } from "./rooms-held";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";

type Agree = { readonly reference: string; readonly number: number; readonly fingerprint: string };

/**
 * Agrees exactly one revision: the newest, and the one whose fingerprint the coordinator saw. From then on answers, layout, venue,
 * prices and fingerprint are frozen; the database refuses to change the row.
 */
export async function agreeRevision(house: House, actor: Actor, { reference, number, fingerprint }: Agree): Promise<Outcome<{ readonly fingerprint: string }>> {
  const done = await unlessTaken(house, reference, number, () => house.store.transaction(async (tx): Promise<Outcome<{ readonly fingerprint: string }>> => {
    const held = await gate(tx, actor, { reference, action: "agree", hold: true });
    if (!held.ok) return held;
    const booking = held.value;
    const lastNumber = await revisions.lastNumber(tx, reference);
    const revision = await revisions.find(tx, reference, number);
    if (!revision) return fail({ code: "not-found" });
    if (revision.fingerprint !== fingerprint) return fail({ code: "stale", revision: lastNumber });
    await mustMatch(tx, booking.venue, revision);
    const next = advance({ state: booking.state, lastNumber }, { type: "agreed", number });
    if (!next.ok) return fail(next.error.code === "not-the-last" ? { code: "stale", revision: lastNumber } : { code: "wrong-state", state: booking.state });
    const wanted = await roomsOf(tx, booking, revision);
    const taken = await takenBy(tx, wanted);
    if (taken) return fail(taken);
    await heldRooms.hold(tx, wanted);
    const at = nowIso(house);
    await revisions.markAgreed(tx, { booking: reference, number, at });
    await bookings.change(tx, reference, { state: next.value.state, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "agreed", data: { number, fingerprint } });
    await carryOut(tx, house, { booking, effects: next.value.effects, told: { number, fingerprint } });
    return ok({ fingerprint });
  }));
  house.poke();
  return done;
}

/** Two who agree at once both see the rooms free: the database lets one through, and the other is told who it was. */
async function unlessTaken<T>(house: House, reference: string, number: number, work: () => Promise<Outcome<T>>): Promise<Outcome<T>> {
  try {
    return await work();
  } catch (error) {
    if (!isClash(error)) throw error;
    const { db } = house.store;
    const booking = await bookings.find(db, reference), revision = await revisions.find(db, reference, number);
    const taken = booking && revision && (await takenBy(db, await roomsOf(db, booking, revision)));
    if (!taken) throw error;
    return fail(taken);
  }
}

/** The fingerprint is worked out anew from what is stored: a row that no longer gives it was tampered with. */
async function mustMatch(tx: Handle, venueId: string, row: RevisionRow): Promise<void> {
  if ((await fingerprintOf(tx, venueId, row)) !== row.fingerprint) throw new Error(`revision ${row.number} of ${row.booking} does not match its fingerprint`);
}

export async function fingerprintOf(tx: Handle, venueId: string, row: RevisionRow): Promise<string> {
  const venue = await venues.find(tx, venueId, row.venueVersion);
  const { booking: reference, number, venueVersion: version, brief, layout, quote, findings, whole, salt } = row;
  const sealed = { reference, number, venue: { id: venueId, version, hash: venue?.hash ?? "" }, brief, layout, quote, findings };
  if (whole === null) return sha256(sealedTextBefore(sealed));
  // While the names are here, they too must be the ones that were sent.
  return sha256(sealedText({ ...sealed, whole: salt === null ? whole : sha256(wholeText(sealed, salt)) }));
}
