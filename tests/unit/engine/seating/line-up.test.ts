import { describe, expect, it } from "vitest";
import { seeded } from "../../../../lib/base";
import { clearance } from "../../../../lib/geometry";
import { isRound, shapeAt } from "../../../../lib/layout";
import { seatTables, type Family, type SeatingSpace } from "../../../../lib/engine/seating";
import { centred } from "../../../../lib/engine/seating/centre";
import { fullest, isRoundFamily } from "../../../../lib/engine/seating/drafts";
import { hallOf } from "../../../../lib/engine/seating/hall";
import { joined } from "../../../../lib/engine/seating/items";
import { inLines, linedUp } from "../../../../lib/engine/seating/line-up";
import type { Laid } from "../../../../lib/engine/seating/types";
import { ASK, LONG, rectangleAt, ROUND, spaceOf } from "./rooms";

const room = spaceOf(rectangleAt(0, 0, 16_000, 14_000));
const at = (family: Family, x: number, y: number, group: number): Laid => ({ family, at: [x, y], angle: 0, ring: isRound(family.shape) ? 8 : 0, sides: isRound(family.shape) ? [0, 0, 0, 0] : [3, 0, 3, 0], group });
const lines = (laid: readonly Laid[], k: 0 | 1): number => laid.filter((l, i) => laid.findIndex((o) => Math.abs(o.at[k] - l.at[k]) <= 30) === i).length;
const least = (laid: readonly Laid[]): number => Math.min(...laid.flatMap((a, i) => laid.slice(i + 1).map((b) => clearance(shapeAt(a.family.shape, a.at, a.angle), shapeAt(b.family.shape, b.at, b.angle)))));
/** Three by three, each thrown off its place by up to half a metre either way. */
const thrown = (seed: number, family: (i: number) => Family = () => ROUND): readonly Laid[] => {
  const random = seeded(seed), off = (): number => Math.round((random() - 0.5) * 1_000);
  return Array.from({ length: 9 }, (_, i) => at(family(i), 3_800 + (i % 3) * 4_200 + off(), 2_800 + Math.floor(i / 3) * 4_200 + off(), i));
};
const up = (laid: readonly Laid[], space: SeatingSpace = room): readonly Laid[] => linedUp(hallOf(space, ASK), laid);

describe("tables that stand wherever they went", () => {
  it.each([1, 2, 3, 4, 5, 6])("are brought into three rows and three columns where there is room for them, thrown by the dice %i", (seed) => {
    const out = up(thrown(seed));
    expect([lines(out, 0), lines(out, 1)]).toEqual([3, 3]);
    expect(least(out)).toBeGreaterThanOrEqual(ASK.gaps.tableGap);
  });

  it("are brought into line with tables of another shape", () => {
    const out = up(thrown(7, (i) => (i % 3 === 1 ? LONG : ROUND)));
    expect([lines(out, 0), lines(out, 1)]).toEqual([3, 3]);
    expect(least(out)).toBeGreaterThanOrEqual(ASK.gaps.tableGap);
  });

  it("keep their mirror image", () => {
    const mirror = { ...room, mirror: { at: [8_000, 500] as const, angle: 90 } };
    const half = thrown(3).filter((l) => l.at[0] < 7_000), both = [...half, ...half.map((l, i) => at(ROUND, 16_000 - l.at[0], l.at[1], 9 + i))];
    const out = up(both, mirror);
    expect(lines(out, 0)).toBe(2);
    for (const l of out) expect(out.some((o) => Math.abs(o.at[0] - (16_000 - l.at[0])) <= 1 && o.at[1] === l.at[1])).toBe(true);
  });

  it("are left alone where they stand in rows already", () => {
    const rows = Array.from({ length: 9 }, (_, i) => at(ROUND, 3_800 + (i % 3) * 4_200, 2_800 + Math.floor(i / 3) * 4_200, i));
    expect(up(rows)).toBe(rows);
  });

  it("are as many as before, each with its places, its group and its joints", () => {
    const run = [at(LONG, 4_000, 2_500, 9), at(LONG, 4_000 + 1_829, 2_500, 9)], laid = [...thrown(5).filter((l) => l.at[1] > 4_500), ...run];
    const out = up(laid);
    expect(out.map(({ at: _, ...rest }) => rest)).toEqual(laid.map(({ at: _, ...rest }) => rest));
    expect((out.at(-1)?.at[0] ?? 0) - (out.at(-2)?.at[0] ?? 0)).toBe(1_829);
  });

  it("look composed where no more than a fifth stand off every line of three", () => {
    const grid = (n: number): Laid[] => Array.from({ length: n }, (_, i) => at(ROUND, 3_000 + (i % 4) * 3_400, 3_000 + Math.floor(i / 4) * 3_400, i));
    const off = [at(ROUND, 1_700, 9_600, 20), at(ROUND, 5_100, 11_500, 21), at(ROUND, 11_800, 10_500, 22)];
    expect([inLines([...grid(8), ...off.slice(0, 2)]), inLines([...grid(8), ...off])]).toEqual([2 / 10 <= 0.2, 3 / 11 <= 0.2]);
  });
});

describe("a fullest floor of two kinds", () => {
  it("gives each run a group of its own", () => {
    const few = { ...ROUND, count: 4 }, short = { ...LONG, count: 6 };
    const work = { hall: hallOf(room, ASK), ask: { ...ASK, places: "most" as const, families: [few, short] }, random: seeded(1), steps: 2_000_000 };
    for (const { laid } of fullest(work, [few, short], "mixed", new Map())) {
      const of = joined(laid);
      expect(laid.some((l) => isRoundFamily(l.family)) && laid.some((l) => !isRoundFamily(l.family))).toBe(true);
      // Whoever shares a group stands joined.
      laid.forEach((a, i) => laid.forEach((b, j) => { if (a.group === b.group) expect(of[i]).toBe(of[j]); }));
    }
  });
});

describe("joined forms", () => {
  it("stand with their own middle on the line on which the couple look, whichever way they open", () => {
    const hall = spaceOf(rectangleAt(0, 0, 13_400, 8_300), { mirror: { at: [6_700, 1_200], angle: 90 }, focus: [6_700, 1_200], zones: [{ polygon: rectangleAt(5_900, 800, 1_600, 1_700), tableClear: 0 }] });
    const u = seatTables(hall, { ...ASK, places: 46, families: [LONG], gaps: { tableGap: 1_372, wallGap: 762 }, perTable: "most", tables: "long", form: "u" })[0];
    const xs = (u?.items ?? []).flatMap((i) => { const b = shapeAt(i.shape, i.at, i.angle).box; return [b.minX, b.maxX]; });
    expect(u?.form).toBe("u");
    expect(Math.abs((Math.min(...xs) + Math.max(...xs)) / 2 - 6_700)).toBeLessThanOrEqual(1);
  });
});

describe("a block of tables in a room without a couple's table", () => {
  const four = (x: number): readonly Laid[] => [0, 1, 2, 3].map((i) => at(ROUND, x + (i % 2) * 3_400, 5_300 + Math.floor(i / 2) * 3_400, i));

  it("is moved to the middle of the free floor, all tables as they stood to one another", () => {
    const laid = four(2_500), out = centred(hallOf(room, ASK), laid);
    // 3400 mm between the two columns, in the middle of 16 m.
    expect(out.map((l) => l.at[0] - 8_000)).toEqual([-1_700, 1_700, -1_700, 1_700]);
    expect(out.map((l) => l.at[1])).toEqual(laid.map((l) => l.at[1]));
  });

  it("goes to the middle between a wall and a stage, and looks past a column", () => {
    const stage = rectangleAt(12_000, 2_000, 4_000, 10_000), column = rectangleAt(9_800, 6_900, 300, 300);
    const out = centred(hallOf({ ...room, solids: [stage, column] }, ASK), four(2_000));
    expect(out.map((l) => l.at[0] - 6_000)).toEqual([-1_700, 1_700, -1_700, 1_700]);
  });

  it("stays before a couple's table", () => {
    const laid = four(2_500);
    expect(centred(hallOf({ ...room, focus: [3_000, 1_000] }, ASK), laid)).toBe(laid);
  });
});
