import { fail, ok } from "../base";
import { step as advance } from "../booking";
import { readStep } from "../brief/draft";
import { bookings, history, revisions, venues } from "../store";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Draft, FieldError, FormValues, Outcome, StepId } from "./types";
import type { Venue } from "../venue";

type Save = { readonly reference: string; readonly step: StepId; readonly values: FormValues; readonly revision: number };

/** Saves one step's answers. `revision` is the one last seen: who saves over somebody's newer answers is told so. */
export async function saveStep(house: House, actor: Actor, { reference, step, values, revision }: Save): Promise<Outcome<{ readonly revision: number }>> {
  return house.store.transaction(async (tx): Promise<Outcome<{ readonly revision: number }>> => {
    const held = await gate(tx, actor, { reference, action: "answer", hold: true });
    if (!held.ok) return held;
    const booking = held.value;
    if (booking.revision !== revision) return fail({ code: "stale", revision: booking.revision });
    const read = readStep(step, values);
    if (!read.ok) return fail({ code: "invalid", errors: read.error });
    const venue = await venues.find(tx, booking.venue);
    const draft: Draft = { ...booking.draft, [step]: read.value };
    const strange = venue ? strangeRooms(draft, step, venue.venue) : [];
    if (strange.length > 0) return fail({ code: "invalid", errors: strange });
    const next = advance({ state: booking.state, lastNumber: await revisions.lastNumber(tx, reference) }, { type: "saved", step });
    if (!next.ok) return fail({ code: "wrong-state", state: booking.state });
    const at = nowIso(house);
    await bookings.change(tx, reference, { state: next.value.state, draft, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "saved", data: { step } });
    return ok({ revision: booking.revision + 1 });
  });
}

/** A room that the venue does not have can only come from a form that was tampered with, or from a venue that has changed. */
function strangeRooms(draft: Draft, step: StepId, venue: Venue): readonly FieldError[] {
  const room = step === "ceremony" ? draft.ceremony?.room : step === "meal" ? draft.meal?.room : undefined;
  if (room === undefined || room === "any" || venue.rooms.some((one) => one.id === room)) return [];
  return [{ field: "room", message: "Choose one of the rooms shown." }];
}
