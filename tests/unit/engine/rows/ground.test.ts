import { describe, expect, it } from "vitest";
import { groundOf, liesIn, surelyIn } from "../../../../lib/engine/rows/ground";
import { area, intersect, rectangle, regionArea, regionContains, union, type Polygon } from "../../../../lib/geometry";
import { diceOf } from "../../../soak/dice";

const SEEDS = Array.from({ length: 12 }, (_, k) => 41_000 + k);

/** An L of a room with columns, a hearth aslant, and strips to keep clear. */
function spaceOf(seed: number): Parameters<typeof groundOf>[0] {
  const d = diceOf(seed), wide = d.whole(6_000, 15_000), deep = d.whole(6_000, 15_000), cut = d.whole(1_000, 4_000);
  const outline: Polygon = [[0, 0], [wide, 0], [wide, deep - cut], [wide - cut, deep - cut], [wide - cut, deep], [0, deep]];
  const block = (): Polygon => rectangle([d.whole(0, wide), d.whole(0, deep)], d.whole(200, 1_200), d.whole(200, 1_200), d.pick([0, 0, 30, 67]));
  return { room: "hall", floor: union([outline]), solids: [block(), block(), block()], zones: [block(), block()], axis: 0, gates: [], features: [], windows: [] };
}

describe("whether a rectangle lies on the floor", () => {
  it.each(SEEDS)("is what the area that it shares with the floor says (Clipper), seed %i", (seed) => {
    const space = spaceOf(seed), ground = groundOf(space), d = diceOf(seed * 7 + 1), solid = union(space.solids);
    let inside = 0, outside = 0;
    for (let k = 0; k < 400; k++) {
      const body = rectangle([d.whole(-500, 15_500), d.whole(-500, 15_500)], d.whole(100, 2_500), d.whole(100, 2_500), d.whole(0, 359));
      const offFloor = area(body) - regionArea(intersect(space.floor, [body])), onSolids = regionArea(intersect(solid, [body]));
      // What shares less than so many square millimetres may fall either way.
      if (offFloor + onSolids > 0 && offFloor + onSolids < 2_000) continue;
      const lies = liesIn(ground.bare, body);
      expect(lies).toBe(offFloor + onSolids < 1);
      if (lies) inside++; else outside++;
    }
    expect(Math.min(inside, outside)).toBeGreaterThan(10);
  });

  it.each(SEEDS)("is never said to be sure where a point of the circle about it says otherwise, seed %i", (seed) => {
    const space = spaceOf(seed), ground = groundOf(space), d = diceOf(seed * 13 + 5);
    const on = ([x, y]: readonly [number, number]): boolean => regionContains(space.floor, [x, y]) && !regionContains(union(space.solids), [x, y]);
    const said = { yes: 0, no: 0 };
    for (let k = 0; k < 400; k++) {
      const [x, y, reach] = [d.whole(-500, 15_500), d.whole(-500, 15_500), d.whole(50, 1_500)];
      const sure = surelyIn(ground.bare, x, y, reach);
      if (sure === true) {
        said.yes++;
        for (let a = 0; a < 360; a += 15) expect(on([x + reach * Math.cos((a * Math.PI) / 180), y + reach * Math.sin((a * Math.PI) / 180)])).toBe(true);
      }
      if (sure === false) { said.no++; expect(on([x, y])).toBe(false); }
    }
    expect(Math.min(said.yes, said.no)).toBeGreaterThan(10);
  });
});
