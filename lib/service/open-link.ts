import { fail, ok } from "../base";
import { faultOf, hashCode, hashSecret, isSecret, LIFETIMES, makeSecret, sessionCookie, type Side } from "../access";
import { step } from "../booking";
import { bookings, history, links, revisions, sessions, venues, type Handle, type LinkRow } from "../store";
import { hashOfBrowser } from "./asked-here";
import { deskRole } from "./desk-people";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { CookieToSet, Outcome } from "./types";

export type LinkLook = {
  readonly purpose: LinkRow["purpose"]; readonly names: readonly string[]; readonly venueName: string;
  readonly date?: string; readonly dueDate?: string; readonly reference?: string;
};
export type Opened = { readonly purpose: LinkRow["purpose"]; readonly reference?: string; readonly cookie: CookieToSet };

/** For the GET of a mailed link: what the page says before the button. Changes nothing. */
export async function lookAtLink(house: House, { key, browser }: { readonly key: string; readonly browser?: string }): Promise<Outcome<LinkLook>> {
  const { db } = house.store;
  const link = await goodLink(house, db, isSecret(key) ? hashSecret(key) : undefined, browser);
  if (!link.ok) return link;
  const { purpose, booking: reference } = link.value;
  const booking = reference === null ? undefined : await bookings.find(db, reference);
  const venue = booking ? await venues.find(db, booking.venue) : (await venues.list(db))[0];
  const venueName = venue?.venue.name ?? "";
  if (!booking) return ok({ purpose, names: [], venueName });
  return ok({ purpose, names: booking.names, venueName, date: booking.eventDate, dueDate: booking.dueDate, reference: booking.reference });
}

/** For the POST: opens the session; set the cookie, then go on by `purpose`. */
export async function openLink(house: House, { key, browser }: { readonly key: string; readonly browser?: string }): Promise<Outcome<Opened>> {
  return opened(house, isSecret(key) ? hashSecret(key) : undefined, browser);
}

/** Signs a person in to the desk by the code of their mail, where that was read on another machine. */
export async function openByCode(house: House, { email, code, browser }: { readonly email: string; readonly code: string; readonly browser?: string }): Promise<Outcome<Opened>> {
  return opened(house, hashCode(email.trim().toLowerCase(), code), browser);
}

async function opened(house: House, key: string | undefined, browser: string | undefined): Promise<Outcome<Opened>> {
  const at = nowIso(house);
  return house.store.transaction(async (tx): Promise<Outcome<Opened>> => {
    const link = await goodLink(house, tx, key, browser);
    if (!link.ok) return link;
    const { hash, purpose, booking, person } = link.value;
    if (!(await links.use(tx, hash, at))) return fail({ code: "link", why: "used" });
    const secret = makeSecret();
    await sessions.add(tx, { hash: hashSecret(secret), side: purpose, booking, person, madeAt: at, link: purpose === "look" ? hash : undefined });
    // Who only looks leaves no trace on the booking but that of its link.
    if (purpose === "couple" && booking !== null) await noteOpening(tx, booking, at);
    if (purpose === "desk") await history.add(tx, { booking: null, at, who: { staff: person ?? "" }, what: "signed-in" });
    const cookie = sessionCookie(purpose, house.origin, { secret, seconds: LIFETIMES[purpose].absolute / 1000 });
    return ok({ purpose, reference: booking ?? undefined, cookie });
  });
}

/** A link that opens something. */
type OpensWhat = Omit<LinkRow, "purpose"> & { readonly purpose: Side };

async function goodLink(house: House, db: Handle, hash: string | undefined, browser: string | undefined): Promise<Outcome<OpensWhat>> {
  const link = hash === undefined ? undefined : await links.find(db, hash);
  const fault = faultOf(link, house.clock.now(), hashOfBrowser(browser));
  if (fault || !link) return fail(fault ?? { code: "link", why: "unknown" });
  const { purpose } = link;
  // A link that ends reminders opens nothing.
  if (purpose === "quiet") return fail({ code: "link", why: "unknown" });
  // Who is no longer of the desk has no use for a link that was mailed before.
  if (link.person !== null && !(await deskRole(house, db, link.person))) return fail({ code: "link", why: "revoked" });
  return ok({ ...link, purpose });
}

/** The first opening starts the booking; later ones leave it as it stands. */
async function noteOpening(tx: Handle, reference: string, at: string): Promise<void> {
  const booking = await bookings.hold(tx, reference);
  if (!booking) return;
  const next = step({ state: booking.state, lastNumber: await revisions.lastNumber(tx, reference) }, { type: "opened" });
  if (!next.ok || next.value.state === booking.state) return;
  await bookings.change(tx, reference, { state: next.value.state, at });
  await history.add(tx, { booking: reference, at, who: "couple", what: "opened" });
}
