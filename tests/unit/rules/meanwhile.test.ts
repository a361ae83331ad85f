import { describe, expect, it } from "vitest";
import type { Layout } from "../../../lib/layout";
import { check, checkWet } from "../../../lib/rules";
import type { Venue } from "../../../lib/venue";
import { box, briefOf, hall, layoutOf, roundTable, rowChair, venueOf, type RoomFile } from "./kit";

const drinksRoom = (id: string, x: number, standing: number, outdoor = false): RoomFile => ({
  ...hall({ id, name: id, outline: box(x, 0, 10000, 9000), uses: ["drinks"], posted: { standing }, ...(outdoor ? { outdoor } : {}) }),
  doors: [{ id: "out", from: [x, 4000], to: [x, 5600], leads: "outside", exit: true, for: ["guests"], swing: "out" }],
});
/** The hall is turned over from rows to tables; a garden, a barn and a small gallery are let for drinks. */
const venue = (barn: number): Venue => venueOf({
  rooms: [hall({ uses: ["ceremony", "dining"] }), drinksRoom("garden", 30000, 130, true), drinksRoom("barn", 50000, barn), drinksRoom("gallery", 70000, 10)],
  packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ["hall", "garden", "barn", "gallery"], turnover: true, dueDays: 42 }],
});
const brief = briefOf({ guests: { adults: 60 }, meal: { top: "none" } });
const drinksIn = (room: string): Layout => ({
  ...layoutOf("ceremony", [rowChair("c1", [8000, 6000])]),
  scenes: [...layoutOf("ceremony", [rowChair("c1", [8000, 6000])]).scenes, ...layoutOf("drinks", [], [room]).scenes, ...layoutOf("meal", [roundTable("t1", [10000, 6000])]).scenes],
});
const told = (findings: ReturnType<typeof check>): readonly unknown[] => findings.filter((f) => f.code === "turnover-room").map((f) => [f.level, f.measured, f.limit, f.data?.["could"], f.data?.["wet"]]);

describe("everyone has another room while theirs is turned over", () => {
  it("in the dry: a garden that holds all 60 will do, and 10 in a gallery beside it will not", () => {
    expect(told(check(venue(60), { ...drinksIn("garden"), wet: { scenes: [], turnovers: [], findings: [] } }, brief))).toEqual([]);
    expect(told(check(venue(60), drinksIn("gallery"), brief))).toEqual([["must", 10, 60, 130 + 60 + 10, false]]);
  });

  it("in the wet, judged on the twin: a must where another room under the roof holds them", () => {
    expect(told(checkWet(venue(60), drinksIn("barn"), brief))).toEqual([]);
    expect(told(checkWet(venue(60), drinksIn("gallery"), brief))).toEqual([["must", 10, 60, 60 + 10, true]]);
  });

  it("and a should with what they hold where all rooms under the roof do not", () => {
    expect(told(checkWet(venue(49), drinksIn("barn"), brief))).toEqual([["should", 49, 60, 49 + 10, true]]);
    const words = checkWet(venue(49), drinksIn("barn"), brief).find((f) => f.code === "turnover-room")?.text;
    expect(words).toBe("While Hall is turned over from ceremony to meal, the other rooms hold 49 for 60 guests when it rains; all the hired rooms under a roof that are free then hold 59.");
  });

  it("a day without a twin is told of the wet as a should, and one with a twin by the twin", () => {
    expect(told(check(venue(60), drinksIn("garden"), brief))).toEqual([["should", 0, 60, 60 + 10, true]]);
  });
});
