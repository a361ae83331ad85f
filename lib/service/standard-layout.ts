import { fail, ok } from "../base";
import { sha256 } from "../access";
import { canonicalJson, withoutNames } from "../booking";
import { LAYOUTS, questionOf, SEED } from "../brief";
import type { ArrangeResult, Layout } from "../layout";
import { arrangements, queue, revisions, venueDrafts, venues } from "../store";
import type { VenueVersion } from "../store/venues";
import { factsAt } from "../venue/edit";
import { foundFor, join } from "./arranging";
import { changeVenue, type SavedVenue, type VenueAt } from "./edit-venue";
import { deskGate } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { mostSeats, standardBrief } from "./standard-brief";
import type { Actor, Outcome } from "./types";
import { arrangementKey } from "./view";

/** A layout that was sent or agreed here, from which the standard one can be made. */
export type StandardSource = { readonly reference: string; readonly number: number; readonly title: string; readonly seats: number; readonly date: string; readonly agreed: boolean };
const SOURCES = 24;

/** The newest layouts of a venue's bookings, agreed ones first. */
export async function standardSources(house: House, actor: Actor, { venue }: { readonly venue: string }): Promise<Outcome<readonly StandardSource[]>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  const { db } = house.store;
  const lines = await queue.lines(db, { states: ["agreed", "sent"], venue, today: {}, sort: "day", limit: SOURCES });
  const rows = await Promise.all(lines.map(async (line) => ({ line, row: (await revisions.listOf(db, line.reference)).at(-1) })));
  return ok(rows.flatMap(({ line, row }) => (row ? [{ reference: line.reference, number: row.number, title: row.layout.title, seats: mostSeats(row.layout), date: line.eventDate, agreed: row.agreedAt !== null }] : [])));
}

type Ask = { readonly venue: string; readonly guests: number; readonly pack?: string };
type Question = { readonly venue: VenueVersion; readonly key: string; readonly brief: ReturnType<typeof standardBrief> };

/** The venue as its editor shows it, under a hash of its own: a draft is asked about as well. */
async function questionFor(house: House, { venue: id, guests, pack }: Ask): Promise<Question | null> {
  const { db } = house.store, now = await venues.find(db, id), draft = await venueDrafts.find(db, id);
  const venue = draft ? { id, version: now?.version ?? 0, venue: draft.venue, hash: sha256(canonicalJson(draft.venue)) } : now;
  if (!venue || !Number.isInteger(guests) || guests < 1 || guests > 5_000) return null;
  const brief = standardBrief(venue.venue, { guests, pack: venue.venue.packages.find((p) => p.id === pack)?.id });
  return { venue, brief, key: arrangementKey(house.works.engineVersion, venue, brief) };
}

/** Layouts for so many guests, worked out from the venue alone. Its answer is kept as any is. */
export async function arrangeStandard(house: House, actor: Actor, ask: Ask): Promise<Outcome<ArrangeResult>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  const asked = await questionFor(house, ask);
  if (!asked) return fail({ code: "incomplete", missing: ["guests"] });
  const { venue, brief, key } = asked, look = (): Promise<ArrangeResult | undefined> => foundFor(house.store.db, key);
  return ok((await look()) ?? (await join({
    key, asker: `venue/${ask.venue}`, look,
    start: ({ flag, onProgress }) => house.works.arrange(venue.venue, questionOf(brief), { seed: SEED, layouts: LAYOUTS, flag, onProgress }),
    keep: (result) => arrangements.keep(house.store.db, { key, result, at: nowIso(house) }),
  })));
}

type Choice = VenueAt & { readonly title: string } & ({ readonly reference: string; readonly number: number } | { readonly guests: number; readonly pack?: string; readonly layout: string });

/** Makes one of them the venue's standard layout: nobody's names and nothing that a couple brought stay in it. */
export async function chooseStandard(house: House, actor: Actor, choice: Choice): Promise<Outcome<SavedVenue>> {
  const may = deskGate(actor, "edit-venue");
  if (!may.ok) return may;
  const layout = "reference" in choice ? await sentLayout(house, choice) : await workedLayout(house, choice);
  if (!layout) return fail({ code: "invalid", errors: [{ field: "layout", message: "Choose one of the layouts shown." }] });
  return keepStandard(house, actor, { ...choice, layout });
}

async function sentLayout(house: House, { reference, number }: { readonly reference: string; readonly number: number }): Promise<Layout | undefined> {
  const row = await revisions.find(house.store.db, reference, number);
  if (!row) return undefined;
  const bare = withoutNames(row).layout;
  return isLayout(bare, row.layout) ? bare : undefined;
}
/** Names are taken out of it and nothing else: it is a layout as it was one before. */
const isLayout = (bare: unknown, was: Layout): bare is Layout => typeof bare === "object" && bare !== null && "id" in bare && bare.id === was.id;

async function workedLayout(house: House, { venue, guests, pack, layout: id }: Ask & { readonly layout: string }): Promise<Layout | undefined> {
  const asked = await questionFor(house, { venue, guests, pack });
  return asked ? (await foundFor(house.store.db, asked.key))?.layouts.find((one) => one.id === id) : undefined;
}

type Keep = VenueAt & { readonly layout: Layout; readonly title: string };

/** Keeps a layout as the standard one, in the venue's next version or its draft. */
export async function keepStandard(house: House, actor: Actor, { layout, title, ...at }: Keep): Promise<Outcome<SavedVenue>> {
  const named = title.trim();
  if (named === "" || named.length > 120) return fail({ code: "invalid", errors: [{ field: "title", message: "Name: type what it is called, 120 characters at the most." }] });
  const { quote: _fees, wet, ...rest } = layout;
  const unbrought = (one: Layout["scenes"][number]): Layout["scenes"][number] => ({ ...one, items: one.items.filter((item) => !/^brought-\d+$/.test(item.id)) });
  const standard: Layout = { ...rest, id: "standard", title: named, why: [], findings: [], scenes: layout.scenes.map(unbrought), ...(wet ? { wet: { ...wet, scenes: wet.scenes.map(unbrought) } } : {}) };
  return changeVenue(house, actor, at, (venue) => {
    const read = factsAt({ ...venue, standardLayout: standard }, { parts: [], form: null });
    return read.ok ? read : fail({ code: "invalid", errors: read.error.map(({ message }) => ({ field: "layout", message })) });
  });
}

/** Takes the standard layout away: where nothing comes by the due date, nothing is set. */
export async function dropStandard(house: House, actor: Actor, at: VenueAt): Promise<Outcome<SavedVenue>> {
  return changeVenue(house, actor, at, (venue) => { const { standardLayout: _gone, ...rest } = venue; return ok(rest); });
}

type Drawn = { readonly venue: string; readonly scene: string; readonly pixelWidth: number; readonly rooms?: readonly string[]; /** One that was worked out; else the standard layout as it stands. */ readonly of?: { readonly guests: number; readonly pack?: string; readonly layout: string } };

/** One part of the day of the standard layout, or of one that it could be, as SVG. */
export async function standardSvg(house: House, actor: Actor, { venue: id, scene: wanted, pixelWidth, rooms, of }: Drawn): Promise<Outcome<string>> {
  const may = deskGate(actor, "venues");
  if (!may.ok) return may;
  const { db } = house.store, venue = (await venueDrafts.find(db, id))?.venue ?? (await venues.find(db, id))?.venue;
  const layout = of ? await workedLayout(house, { venue: id, ...of }) : venue?.standardLayout;
  const scene = layout?.scenes.find((one) => one.id === wanted) ?? layout?.scenes[0];
  if (!venue || !layout || !scene) return fail({ code: "not-found" });
  return ok(await house.works.planSvg({ venue, layout, scene: scene.id, sheet: false, pixelWidth, rooms }));
}
