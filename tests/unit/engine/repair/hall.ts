import { briefSchema, type Brief, type BriefFile } from "../../../../lib/brief";
import type { Item, Layout } from "../../../../lib/layout";
import { check } from "../../../../lib/rules";
import { venueSchema, type Venue, type VenueFile } from "../../../../lib/venue";

/** A bare hall with a way out in two walls, and what stands in its store. */
export function hall(width: number, depth: number, stock: VenueFile["stock"]): Venue {
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "hall", name: "Hall", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
    rooms: [{
      id: "hall", name: "Hall", outline: [[0, 0], [width, 0], [width, depth], [0, depth]], uses: ["dining"],
      doors: [
        { id: "a", from: [200, 0], to: [1200, 0], leads: "outside", exit: true, for: ["guests"], swing: "out" },
        { id: "b", from: [width - 1200, depth], to: [width - 200, depth], leads: "outside", exit: true, for: ["guests"], swing: "out" },
      ],
    }],
    stock: [...stock, { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 200 }],
    packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ["hall"], turnover: false, dueDays: 30 }], charges: [],
    tax: { name: "VAT", basisPoints: 2000, of: "line", included: true },
  });
}

export const meal = (adults: number, more: Partial<BriefFile> = {}): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: "hire", date: "2027-06-12", guests: { adults }, ceremony: { here: false },
  meal: { top: "none" }, music: { by: "none" }, ...more,
});

export const musts = (venue: Venue, layout: Layout, brief: Brief): readonly string[] =>
  check(venue, layout, brief).filter((f) => f.level === "must").map((f) => f.text);

/** The same layout with one piece pushed aside, its places with it. */
export function pushed(layout: Layout, id: string, dx: number, dy = 0): Layout {
  const push = (i: Item): Item => ({ ...i, at: [i.at[0] + dx, i.at[1] + dy], seats: i.seats.map((s) => ({ ...s, x: s.x + dx, y: s.y + dy })) });
  return { ...layout, scenes: layout.scenes.map((s) => ({ ...s, items: s.items.map((i) => (i.id === id ? push(i) : i)) })) };
}

export const spots = (layout: Layout, id: string): readonly string[] => layout.scenes.flatMap((s) => s.items.filter((i) => i.id === id).map((i) => `${s.id} ${i.room} ${i.at.join(",")} ${i.angle}`));
