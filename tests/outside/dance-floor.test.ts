import { describe, expect, it } from "vitest";
import { bandSize, BAR_AROUND, BUFFET_AROUND, DANCER_AREA, DJ } from "../../lib/engine/stages/catalogue";
import { danceFloor } from "../../lib/engine/stages/demand";

const FT = 304.8, FT2 = 0.09290304;
const panel = { width: Math.round(3 * FT), depth: Math.round(3 * FT) };
const laid = (guests: number, share: number) => {
  const floor = danceFloor(panel, 400, guests * share * DANCER_AREA);
  return floor ? { ...floor, area: (floor.columns * panel.width * floor.rows * panel.depth) / 1e6 } : null;
};

describe("dance floors against the rental trade's worked figures (five houses, second-hand)", () => {
  it("counts 4.5 sq ft a dancer", () => expect(DANCER_AREA).toBeCloseTo(4.5 * FT2, 6));

  // The houses' own examples: 80 guests -> 180 sq ft, 150 -> 225, 200 -> 360.
  for (const [guests, share, squareFeet] of [[80, 0.5, 180], [150, 1 / 3, 225], [200, 0.4, 360]] as const) {
    it(`lays at least ${squareFeet} sq ft for ${guests} guests of whom ${Math.round(share * 100)} % dance`, () => {
      expect(guests * share * 4.5).toBeCloseTo(squareFeet, 6);
      const floor = laid(guests, share);
      // Panels are whole millimetres: 914 for 914.4, so a sq ft a hundred is let go.
      expect(floor?.area).toBeGreaterThanOrEqual(squareFeet * FT2 * 0.999);
      expect(floor?.area).toBeLessThanOrEqual(squareFeet * FT2 * 1.2);
    });
  }

  it("refuses the trade's own slip: 16 x 20 ft is 320 sq ft and not the 360 that 200 guests need", () => {
    expect(16 * 20).toBeLessThan(200 * 0.4 * 4.5);
    expect(laid(200, 0.4)?.area).toBeGreaterThan(16 * 20 * FT2);
  });

  it("stays within 2 to 4 sq ft a guest between 45 and 85 % dancing, as the shortcut of the trade has it", () => {
    expect(0.45 * 4.5).toBeGreaterThan(2);
    expect(0.85 * 4.5).toBeLessThan(4);
  });

  it("finds no floor where the venue's panels are too few", () => {
    expect(danceFloor(panel, 24, 200 * 0.4 * DANCER_AREA)).toBeNull();
    expect((24 * panel.width * panel.depth) / 1e6).toBeLessThan(200 * 0.4 * DANCER_AREA);
  });
});

describe("music, bar and buffet against the charts of rental houses and bands (second-hand)", () => {
  it("gives a DJ 100 sq ft with the floor around, table, person and loudspeakers apart from it", () => {
    const surround = (DJ.width + 2 * DJ.around.side) * (DJ.depth + DJ.around.front) / 1e6;
    expect(surround).toBeGreaterThanOrEqual(100 * FT2);
    expect(surround).toBeLessThanOrEqual(150 * FT2);
    expect(DJ.width).toBeGreaterThanOrEqual(Math.round(6 * FT));
  });

  it("gives duos 3 x 2 m, four or five players 4 x 3 m, six 16 x 12 ft and eight 24 x 16 ft", () => {
    expect([bandSize(2).width, bandSize(2).depth]).toEqual([3000, 2000]);
    expect([bandSize(5).width, bandSize(5).depth]).toEqual([4000, 3000]);
    expect([bandSize(6).width, bandSize(6).depth]).toEqual([Math.round(16 * FT), Math.round(12 * FT)]);
    expect([bandSize(8).width, bandSize(8).depth]).toEqual([Math.round(24 * FT), Math.round(16 * FT)]);
  });

  it("keeps a queue lane of 4 ft before bar and buffet (UFC 4-722-01, 2003, since cancelled)", () => {
    expect(BAR_AROUND.front).toBeGreaterThanOrEqual(4 * FT);
    expect(BUFFET_AROUND.front).toBeGreaterThanOrEqual(4 * FT);
  });
});
