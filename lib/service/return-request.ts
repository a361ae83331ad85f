import { fail, ok } from "../base";
import { RETURN_FORM, step as advance } from "../booking";
import { bookings, history, revisions } from "../store";
import { layoutFor } from "./chosen-words";
import { carryOut } from "./effects";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";
import { labelsOf } from "./view";

type Return = { readonly reference: string; readonly number: number; readonly reason: string; /** Ids of pieces of the layout that the reason speaks of. */ readonly pieces?: readonly string[] };

/** Returns the newest revision to the couple, with a reason that they are mailed. */
export async function returnRequest(house: House, actor: Actor, { reference, number, reason, pieces = [] }: Return): Promise<Outcome<null>> {
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "return", hold: true });
    if (!held.ok) return held;
    const booking = held.value;
    const read = RETURN_FORM.safeParse({ reason });
    if (!read.success) return fail({ code: "invalid", errors: read.error.issues.slice(0, 1).map((one) => ({ field: "reason", message: one.message })) });
    const words = read.data.reason;
    const lastNumber = await revisions.lastNumber(tx, reference);
    const next = advance({ state: booking.state, lastNumber }, { type: "returned", number, reason: words });
    if (!next.ok) return fail(next.error.code === "not-the-last" ? { code: "stale", revision: lastNumber } : { code: "wrong-state", state: booking.state });
    const at = nowIso(house);
    const layout = (await revisions.find(tx, reference, number))?.layout;
    const about = layout === undefined ? [] : [...new Set(pieces)].filter((id) => layout.scenes.some((scene) => scene.items.some((item) => item.id === id)));
    await revisions.markReturned(tx, { booking: reference, number, reason: words, pieces: about, at });
    await bookings.change(tx, reference, { state: next.value.state, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "returned", data: { number } });
    await carryOut(tx, house, { booking, effects: next.value.effects, told: { number, reason: words, pieces: layout && about.length > 0 ? labelsOf(await layoutFor(tx, booking, layout), about) : [] } });
    return ok(null);
  });
  house.poke();
  return done;
}
