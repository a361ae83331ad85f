import { briefSchema, type BriefFile } from "@/lib/brief";
import type { Drawing, Mark } from "@/lib/drawing/display";
import { layoutSchema, type Item, type Layout, type Quote } from "@/lib/layout";
import type { ProposalInput } from "@/lib/papers";
import { venueSchema, type Venue } from "@/lib/venue";

/** A hall of 12 x 8 m and a parlour, made up for these tests. */
export const venue = (more: object = {}): Venue => venueSchema.parse({
  format: "marquetry.venue/1", id: "saltings", name: "Saltings Hall", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
  rooms: [
    {
      id: "hall", name: "Long Hall", outline: [[0, 0], [12000, 0], [12000, 8000], [0, 8000]], uses: ["ceremony", "dining"],
      doors: [{ id: "d1", from: [0, 3000], to: [0, 4600], leads: "outside", exit: true, for: ["guests"], swing: "out" }],
      windows: [{ from: [2000, 0], to: [4000, 0], sill: 900 }],
    },
    { id: "parlour", name: "Parlour", outline: [[12300, 0], [17300, 0], [17300, 5000], [12300, 5000]], uses: ["drinks"], doors: [] },
  ],
  stock: [
    { id: "round", name: "Round table", kind: "table", shape: { diameter: 1680 }, count: 7, seats: { comfort: 8, most: 10 } },
    { id: "small", name: "Small table", kind: "table", shape: { width: 1220, depth: 760 }, count: 1, seats: { comfort: 2, most: 2 } },
    { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 90 },
  ],
  packages: [{ id: "hosted", name: "Hosted day", coordinator: true, rooms: ["hall", "parlour"], turnover: true, dueDays: 28, included: ["light-piece"] }],
  charges: [
    { id: "light-piece", name: "Light piece moved", per: "piece", amount: 1500, taxed: true },
    { id: "heavy-piece", name: "Heavy piece moved", per: "piece", amount: 4500, taxed: true },
    { id: "linen", name: "Table linen", per: "table", amount: 600, taxed: true },
  ],
  tax: { name: "VAT", basisPoints: 2000, of: "line", included: true },
  ...more,
});

const round = (id: string, at: readonly [number, number], wheelchair = false) => ({
  id, kind: "table", role: "dining", label: `Table ${id.slice(1)}`, room: "hall", from: { stock: "round" }, shape: { diameter: 1680 }, at, angle: 0,
  seats: Array.from({ length: 8 }, (_, i) => ({
    x: at[0] + [1050, 742, 0, -742, -1050, -742, 0, 742][i]!, y: at[1] + [0, 742, 1050, 742, 0, -742, -1050, -742][i]!,
    facing: [180, 225, 270, 315, 0, 45, 90, 135][i]!, place: wheelchair && i === 0 ? "wheelchair" : "chair",
  })),
});

const tables = [
  round("t1", [2000, 2000]), round("t2", [6000, 2000]), round("t3", [10000, 2000]), round("t4", [2000, 6000]), round("t5", [6000, 6000], true),
  {
    id: "top", kind: "table", role: "top", label: "Couple", room: "hall", from: { stock: "small" }, shape: { width: 1220, depth: 760 }, at: [10000, 6000], angle: 0,
    seats: [{ x: 9700, y: 5370, facing: 90, place: "chair" }, { x: 10300, y: 5370, facing: 90, place: "chair" }],
  },
];
const chairs = Array.from({ length: 42 }, (_, i) => ({
  id: `c${i + 1}`, kind: "chair", label: "Chair", room: "hall", from: { stock: "chair" }, shape: { width: 450, depth: 500 },
  at: [3000 + (i % 7) * 500, 2000 + Math.floor(i / 7) * 900], angle: 180, seats: [{ x: 3000 + (i % 7) * 500, y: 2000 + Math.floor(i / 7) * 900, facing: 270, place: "chair" }],
}));

export const layout = (more: object = {}): Layout => layoutSchema.parse({
  id: "a", title: "Rounds on a grid",
  why: ["Five rounds stand in two rows along the windows, and the two of you sit where most of your guests can see you.", "Between any two tables that are sat at there are 1.50 m or more."],
  givesUp: ["The dance floor is two panels smaller than in layout B."],
  scenes: [
    { id: "ceremony", title: "Ceremony", rooms: ["hall"], items: chairs, seats: 42 },
    { id: "meal", title: "Meal", rooms: ["hall"], items: tables, seats: 42, numbers: ["t1", "t2", "t3", "t4", "t5"] },
  ],
  turnovers: [{
    from: "ceremony", to: "meal", room: "hall", minutes: 37.2, crew: 4,
    moves: [
      ...chairs.map((c) => ({ item: c.id, to: "hall", act: "shift", minutes: 0.4 })), ...tables.map((t) => ({ item: t.id, to: "hall", act: "out", minutes: 2 })),
    ],
  }],
  findings: [
    { code: "comfort-gap", level: "should", source: "common practice, no source", scene: "meal", items: ["t1"], measured: 1450, limit: 1500, unit: "mm", text: "Between tables 1 and 2 there are 1.45 m; this venue calls 1.50 m comfortable." },
    { code: "sun", level: "note", source: "common practice, no source", scene: "meal", items: [], text: "The cake stands by the south window; in June the sun reaches it from noon." },
  ],
  ...more,
});

export const quote = (more: object = {}): Quote => ({
  currency: "GBP", net: 11500, tax: 2300, total: 13800,
  lines: [
    { charge: "light-piece", text: "wing chair, two stools", count: 3, each: 0, amount: 0, included: true },
    { charge: "heavy-piece", text: "oak settle", count: 1, each: 4500, amount: 4500 },
    { charge: "linen", text: "Table linen", count: 6, each: 600, amount: 3600 },
  ],
  ...more,
});

export const briefFile = (more: object = {}): BriefFile => {
  const file: BriefFile = {
    format: "marquetry.brief/1", package: "hosted", date: "2027-06-12", couple: ["Ines Calloway", "Theo Brandt"],
    guests: { adults: 40, children: 2, wheelchairs: 1 }, ceremony: { here: true, seating: "rows" }, meal: { service: "plated", tables: "rounds" },
    music: { by: "dj" }, displays: ["welcome", "cake"], wishes: [{ put: "cake", near: "window" }], notes: "Grandmother should sit away from the loudspeakers.",
    ...more,
  };
  briefSchema.parse(file);
  return file;
};

const rectangle = (x: number, y: number, w: number, h: number): Mark => ({
  kind: "path", stroke: { ink: "ink", weight: 0.25 },
  steps: [{ op: "M", to: [x, y] }, { op: "L", to: [x + w, y] }, { op: "L", to: [x + w, y + h] }, { op: "L", to: [x, y + h] }, { op: "Z" }],
});

/** A plan as a composer would give it, 1:100: the hall, one table, a bar of 4 m. */
export const plan = (size = { width: 297, height: 210 }): Drawing => ({
  ...size, perMetre: 10, origin: [40, 40], title: "Meal", words: ["Long Hall, 12.00 by 8.00 m, at 1:100.", "Six tables, 42 places."],
  marks: [rectangle(40, 40, 120, 80), { kind: "circle", at: [60, 60], radius: 8.4, fill: "v-round", stroke: { ink: "ink", weight: 0.25 } }, rectangle(200, 150, 40, 1.5),
    { kind: "text", at: [60, 61.5], text: "1", size: 4.3, face: "serif", anchor: "middle", ink: "ink" }],
});

export const input = (more: Partial<ProposalInput> = {}): ProposalInput => ({
  venue: venue(), brief: briefFile(), layout: layout(), quote: quote(), meta: { reference: "QK7M-31", revision: 3 }, ...more,
});
export type { Item };
