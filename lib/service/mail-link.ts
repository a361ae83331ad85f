import { fail, ok } from "../base";
import { invite } from "./add-booking";
import { gate } from "./gate";
import type { House } from "./house";
import { TOO_MANY, tooMany } from "./reach-them";
import type { Actor, Outcome } from "./types";

/** Mails the couple a fresh link; those mailed before open nothing any more. */
export async function mailLink(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<null>> {
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const booking = await gate(tx, actor, { reference, action: "invite", hold: true });
    if (!booking.ok) return booking;
    if (await tooMany(tx, house, reference)) return fail({ code: "invalid", errors: [TOO_MANY] });
    await invite(tx, house, { reference, actor });
    return ok(null);
  });
  house.poke();
  return done;
}
