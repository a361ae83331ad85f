import { describe, expect, it } from "vitest";
import { capacity } from "../../../../lib/engine/capacity";
import { turn, type Polygon } from "../../../../lib/geometry";
import { capacitySchema, type Scene } from "../../../../lib/layout";
import { contextOf, judge } from "../../../../lib/rules";
import { venueSchema, type Venue, type VenueFile } from "../../../../lib/venue";

function venueOf(outline: Polygon, doors: readonly (readonly [readonly [number, number], readonly [number, number]])[], angle = 0, more: Partial<VenueFile["rooms"][number]> = {}): Venue {
  const t = (p: readonly [number, number]): [number, number] => { const q = turn(p, angle); return [Math.round(q[0]), Math.round(q[1])]; };
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
    rooms: [{
      id: "hall", name: "Hall", outline: outline.map(t), uses: ["ceremony", "dining", "drinks"],
      doors: doors.map(([a, b], i) => ({ id: `d${i}`, from: t(a), to: t(b), leads: "outside", exit: true, for: ["guests"], swing: "out" })), ...more,
    }],
    stock: [
      { id: "round", name: "Round", kind: "table", shape: { diameter: 1524 }, count: 4, seats: { comfort: 8, most: 10 } },
      { id: "long", name: "Long", kind: "table", shape: { width: 1829, depth: 762 }, count: 8, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
      { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 80 },
    ],
    packages: [{ id: "p", name: "P", coordinator: true, rooms: ["hall"], turnover: true, dueDays: 7 }],
    charges: [], tax: { name: "VAT", basisPoints: 0, of: "line", included: true },
  });
}
const RECT = venueOf([[0, 0], [11000, 0], [11000, 8000], [0, 8000]], [[[2000, 8000], [3600, 8000]], [[8000, 8000], [9200, 8000]]]);
const ELL = venueOf([[0, 0], [11000, 0], [11000, 5000], [6000, 5000], [6000, 10000], [0, 10000]], [[[0, 8000], [0, 9200]], [[11000, 1500], [11000, 2600]]], 17);

const faults = (venue: Venue, style: string, items: Scene["items"]): readonly string[] => {
  const id = style === "rows" ? "ceremony" : "meal";
  const scene: Scene = { id, title: id, rooms: ["hall"], drapes: [], items, seats: items.flatMap((i) => i.seats).length, numbers: [] };
  const context = contextOf(venue, { id: "a", title: "", why: [], scenes: [scene], turnovers: [], findings: [] });
  const view = context.scenes[0];
  return view ? judge(context, view, ["ids", "inRoom", "builtIn", "overlap", "doorClear", "seats", "tablePlaces", "gaps", "ends", "rowClear", "stock", "ways", "load"])
    .filter((f) => f.level === "must").map((f) => `${style} ${f.code} ${f.items.join(" ")}`) : [];
};

describe("capacity", () => {
  it.each([["a rectangle", RECT], ["an L at 17 degrees", ELL]])("keeps comfort <= most <= ceiling in %s, each fit free of a must finding", (_, venue) => {
    const found = capacity(venue, { effort: 0.1 });
    expect(capacitySchema.parse(found)).toEqual(found);
    const styles = found.rooms[0]?.styles ?? {};
    expect(Object.keys(styles).sort()).toEqual(["e", "hollow-square", "long", "mixed", "rounds", "rows", "standing", "t", "u"]);
    for (const [style, f] of Object.entries(styles)) {
      if (!f) continue;
      expect(f.comfort.seats, style).toBeLessThanOrEqual(f.most.seats);
      expect(f.most.seats, style).toBeLessThanOrEqual(f.ceiling.seats);
      for (const fit of [f.comfort, f.most]) {
        expect(faults(venue, style, fit.items)).toEqual([]);
        if (style !== "standing") expect(fit.items.reduce((n, i) => n + i.seats.length, 0)).toBe(fit.seats);
      }
    }
    expect(styles.rounds?.most.seats).toBeGreaterThan(0);
    expect(styles.rows?.most.seats).toBeGreaterThan(0);
  });
  it("shows the room and style asked for alone", () => {
    const found = capacity(RECT, { room: "hall", style: "standing" });
    expect(Object.keys(found.rooms[0]?.styles ?? {})).toEqual(["standing"]);
    // 88 m2: 10 ft2 each in comfort, 7 ft2 (0.65 m2) each at the densest that may be posted.
    expect(found.rooms[0]?.styles.standing).toMatchObject({ comfort: { seats: Math.floor(88 / (10 * 0.09290304)) }, most: { seats: Math.floor(88 / (7 * 0.09290304)) } });
  });
  it("never seats fewer when the stock is left out or the room is bare", () => {
    const standing = [{ id: "settle", name: "Settle", kind: "lounge" as const, shape: { width: 2400, depth: 900 }, at: [5500, 4000] as const, angle: 0, move: null }];
    const venue = venueOf([[0, 0], [11000, 0], [11000, 8000], [0, 8000]], [[[2000, 8000], [3600, 8000]], [[8000, 8000], [9200, 8000]]], 0, { standing: [...standing] });
    const most = (o: object): number => capacity(venue, { style: "rounds", effort: 0.1, ...o }).rooms[0]?.styles.rounds?.most.seats ?? -1;
    expect(most({ bare: true })).toBeGreaterThanOrEqual(most({}));
    expect(most({ anyStock: true, bare: true })).toBeGreaterThanOrEqual(most({ bare: true }));
  });
});
