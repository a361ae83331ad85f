import { describe, expect, it } from "vitest";
import { briefSchema, type BriefFile } from "../../../lib/brief";
import { larkspur, tidewheel } from "../../../lib/demo";
import { movedStanding, quote } from "../../../lib/fees";
import { layoutSchema, type Item, type Layout, type Scene } from "../../../lib/layout";
import { venueSchema, type Venue, type VenueFile } from "../../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const barn = venueSchema.parse(larkspur);
const brief = (more: Partial<BriefFile> = {}) =>
  briefSchema.parse({ format: "marquetry.brief/1", package: "dry-hire", date: "2027-06-12", guests: { adults: 60, children: 4 }, ...more });

/** Everything that stands in a venue's rooms, as a scene lists it. */
const standing = (venue: Venue, rooms: readonly string[]): Item[] =>
  venue.rooms.filter((r) => rooms.includes(r.id)).flatMap((r) => r.standing.map((s): Item => ({
    id: s.id, kind: s.kind === "lounge" ? "lounge" : s.kind === "table" ? "table" : "other", label: s.name, room: r.id,
    from: { standing: s.id }, shape: s.shape, at: s.at, angle: s.angle, seats: [],
  })));
const scene = (id: Scene["id"], rooms: readonly string[], items: readonly Item[], drapes: readonly string[] = []): Scene =>
  ({ id, title: id, rooms, drapes, items, seats: 0, numbers: [] });
const day = (scenes: readonly Scene[], more: Partial<Layout> = {}): Layout => ({ ...layoutSchema.parse({ id: "a", title: "A", scenes }), ...more });
const without = (items: readonly Item[], id: string): Item[] => items.filter((i) => i.id !== id);
const line = (q: ReturnType<typeof quote>, id: string) => q.lines.find((l) => l.charge === id);
const grain = () => standing(mill, ["grain-floor"]);

describe("standing pieces", () => {
  it("cost nothing where they stay", () => {
    expect(movedStanding(mill, day([scene("meal", ["grain-floor"], grain())]))).toEqual([]);
  });
  it("are moved when a scene of their room does not list them", () => {
    expect(movedStanding(mill, day([scene("meal", ["grain-floor"], without(grain(), "oak-settle"))])).map((s) => s.id)).toEqual(["oak-settle"]);
  });
  it("are not moved by a scene that does not use their room", () => {
    expect(movedStanding(mill, day([scene("drinks", ["sluice-terrace"], [])]))).toEqual([]);
  });
  it("away and back is one", () => {
    const q = quote(mill, brief(), day([
      scene("ceremony", ["grain-floor"], grain()), scene("meal", ["grain-floor"], without(grain(), "oak-settle")), scene("dancing", ["grain-floor"], grain()),
    ]));
    expect(line(q, "heavy-piece")).toMatchObject({ count: 1, each: 4500, amount: 4500, of: "Oak settle" });
  });
  it("are moved when they stand turned", () => {
    const turned = grain().map((i) => (i.id === "oak-settle" ? { ...i, angle: 180 } : i));
    expect(movedStanding(mill, day([scene("meal", ["grain-floor"], turned)])).map((s) => s.id)).toEqual(["oak-settle"]);
  });
  it("a whole turn is no turn", () => {
    const turned = grain().map((i) => (i.id === "oak-settle" ? { ...i, angle: i.angle - 360 } : i));
    expect(movedStanding(mill, day([scene("meal", ["grain-floor"], turned)]))).toEqual([]);
  });
  it("light and heavy are counted apart", () => {
    const q = quote(mill, brief(), day([scene("drinks", ["wheel-room", "grain-floor"], without(grain(), "flour-chest"))]));
    // A wing chair and four stools stand in the Wheel Room, beside the gear that is never moved.
    expect(line(q, "light-piece")).toMatchObject({ count: 5, amount: 5 * 1200, of: "Wing chair, Stool ×4" });
    expect(line(q, "heavy-piece")).toMatchObject({ count: 1 });
  });
});

describe("charges that a word calls for", () => {
  const plain = () => day([scene("meal", ["grain-floor"], grain())]);
  const turnover = { from: "ceremony", to: "meal", minutes: 30, crew: 4, moves: [] } as const;
  it("a drape is charged once however often it is drawn", () => {
    const q = quote(mill, brief(), day([scene("ceremony", ["grain-floor"], grain(), ["arch-drape"]), scene("meal", ["grain-floor"], grain(), ["arch-drape"])]));
    expect(line(q, "drape")).toMatchObject({ count: 1, amount: 9500 });
  });
  it("a turnover is charged where there is one", () => {
    expect(line(quote(mill, brief(), plain()), "turnover")).toBeUndefined();
    expect(line(quote(mill, brief(), { ...plain(), turnovers: [turnover] }), "turnover")).toMatchObject({ count: 1, amount: 28000 });
  });
  it("what the package includes stays as a line with nothing each", () => {
    const q = quote(mill, brief({ package: "hosted-day" }), { ...plain(), turnovers: [turnover] });
    expect(line(q, "turnover")).toMatchObject({ count: 1, each: 0, amount: 0, included: true });
    expect(q.total).toBe(0);
  });
  it("an answer on its due date is in time, a day later it is late", () => {
    // 42 days before 12 June 2027: 1 May.
    expect(line(quote(mill, brief({ today: "2027-05-01" }), plain()), "late-answer")).toBeUndefined();
    expect(line(quote(mill, brief({ today: "2027-05-02" }), plain()), "late-answer")).toMatchObject({ amount: 6000 });
    expect(line(quote(mill, brief(), plain()), "late-answer")).toBeUndefined();
  });
  it("an extra's and a music's word", () => {
    expect(line(quote(mill, brief({ extras: ["second-bar"] }), plain()), "second-bar")).toMatchObject({ count: 1, amount: 18000 });
    expect(line(quote(mill, brief({ music: { by: "band", players: 4 } }), plain()), "band-power")).toMatchObject({ count: 1 });
    expect(line(quote(mill, brief({ music: { by: "dj", more: [{ scene: "drinks", by: "band" }] } }), plain()), "band-power")).toMatchObject({ count: 1 });
  });
  it("an hour is never charged by itself", () => {
    const hourly: VenueFile = { ...tidewheel, charges: [{ id: "hour", name: "Hour", per: "hour", amount: 100, taxed: true, when: ["always"] }], packages: [{ id: "dry-hire", name: "x", coordinator: false, rooms: ["grain-floor"], turnover: false, dueDays: 1 }] };
    expect(quote(venueSchema.parse(hourly), brief(), plain()).lines).toEqual([]);
  });
});

describe("counts", () => {
  const table = (id: string, seats: number, stock = "round-5ft", kind: Item["kind"] = "table"): Item => ({
    id, kind, role: "dining", label: id, room: "threshing-hall", from: { stock }, shape: { diameter: 1524 }, at: [0, 0], angle: 0,
    seats: Array.from({ length: seats }, () => ({ x: 0, y: 0, facing: 0, place: "chair" as const })),
  });
  const hall = standing(barn, ["threshing-hall"]);
  const answers = briefSchema.parse({ format: "marquetry.brief/1", package: "barn-only", date: "2027-06-12", guests: { adults: 20, children: 3, suppliers: 5 } });
  it("guests are adults and children", () => {
    expect(line(quote(barn, answers, day([scene("meal", ["threshing-hall"], hall)])), "place-setting")).toMatchObject({ count: 20 + 3 });
  });
  it("tables are those laid with places", () => {
    const q = quote(barn, answers, day([scene("meal", ["threshing-hall"], [...hall, table("t1", 8), table("t2", 8), table("cake", 0)])]));
    expect(line(q, "linen")).toMatchObject({ count: 2, amount: 2 * 1475 });
  });
  it("units are the most brought out in any scene", () => {
    const q = quote(barn, answers, day([
      scene("drinks", ["threshing-hall"], [...hall, table("f1", 0, "farm-8ft")]),
      scene("meal", ["threshing-hall"], [...hall, table("f1", 8, "farm-8ft"), { ...table("f2", 0, "farm-8ft"), from: { stock: "farm-8ft", count: 2 } }]),
    ]));
    expect(line(q, "farm-table")).toMatchObject({ count: 1 + 2, amount: 3 * 2500 });
  });
  it("chairs at tables are units though no piece names them", () => {
    const chairs = venueSchema.parse({ ...larkspur, charges: [...larkspur.charges, { id: "chairs", name: "Chairs", per: "unit", of: "folding-chair", amount: 100, taxed: true, when: ["always"] }] });
    const row: Item = { ...table("c1", 1, "folding-chair", "chair"), role: undefined };
    expect(line(quote(chairs, answers, day([scene("meal", ["threshing-hall"], [...hall, table("t1", 8), row])])), "chairs")).toMatchObject({ count: 8 + 1 });
  });
  it("lines, net, tax and total add up where tax is added to the total", () => {
    const q = quote(barn, answers, day([scene("meal", ["threshing-hall"], [...hall, table("t1", 8)])]));
    const sum = q.lines.reduce((n, l) => n + l.amount, 0);
    expect(q.net).toBe(sum);
    expect(q.tax).toBe(Math.floor(sum * 825 / 10_000 + 0.5));
    expect(q.total).toBe(q.net + q.tax);
  });
});
