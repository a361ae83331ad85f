import { fail, ok } from "../base";
import { messages } from "../mail";
import { bookings, history } from "../store";
import { noticed } from "./desk-people";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { aboutOf, deskPage, queueMail } from "./post";
import type { Actor, Outcome } from "./types";

/** A couple asks for what is kept of them to be erased: the desk is told, and does it (`eraseBooking`). Asked twice, it is told once. */
export async function askErasure(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<null>> {
  if (actor.kind !== "couple") return fail({ code: "not-allowed" });
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    // Who may take all of it away may ask for its end.
    const held = await gate(tx, actor, { reference, action: "take-out", hold: true });
    if (!held.ok) return held;
    if (held.value.asked?.what === "erase") return ok(null);
    const at = nowIso(house), what = "erase", words = "";
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "erasure-asked" });
    await bookings.change(tx, reference, { asked: { what, words, at }, at });
    const about = await aboutOf(tx, held.value);
    for (const person of await noticed(house, tx)) {
      await queueMail(tx, house, { message: messages.askedOfDesk(about, { what, words, href: deskPage(house, reference) }), to: person, fromName: about.venueName, booking: reference });
    }
    return ok(null);
  });
  if (done.ok) house.poke();
  return done;
}
