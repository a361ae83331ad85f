import { briefSchema, type Brief } from "../../../lib/brief";
import { itemSchema, layoutSchema, type Item, type Layout, type SceneId } from "../../../lib/layout";
import { venueSchema, type Venue, type VenueFile } from "../../../lib/venue";

export type RoomFile = VenueFile["rooms"][number];
export const box = (x: number, y: number, w: number, d: number): [number, number][] => [[x, y], [x + w, y], [x + w, y + d], [x, y + d]];

/** One room of 20 x 12 m with an exit in each short wall. */
export const hall = (over: Partial<RoomFile> = {}): RoomFile => ({
  id: "hall", name: "Hall", outline: box(0, 0, 20000, 12000),
  doors: [
    { id: "west", from: [0, 5200], to: [0, 6800], leads: "outside", exit: true, for: ["guests"], swing: "out" },
    { id: "east", from: [20000, 5200], to: [20000, 6800], leads: "outside", exit: true, for: ["guests"], swing: "out" },
  ],
  uses: ["ceremony", "dining", "dancing", "buffet", "drinks", "lounge"], posted: { rows: 200, tables: 150, standing: 220 }, ...over,
});

export const venueOf = (over: Partial<VenueFile> = {}): Venue => venueSchema.parse({
  format: "marquetry.venue/1", id: "v", name: "Venue", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
  rooms: [hall()],
  stock: [
    { id: "round", name: "Round", kind: "table", shape: { diameter: 1524 }, height: 740, count: 12, seats: { comfort: 8, most: 10 } },
    { id: "long", name: "Long", kind: "table", shape: { width: 1829, depth: 762 }, height: 740, count: 12, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
    { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 200 },
    { id: "bar", name: "Bar", kind: "bar", shape: { width: 2400, depth: 700 }, count: 2 },
    { id: "panel", name: "Panel", kind: "dance-panel", shape: { width: 1000, depth: 1000 }, count: 36 },
  ],
  packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ["hall"], turnover: true, dueDays: 42 }],
  charges: [], tax: { name: "VAT", basisPoints: 2000, of: "line", included: true }, ...over,
});

export const briefOf = (over: Record<string, unknown> = {}): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: "hire", date: "2027-06-12", guests: { adults: 8 }, ...over,
});

type ItemFile = Parameters<typeof itemSchema.parse>[0] & { readonly id: string };
export const itemOf = (i: ItemFile & Record<string, unknown>): Item => itemSchema.parse({ label: i.id, room: "hall", angle: 0, ...i });

/** A round table with n chairs whose middles stand `off` mm from its edge. */
export function roundTable(id: string, at: readonly [number, number], n = 8, off = 200): Item {
  const r = 762 + off;
  const seats = Array.from({ length: n }, (_, k) => {
    const a = (2 * Math.PI * (k + 0.5)) / n;
    return { x: Math.round(at[0] + r * Math.cos(a)), y: Math.round(at[1] + r * Math.sin(a)), facing: (((k + 0.5) * 360) / n + 180) % 360, place: "chair" };
  });
  return itemOf({ id, kind: "table", role: "dining", from: { stock: "round" }, shape: { diameter: 1524 }, at, seats });
}

/** A chair of a row, looking up the page (towards smaller y). */
export const rowChair = (id: string, at: readonly [number, number], facing = 270): Item => itemOf({
  id, kind: "chair", from: { stock: "chair" }, shape: { width: 450, depth: 500 }, at, angle: facing - 90,
  seats: [{ x: at[0], y: at[1], facing, place: "chair" }],
});

export const layoutOf = (id: SceneId, items: readonly Item[], rooms: readonly string[] = ["hall"]): Layout => layoutSchema.parse({
  id: "a", title: "A",
  scenes: [{ id, title: id, rooms, items, seats: items.filter((i) => i.role !== "work").reduce((n, i) => n + i.seats.length, 0) }],
});
