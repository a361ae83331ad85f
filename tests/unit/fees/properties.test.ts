import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../lib/brief";
import { quote, sums, taxOn } from "../../../lib/fees";
import { layoutSchema, type Item } from "../../../lib/layout";
import { PER, venueSchema, type Venue, type VenueFile } from "../../../lib/venue";
import { hall, venueOf } from "../rules/kit";

const WORDS = ["always", "turnover", "late", "cake", "second-bar", "dj", "buffet", "band"] as const;
const charge = fc.record({
  per: fc.constantFrom(...PER), amount: fc.integer({ min: 0, max: 500_000 }), taxed: fc.boolean(), when: fc.uniqueArray(fc.constantFrom(...WORDS), { maxLength: 3 }), of: fc.constantFrom("round", "chair", "panel"),
});
const tax = fc.record({ name: fc.constant("Tax"), basisPoints: fc.integer({ min: 0, max: 3_000 }), of: fc.constantFrom("line" as const, "total" as const), included: fc.boolean() });
const answers = fc.record({ adults: fc.integer({ min: 1, max: 200 }), children: fc.integer({ min: 0, max: 40 }), cake: fc.boolean(), late: fc.boolean(), tables: fc.integer({ min: 0, max: 12 }), turnover: fc.boolean(), music: fc.constantFrom("dj" as const, "band" as const, "none" as const) });

const table = (n: number): Item => ({
  id: `t${n}`, kind: "table", role: "dining", label: `Table ${n}`, room: "hall", from: { stock: "round" }, shape: { diameter: 1524 }, at: [n, n], angle: 0,
  seats: [0, 1, 2, 3].map(() => ({ x: 0, y: 0, facing: 0, place: "chair" as const })),
});
type Answers = typeof answers extends fc.Arbitrary<infer T> ? T : never;
type Charged = typeof charge extends fc.Arbitrary<infer T> ? T : never;
function day(charges: readonly Charged[], taxes: VenueFile["tax"], a: Answers, included: readonly string[]) {
  const venue: Venue = venueOf({
    rooms: [hall()], tax: taxes,
    charges: charges.map((c, i) => ({ id: `c${i}`, name: `Charge ${i}`, per: c.per, amount: c.amount, taxed: c.taxed, when: [...c.when], ...(c.per === "unit" ? { of: c.of } : {}) })),
    packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ["hall"], turnover: true, dueDays: 42, included: [...included] }],
  });
  const brief = briefSchema.parse({
    format: "marquetry.brief/1", package: "hire", date: "2027-06-12", guests: { adults: a.adults, children: a.children }, music: { by: a.music }, displays: a.cake ? ["cake"] : [],
    today: a.late ? "2027-05-02" : "2027-05-01",
  });
  const layout = layoutSchema.parse({
    id: "a", title: "A", scenes: [{ id: "meal", title: "Meal", rooms: ["hall"], items: Array.from({ length: a.tables }, (_, i) => table(i)), seats: 4 * a.tables }],
    turnovers: a.turnover ? [{ from: "ceremony", to: "meal", minutes: 30, crew: 4, moves: [] }] : [],
  });
  return { venue, brief, layout };
}

describe("a fee summary, whatever the charges and answers", () => {
  const all = [fc.array(charge, { maxLength: 8 }), tax, answers] as const;
  it("has lines that are count times each, in the venue's order, and sums that add up", () => {
    fc.assert(fc.property(...all, (charges, taxes, a) => {
      const { venue, brief, layout } = day(charges, taxes, a, []);
      const q = quote(venue, brief, layout);
      for (const l of q.lines) expect(l.amount).toBe(l.count * l.each);
      const order = venue.charges.map((c) => c.id);
      expect(q.lines.map((l) => l.charge)).toEqual(order.filter((id) => q.lines.some((l) => l.charge === id)));
      const all = q.lines.reduce((n, l) => n + l.amount, 0);
      expect(q.total).toBe(taxes.included ? all : all + q.tax);
      expect(q.net + q.tax).toBe(q.total);
    }), { seed: 25, numRuns: 300 });
  });
  it("counts by the word `per`: event 1, guest, table and unit as they are, hour never", () => {
    fc.assert(fc.property(...all, (charges, taxes, a) => {
      const { venue, brief, layout } = day(charges, taxes, a, []);
      const words = new Set(["always", ...(a.turnover ? ["turnover"] : []), ...(a.late ? ["late"] : []), ...(a.cake ? ["cake"] : []), a.music, brief.meal.service]);
      const counts = { event: 1, guest: a.adults + a.children, table: a.tables, hour: 0, piece: 0 };
      const lines = new Map(quote(venue, brief, layout).lines.map((l) => [l.charge, l.count]));
      for (const c of venue.charges) {
        const called = (c.when ?? []).some((w) => words.has(w));
        const units = c.of === "round" ? a.tables : c.of === "chair" ? 4 * a.tables : 0;
        expect(lines.get(c.id) ?? 0, `${c.per} ${c.when}`).toBe(called ? (c.per === "unit" ? units : counts[c.per]) : 0);
      }
    }), { seed: 25, numRuns: 300 });
  });
  it("keeps what the package includes as a line with nothing each, and every other line as it was", () => {
    fc.assert(fc.property(...all, fc.nat(7), (charges, taxes, a, k) => {
      const plain = day(charges, taxes, a, []), free = day(charges, taxes, a, [`c${k}`]);
      const before = quote(plain.venue, plain.brief, plain.layout), after = quote(free.venue, free.brief, free.layout);
      expect(after.lines).toEqual(before.lines.map((l) => (l.charge === `c${k}` ? { ...l, each: 0, amount: 0, included: true } : l)));
      expect(after.total).toBeLessThanOrEqual(before.total);
    }), { seed: 25, numRuns: 200 });
  });
  it("by line and of the total differ by no more than half a minor unit a taxed line", () => {
    fc.assert(fc.property(fc.array(fc.record({ amount: fc.integer({ min: 0, max: 1_000_000 }), taxed: fc.boolean() }), { maxLength: 30 }), tax, (lines, t) => {
      const by = (of: "line" | "total"): number => sums(lines, { ...t, of }).tax;
      expect(Math.abs(by("line") - by("total"))).toBeLessThanOrEqual((lines.filter((l) => l.taxed).length + 1) / 2);
    }), { seed: 25, numRuns: 300 });
  });
  it("never grows less when a line does, and no tax is more than its line holds", () => {
    fc.assert(fc.property(fc.nat(10_000_000), fc.nat(10_000), fc.boolean(), (amount, basisPoints, included) => {
      const at = (n: number): number => taxOn(n, { basisPoints, included });
      expect(at(amount + 1)).toBeGreaterThanOrEqual(at(amount));
      expect(at(amount)).toBeLessThanOrEqual(amount);
    }), { seed: 25, numRuns: 500 });
  });
});

describe("the schema of a charge", () => {
  it("knows no other `per` than those counted", () => {
    expect(() => venueSchema.parse({ ...venueOf(), charges: [{ id: "x", name: "X", per: "night", amount: 1, taxed: true }] })).toThrow();
  });
});
