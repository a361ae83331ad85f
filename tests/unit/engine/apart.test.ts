import { describe, expect, it } from "vitest";
import { briefSchema, type BriefFile } from "../../../lib/brief";
import { arrange } from "../../../lib/engine";
import { check, fetchedChairs } from "../../../lib/rules";
import { venueSchema, type Venue } from "../../../lib/venue";

const door = (id: string, from: readonly [number, number], to: readonly [number, number]) =>
  ({ id, from: [...from] as [number, number], to: [...to] as [number, number], leads: "outside", exit: true, for: ["guests" as const, "service" as const], swing: "out" as const });
/** A hall for ceremony and bar, and an annexe across the yard that is let for meals alone. */
const venue = (bars: number, deep = 8000): Venue => venueSchema.parse({
  format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
  rooms: [
    { id: "hall", name: "Hall", outline: [[0, 0], [10_000, 0], [10_000, deep], [0, deep]], doors: [door("west", [0, 3400], [0, 4600]), door("south", [4400, deep], [5600, deep])], uses: ["ceremony", "drinks"] },
    { id: "annexe", name: "Annexe", outline: [[20_000, 0], [32_000, 0], [32_000, 9000], [20_000, 9000]], doors: [door("porch", [20_000, 3400], [20_000, 4600]), door("gate", [25_000, 9000], [26_200, 9000])], uses: ["dining"] },
  ],
  stock: [
    { id: "round", name: "Round", kind: "table", shape: { diameter: 1524 }, count: 6, seats: { comfort: 8, most: 10 } }, { id: "long", name: "Long", kind: "table", shape: { width: 1830, depth: 760 }, count: 8, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
    { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 160 }, { id: "bar", name: "Bar", kind: "bar", shape: { width: 2400, depth: 700 }, count: bars },
  ],
  packages: [{ id: "all", name: "All", coordinator: true, rooms: ["hall", "annexe"], turnover: true, dueDays: 20 }], charges: [], tax: { name: "VAT", basisPoints: 2000, of: "line", included: true },
});
const brief = (more: Partial<BriefFile> = {}) => briefSchema.parse({ format: "marquetry.brief/1", package: "all", date: "2027-06-12", guests: { adults: 44 }, ceremony: { here: true }, meal: { service: "sharing" }, ...more });

describe("a hall for ceremony and bar, and an annexe for the meal", () => {
  it("is arranged: chairs of the ceremony that stay in the bar's room are no places of the meal", () => {
    const { status, layouts: [layout] } = arrange(venue(1), brief(), { layouts: 1 });
    expect(status).toBe("arranged");
    const [ceremony, meal] = (["ceremony", "meal"] as const).map((id) => layout?.scenes.find((s) => s.id === id));
    expect(ceremony?.seats).toBe(44);
    expect(meal?.rooms).toContain("hall");
    expect(meal?.items.filter((i) => i.room === "hall" && i.kind === "chair")).toHaveLength(44);
    expect(meal?.items.filter((i) => i.room === "hall").flatMap((i) => i.seats)).toEqual([]);
    expect(meal?.seats).toBe(44);
    expect(layout?.turnovers).toEqual([]);
    // Nobody clears the rows away before the drinks: they leave those who wait at the bar their floor.
    expect(layout?.findings.filter((f) => f.code === "queue")).toEqual([]);
  });
  const few = { ...venue(1), stock: venue(1).stock.map((s) => (s.kind === "chair" ? { ...s, count: 90 } : s)) };
  it("says that the laid meal leaves too few chairs for the rows where none may be carried over, and how many: 90 less 52", () => {
    const { status, reasons } = arrange(few, brief({ guests: { adults: 52 }, turnover: false }), { layouts: 1, instead: false });
    expect(status).toBe("not-found");
    expect(reasons.map((f) => f.text)).toEqual(["The ceremony is for 52 guests; once the meal is laid in another room, 38 of the venue’s 90 chairs are left for rows in the Hall: 14 too few."]);
  });
  it("has the chairs that are too few carried over to the meal between the two: 52 and 52, less 90", () => {
    const { status, layouts: [layout] } = arrange(few, brief({ guests: { adults: 52 } }), { layouts: 1 });
    expect(status).toBe("arranged");
    const over = layout?.turnovers.find((t) => t.room === "annexe");
    expect(over?.moves).toHaveLength(52 + 52 - 90);
    // The others go to the store: the hall is wanted for the bar.
    expect(layout?.turnovers.find((t) => t.room === "hall")?.moves.filter((m) => m.act === "away")).toHaveLength(52 - 14);
    expect([over?.from, over?.to]).toEqual(["ceremony", "meal"]);
    expect(layout?.why).toContain("14 chairs are carried from the Hall to the Annexe: the venue has too few for both.");
  });
  it("finds each chair that two rooms want at once, once it is known which rooms are laid when", () => {
    const { layouts: [layout] } = arrange(few, brief({ guests: { adults: 52 } }), { layouts: 1 });
    if (!layout) throw new Error("nothing was arranged");
    expect(fetchedChairs(few, layout.scenes).map((f) => [f.room, f.chairs, f.wanted])).toEqual([["annexe", 14, 104]]);
    const bare = { ...layout, turnovers: layout.turnovers.filter((t) => t.room !== "annexe") };
    expect(check(few, bare, brief({ guests: { adults: 52 } })).filter((f) => f.level === "must").map((f) => f.text)).toEqual([
      "104 chairs are wanted at once, ceremony and Annexe laid for meal together; the venue owns 90, and no turnover carries any over.",
    ]);
    expect(check(few, layout, brief({ guests: { adults: 52 }, turnover: false })).map((f) => f.code)).toContain("chairs-not-allowed");
    const enough = { ...few, stock: few.stock.map((s) => (s.kind === "chair" ? { ...s, count: 104 } : s)) };
    expect(fetchedChairs(enough, layout.scenes)).toEqual([]);
  });
  it("does without a bar where the rows need its floor, and says so", () => {
    const { status, layouts: [layout] } = arrange(venue(1, 6000), brief({ guests: { adults: 72 } }), { layouts: 1 });
    expect(status).toBe("arranged");
    expect(layout?.scenes.flatMap((s) => s.items).some((i) => i.kind === "bar")).toBe(false);
    expect(layout?.givesUp).toContain("No place was found for: bar.");
  });
  it("does without a second bar where the venue owns one, and says so", () => {
    const { status, layouts: [layout] } = arrange(venue(1), brief({ extras: ["second-bar"] }), { layouts: 1 });
    expect(status).toBe("arranged");
    expect(layout?.findings.filter((f) => f.code === "not-placed").map((f) => f.text)).toEqual(["Asked for: a second bar; nothing of the kind stands in any part of the day."]);
    const two = arrange(venue(2), brief({ extras: ["second-bar"], guests: { adults: 36 } }), { layouts: 1 });
    expect(two.layouts[0]?.findings.filter((f) => f.code === "not-placed")).toEqual([]);
  });
});
