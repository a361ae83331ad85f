import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { beginVenue, listVenues, removeRoom, addRoom, saveVenuePage, importVenue, type FormValues } from "../../lib/service";
import { fieldOf, partsOf, type Place } from "../../lib/venue/edit";
import { parseVenue, type Venue } from "../../lib/venue";
import { DESK, testHouse, type TestHouse } from "./support/house";

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
