import { fail, ok, type Result } from "../base";
import { sha256 } from "../access";
import { canonicalJson } from "../booking";
import { history, isClash, venueDrafts, venues, type Handle } from "../store";
import { venueSchema, type Venue } from "../venue";
import { factsAmiss, typedLength, venueBegun, venueTyped, withoutRoom, withRoom, factsAt, type Place, type Amiss } from "../venue/edit";
import { againOnClash } from "./again";
import { deskGate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, FormValues, Outcome, Refusal } from "./types";
import type { VenueView } from "./venues";

/**
 * `version`, `draft`: those that the form was filled from, 0 for none. Where another was saved since, the save is refused as stale. `over`: the version
 * that a draft from before it may take the place of, said by whoever saves it.
 */
export type VenueAt = { readonly venue: string; readonly version: number; readonly draft?: number; readonly over?: number };
/** `draft`: kept as a draft, which no booking uses; else it is the venue's version. */
export type SavedVenue = { readonly id: string; readonly version: number; readonly draft?: number };
/** A venue as its editor shows it: the draft where there is one. `version` 0: it has none yet. */
export type VenueToEdit = VenueView & { readonly draft?: { readonly number: number; readonly savedAt: string; /** The version that it began from, 0 for none; another than the current one where that was read in since. */ readonly base: number; /** What keeps it from being whole, by the page of the editor. */ readonly amiss: readonly { readonly page: string; readonly message: string }[] } };

/** Whether a form was sent to be kept as a draft. */
const wantsDraft = (values: FormValues): boolean => values.as === "draft";

/** Every venue as the editor shows it, those that are only begun among them. */
export async function venuesToEdit(house: House, actor: Actor): Promise<Outcome<readonly VenueToEdit[]>> {
  const desk = deskGate(actor, "venues");
  if (!desk.ok) return desk;
  const whole = await venues.list(house.store.db), drafts = await venueDrafts.list(house.store.db);
  const told = (d: venueDrafts.VenueDraft): Pick<VenueToEdit, "venue" | "draft"> => ({ venue: d.venue, draft: { number: d.number, savedAt: d.savedAt, base: d.base, amiss: factsAmiss(d.venue) } });
  return ok([
    ...whole.map(({ id, version, venue }) => { const draft = drafts.find((d) => d.id === id); return { id, version, venue, ...(draft ? told(draft) : {}) }; }),
    ...drafts.filter((d) => !whole.some((one) => one.id === d.id)).map((d) => ({ id: d.id, version: 0, ...told(d) })),
  ]);
}

/** A venue from nothing, of the first form; as a draft what is not known yet may be left empty. */
export async function beginVenue(house: House, actor: Actor, { values }: { readonly values: FormValues }): Promise<Outcome<SavedVenue>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  return againOnClash(() => house.store.transaction(async (tx): Promise<Outcome<SavedVenue>> => {
    const taken = [...await venues.list(tx), ...await venueDrafts.list(tx)].map((one) => one.id), asDraft = wantsDraft(values);
    const begun = venueBegun(values, taken, asDraft);
    if (!begun.ok) return fail(amiss(begun.error));
    return ok(await write(tx, house, { by: may.value, actor, venue: begun.value, asDraft, version: 0, base: 0, draft: 0 }));
  }));
}

/** Saves one page of the editor: as the venue's next version, or as a draft of it. */
export async function saveVenuePage(house: House, actor: Actor, { place, values, ...at }: VenueAt & { readonly place: Place; readonly values: FormValues }): Promise<Outcome<SavedVenue>> {
  const asDraft = wantsDraft(values);
  return changeVenue(house, actor, { ...at, asDraft }, (venue) => { const read = venueTyped(venue, place, values, asDraft); return read.ok ? read : fail(amiss(read.error)); });
}

/** Adds a rectangular room beside those that stand. Fields: name, width, depth. */
export async function addRoom(house: House, actor: Actor, { values, ...at }: VenueAt & { readonly values: FormValues }): Promise<Outcome<SavedVenue & { readonly room: string }>> {
  let room = "";
  const saved = await changeVenue(house, actor, at, (venue) => {
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
    return wholeOrDraft(more.venue, at);
  });
  return saved.ok ? ok({ ...saved.value, room }) : saved;
}

/** Takes a room away, with what hangs on it: doors that lead there, drapes that use it, its place in packages. */
export async function removeRoom(house: House, actor: Actor, { room, ...at }: VenueAt & { readonly room: string }): Promise<Outcome<SavedVenue>> {
  return changeVenue(house, actor, at, (venue) => (venue.rooms.some((r) => r.id === room) ? wholeOrDraft(withoutRoom(venue, room), at) : fail({ code: "not-found" })));
}

/** Lets the draft of a venue go: its version, where it has one, stands as it did. */
export async function dropVenueDraft(house: House, actor: Actor, { venue }: { readonly venue: string }): Promise<Outcome<null>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  return house.store.transaction(async (tx): Promise<Outcome<null>> => ((await venueDrafts.drop(tx, venue)) ? ok(null) : fail({ code: "not-found" })));
}

const amiss = (errors: readonly Amiss[]): Refusal => ({ code: "invalid", errors });

/** What goes on in a draft stays there until all of it is whole. */
function wholeOrDraft(venue: Venue, { draft = 0 }: VenueAt): Result<Venue, Refusal> {
  const read = factsAt(venue, { parts: [], form: null, asDraft: draft > 0 });
  return read.ok ? read : fail(amiss(read.error));
}

/** Changes the venue as its editor shows it, and saves it. Without `asDraft` told, what was a draft stays one. */
export async function changeVenue(house: House, actor: Actor, { venue: id, version, draft = 0, over, asDraft = draft > 0 }: VenueAt & { readonly asDraft?: boolean }, make: (venue: Venue) => Result<Venue, Refusal>): Promise<Outcome<SavedVenue>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  try {
    return await house.store.transaction(async (tx): Promise<Outcome<SavedVenue>> => {
      const now = await venues.find(tx, id), begun = await venueDrafts.hold(tx, id), from = begun?.venue ?? now?.venue;
      if (!from) return fail({ code: "not-found" });
      if ((now?.version ?? 0) !== version || (begun?.number ?? 0) !== draft) return fail({ code: "stale", revision: now?.version ?? 0 });
      if (begun && !asDraft && begun.base !== version && over !== version) return fail(amiss([{ field: "over", message: overText(begun.base, version) }]));
      const next = make(from);
      return next.ok ? ok(await write(tx, house, { by: may.value, actor, venue: next.value, asDraft, version, base: begun?.base ?? version, draft })) : next;
    });
  } catch (error) {
    // Two saves of one version at once: the second meets the first's row.
    if (!isClash(error)) throw error;
    const now = await venues.find(house.store.db, id);
    return fail({ code: "stale", revision: now?.version ?? version });
  }
}

/** A file was read in over the venue while its draft lay there: the draft knows nothing of it. */
const overText = (base: number, version: number): string =>
  `${base === 0 ? "This draft began before the venue had a version" : `This draft began from version ${base}`}, and version ${version} was read in since. Tick that the draft takes its place, or let the draft go.`;

type Write = { readonly by: string; readonly actor: Actor; readonly venue: Venue; readonly asDraft: boolean; readonly version: number; /** What a draft began from. */ readonly base: number; readonly draft: number };

async function write(tx: Handle, house: House, { by, actor, venue, asDraft, version: now, base, draft }: Write): Promise<SavedVenue> {
  const at = nowIso(house), file = venueSchema.parse(JSON.parse(JSON.stringify(venue)));
  if (asDraft) {
    await venueDrafts.keep(tx, { venue: file, base, number: draft + 1, at, by });
    return { id: file.id, version: now, draft: draft + 1 };
  }
  const version = await venues.save(tx, { file, hash: sha256(canonicalJson(file)), at, by, after: now });
  if (draft > 0) await venueDrafts.drop(tx, file.id);
  await history.add(tx, { booking: null, at, who: whoIs(actor), what: "venue-saved", data: { venue: file.id, version } });
  return { id: file.id, version };
}
