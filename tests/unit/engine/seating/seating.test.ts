import { describe, expect, it } from "vitest";
import { auditTables } from "../../../../lib/engine/seating/audit";
import { seatTables } from "../../../../lib/engine/seating";
import { ASK, LONG, randomCase, rectangleAt, ROUND, spaceOf } from "./rooms";

const SEEDS = Array.from({ length: 30 }, (_, i) => i + 1);

describe("tables on any floor", () => {
  it.each(SEEDS)("keeps every gap, the stock and the chairs, seed %i", (seed) => {
    const given = randomCase(seed);
    if (!given) return;
    const { space, ask } = given;
    for (const s of seatTables(space, ask)) {
      expect(auditTables(space, ask, s.items), `${s.family} ${s.form}`).toEqual([]);
      expect(s.places).toBe(s.items.reduce((n, i) => n + i.seats.length, 0));
      if (ask.places !== "most") expect(s.places).toBeLessThanOrEqual(ask.places);
      const seats = s.items.flatMap((i) => i.seats);
      expect(seats.filter((c) => c.place === "chair").length).toBeLessThanOrEqual(ask.chairsLeft);
      expect(seats.filter((c) => c.place === "wheelchair")).toHaveLength(s.wheelchairs);
      for (const f of ask.families) expect(s.items.filter((i) => "stock" in i.from && i.from.stock === f.stock).length).toBeLessThanOrEqual(f.count);
      for (const i of s.items) for (const c of i.seats) expect([c.x, c.y].every(Number.isInteger)).toBe(true);
    }
  });

  it("gives the same bytes for the same seed", () => {
    for (const seed of [2, 5, 9]) {
      const given = randomCase(seed);
      if (given) expect(JSON.stringify(seatTables(given.space, given.ask))).toBe(JSON.stringify(seatTables(given.space, given.ask)));
    }
  });

  it("seats as many, or one table's worth fewer, when the room is turned by 90 degrees", () => {
    const ask = { ...ASK, places: "most" as const, tables: "rounds" as const };
    const [a] = seatTables(spaceOf(rectangleAt(0, 0, 15_000, 10_000)), ask);
    const [b] = seatTables(spaceOf(rectangleAt(0, 0, 10_000, 15_000)), ask);
    expect(Math.abs((a?.places ?? 0) - (b?.places ?? 0))).toBeLessThanOrEqual(8);
  });

  it("lays a composed grid, mirrored about the room's line of symmetry", () => {
    const [best] = seatTables(spaceOf(rectangleAt(0, 0, 18_000, 12_000), { mirror: { at: [9_000, 0], angle: 90 } }), { ...ASK, places: 80, tables: "rounds" });
    expect(best?.places).toBe(80);
    const at = best?.items.map((i) => i.at) ?? [];
    for (const [x, y] of at) expect(at.some((q) => Math.abs(q[0] - (18_000 - x)) <= 2 && q[1] === y)).toBe(true);
  });

  it("uses long tables where the rounds of the stock are not enough", () => {
    const found = seatTables(spaceOf(rectangleAt(0, 0, 18_000, 12_000)), { ...ASK, places: 92, families: [{ ...ROUND, count: 6 }, { ...LONG, count: 14 }] });
    expect(found.some((s) => s.family === "mixed" && s.places === 92)).toBe(true);
  });

  it.each(["u", "e", "t", "hollow-square"] as const)("joins long tables as asked: %s", (form) => {
    const space = spaceOf(rectangleAt(0, 0, 18_000, 13_000));
    const [one] = seatTables(space, { ...ASK, places: 36, form });
    expect(one?.form).toBe(form);
    expect(one?.places).toBe(36);
    expect(one?.runs).toBe(1);
    expect(auditTables(space, ASK, one?.items ?? [])).toEqual([]);
  });

  it("gives wheelchairs places that a route reaches, at different tables", () => {
    const space = spaceOf(rectangleAt(0, 0, 18_000, 13_000), { zones: [{ polygon: rectangleAt(7_000, 9_000, 4_000, 4_000), tableClear: 483 }], exits: [[9_000, 12_500]] });
    const [one] = seatTables(space, { ...ASK, places: 64, wheelchairs: 2 });
    expect(one?.wheelchairs).toBe(2);
    expect(one?.items.filter((i) => i.seats.some((s) => s.place === "wheelchair"))).toHaveLength(2);
    expect(auditTables(space, ASK, one?.items ?? [])).toEqual([]);
  });

  it("drops tables that the caller's own check refuses", () => {
    const [one] = seatTables(spaceOf(rectangleAt(0, 0, 18_000, 12_000)), { ...ASK, places: "most", tables: "rounds" }, { verify: (items) => items.slice(0, 1).map((i) => i.id) });
    const [all] = seatTables(spaceOf(rectangleAt(0, 0, 18_000, 12_000)), { ...ASK, places: "most", tables: "rounds" });
    expect(one?.items.length).toBe((all?.items.length ?? 0) - 1);
  });
});
