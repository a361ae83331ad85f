import { fail, ok } from "../base";
import { readStep } from "../brief/draft";
import { bookings, history, type FinalGuests } from "../store";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, FormValues, Outcome } from "./types";

/** How many sit down in the end, told by the couple or put in by the desk. It changes no layout by itself. Fields: adults, children, suppliers. */
export async function giveNumbers(house: House, actor: Actor, { reference, values }: { readonly reference: string; readonly values: FormValues }): Promise<Outcome<FinalGuests>> {
  return house.store.transaction(async (tx): Promise<Outcome<FinalGuests>> => {
    const held = await gate(tx, actor, { reference, action: "numbers", hold: true });
    if (!held.ok) return held;
    const read = readStep("guests", { adults: values.adults, children: values.children, suppliers: values.suppliers });
    if (!read.ok) return fail({ code: "invalid", errors: read.error });
    const { adults, children = 0, suppliers } = read.value ?? {};
    if (adults === undefined) return fail({ code: "invalid", errors: [{ field: "adults", message: "Adults: type how many sit down." }] });
    const at = nowIso(house), guests: FinalGuests = { adults, children, ...(suppliers === undefined ? {} : { suppliers }) };
    await bookings.change(tx, reference, { final: { guests, at }, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "numbers-told", data: { guests: adults + children } });
    return ok(guests);
  });
}
