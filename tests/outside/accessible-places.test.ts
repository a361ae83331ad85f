import { describe, expect, it } from "vitest";
import { contextOf, SCENE_RULES } from "../../lib/rules";
import { box, briefOf, hall, itemOf, layoutOf, roundTable, venueOf } from "../unit/rules/kit";

describe("2010 ADA Standards 226.1: one place in twenty at the tables lies on an accessible route", () => {
  // Tables of ten behind screens that leave no lane of 36 in to any of them.
  const venue = venueOf({ rooms: [hall({ outline: box(0, 0, 40_000, 12_000), posted: { tables: 200 } })] });
  const walled = (places: number) => layoutOf("meal", [
    ...Array.from({ length: Math.ceil(places / 10) }, (_, i) => roundTable(`t${i}`, [5000 + i * 5000, 6000], Math.min(10, places - 10 * i))),
    ...([["n", [20_000, 3500], [39_000, 100]], ["s", [20_000, 8500], [39_000, 100]], ["w", [500, 6000], [100, 5100]], ["e", [39_500, 6000], [100, 5100]]] as const).map(([id, at, [width, depth]]) =>
      itemOf({ id, kind: "screen", from: { brought: true }, shape: { width, depth }, at })),
  ]);
  it.each([[20, 1], [21, 2], [40, 2], [41, 3]])("%i places ask for %i", (places, needed) => {
    expect(Math.ceil(places / 20)).toBe(needed);
    const c = contextOf(venue, walled(places), briefOf({ guests: { adults: places } }));
    expect(c.scenes.flatMap((v) => SCENE_RULES.accessiblePlaces?.(v, c) ?? []).map((f) => [f.code, f.measured, f.limit])).toEqual([["accessible-places", 0, needed]]);
  });
});
