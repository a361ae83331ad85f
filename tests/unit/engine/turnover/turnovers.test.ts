import { describe, expect, it } from "vitest";
import { turnoverPlans, turnovers, turnoversOfDay } from "../../../../lib/engine/turnover";
import { turnoverSchema, type Item, type Scene } from "../../../../lib/layout";
import { venueSchema, type Venue, type VenueFile } from "../../../../lib/venue";

type Change = { readonly store?: readonly [number, number]; readonly door?: number; readonly crew?: number };
function venueWith({ store = [9000, 1000], door = 1600, crew = 4 }: Change = {}): Venue {
  const file: VenueFile = {
    format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
    rooms: [
      { id: "hall", name: "Hall", outline: [[0, 0], [20000, 0], [20000, 10000], [0, 10000]], uses: ["ceremony", "dining"],
        doors: [
          { id: "out", from: [2000, 10000], to: [2000 + door, 10000], leads: "outside", exit: true, for: ["guests"], swing: "out" },
          { id: "back", from: [store[0], 0], to: [store[0] + 900, 0], leads: "back-of-house", exit: false, for: ["service"], swing: "out" },
        ] },
    ],
    stock: [{ id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 100 }],
    packages: [{ id: "p", name: "P", coordinator: true, rooms: ["hall"], turnover: true, dueDays: 7 }],
    charges: [], tax: { name: "VAT", basisPoints: 0, of: "line", included: true }, crew: { size: crew },
  };
  return venueSchema.parse(file);
}
const chair = (id: string, x: number, y: number): Item => ({
  id, kind: "chair", role: "row-seat", label: "Chair", room: "hall", from: { stock: "chair" }, shape: { width: 450, depth: 500 },
  at: [x, y], angle: 0, seats: [{ x, y, facing: 90, place: "chair" }],
});
const table = (id: string, x: number, y: number): Item => ({
  id, kind: "table", role: "dining", label: id, room: "hall", from: { stock: "round" }, shape: { diameter: 1500 }, at: [x, y], angle: 0,
  seats: [0, 90, 180, 270].map((d) => ({
    x: x + [950, 0, -950, 0][d / 90]!, y: y + [0, 950, 0, -950][d / 90]!, facing: (d + 180) % 360, place: "chair" as const,
  })),
});
const scene = (id: Scene["id"], items: readonly Item[], rooms: readonly string[] = ["hall"]): Scene =>
  ({ id, title: id, rooms, drapes: [], items, seats: items.flatMap((i) => i.seats).length, numbers: [] });

const rows = scene("ceremony", Array.from({ length: 20 }, (_, i) => chair(`c${i}`, 3000 + (i % 5) * 600, 3000 + Math.floor(i / 5) * 1000)));
const meal = scene("meal", [table("t1", 4000, 4000), table("t2", 8000, 4000), table("t3", 12000, 4000)]);

describe("turnovers", () => {
  it("hands back turnovers that the layout's schema reads, with whole minutes of 1 or more", () => {
    const [t] = turnovers(venueWith(), rows, meal);
    expect(turnoverSchema.parse(t)).toEqual(t);
    expect(Number.isInteger(t?.minutes)).toBe(true);
    expect(t?.minutes).toBeGreaterThanOrEqual(1);
    expect(t?.crew).toBe(4);
  });
  it("brings the tables out, shifts 12 chairs to them, puts 8 away and lays 3 tables", () => {
    const moves = turnovers(venueWith(), rows, meal)[0]?.moves ?? [];
    const count = (act: string): number => moves.filter((m) => m.act === act).length;
    expect([count("out"), count("shift"), count("away"), count("lay")]).toEqual([3, 12, 8, 3]);
  });
  it("says nothing where nothing differs", () => {
    expect(turnovers(venueWith(), meal, { ...meal, id: "dancing" })).toEqual([]);
  });
  it("lays no table that was laid for the ceremony", () => {
    expect(turnovers(venueWith(), { ...meal, id: "ceremony" }, meal)).toEqual([]);
  });
  it("takes a room not in the next scene with the scene that uses it next", () => {
    const drinks = scene("drinks", [], ["garden"]);
    const day = turnoversOfDay(venueWith(), [rows, drinks, meal]);
    expect(day.map((t) => [t.from, t.to, t.room])).toEqual([["ceremony", "meal", "hall"]]);
  });
  it("never takes less time when the store is farther, the door narrower or the crew smaller", () => {
    const minutes = (c: Change): number => turnovers(venueWith(c), rows, meal, { guests: 90 })[0]?.minutes ?? 0;
    const far = [4000, 8000, 12000, 16000, 19000].map((x) => minutes({ store: [x, 0] }));
    expect([...far].sort((a, b) => a - b)).toEqual(far);
    const narrow = [2400, 1600, 1200, 900, 700].map((door) => minutes({ door }));
    expect([...narrow].sort((a, b) => a - b)).toEqual(narrow);
    const few = [12, 8, 6, 4, 3, 2, 1].map((crew) => minutes({ crew }));
    expect([...few].sort((a, b) => a - b)).toEqual(few);
  });
  it("says where the store is and why there", () => {
    expect(turnoverPlans(venueWith(), rows, meal)[0]?.store).toMatchObject({ id: "back", why: "back-of-house" });
  });
  it("starts when the last guest is out: 96 people through 1.6 m at one a second and metre take 1 minute", () => {
    expect(turnoverPlans(venueWith(), rows, meal, { guests: 96 })[0]?.out).toBe(96 / 1.6 / 60);
  });
  it("tells when each move is begun and done: the crew begin when the last guest is out and are done in the turnover's minutes", () => {
    const [t] = turnovers(venueWith(), rows, meal, { guests: 96 });
    const moves = t?.moves ?? [];
    expect(t?.leaving).toBe(96 / 1.6 / 60);
    // 12 chairs are stacked first, a quarter of a minute each, by four people: three each.
    expect(t?.aside).toMatchObject({ pieces: 12, minutes: 12 * 0.25 });
    expect(Math.min(t?.aside?.begins ?? 0, ...moves.map((m) => m.begins ?? 0))).toBe(1);
    expect(Math.ceil(Math.max(...moves.map((m) => m.ends ?? 0)))).toBe(t?.minutes);
    // Laying waits for the chairs, and the chairs for the tables.
    const first = (act: string): number => Math.min(...moves.filter((m) => m.act === act).map((m) => m.begins ?? 0));
    const last = (act: string): number => Math.max(...moves.filter((m) => m.act === act).map((m) => m.ends ?? 0));
    expect(first("lay")).toBeGreaterThanOrEqual(last("shift"));
    expect(first("shift")).toBeGreaterThanOrEqual(first("out"));
  });
});
