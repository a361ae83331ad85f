import { describe, expect, it } from "vitest";
import { briefSchema } from "../../lib/brief";
import { arrange } from "../../lib/engine";
import { capacity } from "../../lib/engine/capacity";
import { venueSchema, type Venue } from "../../lib/venue";

const FOOT = 304.8, INCH = 25.4;

/** The authority posts a figure for each room it has looked at, up to one person in 7 sq ft (IBC 2018 1004.5.1): furniture decides here, not the general factor. */
const posted = (long: number, wide: number): number => Math.floor((long * wide) / 7);

/** A bare hall or tent, ways out of 1.8 m (0.9 m in the smallest) in the middle of three sides; rounds of 60 in for eight in comfort and ten at most, more of everything than can be used. */
function hall(long: number, wide: number, uses: readonly string[] = ["dining"], seats = { comfort: 8, most: 10 }): Venue {
  const [w, h] = [Math.round(long * FOOT), Math.round(wide * FOOT)], door = 900 / 2 + (long > 20 ? 900 / 2 : 0);
  const way = (id: string, from: readonly [number, number], to: readonly [number, number]) => ({ id, from, to, leads: "outside", exit: true, for: ["guests", "service"], swing: "out" });
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "hall", name: "Hall", locale: "en-US", currency: "USD", timeZone: "America/Chicago", lengths: "imperial",
    rooms: [{
      id: "hall", name: "Hall", outline: [[0, 0], [w, 0], [w, h], [0, h]], uses, posted: { rows: posted(long, wide), tables: posted(long, wide), standing: posted(long, wide) },
      doors: [
        way("west", [0, Math.round(h / 2) - door], [0, Math.round(h / 2) + door]), way("east", [w, Math.round(h / 2) - door], [w, Math.round(h / 2) + door]),
        way("south", [Math.round(w / 2) - door, h], [Math.round(w / 2) + door, h]),
      ],
    }],
    stock: [
      { id: "round", name: "Round, 60 in", kind: "table", shape: { diameter: 60 * INCH }, height: 740, count: 200, seats },
      { id: "small", name: "Small table", kind: "table", shape: { width: 1220, depth: 760 }, height: 740, count: 4, seats: { comfort: 2, most: 4 } },
      { id: "narrow", name: "Narrow table", kind: "table", shape: { width: 1830, depth: 460 }, height: 740, count: 20 },
      { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 3_000 },
      { id: "bar", name: "Bar", kind: "bar", shape: { width: 2400, depth: 700 }, count: 4 },
      { id: "panel", name: "Dance panel", kind: "dance-panel", shape: { width: 914, depth: 914 }, count: 200 },
    ],
    packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ["hall"], turnover: true, dueDays: 28 }],
    charges: [], tax: { name: "Tax", basisPoints: 0, of: "total", included: false }, rules: { profile: "model-code" },
  });
}

/** Guests under a tent, by three rental houses: the least and the most that any of them seats at tables of any kind. */
const TENTS: readonly (readonly [long: number, wide: number, least: number, most: number])[] = [
  [20, 20, 24, 40], [30, 20, 32, 66], [40, 20, 48, 85], [30, 30, 60, 90], [50, 30, 100, 155], [40, 40, 110, 160], [60, 40, 160, 240], [80, 40, 216, 320],
];

describe("published rooms", () => {
  for (const [long, wide, least, most] of TENTS) {
    it(`a tent of ${wide} x ${long} ft holds at 60 in rounds what three rental houses say, ${least} to ${most} (tent charts, second hand)`, () => {
      const fit = capacity(hall(long, wide), { style: "rounds" }).rooms[0]?.styles.rounds;
      // Comfort is no more than the fullest chart, the most no less than the emptiest.
      expect(fit?.most.seats).toBeGreaterThanOrEqual(least);
      expect(fit?.comfort.seats).toBeLessThanOrEqual(most);
    });
  }

  it("a hall of 8.6 x 16.7 m holds the 200 in rows that it is let for, and no fewer of its 150 at tables than 0.9 (Carterton's main hall, table size not stated, second hand)", () => {
    const styles = capacity(hall(16.7 / 0.3048, 8.6 / 0.3048, ["dining", "ceremony"])).rooms[0]?.styles;
    expect(styles?.rows?.most.seats).toBeGreaterThanOrEqual(200);
    expect(styles?.rounds?.most.seats).toBeGreaterThanOrEqual(150 * 0.9);
  });

  it("a ballroom of 122 x 61 ft takes the 56 rounds of nine that it is let for, 504 in all (Purdue Memorial Union, 2015, second hand)", () => {
    const fit = capacity(hall(122, 61, ["dining"], { comfort: 9, most: 9 }), { style: "rounds" }).rooms[0]?.styles.rounds;
    expect(fit?.most.seats).toBeGreaterThanOrEqual(56 * 9);
  });

  it("and a whole wedding of 250 with its floor and band (Purdue Memorial Union, 2015: 250 to 300 planned, second hand)", () => {
    const brief = briefSchema.parse({
      format: "marquetry.brief/1", package: "hire", date: "2028-06-10", guests: { adults: 250 }, ceremony: { here: false },
      meal: { service: "plated", tables: "rounds", room: "hall" }, music: { by: "band", players: 5, dancing: 0.4 }, displays: ["cake"],
    });
    const found = arrange(hall(122, 61, ["dining", "dancing", "plating", "drinks"]), brief, { layouts: 1, instead: false });
    expect(found.status).toBe("arranged");
    expect(found.layouts[0]?.scenes.find((s) => s.id === "meal")?.seats).toBeGreaterThanOrEqual(250);
  });
});
