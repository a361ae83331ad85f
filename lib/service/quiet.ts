import { fail, ok, type Result } from "../base";
import { faultOf, hashSecret, isSecret } from "../access";
import { bookings, history, links, type Handle } from "../store";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Refusal } from "./types";

export type Quiet = { readonly reference: string; readonly already: boolean };

/** For a GET: whose reminders the link would end. Changes nothing. */
export const lookAtQuiet = (house: House, { key }: { readonly key: string }): Promise<Result<Quiet, Refusal>> => bookingOf(house, house.store.db, key);

/** For the POST, by a person or by their mail program for them (RFC 8058). Done again it is done already. */
export async function endReminders(house: House, { key }: { readonly key: string }): Promise<Result<Quiet, Refusal>> {
  return house.store.transaction(async (tx) => {
    const found = await bookingOf(house, tx, key);
    if (!found.ok || found.value.already) return found;
    const at = nowIso(house);
    if (await bookings.quieten(tx, found.value.reference, at)) await history.add(tx, { booking: found.value.reference, at, who: "couple", what: "quiet" });
    return found;
  });
}

async function bookingOf(house: House, db: Handle, key: string): Promise<Result<Quiet, Refusal>> {
  const link = isSecret(key) ? await links.find(db, hashSecret(key)) : undefined;
  const fault = faultOf(link, house.clock.now());
  const booking = link?.purpose === "quiet" && link.booking !== null ? await bookings.find(db, link.booking) : undefined;
  if (fault || !booking) return fail(fault ?? { code: "link", why: "unknown" });
  return ok({ reference: booking.reference, already: booking.quietAt !== null });
}
