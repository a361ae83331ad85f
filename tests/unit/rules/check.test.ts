import { describe, expect, it } from "vitest";
import type { Item, Layout } from "../../../lib/layout";
import type { Brief } from "../../../lib/brief";
import type { Venue } from "../../../lib/venue";
import { check } from "../../../lib/rules";
import { box, briefOf, hall, itemOf, layoutOf, roundTable, rowChair, venueOf } from "./kit";

const MEAL = { ceremony: { here: false }, meal: { top: "none" } };
const codes = (venue: Venue, layout: Layout, brief?: Brief): readonly string[] => check(venue, layout, brief).map((f) => f.code);
const meal = (items: readonly Item[]): Layout => layoutOf("meal", items);

/** A long table, chairs along both long sides, `off` mm out. */
function longTable(id: string, at: readonly [number, number], angle = 0, off = 200): Item {
  const seats = [-600, 0, 600].flatMap((x) => [-1, 1].map((side) => {
    const dx = x, dy = side * (381 + off);
    const r = (angle * Math.PI) / 180;
    return {
      x: Math.round(at[0] + dx * Math.cos(r) - dy * Math.sin(r)), y: Math.round(at[1] + dx * Math.sin(r) + dy * Math.cos(r)),
      facing: ((side > 0 ? 270 : 90) + angle) % 360, place: "chair",
    };
  }));
  return itemOf({ id, kind: "table", role: "dining", from: { stock: "long" }, shape: { width: 1829, depth: 762 }, at, angle, seats });
}
const thing = (id: string, at: readonly [number, number], size: readonly [number, number], over: Record<string, unknown> = {}): Item =>
  itemOf({ id, kind: "other", from: { brought: true }, shape: { width: size[0], depth: size[1] }, at, ...over });

describe("check", () => {
  it("finds nothing on a roomy meal for eight", () => {
    expect(check(venueOf(), meal([roundTable("t1", [10000, 6000])]), briefOf(MEAL))).toEqual([]);
  });

  it("finds two pieces that overlap by 10 mm and not two that touch", () => {
    const a = thing("a", [3000, 2000], [1000, 1000]);
    expect(codes(venueOf(), meal([a, thing("b", [4000, 2000], [1000, 1000])]))).toEqual([]);
    const [f, ...more] = check(venueOf(), meal([a, thing("b", [3990, 2000], [1000, 1000])]));
    expect(more).toEqual([]);
    expect(f).toMatchObject({ code: "overlap", level: "must", items: ["a", "b"], measured: 10 });
    expect(f?.text).toBe("A and b overlap by 10 mm.");
  });

  it("lets no chair or table reach on to a dance floor", () => {
    const floor = itemOf({ id: "floor", kind: "dance-floor", from: { stock: "panel", count: 16 }, shape: { width: 4000, depth: 4000 }, at: [4000, 6000] });
    expect(codes(venueOf(), meal([floor, thing("x", [6490, 6000], [1000, 1000])]))).toEqual(["overlap"]);
    expect(codes(venueOf(), meal([floor, thing("x", [6500, 6000], [1000, 1000])]))).toEqual([]);
  });

  it("finds a piece 10 mm through a wall", () => {
    expect(codes(venueOf(), meal([thing("a", [490, 2000], [1000, 1000])]))).toEqual(["outside-room"]);
    expect(codes(venueOf(), meal([thing("a", [500, 2000], [1000, 1000])]))).toEqual([]);
  });

  it("finds a piece 10 mm into a column or into floor kept clear, and lets one touch", () => {
    const venue = venueOf({ rooms: [hall({
      obstacles: [{ id: "col", kind: "column", outline: box(5000, 5000, 300, 300) }, { id: "bend", kind: "hearth", outline: [[12000, 0], [14000, 0], [14000, 1000], [13000, 1000], [13000, 400], [12000, 400]] }],
      keepClear: [{ id: "hatch", outline: box(8000, 8000, 1000, 1000), why: "Floor hatch" }],
    })] });
    expect(codes(venue, meal([thing("a", [4510, 5000], [1000, 1000])]))).toEqual(["on-obstacle"]);
    expect(codes(venue, meal([thing("a", [4500, 5000], [1000, 1000])]))).toEqual([]);
    expect(codes(venue, meal([thing("a", [7510, 8500], [1000, 1000])]))).toEqual(["on-keep-clear"]);
    // In the crook of a hearth that is not convex.
    expect(codes(venue, meal([thing("a", [12500, 700], [900, 600])]))).toEqual([]);
    expect(codes(venue, meal([thing("a", [12500, 690], [900, 600])]))).toEqual(["on-obstacle"]);
  });

  it("keeps the floor inside an exit clear, chairs too, but for a dance floor", () => {
    expect(codes(venueOf(), meal([thing("a", [1390, 6000], [1000, 1000])]))).toEqual(["door-clear"]);
    expect(codes(venueOf(), meal([thing("a", [1400, 6000], [1000, 1000])]))).toEqual([]);
    const floor = itemOf({ id: "floor", kind: "dance-floor", from: { stock: "panel", count: 16 }, shape: { width: 4000, depth: 4000 }, at: [2300, 6000] });
    expect(codes(venueOf(), meal([floor]))).toEqual([]);
  });

  it("wants seats 100 to 450 mm off their table and looking at it", () => {
    expect(codes(venueOf(), meal([roundTable("t", [10000, 6000], 6, 90)]))).toEqual(Array(6).fill("seat-offset"));
    expect(codes(venueOf(), meal([roundTable("t", [10000, 6000], 6, 460)]))).toEqual(Array(6).fill("seat-offset"));
    expect(codes(venueOf(), meal([roundTable("t", [10000, 6000], 6, 449)]))).toEqual([]);
    const t = roundTable("t", [10000, 6000], 6);
    const away = { ...t, seats: t.seats.map((s, i) => (i === 0 ? { ...s, facing: (s.facing + 180) % 360 } : s)) };
    expect(codes(venueOf(), meal([away]))).toEqual(["seat-facing"]);
  });

  it("finds two tables 10 mm nearer than the least gap, and only where a place faces the other", () => {
    const venue = venueOf({ rules: { profile: "model-code", most: { tableGap: 1372, wallGap: 800 }, comfort: { tableGap: 1372, wallGap: 800 } } });
    const at = (gap: number): Layout => meal([longTable("a", [6000, 4000]), longTable("b", [6000, 4000 + 762 + gap])]);
    expect(codes(venue, at(1372))).toEqual([]);
    const found = check(venue, at(1362));
    expect(found.map((f) => [f.code, f.measured, f.limit])).toEqual([["table-gap", 1362, 1372]]);
    // End to end, nobody faces the other.
    expect(codes(venue, meal([longTable("a", [6000, 4000]), longTable("b", [6000 + 1829 + 920, 4000])]))).toEqual([]);
  });

  it("tells comfort as one should for all tight gaps", () => {
    const found = check(venueOf(), meal([longTable("a", [6000, 4000]), longTable("b", [6000, 4000 + 762 + 1400]), longTable("c", [6000, 4000 + 2 * (762 + 1400)])]));
    expect(found.map((f) => [f.code, f.level, f.data?.["count"]])).toEqual([["table-comfort", "should", 2]]);
  });

  it("finds a table 10 mm too near a wall behind its places, and not one beside its end", () => {
    const venue = venueOf({ rules: { profile: "house", most: { wallGap: 900 }, comfort: { wallGap: 900 } } });
    expect(codes(venue, meal([longTable("a", [6000, 900 + 381])]))).toEqual([]);
    expect(check(venue, meal([longTable("a", [6000, 890 + 381])])).map((f) => [f.code, f.measured])).toEqual([["wall-gap", 890]]);
    expect(codes(venue, meal([longTable("a", [460 + 915, 2000])]))).toEqual([]);
  });

  it("keeps an end without places 450 mm from a wall, and joined or 914 mm from another end", () => {
    expect(codes(venueOf(), meal([longTable("a", [440 + 915, 2600])]))).toEqual(["end-wall"]);
    const pair = (gap: number): Layout => meal([longTable("a", [6000, 6000]), longTable("b", [6000 + 1829 + gap, 6000])]);
    expect(codes(venueOf(), pair(0))).toEqual([]);
    expect(codes(venueOf(), pair(904))).toEqual(["end-end"]);
    expect(codes(venueOf(), pair(914))).toEqual([]);
  });

  it("wants 305 mm clear ahead of row chairs", () => {
    const rows = (clear: number): Layout => layoutOf("ceremony", [0, 1].flatMap((r) => [0, 1, 2].map((k) => rowChair(`c${r}${k}`, [9000 + 450 * k, 4000 + r * (500 + clear)]))));
    expect(codes(venueOf(), rows(305))).toEqual([]);
    expect(new Set(codes(venueOf(), rows(295)))).toEqual(new Set(["row-clear"]));
  });

  it("wants a centre aisle of 1067 mm for more than 50 seats", () => {
    const rows = (aisle: number, n: number): Layout => layoutOf("ceremony", Array.from({ length: n }, (_, r) => [...Array(6).keys()].map((k) =>
      rowChair(`c${r}-${k}`, [9000 + 450 * k + (k > 2 ? aisle : 0), 3000 + r * 900]))).flat());
    const brief = (n: number): Brief => briefOf({ guests: { adults: n }, meal: { service: "none" } });
    expect(codes(venueOf(), rows(1067, 9), brief(54))).toEqual([]);
    expect(codes(venueOf(), rows(1057, 9), brief(54))).toEqual(["centre-aisle"]);
    expect(codes(venueOf(), rows(1057, 8), brief(48))).toEqual([]);
  });

  it("counts stock over all rooms, chairs too", () => {
    const stock = [{ id: "round", name: "Round", kind: "table" as const, shape: { diameter: 1524 }, count: 1, seats: { comfort: 8, most: 10 } }, { id: "chair", name: "Chair", kind: "chair" as const, shape: { width: 450, depth: 500 }, count: 15 }];
    const two = meal([roundTable("a", [6000, 6000]), roundTable("b", [12000, 6000])]);
    expect(codes(venueOf({ stock }), two)).toEqual(["stock", "stock-chairs"]);
    expect(codes(venueOf({ stock: stock.map((s) => ({ ...s, count: 16 })) }), two)).toEqual([]);
  });

  it("leaves what may not be moved where it stands", () => {
    const gear = { id: "gear", name: "Mill gear", kind: "other" as const, shape: { width: 800, depth: 800 }, at: [3000, 1000] as [number, number], angle: 0, move: null };
    const venue = venueOf({ rooms: [hall({ standing: [gear] })] });
    const at = (x: number) => itemOf({ id: "gear", kind: "other", from: { standing: "gear" }, shape: { width: 800, depth: 800 }, at: [x, 1000] });
    expect(codes(venue, meal([at(3000)]))).toEqual([]);
    expect(codes(venue, meal([at(3010)]))).toEqual(["standing-fixed"]);
    expect(codes(venue, meal([]))).toEqual(["standing-gone"]);
  });

  it("names a table that is walled in, and the ways out that its places lack", () => {
    const walls = [thing("n", [10000, 3000], [6000, 100]), thing("s", [10000, 9000], [6000, 100]), thing("w", [7050, 6000], [100, 5900]), thing("e", [12950, 6000], [100, 5900])];
    const found = check(venueOf(), meal([roundTable("t1", [10000, 6000]), ...walls]));
    expect(found.map((f) => [f.code, f.items, f.measured, f.limit])).toEqual([["way-out", ["t1"], 0, 1]]);
    expect(found[0]?.text).toBe("From 8 places at t1 a path of 305 mm reaches no way out; 1 needed.");
  });

  it("wants a route of 914 mm to the bar", () => {
    const bar = itemOf({ id: "bar", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at: [10000, 350] });
    const screens = (gap: number): readonly Item[] => [
      thing("l", [4750, 3000], [9500, 100]), thing("r", [9500 + gap + (10500 - gap) / 2, 3000], [10500 - gap, 100]),
    ];
    expect(codes(venueOf(), meal([bar, ...screens(914)]))).toEqual([]);
    expect(codes(venueOf(), meal([bar, ...screens(904)]))).toEqual(["route"]);
  });

  it("holds people to the posted figure, and to one a 0.65 m2 whatever is posted", () => {
    const items = [roundTable("t1", [10000, 6000], 10)];
    const venue = (tables: number) => venueOf({ rooms: [hall({ posted: { tables } })] });
    expect(codes(venue(10), meal(items), briefOf({ ...MEAL, guests: { adults: 10 }, meal: { top: "none", perTable: "most" } }))).toEqual([]);
    expect(codes(venue(9), meal(items), briefOf({ ...MEAL, guests: { adults: 10 }, meal: { top: "none", perTable: "most" } }))).toEqual(["posted"]);
    // 20 x 12 m: 240 / (7 ft2 = 0.6503 m2) = 369 people.
    const standing = venueOf({ rooms: [hall({ posted: { standing: 5000 }, doors: hall().doors })] });
    expect(codes(standing, layoutOf("drinks", []), briefOf({ guests: { adults: 369 }, ceremony: { here: false }, meal: { service: "none" } }))).toEqual([]);
    expect(codes(standing, layoutOf("drinks", []), briefOf({ guests: { adults: 370 }, ceremony: { here: false }, meal: { service: "none" } }))).toEqual(["densest"]);
  });

  it("wants a place for every guest, and says who sits alone", () => {
    expect(codes(venueOf(), meal([roundTable("t1", [10000, 6000], 8)]), briefOf({ ...MEAL, guests: { adults: 9 } }))).toEqual(["places-short"]);
    expect(codes(venueOf(), meal([roundTable("t1", [10000, 6000], 8), roundTable("t2", [14000, 6000], 1)]), briefOf({ ...MEAL, guests: { adults: 9 } }))).toEqual(["alone"]);
  });

  it("names displays and music that stand nowhere", () => {
    const brief = briefOf({ ...MEAL, displays: ["cake"], extras: ["photo-booth"], music: { by: "dj" } });
    expect(check(venueOf(), meal([roundTable("t1", [10000, 6000])]), brief).map((f) => [f.level, f.data?.["what"]])).toEqual([["must", "dj"], ["should", "cake"], ["should", "photo-booth"]]);
  });

  it("wants a turnover where a room changes, and one that fits the day", () => {
    const rows = layoutOf("ceremony", [0, 1, 2, 3, 4, 5, 6, 7].map((k) => rowChair(`c${k}`, [8000 + 450 * k, 6000])));
    const dinner = meal([roundTable("t1", [10000, 6000])]);
    const day = (turnovers: Layout["turnovers"]): Layout => ({ ...rows, scenes: [...rows.scenes, ...dinner.scenes], turnovers });
    const brief = (over = {}): Brief => briefOf({ meal: { top: "none" }, ...over });
    // One hall alone gives nobody a room meanwhile, which a finding of its own says.
    const turns = (layout: Layout, by: Brief): readonly string[] => codes(venueOf(), layout, by).filter((c) => c !== "turnover-room");
    const turn = { from: "ceremony" as const, to: "meal" as const, minutes: 30, crew: 4, moves: [] };
    expect(turns(day([]), brief())).toEqual(["turnover-missing"]);
    expect(turns(day([turn]), brief())).toEqual([]);
    expect(turns(day([turn]), brief({ turnover: false }))).toEqual(["turnover-not-allowed"]);
    expect(turns(day([turn]), brief({ times: { drinks: "14:00", meal: "14:30" } }))).toEqual([]);
    expect(turns(day([turn]), brief({ times: { drinks: "14:00", meal: "14:29" } }))).toEqual(["turnover-time"]);
  });

  it("keeps to the rooms of the package and their uses", () => {
    const other = venueOf({ rooms: [hall(), { ...hall({ id: "annexe", name: "Annexe", outline: box(30000, 0, 9000, 9000), uses: ["lounge"], doors: [] }) }] });
    const x = { ...thing("x", [33000, 4000], [800, 800]), room: "annexe" };
    expect(codes(other, meal([roundTable("t1", [10000, 6000]), x]), briefOf(MEAL))).toEqual(["room-not-hired"]);
    const dry = venueOf({ rooms: [hall({ uses: ["dining"] })] });
    const buffet = itemOf({ id: "b", kind: "buffet", from: { brought: true }, shape: { width: 2400, depth: 800 }, at: [15000, 2000] });
    expect(codes(dry, meal([roundTable("t1", [6000, 6000]), buffet]), briefOf(MEAL))).toEqual(["room-use"]);
  });

  it("wants a wheelchair's place for each who asks, and lets no table seat more than its most", () => {
    expect(codes(venueOf(), meal([roundTable("t1", [10000, 6000])]), briefOf({ ...MEAL, guests: { adults: 8, wheelchairs: 1 } }))).toEqual(["wheelchairs-short"]);
    expect(codes(venueOf(), meal([roundTable("t1", [10000, 6000], 11, 440)]))).toEqual(["table-places"]);
  });

  it("wants 0.418 m2 of dance floor a dancer", () => {
    // 100 guests x 0.4 x 4.5 ft2 = 16.72 m2: 17 panels of 1 m2 do, 16 do not.
    const brief = briefOf({ guests: { adults: 100 }, ceremony: { here: false }, meal: { service: "none" }, music: { dancing: 0.4, by: "none" } });
    const floor = (w: number, d: number): Layout => layoutOf("dancing", [itemOf({ id: "f", kind: "dance-floor", from: { stock: "panel", count: w * d }, shape: { width: w * 1000, depth: d * 1000 }, at: [10000, 6000] })]);
    expect(codes(venueOf(), floor(17, 1), brief)).toEqual([]);
    expect(codes(venueOf(), floor(4, 4), brief)).toEqual(["dance-floor"]);
  });

  it("says when the DJ who plays the ceremony cannot see the front of the rows", () => {
    const rows = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => rowChair(`c${k}`, [8000 + 450 * k, 6000]));
    const dj = itemOf({ id: "dj", kind: "dj", from: { brought: true }, shape: { width: 1500, depth: 800 }, at: [3000, 2000] });
    const brief = briefOf({ meal: { service: "none" }, music: { by: "dj", atCeremony: true } });
    expect(codes(venueOf(), layoutOf("ceremony", [...rows, dj]), brief)).toEqual([]);
    const screen = itemOf({ id: "s", kind: "screen", from: { brought: true }, shape: { width: 3000, depth: 100 }, at: [5000, 3200] });
    expect(codes(venueOf(), layoutOf("ceremony", [...rows, dj, screen]), brief)).toEqual(["music-sight"]);
  });

  it("gives a drape's floor to the room it grows, with what stood there carried out", () => {
    const jambs = { from: [20000, 4000] as [number, number], to: [20000, 8000] as [number, number], exit: false, for: ["guests" as const], swing: "none" as const };
    const settle = { id: "settle", name: "Settle", kind: "lounge" as const, shape: { width: 1800, depth: 800 }, at: [21000, 6000] as [number, number], angle: 90, move: "heavy" };
    const venue = venueOf({
      rooms: [hall({ doors: [...hall().doors.slice(0, 1), { id: "a", leads: "side", ...jambs }] }),
        hall({ id: "side", name: "Side", outline: box(20000, 0, 8000, 12000), standing: [settle], doors: [{ id: "b", leads: "hall", ...jambs }, { id: "out", from: [28000, 5000], to: [28000, 6500], leads: "outside", exit: true, for: ["guests"], swing: "out" }] })],
      drapes: [{ id: "d", name: "Drape", grows: "hall", from: "side", area: box(20000, 3000, 3000, 6000), charge: null }],
    });
    const item = roundTable("t1", [21500, 6000], 4);
    const drawn = (drapes: readonly string[]): Layout => { const l = meal([item]); return { ...l, scenes: l.scenes.map((s) => ({ ...s, drapes })) }; };
    expect(codes(venue, drawn(["d"])).filter((c) => !c.endsWith("comfort"))).toEqual([]);
    expect(codes(venue, drawn([]))).toContain("outside-room");
  });
});
