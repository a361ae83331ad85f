import { fail, ok } from "../base";
import { step as advance } from "../booking";
import { briefFileOfDraft } from "../brief/draft";
import type { Layout } from "../layout";
import { adjustments, bookings, history, revisions, type BookingRow, type Handle } from "../store";
import { openBench, type Asking } from "./adjust";
import { benchFor, standsHash, type AdjustBench } from "./adjust-ground";
import { whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { dayOf } from "./priced";
import { record } from "./send-request";
import { keepStandard } from "./standard-layout";
import type { Actor, Outcome } from "./types";
import { factsOf } from "./view";

export type Taken = {
  /** The revision that it became, where the desk adjusted what was sent. */
  readonly number?: number;
};

const BY_HAND = ", adjusted by hand";
/** The layout under a name of its own, so that it is told from the one that was offered. */
function named(l: Layout): Layout {
  const renamed = { ...l, id: `${l.id.replace(/-hand$/, "")}-hand` };
  if (l.title.endsWith(BY_HAND)) return renamed;
  const title = `${l.title}${BY_HAND}`.slice(0, 200), offered = l.told?.title;
  return l.told && offered ? { ...renamed, title, told: { ...l.told, title: { ...offered, parts: [...(offered.parts ?? []), { code: "by-hand" }] } } } : { ...renamed, title };
}

/**
 * Takes what was adjusted as the layout that speaks for the booking: the couple's choice, which they send as usual; or, where the desk
 * adjusted what was sent, a further revision under a fingerprint of its own.
 */
export async function takeAdjusted(house: House, actor: Actor, { reference, seen }: Asking & { readonly seen: string }): Promise<Outcome<Taken>> {
  const before = await openBench(house, actor, { reference });
  if (!before.ok) return before;
  if (before.value.seen !== seen) return fail({ code: "stale", revision: before.value.row?.revision ?? 0 });
  const { venue, brief, work, booking } = before.value;
  if (!booking) return takeStandard(house, actor, before.value);
  const today = dayOf(house, venue.venue.timeZone, await revisions.listOf(house.store.db, reference));
  const layout = named(await house.works.settle(venue.venue, { ...brief, today }, work.layout));
  const done = await house.store.transaction(async (tx): Promise<Outcome<Taken>> => {
    const now = await benchFor(house, tx, { actor, subject: reference, hold: true });
    if (!now.ok) return now;
    const held = now.value.booking;
    if (!held || now.value.seen !== seen || held.state !== booking.state) return fail({ code: "stale", revision: now.value.row?.revision ?? 0 });
    return now.value.sent ? amended(tx, house, { actor, booking: held, bench: now.value, layout, today }) : chosen(tx, house, { actor, booking: held, bench: now.value, layout });
  });
  house.poke();
  return done;
}

/** A standard layout taken from under the hand is the venue's next version, or goes on in its draft. */
async function takeStandard(house: House, actor: Actor, bench: AdjustBench): Promise<Outcome<Taken>> {
  const { venue, brief, work, draft } = bench;
  const layout = await house.works.settle(venue.venue, brief, work.layout);
  const saved = await keepStandard(house, actor, { venue: venue.id, version: venue.version, draft, layout, title: work.layout.title });
  if (saved.ok) await house.store.transaction((tx) => adjustments.drop(tx, bench.subject));
  return saved.ok ? ok({}) : saved;
}

type Taking = { readonly actor: Actor; readonly booking: BookingRow; readonly bench: AdjustBench; readonly layout: Layout };

async function chosen(tx: Handle, house: House, { actor, booking, bench, layout }: Taking): Promise<Outcome<Taken>> {
  const next = advance({ state: booking.state, lastNumber: await revisions.lastNumber(tx, booking.reference) }, { type: "chosen", layout: layout.id });
  if (!next.ok || booking.chosenKey === null) return fail({ code: "wrong-state", state: booking.state });
  const at = nowIso(house);
  // Who only looked on has not begun: a draft made at the desk leaves the state as it is.
  const state = actor.kind === "desk" ? booking.state : next.value.state;
  await bookings.change(tx, booking.reference, { state, chosen: { layout, key: booking.chosenKey }, at });
  await history.add(tx, { booking: booking.reference, at, who: whoIs(actor), what: "adjusted", data: { title: layout.title, deeds: bench.work.done } });
  await noteTaken(tx, bench, layout);
  return ok({});
}

async function amended(tx: Handle, house: House, { actor, booking, bench, layout, today }: Taking & { readonly today: string }): Promise<Outcome<Taken>> {
  const { venue } = bench;
  const answered = briefFileOfDraft(booking.draft, factsOf(booking));
  if (!answered || !layout.quote) return fail({ code: "incomplete", missing: ["guests"] });
  const sent = await record(tx, house, { actor, booking, as: "amended", ready: { venue, file: { ...answered, today }, layout, quote: layout.quote, findings: layout.findings } });
  if (!sent.ok) return sent;
  // Should it come back to the couple, they go on from here.
  if (booking.chosenKey !== null) await bookings.change(tx, booking.reference, { chosen: { layout, key: booking.chosenKey }, at: nowIso(house) });
  await noteTaken(tx, bench, layout);
  return ok({ number: sent.value.number });
}

async function noteTaken(tx: Handle, { row }: AdjustBench, layout: Layout): Promise<void> {
  if (row) await adjustments.keep(tx, { ...row, taken: standsHash(layout) });
}
