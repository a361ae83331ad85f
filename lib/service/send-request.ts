import { fail, ok, type Result } from "../base";
import { makeSecret, sha256 } from "../access";
import { sealedText, step as advance, wholeText } from "../booking";
import { briefSchema } from "../brief";
import { briefFileOfDraft } from "../brief/draft";
import type { Finding, Layout, Quote } from "../layout";
import { bookings, history, revisions, venues, type BookingRow, type Handle } from "../store";
import type { VenueVersion } from "../store/venues";
import { carryOut } from "./effects";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { dayOf } from "./priced";
import type { Actor, Outcome, Refusal } from "./types";
import { briefOf, chosenOf, factsOf } from "./view";

type Send = { readonly reference: string; readonly revision: number };
export type SentRevision = { readonly number: number; readonly fingerprint: string };

/**
 * Sends what is answered and chosen as the next revision: checked and priced anew, sealed by its fingerprint.
 * Check and quote are worked out before the transaction and hold for the revision seen; a newer one is refused as stale.
 */
export async function sendRequest(house: House, actor: Actor, { reference, revision }: Send): Promise<Outcome<SentRevision>> {
  const before = await gate(house.store.db, actor, { reference, action: "send" });
  if (!before.ok) return before;
  if (before.value.revision !== revision) return fail({ code: "stale", revision: before.value.revision });
  const ready = await readyToSend(house, before.value);
  if (!ready.ok) return ready;
  const done = await house.store.transaction(async (tx): Promise<Outcome<SentRevision>> => {
    const held = await gate(tx, actor, { reference, action: "send", hold: true });
    if (!held.ok) return held;
    if (held.value.revision !== revision) return fail({ code: "stale", revision: held.value.revision });
    return record(tx, house, { actor, booking: held.value, ready: ready.value, as: "sent" });
  });
  house.poke();
  return done;
}

export type Ready = {
  readonly venue: VenueVersion; readonly file: NonNullable<ReturnType<typeof briefFileOfDraft>>;
  readonly layout: Layout; readonly quote: Quote; readonly findings: readonly Finding[];
};

async function readyToSend(house: House, booking: BookingRow): Promise<Result<Ready, Refusal>> {
  const venue = await venues.find(house.store.db, booking.venue);
  const answered = briefFileOfDraft(booking.draft, factsOf(booking));
  const asked = briefOf(booking);
  if (!venue || !answered || !asked) return fail({ code: "incomplete", missing: ["guests"] });
  const chosen = chosenOf(house, booking, { venue, brief: asked });
  if (!chosen) return fail({ code: "incomplete", missing: ["layout"] });
  if (chosen.outdated) return fail({ code: "incomplete", missing: ["layout-outdated"] });
  // The day of answering is part of what is sent: a charge for late answers rests on it.
  const today = dayOf(house, venue.venue.timeZone, await revisions.listOf(house.store.db, booking.reference));
  const file = { ...answered, today }, brief = { ...asked, today };
  const findings = await house.works.check(venue.venue, chosen.layout, brief);
  const quote = await house.works.quote(venue.venue, brief, chosen.layout);
  // The revision's layout carries the check and the quote it was sent with: a reader of the layout alone sees no older ones.
  return ok({ venue, file, layout: { ...chosen.layout, findings, quote }, quote, findings });
}

type Recording = { readonly actor: Actor; readonly booking: BookingRow; readonly ready: Ready; /** By the couple, or as the desk adjusted it. */ readonly as: "sent" | "amended" | "changed" };

/** Keeps a revision under its fingerprint, and does what follows from it. The caller holds the booking. */
export async function record(tx: Handle, house: House, { actor, booking, ready, as }: Recording): Promise<Outcome<SentRevision>> {
  const { reference } = booking;
  const { venue, file, layout, quote, findings } = ready;
  const lastNumber = await revisions.lastNumber(tx, reference);
  const number = lastNumber + 1;
  const next = advance({ state: booking.state, lastNumber }, { type: as, number });
  if (!next.ok) return fail({ code: "wrong-state", state: booking.state });
  const at = nowIso(house);
  const texts = { brief: file, layout, quote, findings };
  const salt = makeSecret(), whole = sha256(wholeText(texts, salt));
  const fingerprint = sha256(sealedText({ reference, number, venue: { id: venue.id, version: venue.version, hash: venue.hash }, ...texts, whole }));
  await revisions.add(tx, { booking: reference, number, ...texts, whole, salt, venueVersion: venue.version, fingerprint, sentAt: at });
  await bookings.change(tx, reference, { state: next.value.state, at });
  await history.add(tx, { booking: reference, at, who: whoIs(actor), what: as, data: { number, fingerprint } });
  const { guests } = briefSchema.parse(file);
  const weigh = (level: Finding["level"]): number => findings.filter((one) => one.level === level).length;
  await carryOut(tx, house, {
    booking, effects: next.value.effects,
    told: { number, fingerprint, guests: guests.adults + guests.children, musts: weigh("must"), shoulds: weigh("should") },
  });
  return ok({ number, fingerprint });
}
