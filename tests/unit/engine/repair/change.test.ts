import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefSchema, people, type Brief, type BriefFile } from "../../../../lib/brief";
import { tidewheel } from "../../../../lib/demo";
import { arrange, change } from "../../../../lib/engine";
import type { Item, Layout } from "../../../../lib/layout";
import { seatsAround } from "../../../../lib/engine/seating";
import { moveSeats } from "../../../../lib/engine/seating/seats";
import { venueSchema, type Venue } from "../../../../lib/venue";
import { hall, meal, musts } from "./hall";

const fixture = (kind: "venues" | "briefs", name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../fixtures/${kind}/${name}.json`, import.meta.url), "utf8"));
const first = (venue: Venue, asked: Brief): Layout => {
  const layout = arrange(venue, asked, { layouts: 1 }).layouts[0];
  if (!layout) throw new Error("nothing was arranged");
  return layout;
};
const withGuests = (b: Brief, by: number): Brief => ({ ...b, guests: { ...b.guests, adults: b.guests.adults + by } });
const dining = (l: Layout | undefined): readonly Item[] => (l?.scenes.find((s) => s.id === "meal")?.items ?? []).filter((i) => i.kind === "table" && i.seats.length > 0 && i.role !== "work");

/** What holds after any change that was arranged. */
function expectSound(venue: Venue, asked: Brief, found: ReturnType<typeof change>): void {
  expect(found.status).toBe("arranged");
  const layout = found.layouts[0];
  expect(layout && musts(venue, layout, asked)).toEqual([]);
  expect(dining(layout).reduce((n, t) => n + t.seats.length, 0)).toBeGreaterThanOrEqual(people(asked));
  expect(dining(layout).filter((t) => t.seats.length === 1 && people(asked) > 1)).toEqual([]);
}

describe("a late change at the mill", () => {
  const mill = venueSchema.parse(tidewheel);
  const day = (adults: number, more: Partial<BriefFile> = {}): Brief => briefSchema.parse({
    format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults, wheelchairs: 1 },
    meal: { service: "buffet" }, music: { by: "dj", dancing: 0.3 }, displays: ["welcome", "cards", "cake"], ...more,
  });
  const agreed = first(mill, day(60));

  for (const by of [-10, -1]) it(`moves no piece for ${-by} guests fewer: chairs go from the tables`, () => {
    const found = change(mill, agreed, day(60 + by));
    expectSound(mill, day(60 + by), found);
    expect(found.moved).toEqual([]);
    expect(dining(found.layouts[0]).reduce((n, t) => n + t.seats.length, 0)).toBe(60 + by);
  });

  for (const by of [1, 5, 10]) it(`moves no table for ${by} guests more: places at the tables, a chair each in the rows`, () => {
    const found = change(mill, agreed, day(60 + by));
    expectSound(mill, day(60 + by), found);
    expect(found.moved?.filter((id) => id.startsWith("row-")).length).toBe(by);
    // A larger party may need a larger floor to dance on: that one piece apart, nothing but chairs.
    expect(found.moved?.filter((id) => !id.startsWith("row-") && id !== "dance-floor")).toEqual([]);
  });

  it("changes nothing at all for the brief that was agreed", () => {
    expect(change(mill, agreed, day(60))).toMatchObject({ status: "arranged", moved: [], relaid: [] });
  });

  it("takes one display away and brings others, touching nothing else", () => {
    const asked = day(60, { displays: ["welcome", "cake", "photographs", "seating-plan"] });
    const found = change(mill, agreed, asked);
    expectSound(mill, asked, found);
    expect([...(found.moved ?? [])].sort()).toEqual(["cards", "photographs", "seating-plan"]);
  });

  it("makes another wheelchair's place at a table without moving a table", () => {
    const asked = day(60, { guests: { adults: 60, wheelchairs: 2 } });
    const found = change(mill, agreed, asked);
    expectSound(mill, asked, found);
    expect(found.moved?.filter((id) => /^t\d+|^top/.test(id))).toEqual([]);
  });

  it("calls a change impossible, with its proof, where the posted figures forbid it", () => {
    const found = change(mill, agreed, day(900));
    expect(found.status).toBe("impossible");
    expect(found.reasons.length).toBeGreaterThan(0);
  });
});

describe("a late change in other houses", () => {
  for (const name of ["octagon", "turned-frame", "columns", "slanted-wall", "two-rooms", "one-exit"]) for (const by of [-3, 2]) it(`holds in ${name} for ${by} guests`, () => {
    const venue = venueSchema.parse(fixture("venues", name)), asked = briefSchema.parse(fixture("briefs", name));
    const found = change(venue, first(venue, asked), withGuests(asked, by));
    if (found.status !== "arranged") { expect(found.reasons.length).toBeGreaterThan(0); return; }
    expectSound(venue, withGuests(asked, by), found);
  });
});

/** The least number of pieces that must be moved, by trying everything: none where the tables' most is enough, else one table on each spot of a lattice. */
function least(venue: Venue, agreed: Layout, asked: Brief): number {
  const owned = (t: Item): number => venue.stock.find((s) => "stock" in t.from && s.id === t.from.stock)?.seats?.most ?? 0;
  const most = dining(agreed).reduce((n, t) => n + owned(t), 0);
  if (most >= people(asked)) return 0;
  const chair = { width: 450, depth: 500 };
  for (const s of venue.stock.filter((k) => k.kind === "table" && "diameter" in k.shape)) {
    if (dining(agreed).filter((t) => "stock" in t.from && t.from.stock === s.id).length >= s.count) continue;
    const seats = seatsAround(s.shape, Math.max(2, people(asked) - most), { ends: false, chair });
    for (let x = 800; x < 20_000; x += 100) for (let y = 800; y < 12_000; y += 100) {
      const table: Item = { id: "new", kind: "table", role: "dining", label: "New", room: "hall", from: { stock: s.id }, shape: s.shape, at: [x, y], angle: 0, seats: moveSeats(seats, [x, y], 0) };
      const scenes = agreed.scenes.map((k) => ({ ...k, items: [...k.items, table], seats: k.seats + table.seats.length }));
      const box = venue.rooms[0]?.outline[2] ?? [0, 0];
      if (x > box[0] - 800 || y > box[1] - 800 || dining(agreed).some((t) => Math.hypot(t.at[0] - x, t.at[1] - y) < 2000)) continue;
      if (musts(venue, { ...agreed, scenes }, meal(dining(agreed).reduce((n, t) => n + t.seats.length, 0))).length === 0) return 1;
    }
  }
  return 2;
}

describe("pieces moved against the least possible", () => {
  const rounds = (count: number) => ({ id: "round", name: "Round", kind: "table" as const, shape: { diameter: 1500 }, count, seats: { comfort: 6, most: 8 } });
  for (const [w, d, guests, by] of [[9000, 7000, 12, 3], [9000, 7000, 16, 2], [11_000, 8000, 16, 8], [8000, 8000, 16, 5]] as const) {
    it(`is the least in a hall of ${w} x ${d} mm with ${guests} guests and ${by} more`, () => {
      const venue = hall(w, d, [rounds(6)]);
      const asked = meal(guests, { meal: { top: "none", perTable: "most" } });
      const agreed = first(venue, asked), more = meal(guests + by, { meal: { top: "none", perTable: "most" } });
      const found = change(venue, agreed, more);
      if (found.status === "impossible") return;
      expectSound(venue, more, found);
      expect(found.moved?.length).toBe(least(venue, agreed, more));
    });
  }
});
