import { fail, ok } from "../base";
import { noteAsked } from "./ask-desk";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import type { Actor, Outcome } from "./types";

/** A couple asks for what is kept of them to be erased: the desk is told, and does it (`eraseBooking`). Asked twice, it is told once. */
export async function askErasure(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<null>> {
  if (actor.kind !== "couple") return fail({ code: "not-allowed" });
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    // Who may take all of it away may ask for its end.
    const held = await gate(tx, actor, { reference, action: "take-out", hold: true });
    if (!held.ok) return held;
    if (held.value.asked?.what === "erase") return ok(null);
    await noteAsked(tx, house, { booking: held.value, who: whoIs(actor), what: "erase", words: "" });
    return ok(null);
  });
  if (done.ok) house.poke();
  return done;
}
