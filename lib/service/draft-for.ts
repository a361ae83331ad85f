import { fail, ok } from "../base";
import { readStep } from "../brief/draft";
import { messages } from "../mail";
import { bookings, history, venues } from "../store";
import { foundFor } from "./arranging";
import { layoutFor } from "./chosen-words";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { aboutOf, coupleLink, queueMail } from "./post";
import type { Actor, FormValues, Outcome } from "./types";
import { arrangementKey, briefOf } from "./view";

type At = { readonly reference: string; readonly revision: number };

/** Puts the number of guests in for a couple who have not told it yet: an engine can draft from that alone. Fields: adults, children. */
export async function countGuests(house: House, actor: Actor, { reference, revision, values }: At & { readonly values: FormValues }): Promise<Outcome<{ readonly revision: number }>> {
  return house.store.transaction(async (tx): Promise<Outcome<{ readonly revision: number }>> => {
    const held = await gate(tx, actor, { reference, action: "draft", hold: true });
    if (!held.ok) return held;
    const booking = held.value;
    if (booking.revision !== revision) return fail({ code: "stale", revision: booking.revision });
    const read = readStep("guests", { ...stringsOf(booking.draft.guests), adults: values.adults, children: values.children });
    if (!read.ok) return fail({ code: "invalid", errors: read.error });
    if (read.value?.adults === undefined) return fail({ code: "invalid", errors: [{ field: "adults", message: "Adults: type how many; a guess will do for a draft." }] });
    const at = nowIso(house);
    await bookings.change(tx, reference, { draft: { ...booking.draft, guests: read.value }, at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "guests-set", data: { adults: read.value.adults } });
    return ok({ revision: revision + 1 });
  });
}

const stringsOf = (guests: Readonly<Record<string, number | undefined>> | undefined): FormValues =>
  Object.fromEntries(Object.entries(guests ?? {}).flatMap(([name, n]) => (n === undefined ? [] : [[name, String(n)]])));

const MOST = 2_000;

/** Puts one of the layouts now offered down as a draft, and mails the couple. It stays theirs to change; nothing is sent or agreed by it. */
export async function offerDraft(house: House, actor: Actor, { reference, revision, layout: id, words }: At & { readonly layout: string; readonly words: string }): Promise<Outcome<null>> {
  const said = words.replace(/\r\n?/g, "\n").trim();
  if (said.length > MOST) return fail({ code: "invalid", errors: [{ field: "words", message: "Keep it under 2,000 characters." }] });
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "draft", hold: true });
    if (!held.ok) return held;
    const booking = held.value, brief = briefOf(booking), venue = await venues.find(tx, booking.venue);
    if (booking.revision !== revision) return fail({ code: "stale", revision: booking.revision });
    if (!brief || !venue) return fail({ code: "incomplete", missing: ["guests"] });
    const key = arrangementKey(house.works.engineVersion, venue, brief);
    const layout = (await foundFor(tx, key))?.layouts.find((one) => one.id === id);
    if (!layout) return fail({ code: "incomplete", missing: ["layout-outdated"] });
    const at = nowIso(house);
    // Who was invited and has not begun has still not begun.
    await bookings.change(tx, reference, { chosen: { layout, key }, asked: "done", at });
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "drafted", data: { title: layout.title } });
    const about = await aboutOf(tx, booking);
    await queueMail(tx, house, { message: messages.draft(about, { title: (await layoutFor(tx, booking, layout)).title, words: said, href: await coupleLink(tx, house, booking) }), to: booking.email, fromName: about.venueName, booking: reference });
    return ok(null);
  });
  house.poke();
  return done;
}
