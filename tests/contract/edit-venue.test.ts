import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { addRoom, adjust, adjusting, arrangeStandard, beginVenue, chooseStandard, dropStandard, dropVenueDraft, importVenue, listVenues, removeRoom, saveVenuePage, standardKey, standardSources, takeAdjusted, venuesToEdit, type FormValues } from "../../lib/service";
import { fieldOf, partsOf, type Place } from "../../lib/venue/edit";
import { parseVenue, type Venue } from "../../lib/venue";
import { tidewheel } from "../../lib/demo";
import { added, DESK, testHouse, type TestHouse } from "./support/house";
import { sendFirst, value } from "./support/line";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const venueNow = async (id: string): Promise<{ readonly version: number; readonly venue: Venue }> => {
  const seen = await listVenues(house, DESK, {});
  const found = seen.ok ? seen.value.find((v) => v.id === id) : undefined;
  if (!found) throw new Error(`no venue ${id}`);
  return found;
};
const shown = (venue: Venue, place: Place): FormValues =>
  Object.fromEntries((partsOf(venue, place) ?? []).flatMap((part) => part.shown.flatMap((row, i) => Object.entries(row).map(([name, v]) => [fieldOf(part, i, name), v] as const))));

const BEGUN = {
  "house.name": "Old Tithe Hall", "house.lengths": "metric", "house.locale": "en-GB", "house.currency": "GBP", "house.timeZone": "Europe/London",
  "room.name": "Hall", "room.width": "12", "room.depth": "8", "doors.0.wall": "C", "doors.0.start": "2", "doors.0.width": "1.8",
  "tables.rounds": "8", "tables.across": "1.68", "tables.chairs": "80", "package.name": "Hire", "package.due": "42",
};

describe("the venue's editor", () => {
  it("makes a venue from nothing, and each save is a version of its own", async () => {
    expect(await beginVenue(house, DESK, { values: BEGUN })).toEqual({ ok: true, value: { id: "old-tithe-hall", version: 1 } });
    const { venue } = await venueNow("old-tithe-hall");
    const values = { ...shown(venue, { section: "stock" }), "stock.0.count": "9" };
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version: 1, place: { section: "stock" }, values })).toMatchObject({ ok: true, value: { version: 2 } });
    expect((await venueNow("old-tithe-hall")).venue.stock[0]?.count).toBe(9);
    expect(await addRoom(house, DESK, { venue: venue.id, version: 2, values: { name: "Side Room", width: "5", depth: "4" } })).toMatchObject({ ok: true, value: { version: 3, room: "side-room" } });
    expect(await removeRoom(house, DESK, { venue: venue.id, version: 3, room: "side-room" })).toMatchObject({ ok: true, value: { version: 4 } });
  });

  it("refuses a save over a version that is not the newest, and one of two at once", async () => {
    const { venue, version } = await venueNow("tidewheel-mill");
    const save = (count: string) => saveVenuePage(house, DESK, { venue: venue.id, version, place: { section: "stock" }, values: { ...shown(venue, { section: "stock" }), "stock.0.count": count } });
    const both = await Promise.all([save("8"), save("9")]);
    expect(both.filter((one) => one.ok)).toHaveLength(1);
    expect(both.find((one) => !one.ok)).toEqual({ ok: false, error: { code: "stale", revision: version + 1 } });
    expect(await save("10")).toEqual({ ok: false, error: { code: "stale", revision: version + 1 } });
  });

  it("keeps one of eight saves at once, however they fall", async () => {
    const { venue, version } = await venueNow("tidewheel-mill");
    const eight = Array.from({ length: 8 }, (_, i) => saveVenuePage(house, DESK, { venue: venue.id, version, place: { section: "stock" }, values: { ...shown(venue, { section: "stock" }), "stock.0.count": String(11 + i) } }));
    const kept = (await Promise.all(eight)).filter((one) => one.ok);
    expect(kept).toHaveLength(1);
    expect((await venueNow("tidewheel-mill")).version).toBe(version + 1);
  });

  it("begins two venues of one name at once as two, and two files at once as two versions", async () => {
    const both = await Promise.all([beginVenue(house, DESK, { values: { ...BEGUN, "house.name": "Twin Hall" } }), beginVenue(house, DESK, { values: { ...BEGUN, "house.name": "Twin Hall" } })]);
    expect(new Set(both.map((one) => one.ok && one.value.id)).size).toBe(2);
    const { venue } = await venueNow("twin-hall");
    const files = ["First Hall", "Second Hall"].map((name) => importVenue(house, DESK, { json: JSON.stringify({ ...venue, name }) }));
    const versions = (await Promise.all(files)).map((one) => one.ok && one.value.version);
    expect(versions.toSorted()).toEqual([1 + 1, 1 + 2]);
  });

  it("keeps nothing of a page with a fault, and names the field", async () => {
    const { venue, version } = await venueNow("tidewheel-mill");
    const values = { ...shown(venue, { room: "wheel-room" }), "doors.1.start": "6.9" };
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version, place: { room: "wheel-room" }, values })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "doors.1.start" }] } });
    expect((await venueNow("tidewheel-mill")).version).toBe(version);
  });

  it("will not take away the only room of a package, and says so", async () => {
    const { venue, version } = await venueNow("old-tithe-hall");
    expect(await removeRoom(house, DESK, { venue: venue.id, version, room: "hall" })).toMatchObject({ ok: false, error: { code: "invalid" } });
  });

  it("gives a file that reads back as the same venue", async () => {
    const { venue, version } = await venueNow("old-tithe-hall");
    const file = JSON.stringify(venue);
    expect(parseVenue(file).ok).toBe(true);
    expect(await importVenue(house, DESK, { json: file })).toEqual({ ok: true, value: { id: venue.id, version } });
  });
});

const edited = async (id: string) => {
  const found = value(await venuesToEdit(house, DESK)).find((v) => v.id === id);
  if (!found) throw new Error(`no venue ${id} in the editor`);
  return found;
};

describe("a venue kept as a draft", () => {
  it("of a first form with doors and tables still to come, is in the editor alone until it is whole", async () => {
    const few = { "house.name": "Weir House", "house.lengths": "metric", "house.locale": "en-GB", "house.currency": "GBP", "house.timeZone": "Europe/London", "room.name": "Hall", "room.width": "10", "room.depth": "7" };
    expect(await beginVenue(house, DESK, { values: few })).toMatchObject({ ok: false, error: { code: "invalid" } });
    expect(await beginVenue(house, DESK, { values: { ...few, as: "draft" } })).toEqual({ ok: true, value: { id: "weir-house", version: 0, draft: 1 } });
    expect(value(await listVenues(house, DESK)).map((v) => v.id)).not.toContain("weir-house");
    expect(await edited("weir-house")).toMatchObject({ version: 0, draft: { number: 1 } });
    const stock = { "stock.0.name": "Round", "stock.0.kind": "table", "stock.0.count": "6", "stock.0.diameter": "1.68", "stock.0.comfort": "8", "stock.0.most": "10" };
    expect(await saveVenuePage(house, DESK, { venue: "weir-house", version: 0, draft: 1, place: { section: "stock" }, values: { ...stock, as: "draft" } })).toMatchObject({ ok: true, value: { draft: 2 } });
    expect(await saveVenuePage(house, DESK, { venue: "weir-house", version: 0, draft: 2, place: { section: "stock" }, values: { ...stock, "stock.1.name": "Chair", "stock.1.kind": "chair", "stock.1.count": "60", "stock.1.width": "0.45", "stock.1.depth": "0.5" } })).toEqual({ ok: true, value: { id: "weir-house", version: 1 } });
    expect((await edited("weir-house")).draft).toBeUndefined();
  });

  it("holds a door that is on no wall, names it and its page, and shows it again where it was typed", async () => {
    const { venue, version } = await venueNow("tidewheel-mill"), place: Place = { room: "wheel-room" };
    const values = { ...shown(venue, place), "doors.1.start": "6.9" };
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version, place, values: { ...values, as: "draft" } })).toMatchObject({ ok: true, value: { version, draft: 1 } });
    // Bookings go on with the version that is whole.
    expect(await venueNow("tidewheel-mill")).toMatchObject({ version, venue: { rooms: venue.rooms } });
    const draft = await edited(venue.id);
    expect(draft.draft?.amiss[0]).toMatchObject({ page: "rooms/wheel-room", message: expect.stringContaining("Wheel Room, doors 2") as string });
    expect(shown(draft.venue, place)["doors.1.start"]).toBe("6.90");
    // As a version it is refused, from whichever page; mended it is saved, and the draft is gone.
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version, draft: 1, place: { section: "stock" }, values: shown(draft.venue, { section: "stock" }) })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "save" }] } });
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version, draft: 0, place, values })).toMatchObject({ ok: false, error: { code: "stale" } });
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version, draft: 1, place, values: { ...values, "doors.1.start": String(shown(venue, place)["doors.1.start"]) } })).toMatchObject({ ok: true });
    expect((await edited(venue.id)).draft).toBeUndefined();
  });

  it("cannot hold what cannot be read, keeps rooms added to it, and can be let go", async () => {
    const { venue, version } = await venueNow("tidewheel-mill");
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version, place: { section: "stock" }, values: { ...shown(venue, { section: "stock" }), "stock.0.count": "some", as: "draft" } })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "stock.0.count" }] } });
    expect(await saveVenuePage(house, DESK, { venue: venue.id, version, place: { section: "stock" }, values: { ...shown(venue, { section: "stock" }), as: "draft" } })).toMatchObject({ ok: true, value: { draft: 1 } });
    expect(await addRoom(house, DESK, { venue: venue.id, version, draft: 1, values: { name: "Loft", width: "5", depth: "4" } })).toMatchObject({ ok: true, value: { draft: 2 } });
    expect((await edited(venue.id)).venue.rooms.at(-1)?.name).toBe("Loft");
    expect(await dropVenueDraft(house, DESK, { venue: venue.id })).toMatchObject({ ok: true });
    expect((await edited(venue.id)).venue).toEqual(venue);
  });
});

describe("the standard layout", () => {
  it("is taken from what was laid out here, without names, and goes with the venue's version", async () => {
    const reference = await added(house, { venue: "tidewheel-mill" }), sent = await sendFirst(house, reference);
    expect(value(await standardSources(house, DESK, { venue: "tidewheel-mill" })).map((s) => [s.reference, s.number])).toContainEqual([reference, sent.number]);
    const { version } = await venueNow("tidewheel-mill");
    expect(await chooseStandard(house, DESK, { venue: "tidewheel-mill", version, title: "", reference, number: 1 })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "title" }] } });
    expect(await chooseStandard(house, DESK, { venue: "tidewheel-mill", version, title: "The mill's own", reference, number: 1 })).toMatchObject({ ok: true, value: { version: version + 1 } });
    expect((await venueNow("tidewheel-mill")).venue.standardLayout).toMatchObject({ id: "standard", title: "The mill's own", why: [], findings: [] });
  });

  it("is worked out for a number of guests, adjusted under the hand, and taken away", async () => {
    const { version } = await venueNow("tidewheel-mill");
    const offered = value(await arrangeStandard(house, DESK, { venue: "tidewheel-mill", guests: 60 }));
    expect(await chooseStandard(house, DESK, { venue: "tidewheel-mill", version, title: "Sixty", guests: 60, layout: offered.layouts[1]?.id ?? "" })).toMatchObject({ ok: true });
    expect(await chooseStandard(house, DESK, { venue: "tidewheel-mill", version: version + 1, title: "Sixty", guests: 60, layout: "z" })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "layout" }] } });
    const reference = standardKey("tidewheel-mill"), view = value(await adjusting(house, DESK, { reference }));
    expect(await adjusting(house, { ...DESK, role: "desk" }, { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
    const next = value(await adjust(house, DESK, { reference, seen: view.seen, values: { act: "add", scene: "meal", what: "stock/small", room: "grain-floor" } }));
    expect(next.layout.scenes[0]?.items).toHaveLength(1);
    expect(await takeAdjusted(house, DESK, { reference, seen: next.seen })).toMatchObject({ ok: true });
    expect((await venueNow("tidewheel-mill")).venue.standardLayout?.scenes[0]?.items).toHaveLength(1);
    const now = await venueNow("tidewheel-mill");
    expect(await dropStandard(house, DESK, { venue: "tidewheel-mill", version: now.version })).toMatchObject({ ok: true });
    expect((await venueNow("tidewheel-mill")).venue.standardLayout).toBeUndefined();
  });
});

describe("a file read in over a venue that has a draft", () => {
  const file = (name: string): string => JSON.stringify({ ...JSON.parse(JSON.stringify(tidewheel)) as object, name });
  const shownNow = async () => value(await venuesToEdit(house, DESK)).find((one) => one.id === "tidewheel-mill");

  it("is not silently overwritten by the draft: its editor is told, and saves over it only where that is said", async () => {
    const { version: first, venue } = await venueNow("tidewheel-mill"), place = { section: "house" } as const;
    const typed = { ...shown(venue, place), "crew.size": "7" };
    expect(await saveVenuePage(house, DESK, { venue: "tidewheel-mill", version: first, place, values: { ...typed, as: "draft" } })).toMatchObject({ ok: true, value: { draft: 1 } });
    expect(value(await importVenue(house, DESK, { json: file("The Mill, read in") })).version).toBe(first + 1);
    expect(await shownNow()).toMatchObject({ version: first + 1, draft: { base: first }, venue: { name: "Tidewheel Mill" } });
    // A page opened before the file came is stale; one opened since has to say that it means it.
    expect(await saveVenuePage(house, DESK, { venue: "tidewheel-mill", version: first, draft: 1, place, values: typed })).toMatchObject({ ok: false, error: { code: "stale" } });
    const since = { venue: "tidewheel-mill", version: first + 1, draft: 1, place };
    expect(await saveVenuePage(house, DESK, { ...since, values: typed })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "over" }] } });
    expect((await venueNow("tidewheel-mill")).venue.name).toBe("The Mill, read in");
    // Kept further as a draft it is still one of the older version.
    expect(await saveVenuePage(house, DESK, { ...since, values: { ...typed, as: "draft" } })).toMatchObject({ ok: true, value: { draft: 2 } });
    expect(await shownNow()).toMatchObject({ draft: { number: 2, base: first } });
    expect(await saveVenuePage(house, DESK, { ...since, draft: 2, over: first, values: typed })).toMatchObject({ ok: false });
    expect(await saveVenuePage(house, DESK, { ...since, draft: 2, over: first + 1, values: typed })).toMatchObject({ ok: true, value: { version: first + 2 } });
    expect((await venueNow("tidewheel-mill")).venue).toMatchObject({ name: "Tidewheel Mill", crew: { size: 7 } });
  });
});
