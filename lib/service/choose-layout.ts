import { fail, ok } from "../base";
import { step as advance } from "../booking";
import { bookings, history, revisions, venues } from "../store";
import { foundFor } from "./arranging";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";
import { arrangementKey, briefOf } from "./view";

type Choice = { readonly reference: string; readonly layout: string; readonly revision: number };

/** Takes one of the layouts now offered. Refused as outdated when the answers changed since they were worked out. */
export async function chooseLayout(house: House, actor: Actor, { reference, layout: id, revision }: Choice): Promise<Outcome<{ readonly revision: number }>> {
  return house.store.transaction(async (tx): Promise<Outcome<{ readonly revision: number }>> => {
    const held = await gate(tx, actor, { reference, action: "answer", hold: true });
    if (!held.ok) return held;
    const booking = held.value;
    if (booking.revision !== revision) return fail({ code: "stale", revision: booking.revision });
    const brief = briefOf(booking);
    const venue = await venues.find(tx, booking.venue);
    if (!brief || !venue) return fail({ code: "incomplete", missing: ["guests"] });
    const key = arrangementKey(house.works.engineVersion, venue, brief);
    const offered = await foundFor(tx, key);
    if (!offered) return fail({ code: "incomplete", missing: ["layout-outdated"] });
    const layout = offered.layouts.find((one) => one.id === id);
    if (!layout) return fail({ code: "not-found" });
    const next = advance({ state: booking.state, lastNumber: await revisions.lastNumber(tx, reference) }, { type: "chosen", layout: id });
    if (!next.ok) return fail({ code: "wrong-state", state: booking.state });
    const at = nowIso(house);
    await bookings.change(tx, reference, { state: next.value.state, chosen: { layout, key }, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "chosen", data: { layout: id, title: layout.title } });
    return ok({ revision: booking.revision + 1 });
  });
}
