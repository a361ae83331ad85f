import { describe, expect, it } from "vitest";
import { briefSchema, type BriefFile } from "../../../lib/brief";
import { larkspur, tidewheel } from "../../../lib/demo";
import { quote } from "../../../lib/fees";
import { layoutSchema, type Item } from "../../../lib/layout";
import { venueSchema, type Venue } from "../../../lib/venue";

const mill = venueSchema.parse(tidewheel), barn = venueSchema.parse(larkspur);
const brief = (more: Partial<BriefFile>) => briefSchema.parse({ format: "marquetry.brief/1", package: "dry-hire", date: "2027-06-12", guests: { adults: 60, children: 4 }, ...more });

/** Standing furniture of a room where it always is, but for what is carried out. */
const standing = (venue: Venue, room: string, without: readonly string[] = []): readonly Item[] => (venue.rooms.find((r) => r.id === room)?.standing ?? []).filter((s) => !without.includes(s.id)).map((s) => ({
  id: s.id, kind: s.kind === "stage" ? "other" : s.kind, label: s.name, room, from: { standing: s.id }, shape: s.shape, at: s.at, angle: s.angle, seats: [],
}));
const laid = (room: string, stock: string, n: number, seats: number): readonly Item[] => Array.from({ length: n }, (_, i) => ({
  id: `${stock}-${i}`, kind: "table" as const, role: "dining", label: `${stock} ${i}`, room, from: { stock }, shape: { width: 2400, depth: 950 }, at: [1000 * i, 1000], angle: 0,
  seats: Array.from({ length: seats }, () => ({ x: 0, y: 0, facing: 0, place: "chair" as const })),
}));
const floor = (room: string, stock: string, count: number): Item => ({ id: "floor", kind: "dance-floor", label: "Dance floor", room, from: { stock, count }, shape: { width: 1000, depth: 1000 }, at: [0, 0], angle: 0, seats: [] });
const day = (scenes: readonly { readonly id: string; readonly rooms: readonly string[]; readonly items: readonly Item[]; readonly drapes?: readonly string[] }[], turned = false) =>
  layoutSchema.parse({ id: "a", title: "A", scenes: scenes.map((s) => ({ title: s.id, seats: 0, ...s })), turnovers: turned ? [{ from: "ceremony", to: "meal", minutes: 40, crew: 4, moves: [] }] : [] });
const short = (q: ReturnType<typeof quote>) => q.lines.map((l) => [l.charge, l.count, l.each, l.amount]);

describe("Tidewheel Mill: prices hold 20 % VAT, reckoned line by line", () => {
  const meal = [...standing(mill, "grain-floor", ["oak-settle"]), ...laid("grain-floor", "oak", 5, 8)];
  const layout = day([
    { id: "ceremony", rooms: ["grain-floor"], items: standing(mill, "grain-floor") },
    { id: "meal", rooms: ["grain-floor"], items: meal, drapes: ["arch-drape"] },
    { id: "dancing", rooms: ["grain-floor"], items: [...meal, floor("grain-floor", "panel", 23)], drapes: ["arch-drape"] },
  ], true);
  const vat = (amount: number): number => Math.floor((amount * 2000) / 12_000 + 0.5);

  it("a dry hire with a band, late by a day", () => {
    const q = quote(mill, brief({ music: { by: "band", players: 4, dancing: 0.4 }, extras: ["second-bar"], today: "2027-05-02" }), layout);
    const lines = [["heavy-piece", 1, 4500, 4500], ["drape", 1, 9500, 9500], ["turnover", 1, 28_000, 28_000], ["oak-table", 5, 1500, 5 * 1500], ["dance-panel", 23, 400, 23 * 400],
      ["second-bar", 1, 18_000, 18_000], ["band-power", 1, 7500, 7500], ["late-answer", 1, 6000, 6000]] as const;
    expect(short(q)).toEqual(lines);
    const total = lines.reduce((n, l) => n + l[3], 0), tax = lines.reduce((n, l) => n + vat(l[3]), 0);
    expect([q.currency, q.total, q.tax, q.net]).toEqual(["GBP", total, tax, total - tax]);
  });
  it("a hosted weekend, which includes the pieces, the turnover and the drape as lines with nothing each", () => {
    const q = quote(mill, brief({ package: "hosted-weekend" }), layout);
    expect(short(q)).toEqual([["heavy-piece", 1, 0, 0], ["drape", 1, 0, 0], ["turnover", 1, 0, 0], ["oak-table", 5, 1500, 7500], ["dance-panel", 23, 400, 9200]]);
    expect([q.total, q.tax]).toEqual([7500 + 9200, vat(7500) + vat(9200)]);
  });
});

describe("Larkspur Barn: 8.25 % sales tax is added, to the total of what is taxed", () => {
  const meal = [...standing(barn, "threshing-hall"), ...laid("threshing-hall", "farm-8ft", 8, 8)];
  it("full service for 64, late: the late charge bears no tax, the high tables are included", () => {
    const high: readonly Item[] = Array.from({ length: 6 }, (_, i) => ({ id: `h${i}`, kind: "cocktail-table", label: "High table", room: "threshing-hall", from: { stock: "high-top" }, shape: { diameter: 762 }, at: [0, 0], angle: 0, seats: [] }));
    // 21 days before 12 June 2027 is 22 May.
    const q = quote(barn, brief({ package: "full-service", guests: { adults: 60, children: 4 }, extras: ["cocktail-tables"], today: "2027-05-23" }), day([{ id: "meal", rooms: ["threshing-hall"], items: [...meal, ...high] }]));
    const lines = [["farm-table", 8, 2500, 8 * 2500], ["high-top", 6, 0, 0], ["linen", 8, 1475, 8 * 1475], ["place-setting", 64, 325, 64 * 325], ["late-answer", 1, 7500, 7500]] as const;
    expect(short(q)).toEqual(lines);
    const taxed = 8 * 2500 + 8 * 1475 + 64 * 325;
    // Streamlined Sales and Use Tax Agreement, section 324: half a cent goes up.
    const tax = Math.floor((taxed * 825) / 10_000 + 0.5);
    expect([q.currency, q.net, q.tax, q.total]).toEqual(["USD", taxed + 7500, tax, taxed + 7500 + tax]);
  });
});
