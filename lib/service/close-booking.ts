import { fail, ok } from "../base";
import { step as advance } from "../booking";
import { bookings, history, revisions } from "../store";
import { carryOut } from "./effects";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";

/** Closes a booking: its links and sessions end, its history stays. */
export async function closeBooking(house: House, actor: Actor, { reference, reason }: { readonly reference: string; readonly reason: string }): Promise<Outcome<null>> {
  return house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "close", hold: true });
    if (!held.ok) return held;
    const lastNumber = await revisions.lastNumber(tx, reference);
    const next = advance({ state: held.value.state, lastNumber }, { type: "closed", reason });
    if (!next.ok) return fail({ code: "wrong-state", state: held.value.state });
    const at = nowIso(house);
    await bookings.change(tx, reference, { state: next.value.state, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "closed" });
    await bookings.noteClosing(tx, reference, reason.trim());
    await carryOut(tx, house, { booking: held.value, effects: next.value.effects, told: { number: lastNumber } });
    return ok(null);
  });
}
