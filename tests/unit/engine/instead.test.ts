import { describe, expect, it } from "vitest";
import { briefSchema, type BriefFile } from "../../../lib/brief";
import { arrange } from "../../../lib/engine";
import { changed } from "../../../lib/engine/changes";
import type { ArrangeResult } from "../../../lib/layout";
import { venueSchema, type Venue, type VenueFile } from "../../../lib/venue";

type RoomFile = VenueFile["rooms"][number];
const door = (id: string, from: readonly [number, number], to: readonly [number, number], leads = "outside") =>
  ({ id, from: [...from] as [number, number], to: [...to] as [number, number], leads, exit: leads === "outside", for: ["guests" as const, "service" as const], swing: "out" as const });
/** A hall of 10 x 8 m with a way out at either end. */
const hall = (more: Partial<RoomFile> = {}): RoomFile => ({
  id: "hall", name: "Hall", outline: [[0, 0], [10_000, 0], [10_000, 8000], [0, 8000]],
  doors: [door("west", [0, 3400], [0, 4600]), door("south", [4400, 8000], [5600, 8000])],
  uses: ["ceremony", "dining", "dancing", "buffet", "drinks"], ...more,
});
/** A parlour of 6 x 5 m that stands by itself. */
const parlour = (more: Partial<RoomFile> = {}): RoomFile => ({
  id: "parlour", name: "Parlour", outline: [[20_000, 0], [26_000, 0], [26_000, 5000], [20_000, 5000]],
  doors: [door("gate", [20_000, 2000], [20_000, 3200])], uses: ["ceremony", "dining", "drinks"], ...more,
});
function venueOf(rooms: readonly RoomFile[], more: Partial<VenueFile> = {}): Venue {
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric", rooms,
    stock: [
      { id: "round", name: "Round", kind: "table", shape: { diameter: 1524 }, count: 6, seats: { comfort: 8, most: 10 } },
      { id: "long", name: "Long", kind: "table", shape: { width: 1830, depth: 760 }, count: 8, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
      { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 120 },
      { id: "panel", name: "Panel", kind: "dance-panel", shape: { width: 900, depth: 900 }, count: 6 },
    ],
    packages: [{ id: "all", name: "All", coordinator: true, rooms: rooms.map((r) => r.id), turnover: true, dueDays: 20 }],
    charges: [], tax: { name: "VAT", basisPoints: 2000, of: "line", included: true }, ...more,
  });
}
const stay: Partial<VenueFile> = { packages: [{ id: "all", name: "All", coordinator: true, rooms: ["hall"], turnover: false, dueDays: 20 }] };
const brief = (adults: number, more: Partial<BriefFile> = {}) => briefSchema.parse({
  format: "marquetry.brief/1", package: "all", date: "2027-06-12", guests: { adults }, ceremony: { here: false }, meal: { service: "sharing" }, ...more,
});

/** What is offered besides fewer guests; each is run again here. */
function cures(venue: Venue, asked: ReturnType<typeof brief>): { readonly result: ArrangeResult; readonly paths: readonly string[] } {
  const result = arrange(venue, asked, { layouts: 1 });
  expect(result.status).not.toBe("arranged");
  for (const i of result.instead) {
    const next = changed(asked, i.change);
    expect(next && arrange(venue, next, { layouts: 1, instead: false }).status).toBe("arranged");
  }
  return { result, paths: result.instead.flatMap((i) => Object.keys(i.change)).filter((p) => !p.startsWith("guests.")) };
}

describe("the only cure", () => {
  it("is to lay each table for as many as it takes: 6 rounds and 8 long tables of 2 seat 28 and the couple", () => {
    expect(cures(venueOf([hall()]), brief(40, { meal: { service: "sharing", perTable: 2 } })).paths).toEqual(["meal.perTable"]);
  });
  it("is to mix tables: 2 rounds of 10 and the couple are 22", () => {
    const venue = venueOf([hall()]);
    const few = { ...venue, stock: venue.stock.map((s) => (s.id === "round" ? { ...s, count: 2 } : s)) };
    expect(cures(few, brief(34, { meal: { service: "sharing", tables: "rounds" } })).paths).toEqual(["meal.tables"]);
  });
  it("is to let the tables stand in any form", () => {
    expect(cures(venueOf([hall()]), brief(44, { meal: { service: "sharing", form: "t" } })).paths).toEqual(["meal.form"]);
  });
  it("is to hold the meal in another room", () => {
    const venue = venueOf([hall(), parlour({ posted: { tables: 16 } })]);
    expect(cures(venue, brief(34, { meal: { service: "sharing", room: "parlour" } })).paths).toEqual(["meal.room"]);
  });
  it("is to hold the ceremony in another room", () => {
    const venue = venueOf([hall({ uses: ["dining", "drinks"] }), parlour({ posted: { rows: 12, standing: 20, tables: 20 } }), { ...parlour(), id: "chapel", name: "Chapel", outline: [[30_000, 0], [40_000, 0], [40_000, 8000], [30_000, 8000]], doors: [door("porch", [30_000, 3400], [30_000, 4600]), door("vestry", [34_000, 8000], [35_200, 8000])], uses: ["ceremony"] }]);
    expect(cures(venue, brief(34, { ceremony: { here: true, room: "parlour" } })).paths).toEqual(["ceremony.room"]);
  });
  it("is to draw the drape: the hall's figure is 24, and 40 with the drape", () => {
    const open = (id: string, x: number, leads: string) => ({ ...door(id, [x, 2000], [x, 6000], leads), swing: "none" as const });
    const bay: RoomFile = { id: "bay", name: "Bay", outline: [[10_300, 0], [16_000, 0], [16_000, 8000], [10_300, 8000]], doors: [open("bay-arch", 10_300, "hall"), door("east", [16_000, 3400], [16_000, 4600])], uses: ["drinks"] };
    const main = hall({ posted: { tables: 24, standing: 60, rows: 60 } });
    const venue = venueOf([{ ...main, doors: [...main.doors, open("hall-arch", 10_000, "bay")] }, bay], {
      drapes: [{ id: "drape", name: "The drape", grows: "hall", from: "bay", area: [[10_300, 0], [12_500, 0], [12_500, 8000], [10_300, 8000]], charge: null, posted: { tables: 40, standing: 60, rows: 60 } }],
    });
    expect(cures(venue, brief(36, { drape: "no" })).paths).toEqual(["drape"]);
  });
  it("is to turn the room over: its figures let 60 sit in rows, 30 at tables, 40 stand", () => {
    const venue = venueOf([hall({ posted: { rows: 60, tables: 30, standing: 40 } })]);
    expect(cures(venue, brief(28, { guests: { adults: 28, ceremony: 56 }, ceremony: { here: true, aisle: "none" }, turnover: false })).paths).toEqual(["turnover"]);
  });
  it("is to hold the ceremony at the laid tables", () => {
    const venue = venueOf([hall({ posted: { rows: 60, tables: 40, standing: 10 } })], stay);
    expect(cures(venue, brief(28, { ceremony: { here: true } })).paths).toEqual(["ceremony.seating"]);
  });
  it("is a smaller dance floor: six panels of 0.81 m2 hold 11 dancers of 0.418 m2", () => {
    const { result, paths } = cures(venueOf([hall()]), brief(30, { music: { by: "playlist", dancing: 0.6 } }));
    expect(paths).toEqual(["music.dancing"]);
    // 6 x 0.81 / (30 x 0.418) = 0.387
    expect(result.instead[0]?.change["music.dancing"]).toBe(0.38);
  });
  it("is to set the food on the tables, where no room is let for a buffet", () => {
    expect(cures(venueOf([hall({ uses: ["dining", "drinks"] })]), brief(30, { meal: { service: "buffet" } })).paths).toEqual(["meal.service"]);
  });
  it("is a shorter top table: sixteen side by side make 6 tables of 1.83 m, longer than the hall, and twelve make 4", () => {
    const { result, paths } = cures(venueOf([hall()]), brief(30, { meal: { service: "sharing", top: "one-sided", topPlaces: 16 } }));
    expect(paths).toEqual(["meal.topPlaces", "meal.top"]);
    expect(result.instead[0]?.change).toEqual({ "meal.topPlaces": 12 });
  });
  it("is a couple who sit as a pair: five side by side take 5 tables of 1.2 m, longer than 5.5 m, and a shorter top table is none", () => {
    const venue = venueOf([hall({ outline: [[0, 0], [5500, 0], [5500, 5500], [0, 5500]], doors: [door("west", [0, 300], [0, 1500]), door("south", [300, 5500], [1500, 5500])] })], {
      stock: [
        { id: "round", name: "Round", kind: "table", shape: { diameter: 1524 }, count: 6, seats: { comfort: 8, most: 10 } },
        { id: "short", name: "Short", kind: "table", shape: { width: 1200, depth: 700 }, count: 8, seats: { comfort: 2, most: 2 }, joins: true },
        { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 60 },
      ],
    });
    expect(cures(venue, brief(10, { meal: { service: "sharing", top: "one-sided", topPlaces: 5 } })).paths).toEqual(["meal.top"]);
  });
  it("is to stand for the ceremony: the one room for it may hold 12 in rows and 40 standing, and no table is laid there", () => {
    const venue = venueOf([hall({ uses: ["dining", "drinks"] }), parlour({ uses: ["ceremony", "drinks"], posted: { rows: 12, standing: 40 } })]);
    const { result, paths } = cures(venue, brief(34, { ceremony: { here: true } }));
    expect(paths).toEqual(["ceremony.seating"]);
    expect(result.instead[0]?.change).toEqual({ "ceremony.seating": "standing" });
  });
  it("is fewer guests: one more than offered is not arranged", () => {
    const venue = venueOf([hall({ posted: { tables: 33 } })]);
    const result = arrange(venue, brief(40), { layouts: 1 });
    expect(result.instead.map((i) => i.change)).toEqual([{ "guests.adults": 33 }]);
  });
});

describe("several cures", () => {
  it("are told in the order of what they ask: a shorter top table before none", () => {
    const { paths } = cures(venueOf([hall()]), brief(30, { meal: { service: "sharing", top: "one-sided", topPlaces: 16 } }));
    expect(paths).toEqual(["meal.topPlaces", "meal.top"]);
  });
  it("are told in the order of what they ask: tables laid otherwise, then fewer guests", () => {
    const venue = venueOf([hall()]), few = { ...venue, stock: venue.stock.map((s) => (s.id === "round" ? { ...s, count: 2 } : s)) };
    const { result } = cures(few, brief(34, { meal: { service: "sharing", tables: "rounds", perTable: 10 } }));
    expect(result.instead.map((i) => Object.keys(i.change))).toEqual([["meal.tables"], ["guests.adults"]]);
  });
  it("do together what none does alone: no room is let for a buffet, and one room may not be turned over", () => {
    const venue = venueOf([hall({ uses: ["ceremony", "dining", "drinks"] })], stay);
    const { result } = cures(venue, brief(30, { ceremony: { here: true }, meal: { service: "buffet" } }));
    expect(result.instead.map((i) => i.change)).toEqual([{ "meal.service": "sharing", "ceremony.seating": "at-tables" }]);
    expect(result.instead[0]?.text).toBe("Change these together: have the food set down on the tables; hold the ceremony at the laid tables.");
  });
  it("do together with the fewest guests less, told before the many who would have to stay away without them", () => {
    // 2 rounds of 10 and the couple are 22; with 8 long tables 86, of whom the figure lets in 40.
    const venue = venueOf([hall({ posted: { tables: 40 } })]), few = { ...venue, stock: venue.stock.map((s) => (s.id === "round" ? { ...s, count: 2 } : s)) };
    const { result } = cures(few, brief(60, { meal: { service: "sharing", tables: "rounds" } }));
    expect(result.instead.map((i) => Object.keys(i.change))).toEqual([["meal.tables", "guests.adults"], ["guests.adults"]]);
    const [more = 0, less = 0] = result.instead.map((i) => Number(i.change["guests.adults"]));
    expect(more).toBeGreaterThan(less);
    expect(more).toBeLessThanOrEqual(40);
    expect(less).toBeLessThanOrEqual(2 * 10 + 2);
  });
});
