import { describe, expect, it } from "vitest";
import { add, turn, type Point } from "../../../lib/geometry";
import { siteOf } from "../../../lib/venue";
import { routes, walkMap, waysOut } from "../../../lib/rules/ways";
import { box, hall, itemOf, roundTable, rowChair, venueOf } from "./kit";

const scene = (items: ReturnType<typeof roundTable>[], rooms = ["hall"]) => ({ id: "meal" as const, rooms, items });

describe("ways out", () => {
  it("serves every place of a free table by both exits", () => {
    const site = siteOf(venueOf());
    expect(waysOut(site, scene([roundTable("t1", [10000, 6000])]), 60).unserved).toEqual([]);
  });

  it("finds a corridor of 914 mm and not one of 913 mm, at any angle", () => {
    for (const angle of [0, 17, 30, 45, 71, 90]) for (const [gap, through] of [[914, true], [913, false]] as const) {
      const spin = (p: Point): Point => add([10000, 10000], turn(p, angle));
      const venue = venueOf({ rooms: [hall({
        outline: box(-6000, -6000, 12000, 12000).map(spin).map(([x, y]) => [Math.round(x), Math.round(y)] as [number, number]), doors: [],
      })] });
      const left: Point = spin([-(gap / 2 + 4000), 0]), right: Point = spin([gap / 2 + 4000, 0]);
      const piece = (id: string, at: Point) => ({ ...itemOf({ id, kind: "screen", from: { brought: true }, shape: { width: 8000, depth: 300 }, at: [0, 0] }), at, angle });
      const map = walkMap(siteOf(venue), scene([piece("l", left), piece("r", right)]), { width: 914, tableLine: 483 });
      expect({ angle, gap, pieces: map.pieces.length }).toEqual({ angle, gap, pieces: through ? 1 : 2 });
    }
  });

  it("finds the gap between two round tables to the millimetre", () => {
    for (const [gap, through] of [[914, true], [913, false]] as const) {
      const venue = venueOf({ rooms: [hall({ outline: box(0, 0, 1524 * 2 + gap, 8000), doors: [] })] });
      const map = walkMap(siteOf(venue), scene([
        { ...roundTable("a", [762, 4000]), seats: [] }, { ...roundTable("b", [762 + 1524 + gap, 4000]), seats: [] },
      ]), { width: 914, tableLine: 483 });
      expect(map.pieces.length).toBe(through ? 1 : 2);
    }
  });

  it("keeps rooms that share a wall line apart but for their door", () => {
    const door = (id: string, leads: string) => ({ id, from: [20000, 2000] as [number, number], to: [20000, 2900] as [number, number], leads, exit: false, for: ["guests" as const], swing: "none" as const });
    const far = { id: "far", name: "Far", outline: box(20000, 0, 5000, 12000), uses: [], doors: [door("d2", "hall"), { id: "out", from: [25000, 2000] as [number, number], to: [25000, 3000] as [number, number], leads: "outside", exit: true, for: ["guests" as const], swing: "out" as const }] };
    const west = { id: "west", from: [0, 5200] as [number, number], to: [0, 6800] as [number, number], leads: "outside", exit: true, for: ["guests" as const], swing: "out" as const };
    const joined = venueOf({ rooms: [hall({ doors: [west, door("d1", "far")] }), far] });
    const apart = venueOf({ rooms: [hall({ doors: [west] }), { ...far, doors: far.doors.slice(1) }] });
    const t = roundTable("t1", [10000, 6000]);
    expect(waysOut(siteOf(joined), scene([t]), 60).unserved).toEqual([]);
    expect(waysOut(siteOf(apart), scene([t]), 60).unserved.length).toBe(8);
    expect(waysOut(siteOf(apart), scene([t]), 49).unserved).toEqual([]);
  });

  it("leads a wheelchair through a door of 800 mm and not through one of 790 mm, even in a corner", () => {
    for (const [width, reached] of [[800, true], [790, false]] as const) {
      const venue = venueOf({ rooms: [hall({ doors: [{ id: "w", from: [0, 0], to: [0, width], leads: "outside", exit: true, for: ["guests"], swing: "out" }] })] });
      const bar = itemOf({ id: "b", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at: [10000, 350] });
      expect(routes(siteOf(venue), scene([bar])).unreached.length).toBe(reached ? 0 : 1);
    }
  });

  it("is quick for 130 places", () => {
    const site = siteOf(venueOf());
    const tables = Array.from({ length: 13 }, (_, i) => roundTable(`t${i}`, [2000 + (i % 5) * 3300, 2000 + Math.floor(i / 5) * 3300], 10));
    const rows = Array.from({ length: 130 }, (_, i) => rowChair(`c${i}`, [1500 + (i % 13) * 450, 2000 + Math.floor(i / 13) * 900]));
    for (const items of [tables, rows]) {
      waysOut(site, scene(items)); routes(site, scene(items));
      const t = performance.now();
      expect(waysOut(site, scene(items)).unserved).toEqual([]);
      routes(site, scene(items));
      expect(performance.now() - t).toBeLessThan(500);
    }
  });
});
