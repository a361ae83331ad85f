import { briefSchema, type Brief } from "../../lib/brief";
import { tidewheel } from "../../lib/demo";
import { venueSchema, type Venue } from "../../lib/venue";

export const mill: Venue = venueSchema.parse(tidewheel);

/** A whole day: ceremony, drinks, meal and dancing. */
export const day = (pack: string, adults: number): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: pack, date: "2027-06-12", guests: { adults, wheelchairs: 1 },
  meal: { service: "buffet" }, music: { by: "dj", dancing: 0.35 }, displays: ["welcome", "cards", "cake"],
});

/** One hall of 2.5 m2 a guest, twice as long as wide in the proportion 8 : 5, with doors on three sides and all the stock it can want. */
export function hallFor(guests: number): Venue {
  const h = Math.round(Math.sqrt((guests * 2.5e6 * 5) / 8)), w = Math.round((h * 8) / 5);
  const door = (id: string, from: readonly [number, number], to: readonly [number, number]) => ({ id, from, to, leads: "outside", exit: true, for: ["guests", "service"], swing: "out" });
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "hall", name: "Hall", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
    rooms: [{
      id: "hall", name: "Hall", outline: [[0, 0], [w, 0], [w, h], [0, h]],
      doors: [door("west", [0, Math.round(h / 2) - 900], [0, Math.round(h / 2) + 900]), door("east", [w, Math.round(h / 2) - 900], [w, Math.round(h / 2) + 900]), door("south", [Math.round(w / 3), h], [Math.round(w / 3) + 1_800, h])],
      uses: ["ceremony", "dining", "dancing", "buffet", "plating", "drinks", "lounge"],
    }],
    stock: [
      { id: "round", name: "Round", kind: "table", shape: { diameter: 1829 }, height: 740, count: 80, seats: { comfort: 10, most: 10 } },
      { id: "small", name: "Small", kind: "table", shape: { width: 1220, depth: 760 }, height: 740, count: 2, seats: { comfort: 2, most: 4 } },
      { id: "long", name: "Long", kind: "table", shape: { width: 1830, depth: 760 }, height: 740, count: 60, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
      { id: "narrow", name: "Narrow", kind: "table", shape: { width: 1500, depth: 450 }, height: 740, count: 8 },
      { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 2_000 },
      { id: "panel", name: "Panel", kind: "dance-panel", shape: { width: 1_000, depth: 1_000 }, count: 200 },
    ],
    packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ["hall"], turnover: true, dueDays: 28 }],
    charges: [], tax: { name: "VAT", basisPoints: 2000, of: "line", included: true }, rules: { profile: "model-code" },
  });
}
