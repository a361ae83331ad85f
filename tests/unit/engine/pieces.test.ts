import { describe, expect, it } from "vitest";
import { briefSchema, type BriefFile } from "../../../lib/brief";
import { arrange } from "../../../lib/engine";
import { venueSchema, type Venue, type VenueFile } from "../../../lib/venue";

const door = (id: string, from: readonly [number, number], to: readonly [number, number]) =>
  ({ id, from: [...from] as [number, number], to: [...to] as [number, number], leads: "outside", exit: true, for: ["guests" as const, "service" as const], swing: "out" as const });
/** One room, with a way out below and on the left. */
function room(w: number, d: number, more: Partial<VenueFile> = {}): Venue {
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
    rooms: [{
      id: "hall", name: "Hall", outline: [[0, 0], [w, 0], [w, d], [0, d]], uses: ["ceremony", "dining", "dancing", "buffet", "drinks"],
      doors: [door("below", [w / 2 - 600, d], [w / 2 + 600, d]), door("left", [0, d / 2 - 600], [0, d / 2 + 600])],
    }],
    stock: [
      { id: "round", name: "Round", kind: "table", shape: { diameter: 1524 }, count: 8, seats: { comfort: 8, most: 10 } },
      { id: "long", name: "Long", kind: "table", shape: { width: 1829, depth: 762 }, count: 8, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
      { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 120 },
    ],
    packages: [{ id: "p", name: "P", coordinator: true, rooms: ["hall"], turnover: true, dueDays: 30 }],
    charges: [], tax: { name: "VAT", basisPoints: 2000, of: "line", included: true }, ...more,
  });
}
const brief = (adults: number, more: Partial<BriefFile> = {}) => briefSchema.parse({
  format: "marquetry.brief/1", package: "p", date: "2027-06-12", guests: { adults }, ceremony: { here: false }, meal: { service: "sharing" }, ...more,
});
const one = (venue: Venue, asked: ReturnType<typeof brief>) => arrange(venue, asked, { layouts: 1, instead: false }).layouts[0];
const meal = (venue: Venue, asked: ReturnType<typeof brief>) => one(venue, asked)?.scenes.find((s) => s.id === "meal");

describe("pieces of a day in one room", () => {
  it("seat the suppliers among the guests where there is no other room", () => {
    const work = meal(room(12_000, 9000), brief(30, { guests: { adults: 30, suppliers: 4 } }))?.items.filter((i) => i.role === "work") ?? [];
    expect(work.reduce((n, t) => n + t.seats.length, 0)).toBe(4);
  });

  it("stand where the venue has its order of places: the DJ by the right-hand wall, its back to it", () => {
    const venue = room(14_000, 10_000, { places: { dj: [{ at: [13_250, 3000], room: "hall" }] } });
    const dj = meal(venue, brief(30, { music: { by: "dj" } }))?.items.find((i) => i.kind === "dj");
    expect(Math.hypot((dj?.at[0] ?? 0) - 13_250, (dj?.at[1] ?? 0) - 3000)).toBeLessThanOrEqual(1);
    expect(dj?.angle).toBe(90);
  });

  it("follow a wish: the cake near the door it is put near, and away from it", () => {
    const cake = (wish: "near" | "away-from") => {
      const i = meal(room(14_000, 10_000), brief(24, { displays: ["cake"], wishes: [wish === "near" ? { put: "cake", near: "door" } : { put: "cake", "away-from": "door" }] }))?.items.find((x) => x.role === "cake");
      return i ? Math.min(Math.hypot(i.at[0] - 7000, i.at[1] - 10_000), Math.hypot(i.at[0], i.at[1] - 5000)) : NaN;
    };
    expect(cake("near")).toBeLessThan(cake("away-from") - 2000);
  });

  it("let the couple's own table go before a guest's place, and say so", () => {
    const layout = one(room(6000, 5000), brief(14, { ceremony: { here: true } }));
    expect(layout?.scenes.find((s) => s.id === "meal")?.seats).toBe(14);
    expect(layout?.givesUp?.some((g) => g.startsWith("The couple sit among their guests"))).toBe(true);
    expect(layout?.findings.some((f) => f.code === "not-placed" && f.level === "should")).toBe(true);
  });

  it("say so where rounds alone answer a wish for both kinds of table", () => {
    const layout = one(room(9000, 8000), brief(16, { meal: { service: "sharing", tables: "mixed", top: "none" } }));
    const tables = layout?.scenes.find((s) => s.id === "meal")?.items.filter((i) => i.role === "dining") ?? [];
    const kinds = new Set(tables.map((t) => "diameter" in t.shape)).size;
    expect(layout?.givesUp?.some((g) => g.includes("alone seat everyone here")) ?? false).toBe(kinds === 1);
  });
});
