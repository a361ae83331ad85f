import { fail, ok, type Result } from "../base";
import { sha256 } from "../access";
import { canonicalJson } from "../booking";
import { history, isClash, venues, type Handle } from "../store";
import type { Venue } from "../venue";
import { typedLength, venueBegun, venueTyped, withoutRoom, withRoom, factsAt, type Place, type Amiss } from "../venue/edit";
import { deskGate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, FormValues, Outcome, Refusal } from "./types";

/** `version`: the one that the form was filled from. Where another was saved since, the save is refused as stale. */
type At = { readonly venue: string; readonly version: number };
export type SavedVenue = { readonly id: string; readonly version: number };

/** A venue from nothing, of the first form. */
export async function beginVenue(house: House, actor: Actor, { values }: { readonly values: FormValues }): Promise<Outcome<SavedVenue>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  return house.store.transaction(async (tx): Promise<Outcome<SavedVenue>> => {
    const begun = venueBegun(values, (await venues.list(tx)).map((one) => one.id));
    return begun.ok ? ok(await write(tx, house, actor, begun.value)) : fail(amiss(begun.error));
  });
}

/** Saves one page of the editor as the venue's next version. */
export async function saveVenuePage(house: House, actor: Actor, { place, values, ...at }: At & { readonly place: Place; readonly values: FormValues }): Promise<Outcome<SavedVenue>> {
  return changed(house, actor, at, (venue) => { const read = venueTyped(venue, place, values); return read.ok ? read : fail(amiss(read.error)); });
}

/** Adds a rectangular room beside those that stand. Fields: name, width, depth. */
export async function addRoom(house: House, actor: Actor, { values, ...at }: At & { readonly values: FormValues }): Promise<Outcome<SavedVenue & { readonly room: string }>> {
  let room = "";
  const saved = await changed(house, actor, at, (venue) => {
    const text = (name: string): string => { const v = values[name]; return (typeof v === "string" ? v : "").trim(); };
    const name = text("name"), width = typedLength(text("width"), venue), depth = typedLength(text("depth"), venue);
    const errors = [
      ...(name === "" || name.length > 200 ? [{ field: "name", message: "Name: type what the room is called." }] : []),
      ...(width === undefined || width < 1000 ? [{ field: "width", message: "Width: type a length of 1 m at the least." }] : []),
      ...(depth === undefined || depth < 1000 ? [{ field: "depth", message: "Depth: type a length of 1 m at the least." }] : []),
    ];
    if (errors.length > 0 || width === undefined || depth === undefined) return fail(amiss(errors));
    const more = withRoom(venue, { name, width, depth });
    room = more.id;
    const read = factsAt(more.venue, [], null);
    return read.ok ? read : fail(amiss(read.error));
  });
  return saved.ok ? ok({ ...saved.value, room }) : saved;
}

/** Takes a room away, with what hangs on it: doors that lead there, drapes that use it, its place in packages. */
export async function removeRoom(house: House, actor: Actor, { room, ...at }: At & { readonly room: string }): Promise<Outcome<SavedVenue>> {
  return changed(house, actor, at, (venue) => {
    if (!venue.rooms.some((r) => r.id === room)) return fail({ code: "not-found" });
    const read = factsAt(withoutRoom(venue, room), [], null);
    return read.ok ? read : fail(amiss(read.error));
  });
}

const amiss = (errors: readonly Amiss[]): Refusal => ({ code: "invalid", errors });

async function changed(house: House, actor: Actor, { venue: id, version }: At, make: (venue: Venue) => Result<Venue, Refusal>): Promise<Outcome<SavedVenue>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  try {
    return await house.store.transaction(async (tx): Promise<Outcome<SavedVenue>> => {
      const now = await venues.find(tx, id);
      if (!now) return fail({ code: "not-found" });
      if (now.version !== version) return fail({ code: "stale", revision: now.version });
      const next = make(now.venue);
      return next.ok ? ok(await write(tx, house, actor, next.value)) : next;
    });
  } catch (error) {
    // Two saves of one version at once: the second meets the first's row.
    if (!isClash(error)) throw error;
    const now = await venues.find(house.store.db, id);
    return fail({ code: "stale", revision: now?.version ?? version });
  }
}

async function write(tx: Handle, house: House, actor: Actor, file: Venue): Promise<SavedVenue> {
  const at = nowIso(house);
  const version = await venues.save(tx, { file, hash: sha256(canonicalJson(file)), at, by: actor.kind === "desk" ? actor.person : "" });
  await history.add(tx, { booking: null, at, who: whoIs(actor), what: "venue-saved", data: { venue: file.id, version } });
  return { id: file.id, version };
}
