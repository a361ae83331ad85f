import { fail, ok } from "../base";
import { sha256 } from "../access";
import { canonicalJson } from "../booking";
import { parseVenue, type Venue, type VenueFile } from "../venue";
import { history, venues } from "../store";
import { againOnClash } from "./again";
import { deskGate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, Outcome } from "./types";

export type VenueView = { readonly id: string; readonly version: number; readonly venue: Venue };
export type PublicFace = { readonly venueName: string; readonly contact: Venue["contact"]; readonly locale: string; readonly lengths: Venue["lengths"]; readonly demo: boolean };

/** The current version of every venue. */
export async function listVenues(house: House, actor: Actor, _all: Readonly<Record<string, never>> = {}): Promise<Outcome<readonly VenueView[]>> {
  const desk = deskGate(actor, "venues");
  return desk.ok ? ok(await venues.list(house.store.db)) : desk;
}

/** What anyone may know: whose house this is and whom to ask. */
export async function publicFace(house: House): Promise<PublicFace> {
  const first = (await venues.list(house.store.db))[0]?.venue;
  return { venueName: first?.name ?? "Marquetry", contact: first?.contact, locale: first?.locale ?? "en-GB", lengths: first?.lengths ?? "metric", demo: house.demo };
}

/** Saves the text of a VENUE file as that venue's next version. Bookings agreed before keep theirs. */
export async function importVenue(house: House, actor: Actor, { json }: { readonly json: string }): Promise<Outcome<{ readonly id: string; readonly version: number }>> {
  const desk = deskGate(actor, "edit-venue");
  if (!desk.ok) return desk;
  const read = parseVenue(json);
  if (!read.ok) return fail({ code: "invalid", errors: read.error.map((one) => ({ field: one.path, message: one.message })) });
  return saveVenue(house, actor, read.value);
}

/** Saves a venue already read. The same facts again are the version that they were. */
export async function saveVenue(house: House, actor: Actor, file: VenueFile): Promise<Outcome<{ readonly id: string; readonly version: number }>> {
  const desk = deskGate(actor, "edit-venue");
  if (!desk.ok) return desk;
  const at = nowIso(house);
  return againOnClash(() => house.store.transaction(async (tx): Promise<Outcome<{ readonly id: string; readonly version: number }>> => {
    const version = await venues.save(tx, { file, hash: sha256(canonicalJson(file)), at, by: desk.value });
    await history.add(tx, { booking: null, at, who: whoIs(actor), what: "venue-saved", data: { venue: file.id, version } });
    return ok({ id: file.id, version });
  }));
}
