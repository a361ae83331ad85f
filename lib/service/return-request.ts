import { fail, ok } from "../base";
import { step as advance } from "../booking";
import { bookings, history, revisions } from "../store";
import { carryOut } from "./effects";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";

type Return = { readonly reference: string; readonly number: number; readonly reason: string };

/** Returns the newest revision to the couple, with a reason that they are mailed. */
export async function returnRequest(house: House, actor: Actor, { reference, number, reason }: Return): Promise<Outcome<null>> {
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "return", hold: true });
    if (!held.ok) return held;
    const booking = held.value;
    const words = reason.replace(/\r\n?/g, "\n").trim();
    if (words === "") return fail({ code: "invalid", errors: [{ field: "reason", message: "Say what should change: the couple reads these words." }] });
    if (words.length > 4_000) return fail({ code: "invalid", errors: [{ field: "reason", message: "Keep the reason under 4,000 characters." }] });
    const lastNumber = await revisions.lastNumber(tx, reference);
    const next = advance({ state: booking.state, lastNumber }, { type: "returned", number, reason: words });
    if (!next.ok) return fail(next.error.code === "not-the-last" ? { code: "stale", revision: lastNumber } : { code: "wrong-state", state: booking.state });
    const at = nowIso(house);
    await revisions.markReturned(tx, { booking: reference, number, reason: words, at });
    await bookings.change(tx, reference, { state: next.value.state, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "returned", data: { number, reason: words } });
    await carryOut(tx, house, { booking, effects: next.value.effects, told: { number, reason: words } });
    return ok(null);
  });
  house.poke();
  return done;
}
