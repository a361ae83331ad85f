import { describe, expect, it } from "vitest";
import { nearWalls, roomNow, sayWalls, spotByWalls, stringsOf } from "../../../lib/hand";
import type { Item } from "../../../lib/layout";
import { grain, mill } from "./mill";

/** The drape behind the arch lends the Grain Floor the Wheel Room's floor from x = 16,600 to 18,190 and from y = 1,600 to 7,800, beyond the wall at 16,200. */
const DRAPES = ["arch-drape"];
const arch: Item = { id: "arch", kind: "other", label: "Cabinet", room: "grain-floor", from: { brought: true }, shape: { width: 600, depth: 600 }, at: [17_400, 4_000], angle: 0, seats: [] };
const wheel = (() => { const r = mill.rooms.find((one) => one.id === "wheel-room"); if (!r) throw new Error("no Wheel Room"); return r; })();
const mm = (gap: number): number => Math.round(gap);

describe("a piece on floor that a drape lends its room", () => {
  it("is measured from what bounds that floor: the drape, and the floor's own ends", () => {
    const walls = nearWalls(roomNow(mill, DRAPES, grain, arch.at), arch).map((w) => ({ ...w, mm: mm(w.mm) }));
    expect(walls).toEqual([{ wall: "right", mm: 18_190 - (17_400 + 300) }, { wall: "upper", mm: 4_000 - 300 - 1_600 }]);
    expect(sayWalls(mill, { drapes: DRAPES }, arch)).toBe("0.49\u00a0m from the right wall, 2.10\u00a0m from the upper wall");
  });

  it("has its strings end where that floor ends", () => {
    const ends = stringsOf(roomNow(mill, DRAPES, grain, arch.at), arch, []).map((s) => s.end);
    expect(ends).toEqual([[18_190, 4_000], [17_400, 1_600]]);
  });

  it("goes to a distance from the drape that is typed", () => {
    const spot = spotByWalls(roomNow(mill, DRAPES, grain, arch.at), arch, [{ wall: "right", mm: 200 }, { wall: "upper", mm: 1_200 }]);
    expect(spot).toEqual({ ok: true, value: [18_190 - 200 - 300, 1_600 + 1_200 + 300] });
  });

  it("is measured in the room as it is built where the drape is not drawn, or hangs elsewhere", () => {
    expect(roomNow(mill, [], grain, arch.at)).toBe(grain);
    const other = mill.rooms.find((r) => r.id !== "grain-floor" && r.id !== "wheel-room");
    if (other) expect(roomNow(mill, DRAPES, other, [0, 0])).toBe(other);
  });

  it("leaves the room that lends it the drape for a wall", () => {
    const [x, y] = [19_500, 4_000], left = nearWalls(roomNow(mill, DRAPES, wheel, [x, y]), { ...arch, at: [x, y] }).find((w) => w.wall === "left");
    expect(left && mm(left.mm)).toBe(x - 300 - 18_190);
  });
});

describe("a piece that stands through a wall", () => {
  it("has strings and words to the walls that it stands clear of alone", () => {
    const through = { ...arch, at: [16_300, 4_000] as const };
    expect(stringsOf(grain, through, []).map((s) => s.mm)).toEqual([4_000 - 300]);
    expect(sayWalls(mill, { drapes: [] }, through)).toBe("3.70\u00a0m from the upper wall");
  });
});
