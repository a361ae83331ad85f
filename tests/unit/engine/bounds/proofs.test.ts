import { describe, expect, it } from "vitest";
import { briefSchema, type Brief, type BriefFile } from "../../../../lib/brief";
import { ceilingOf, olerRounds, proofs } from "../../../../lib/engine/bounds";
import { seeded } from "../../../../lib/base";
import { area, offset, rectangle, regionContains, turn, union, type Point, type Polygon } from "../../../../lib/geometry";
import { venueSchema, type Venue, type VenueFile } from "../../../../lib/venue";

const file: VenueFile = {
  format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
  rooms: [
    { id: "hall", name: "Hall", outline: [[0, 0], [15000, 0], [15000, 10000], [0, 10000]], uses: ["ceremony", "dining", "dancing"],
      posted: { rows: 120, tables: 90, standing: 150 },
      doors: [
        { id: "a", from: [2000, 10000], to: [3600, 10000], leads: "outside", exit: true, for: ["guests"], swing: "out" },
        { id: "b", from: [15000, 2000], to: [15000, 3000], leads: "outside", exit: true, for: ["guests"], swing: "out" },
      ] },
    { id: "den", name: "Den", outline: [[0, -6000], [5000, -6000], [5000, -200], [0, -200]], uses: ["drinks"], doors: [] },
  ],
  stock: [
    { id: "round", name: "Round", kind: "table", shape: { diameter: 1524 }, count: 7, seats: { comfort: 8, most: 10 } },
    { id: "long", name: "Long", kind: "table", shape: { width: 1829, depth: 762 }, count: 4, seats: { comfort: 6, most: 8 } },
    { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 100 },
  ],
  packages: [{ id: "p", name: "Hire", coordinator: false, rooms: ["hall"], turnover: true, dueDays: 42 }],
  charges: [], tax: { name: "VAT", basisPoints: 0, of: "line", included: true },
};
const venue = (change: (f: VenueFile) => VenueFile = (f) => f): Venue => venueSchema.parse(change(structuredClone(file)));
const brief = (adults: number, more: Partial<BriefFile> = {}, guests: object = {}): Brief =>
  briefSchema.parse({ format: "marquetry.brief/1", package: "p", date: "2027-06-12", guests: { adults, ...guests }, ...more });
const codes = (v: Venue, b: Brief): readonly string[] => proofs(v, b).map((f) => `${f.scene} ${f.code}`);

describe("proofs", () => {
  it("says nothing of a brief that no bound breaks", () => expect(proofs(venue(), brief(80))).toEqual([]));
  it("takes the posted figure of each part of the day: 90 at tables, 91 not", () => {
    expect(codes(venue(), brief(90))).toEqual([]);
    const [f] = proofs(venue(), brief(91));
    expect(f).toMatchObject({ code: "bound-posted", scene: "meal", measured: 91, limit: 90, unit: "people" });
    expect(f?.text).toContain("posted figure");
  });
  it("leaves suppliers out", () => expect(codes(venue(), brief(90, {}, { suppliers: 9 }))).toEqual([]));
  it("adds places at rounds of the stock: 7 x 10 and a couple's table of 2", () => {
    expect(codes(venue(), brief(7 * 10 + 2, { meal: { tables: "rounds" } }))).toEqual([]);
    expect(codes(venue(), brief(7 * 10 + 3, { meal: { tables: "rounds" } }))).toEqual(["meal bound-tables"]);
    expect(codes(venue(), brief(7 * 10 + 1, { meal: { tables: "rounds", top: "none" } }))).toEqual(["meal bound-tables"]);
  });
  it("counts chairs, of which wheelchair users and high chairs need none", () => {
    const few = venue((f) => ({ ...f, stock: f.stock.map((s) => (s.kind === "chair" ? { ...s, count: 76 } : s)) }));
    expect(codes(few, brief(80, {}, { wheelchairs: 4 }))).toEqual([]);
    expect(codes(few, brief(80, {}, { wheelchairs: 3 }))).toEqual(["meal bound-chairs", "ceremony bound-chairs"]);
  });
  it("needs two ways out from 50 guests", () => {
    const one = venue((f) => ({ ...f, rooms: f.rooms.map((r) => ({ ...r, doors: r.doors.slice(0, 1) })) }));
    expect(codes(one, brief(49))).toEqual([]);
    expect(codes(one, brief(50))).toEqual(["ceremony bound-exits", "meal bound-exits"]);
  });
  it("finds no wheelchair route through doors under 800 mm", () => {
    const narrow = venue((f) => ({ ...f, rooms: f.rooms.map((r) => ({ ...r, doors: r.doors.map((d) => ({ ...d, to: [d.from[0] + (d.id === "a" ? 790 : 0), d.from[1] + (d.id === "a" ? 0 : 790)] as [number, number] })) })) }));
    expect(codes(narrow, brief(40))).toEqual([]);
    expect(codes(narrow, brief(40, {}, { wheelchairs: 1 }))).toEqual(["ceremony bound-route", "meal bound-route"]);
  });
  it("names a room that the package lacks and a use that no room has", () => {
    expect(codes(venue(), brief(40, { meal: { room: "den" } }))).toEqual(["meal bound-room"]);
    const none = venue((f) => ({ ...f, rooms: f.rooms.map((r) => ({ ...r, uses: ["dining" as const] })) }));
    expect(codes(none, brief(40))).toEqual(["ceremony bound-use"]);
  });
  it("shares out the area where no figure is posted: 150 m2 at 15 ft2 each for tables", () => {
    const unposted = venue((f) => ({ ...f, rooms: f.rooms.map((r) => ({ ...r, posted: undefined })), stock: f.stock.map((s) => ({ ...s, count: 200 })) }));
    const limit = Math.floor(150 / (15 * 0.09290304));
    expect(codes(unposted, brief(limit))).toEqual([]);
    expect(codes(unposted, brief(limit + 1))).toEqual(["meal bound-area"]);
  });
});

describe("ceilingOf", () => {
  it("is the least of what applies, and says which", () => {
    const v = venue(), hall = v.rooms[0];
    if (!hall) throw new Error("no hall");
    expect(ceilingOf(v, hall, null, "rounds")).toEqual({ seats: 70, because: "the venue's 7 round tables seat 70 at most" });
    expect(ceilingOf(v, hall, null, "mixed").seats).toBe(90);
    expect(ceilingOf(v, hall, null, "rows")).toEqual({ seats: 100, because: "the venue owns 100 chairs" });
    expect(ceilingOf(v, hall, null, "rows", { anyStock: true })).toEqual({ seats: 120, because: "the authority's posted figure" });
    expect(ceilingOf(v, hall, null, "standing").seats).toBe(150);
  });
});

describe("olerRounds", () => {
  /** Points thrown at random that keep their distance: never more than the bound. */
  function thrown(room: Polygon, ask: { readonly diameter: number; readonly tableGap: number; readonly wallGap: number }, seed: number): number {
    const random = seeded(seed);
    const centres = offset(union([room]), -(ask.diameter / 2 + ask.wallGap));
    const kept: Point[] = [];
    for (let k = 0; k < 1500; k++) {
      const p: Point = [random() * 16000 - 3000, random() * 16000 - 3000];
      if (regionContains(centres, p) && kept.every((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) >= ask.diameter + ask.tableGap)) kept.push(p);
    }
    return kept.length;
  }
  it("is never under what random throws place, in 40 random L and T rooms at any angle (kept seeds)", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = seeded(seed);
      const w = 5000 + random() * 5000, h = 5000 + random() * 5000, x = w * (0.3 + random() * 0.4), y = h * (0.3 + random() * 0.4);
      const room = ([[0, 0], [w, 0], [w, y], [x, y], [x, h], [0, h]] as const).map((p) => turn(p, seed * 7));
      const ask = { diameter: 1000 + random() * 600, tableGap: 300 + random() * 900, wallGap: 200 + random() * 600 };
      expect(olerRounds(union([room]), [], { ...ask, axis: seed * 7 })).toBeGreaterThanOrEqual(thrown(room, ask, seed));
    }
  });
  it("gains by cutting an L at its inner corner", () => {
    const ell: Polygon = [[0, 0], [20000, 0], [20000, 5000], [5000, 5000], [5000, 20000], [0, 20000]];
    const ask = { diameter: 1500, tableGap: 1300, wallGap: 800 };
    const hull = olerRounds(union([[[0, 0], [20000, 0], [20000, 5000], [5000, 20000], [0, 20000]]]), [], ask);
    expect(olerRounds(union([ell]), [], ask)).toBeLessThan(hull * 0.65);
    expect(area(ell)).toBe(20000 * 5000 + 5000 * 15000);
  });
  it("finds no place in a room narrower than a table and its walls", () => {
    expect(olerRounds(union([rectangle([0, 0], 3000, 9000, 20)]), [], { diameter: 1500, tableGap: 1300, wallGap: 800 })).toBe(0);
  });
});
