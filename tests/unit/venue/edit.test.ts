import { describe, expect, it } from "vitest";
import { larkspur, tidewheel } from "../../../lib/demo";
import { venueSchema, type Venue } from "../../../lib/venue";
import { fieldOf, partsOf, SECTIONS, shownLength, typedLength, venueBegun, venueTyped, withRoom, withoutRoom, type Part, type Place, type Typed } from "../../../lib/venue/edit";

const mill = venueSchema.parse(tidewheel), barn = venueSchema.parse(larkspur);

/** What a browser sends of a form that is left as it is shown. */
const sent = (parts: readonly Part[]): Record<string, string | readonly string[]> =>
  Object.fromEntries(parts.flatMap((part) => part.shown.flatMap((row, i) => Object.entries(row).filter(([, v]) => v.length > 0).map(([name, v]) => [fieldOf(part, i, name), v] as const))));
const formFor = (venue: Venue, place: Place): Record<string, string | readonly string[]> => sent(partsOf(venue, place) ?? []);
const typed = (venue: Venue, place: Place, changes: Typed): ReturnType<typeof venueTyped> => venueTyped(venue, place, { ...formFor(venue, place), ...changes });
const bare = (venue: Venue): unknown => JSON.parse(JSON.stringify(venue));
const value = (read: ReturnType<typeof venueTyped>): Venue => { if (!read.ok) throw new Error(JSON.stringify(read.error)); return read.value; };

describe("a page of the venue's editor", () => {
  for (const venue of [mill, barn]) {
    const places: readonly Place[] = [...SECTIONS.map((section) => ({ section })), ...venue.rooms.map((r) => ({ room: r.id }))];
    for (const place of places) {
      it(`of ${venue.name}, ${"room" in place ? place.room : place.section}, saved as it is shown changes nothing`, () => {
        expect(bare(value(typed(venue, place, {})))).toEqual(bare(venue));
      });
    }
  }

  it("reads lengths of both systems back to the millimetre", () => {
    for (const venue of [mill, barn]) for (let mm = -40; mm < 20_000; mm += 7) expect(typedLength(shownLength(mm, venue), venue)).toBe(mm);
  });

  it("says at the field that a door is not on a wall", () => {
    // Wall A of the Wheel Room is 24.0 - 16.6 = 7.4 m long; 6.9 + 1.1 = 8.0 m.
    const read = typed(mill, { room: "wheel-room" }, { "doors.1.start": "6.9" });
    expect(read).toMatchObject({ ok: false, error: [{ field: "doors.1.start", message: expect.stringContaining("not on a wall") as string }] });
  });

  it("names the field of a fact that only the whole venue shows", () => {
    const read = typed(mill, { room: "wheel-room" }, { "floor.left": "16.0" });
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.error.some((e) => e.field === "floor.corners" || e.field.startsWith("floor."))).toBe(true);
  });

  it("tells a length that is none, a figure out of range and an empty name, all at once", () => {
    const read = typed(mill, { section: "stock" }, { "stock.0.diameter": "wide", "stock.1.count": "-3", "stock.2.height": "x" });
    if (read.ok) throw new Error("was read");
    expect(read.error.map((e) => e.field)).toEqual(expect.arrayContaining(["stock.0.diameter", "stock.1.count", "stock.2.height"]));
  });

  it("takes a row away, and adds one with an identifier of its own", () => {
    const n = mill.stock.length;
    const next = value(typed(mill, { section: "stock" }, { [`stock.${n - 1}.gone`]: "yes", [`stock.${n}.name`]: mill.stock[0]?.name ?? "", [`stock.${n}.kind`]: "table", [`stock.${n}.count`]: "2", [`stock.${n}.width`]: "2", [`stock.${n}.depth`]: "1" }));
    expect(next.stock).toHaveLength(n);
    expect(new Set(next.stock.map((s) => s.id)).size).toBe(n);
    expect(next.stock.at(-1)).toMatchObject({ shape: { width: 2000, depth: 1000 }, count: 2 });
  });

  it("puts a door between two rooms on both, and takes it from both", () => {
    const begun = withRoom(value(venueBegun(BEGUN, [])), { name: "Side Room", width: 5000, depth: 6000 });
    const doored = value(typed(begun.venue, { room: begun.id }, { "doors.0.wall": "D", "doors.0.start": "2", "doors.0.width": "1.5", "doors.0.leads": "hall", "doors.0.swing": "in", "doors.0.for": "guests" }));
    const back = doored.rooms[0]?.doors.find((d) => d.leads === begun.id);
    // Wall D runs upwards: from 6.0 m, so 6.0 - 2.0 - 1.5 = 2.5 to 4.0 m.
    expect(back).toMatchObject({ swing: "out", from: [12_000, 4000], to: [12_000, 2500] });
    const gone = value(typed(doored, { room: begun.id }, { "doors.0.gone": "yes" }));
    expect(gone.rooms.map((r) => r.doors.filter((d) => d.leads !== "outside").length)).toEqual([0, 0]);
    expect(withoutRoom(doored, begun.id).rooms[0]?.doors).toHaveLength(2);
  });

  it("moves a room with all that is in it", () => {
    const begun = value(venueBegun(BEGUN, []));
    const next = value(typed(begun, { room: "hall" }, { "floor.left": "3", "obstacles.0.kind": "column", "obstacles.0.left": "6", "obstacles.0.top": "4", "obstacles.0.width": "0.3", "obstacles.0.depth": "0.3", "sockets.0.wall": "A", "sockets.0.start": "1" }));
    expect(next.rooms[0]).toMatchObject({ outline: [[3000, 0], [15_000, 0], [15_000, 8000], [3000, 8000]], sockets: [[4000, 0]] });
    expect(next.rooms[0]?.obstacles[0]?.outline[0]).toEqual([3000 + 6000 - 150, 4000 - 150]);
    expect(next.rooms[0]?.doors[0]).toMatchObject({ from: [3000 + 2000 + 1800, 8000], to: [3000 + 2000, 8000] });
  });
});

const BEGUN: Typed = {
  "house.name": "Old Tithe Hall", "house.lengths": "metric", "house.locale": "en-GB", "house.currency": "gbp", "house.timeZone": "Europe/London",
  "room.name": "Hall", "room.width": "12", "room.depth": "8 m", "doors.0.wall": "C", "doors.0.start": "2", "doors.0.width": "1.8", "doors.1.wall": "A", "doors.1.start": "9", "doors.1.width": "1.2",
  "tables.rounds": "8", "tables.across": "1.68", "tables.chairs": "80", "package.name": "Hire", "package.due": "42",
};

describe("a venue from nothing", () => {
  it("is whole after the first form: a room, its doors, tables, chairs and a package", () => {
    const venue = value(venueBegun(BEGUN, ["old-tithe-hall"]));
    expect(venue).toMatchObject({ id: "old-tithe-hall-2", currency: "GBP", rooms: [{ id: "hall", doors: [{ from: [3800, 8000], to: [2000, 8000] }, { from: [9000, 0], to: [10_200, 0] }] }] });
    // 1.68 m across: an edge of 5.278 m, a place on 0.64 m in comfort and 0.52 m at the most.
    expect(venue.stock[0]?.seats).toEqual({ comfort: Math.floor((Math.PI * 1680) / 640), most: Math.floor((Math.PI * 1680) / 520) });
  });

  it("names each field that is missing", () => {
    const read = venueBegun({ "house.lengths": "metric" }, []);
    if (read.ok) throw new Error("was read");
    expect(read.error.map((e) => e.field)).toEqual(expect.arrayContaining(["house.name", "room.name", "room.width", "doors.0.width", "tables.chairs", "package.name"]));
  });
});
