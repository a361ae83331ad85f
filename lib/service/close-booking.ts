import { fail, ok } from "../base";
import { step as advance } from "../booking";
import { bookings, history, revisions, type BookingRow, type Handle } from "../store";
import { carryOut } from "./effects";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";

/** Closes a booking: its links and sessions end, its history stays. */
export async function closeBooking(house: House, actor: Actor, { reference, reason }: { readonly reference: string; readonly reason: string }): Promise<Outcome<null>> {
  return house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "close", hold: true });
    return held.ok ? closeHeld(tx, house, { booking: held.value, who: whoIs(actor), reason }) : held;
  });
}

type Closing = { readonly booking: BookingRow; readonly who: history.Doer; readonly reason: string };

/** The same, of a booking whose row is held. */
export async function closeHeld(tx: Handle, house: House, { booking, who, reason }: Closing): Promise<Outcome<null>> {
  const { reference, state } = booking;
  const lastNumber = await revisions.lastNumber(tx, reference);
  const next = advance({ state, lastNumber }, { type: "closed", reason });
  if (!next.ok) return fail({ code: "wrong-state", state });
  const at = nowIso(house);
  await bookings.change(tx, reference, { state: next.value.state, at });
  await history.add(tx, { booking: reference, at, who, what: "closed" });
  await bookings.noteClosing(tx, reference, reason.trim());
  await carryOut(tx, house, { booking, effects: next.value.effects, told: { number: lastNumber } });
  return ok(null);
}
