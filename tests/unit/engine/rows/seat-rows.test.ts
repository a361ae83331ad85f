import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../../lib/brief";
import { seeded } from "../../../../lib/base";
import { rowPlans, seatRows, standsAmong, type RowAsk, type RowPlan, type RowSpace } from "../../../../lib/engine/rows";
import { bearing, rectangle, sub, turn, type Point, type Polygon } from "../../../../lib/geometry";
import type { Layout } from "../../../../lib/layout";
import { contextOf, judge } from "../../../../lib/rules";
import { axisOf, blockedFloor, siteOf, venueSchema, type Venue } from "../../../../lib/venue";

type RoomSpec = { readonly outline: Polygon; readonly doors: readonly (readonly [Point, Point])[]; readonly columns?: readonly Point[]; readonly feature?: readonly [Point, Point] };

function venueOf({ outline, doors, columns = [], feature }: RoomSpec, angle = 0): Venue {
  const t = (p: Point): [number, number] => { const q = turn(p, angle); return [Math.round(q[0]), Math.round(q[1])]; };
  return venueSchema.parse({
    format: "marquetry.venue/1", id: "v", name: "V", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric",
    rooms: [{
      id: "room", name: "Room", outline: outline.map(t), uses: ["ceremony"],
      obstacles: columns.map((c, i) => ({ id: `c${i}`, kind: "column", outline: rectangle(c, 240, 240, 0).map(t) })),
      doors: doors.map(([a, b], i) => ({ id: `d${i}`, from: t(a), to: t(b), leads: "outside", exit: true, for: ["guests"], swing: "out" })),
      walls: feature ? [{ from: t(feature[0]), to: t(feature[1]), is: "feature" }] : [],
    }],
    stock: [{ id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 1000 }],
    packages: [{ id: "p", name: "P", coordinator: true, rooms: ["room"], turnover: true, dueDays: 7 }],
    charges: [], tax: { name: "VAT", basisPoints: 0, of: "line", included: true },
  });
}
function spaceOf(venue: Venue): RowSpace {
  const site = siteOf(venue).rooms.get("room");
  if (!site) throw new Error("no room");
  return {
    room: "room", floor: site.floor, solids: blockedFloor(site.room), zones: site.gates.map((g) => g.clear), axis: axisOf(site.outline), gates: site.gates,
    features: site.room.walls.filter((w) => w.is === "feature"), windows: site.room.windows,
  };
}
const ask = (people: number, more: Partial<RowAsk> = {}): RowAsk => ({
  people, wheelchairs: 0, chair: { id: "chair", width: 450, depth: 500 }, rowPitch: 914, aisle: "centre", curve: false, chairsLeft: 1000, ...more,
});
/** What the rules find wrong with a plan. */
function faults(venue: Venue, plan: RowPlan, aisle: RowAsk["aisle"], wheelchairs: number): readonly string[] {
  const layout: Layout = {
    id: "a", title: "", why: [], turnovers: [], findings: [],
    scenes: [{ id: "ceremony", title: "Ceremony", rooms: ["room"], drapes: [], items: plan.items, seats: plan.places, numbers: [] }],
  };
  const brief = briefSchema.parse({ format: "marquetry.brief/1", package: "p", date: "2027-06-12", guests: { adults: plan.places, wheelchairs }, ceremony: { aisle } });
  const context = contextOf(venue, layout, brief);
  const view = context.scenes[0];
  return view ? judge(context, view, ["ids", "inRoom", "builtIn", "overlap", "doorClear", "rowClear", "centreAisle", "stock", "ways", "route"])
    .filter((f) => f.level === "must").map((f) => `${f.code} ${f.items.join(" ")} ${f.measured} ${f.limit}`) : [];
}

const HALL: RoomSpec = {
  outline: [[0, 0], [16200, 0], [16200, 9400], [0, 9400]], doors: [[[3000, 9400], [4800, 9400]], [[13500, 9400], [15000, 9400]]],
  columns: [[3600, 3000], [12600, 3000], [3600, 6300], [12600, 6300]], feature: [[6900, 0], [9300, 0]],
};

describe("seatRows", () => {
  const venue = venueOf(HALL), space = spaceOf(venue);
  it("seats everyone before the feature, the couple facing their guests and the guests them", () => {
    const [plan] = seatRows(space, ask(92, { wheelchairs: 2 }));
    expect(plan).toMatchObject({ places: 92, wheelchairs: 2, aisleWidth: 1524, front: { facing: 90 } });
    expect(plan?.front.at[0]).toBe((6900 + 9300) / 2);
    expect(plan?.items.filter((i) => i.kind === "chair").every((i) => i.seats[0]?.facing === 270 && i.angle === 180)).toBe(true);
  });
  it.each([["west", 0, 0], ["east", 16_200, 180]] as const)("has the couple before the %s wall, where the other short wall has a door in its middle", (_, x, facing) => {
    const other = 16_200 - x, plain = { outline: HALL.outline, doors: [[[other, 3_900], [other, 5_500]], [[6_000, 9_400], [7_800, 9_400]]] } satisfies RoomSpec;
    const [plan] = seatRows(spaceOf(venueOf(plain)), ask(80));
    expect(plan).toMatchObject({ places: 80, front: { facing } });
  });
  it("has the couple before a long wall rather than a door, where both short walls have one", () => {
    const both = { outline: HALL.outline, doors: [[[0, 3_900], [0, 5_500]], [[16_200, 3_900], [16_200, 5_500]]] } satisfies RoomSpec;
    expect([90, 270]).toContain(seatRows(spaceOf(venueOf(both)), ask(80))[0]?.front.facing);
  });
  it("is one block past a piece that stands in the hall, wherever it stands (kept seeds 1 to 16)", () => {
    const random = seeded(1), big = { outline: [[0, 0], [20_000, 0], [20_000, 14_000], [0, 14_000]], doors: [[[0, 6_000], [0, 7_600]], [[9_000, 14_000], [10_800, 14_000]]] } satisfies RoomSpec;
    const bare = spaceOf(venueOf(big)), wrapped: string[] = [];
    for (let seed = 1; seed <= 16; seed++) {
      const at: Point = [Math.round(3_000 + random() * 14_000), Math.round(3_000 + random() * 8_000)], piece = rectangle(at, 2_400, 700, seed % 2 === 0 ? 0 : 90);
      const [plan] = seatRows({ ...bare, solids: [...bare.solids, piece], pieces: [piece] }, ask(60));
      expect(plan?.places).toBe(60);
      if (plan && standsAmong(plan.field, piece)) wrapped.push(`${seed}: ${at.join()}`);
    }
    expect(wrapped).toEqual([]);
  });
  it("gives plans one by one as all at once, the best first, and none where nothing may cost so little", () => {
    const all = seatRows(space, ask(60)), [first] = rowPlans(space, ask(60));
    expect(first).toEqual(all[0]);
    expect(all.map((p) => p.cost)).toEqual(all.map((p) => p.cost).sort((a, b) => a - b));
    expect([...rowPlans(space, ask(60), 1)]).toEqual([]);
  });
  it("is symmetric about the aisle but for the last row, and leaves out single chairs at columns", () => {
    const [plan] = seatRows(space, ask(92));
    const middle = plan?.front.at[0] ?? 0;
    const chairs = plan?.items ?? [];
    const lastRow = Math.max(...chairs.map((c) => c.at[1]));
    const left = chairs.filter((c) => c.at[1] < lastRow && c.at[0] < middle).length, right = chairs.filter((c) => c.at[1] < lastRow && c.at[0] > middle).length;
    expect(left).toBe(right);
  });
  it("keeps at least 1829 mm before the first row, 3000 where that is asked", () => {
    for (const frontDepth of [1829, 3000]) {
      const [plan] = seatRows(space, ask(60, { frontDepth }));
      const first = Math.min(...(plan?.items.map((i) => i.at[1] - 250) ?? [0]));
      expect(first).toBeGreaterThanOrEqual(frontDepth);
    }
  });
  it("gives each wheelchair place a chair beside it", () => {
    const [plan] = seatRows(space, ask(100, { wheelchairs: 5 }));
    const wheels = plan?.items.filter((i) => i.role === "wheelchair-space") ?? [];
    expect(wheels.length).toBe(5);
    for (const w of wheels) {
      expect(w.seats).toHaveLength(1);
      expect(plan?.items.some((c) => c.kind === "chair" && Math.abs(c.at[0] - w.at[0]) < 760 && Math.abs(c.at[1] - w.at[1]) < 700)).toBe(true);
    }
  });
  it.each([3, 4])("seats %i in wheelchairs among 26 before bent rows without an aisle, each with a chair beside it and none in another's way", (wheelchairs) => {
    const room = venueOf({ outline: [[0, 0], [18000, 0], [18000, 10000], [0, 10000]], doors: [[[3000, 10000], [4800, 10000]], [[0, 4000], [0, 5600]]] });
    const [plan] = seatRows(spaceOf(room), ask(26, { wheelchairs, curve: true, aisle: "none" }));
    expect(plan).toMatchObject({ places: 26, wheelchairs });
    if (!plan) return;
    expect(faults(room, plan, "none", wheelchairs)).toEqual([]);
    const chairs = plan.items.filter((i) => i.kind === "chair");
    for (const w of plan.items.filter((i) => i.role === "wheelchair-space")) {
      expect(chairs.some((c) => Math.hypot(c.at[0] - w.at[0], c.at[1] - w.at[1]) < 1100)).toBe(true);
    }
  });
  it("seats no more than there are chairs, wheelchair users apart", () => {
    const [plan] = seatRows(space, ask(92, { wheelchairs: 2, chairsLeft: 50 }));
    expect(plan?.items.filter((i) => i.kind === "chair").length).toBe(50);
    expect(plan?.wheelchairs).toBe(2);
  });
  it("bends rows about the couple: each chair looks within 20 degrees of them", () => {
    const [plan] = seatRows(space, ask(70, { curve: true }));
    expect(plan?.places).toBe(70);
    for (const c of plan?.items ?? []) {
      const to = bearing(sub(plan?.front.at ?? [0, 0], c.at));
      const off = Math.abs(((to - (c.seats[0]?.facing ?? 0) + 540) % 360) - 180);
      expect(off).toBeLessThan(20);
    }
  });
  it("offers plans before different fronts", () => {
    const plans = seatRows(space, ask(60));
    expect(plans.length).toBe(3);
    expect(new Set(plans.map((p) => p.front.at.join(","))).size).toBe(3);
  });
  it("hands back fewer places, or none, where there is no room", () => {
    const tiny = spaceOf(venueOf({ outline: [[0, 0], [4000, 0], [4000, 5000], [0, 5000]], doors: [[[1500, 5000], [2500, 5000]]] }));
    expect(seatRows(tiny, ask(80))[0]?.places ?? 0).toBeLessThan(40);
    const cupboard = spaceOf(venueOf({ outline: [[0, 0], [1700, 0], [1700, 1700], [0, 1700]], doors: [[[300, 1700], [1200, 1700]]] }));
    expect(seatRows(cupboard, ask(10))).toEqual([]);
  });
  it("is the same for the same room", () => expect(seatRows(space, ask(92))).toEqual(seatRows(space, ask(92))));
});

/** Rooms of several shapes at any angle, with columns and two doors. */
function randomRoom(seed: number): { readonly spec: RoomSpec; readonly angle: number; readonly ask: RowAsk } {
  const random = seeded(seed);
  const between = (a: number, b: number): number => Math.round(a + random() * (b - a));
  const w = between(7000, 16000), h = between(7000, 16000);
  const shape = Math.floor(random() * 3);
  const outline: Polygon = shape === 0 ? [[0, 0], [w, 0], [w, h], [0, h]]
    : shape === 1 ? [[0, 0], [w, 0], [w, Math.round(h / 2)], [Math.round(w / 2), Math.round(h / 2)], [Math.round(w / 2), h], [0, h]]
      : [[0, 0], [w, 0], [w - between(500, 2000), h], [0, h]];
  const doors: RoomSpec["doors"] = [[[0, 1000], [0, 1000 + between(900, 1800)]], [[1000, h], [1000 + between(900, 1800), h]]];
  const columns = Array.from({ length: Math.floor(random() * 4) }, (): Point => [between(1500, Math.round(w / 2)), between(2500, h - 2500)]);
  return {
    spec: { outline, doors, columns }, angle: [0, 90, 17, 200][seed % 4] ?? 0,
    ask: ask(between(10, 120), { wheelchairs: between(0, 3), curve: random() < 0.3, aisle: (["centre", "centre", "sides", "none"] as const)[Math.floor(random() * 4)] ?? "centre", rowPitch: between(805, 950) }),
  };
}

/** Rooms in which a wheelchair space stood in a bent aisle, bent rows looked askew, and all chairs were on one side of the aisle. */
const KEPT = [32, 44, 78];

describe("seatRows in random rooms (kept seeds 1 to 24, and some where the aisle was faulty)", () => {
  it("gives plans in which the rules find nothing wrong, and a plan wherever there is room for ten", () => {
    const wrong: string[] = [];
    let seated = 0;
    for (const seed of [...Array.from({ length: 24 }, (_, k) => k + 1), ...KEPT]) {
      const { spec, angle, ask: a } = randomRoom(seed);
      const venue = venueOf(spec, angle);
      const plans = seatRows(spaceOf(venue), a);
      if ((plans[0]?.places ?? 0) >= Math.min(10, a.people)) seated++;
      for (const plan of plans) {
        expect(plan.places).toBeLessThanOrEqual(a.people);
        wrong.push(...faults(venue, plan, a.aisle, plan.wheelchairs).map((f) => `seed ${seed}: ${f}`));
      }
    }
    expect(wrong).toEqual([]);
    expect(seated).toBeGreaterThanOrEqual(22 + KEPT.length);
  });
});
