import { describe, expect, it } from "vitest";
import { seeded } from "../../lib/base";
import { assign, matching } from "../../lib/engine/turnover";
import { walkFrom } from "../../lib/engine/turnover/walk";
import { doorSeconds, WALK } from "../../lib/engine/turnover/rates";
import { siteOf, type VenueFile } from "../../lib/venue";
import { box, venueOf } from "../unit/rules/kit";

/** Every way to give each row a column of its own, tried one by one. */
function cheapest(cost: readonly (readonly number[])[], row = 0, used: ReadonlySet<number> = new Set()): number {
  const line = cost[row];
  if (!line) return 0;
  let best = Infinity;
  line.forEach((c, j) => {
    if (!used.has(j)) best = Math.min(best, c + cheapest(cost, row + 1, new Set([...used, j])));
  });
  return best;
}

describe("the assignment problem, against every choice tried", () => {
  it("costs as little as the best of all matchings, on 300 random cases of up to 6 by 7", () => {
    const random = seeded(11);
    for (let k = 0; k < 300; k++) {
      const n = 1 + Math.floor(random() * 6), m = n + Math.floor(random() * 2);
      const cost = Array.from({ length: n }, () => Array.from({ length: m }, () => Math.floor(random() * 50)));
      const found = assign(cost);
      expect(new Set(found).size).toBe(n);
      expect(found.reduce((s, j, i) => s + (cost[i]?.[j] ?? NaN), 0)).toBe(cheapest(cost));
    }
  });
  it("matches as many as the shorter list has", () => {
    expect(matching([0, 10, 20], [19], (a, b) => Math.abs(a - b))).toEqual([[20, 19]]);
    expect(matching([19], [0, 10, 20], (a, b) => Math.abs(a - b))).toEqual([[19, 20]]);
  });
});

type Door = { readonly id: string; readonly rooms: readonly [string, string]; readonly at: readonly [number, number]; readonly width: number };
/** Six rooms of 6 x 6 m, two rows of three, and a door in some of the walls between them. */
function houseOf(random: () => number): { readonly doors: readonly Door[]; readonly site: ReturnType<typeof siteOf> } {
  const ids = ["a", "b", "c", "d", "e", "f"], corner = (i: number): readonly [number, number] => [(i % 3) * 6000, Math.floor(i / 3) * 6000];
  const walls = [[0, 1], [1, 2], [3, 4], [4, 5], [0, 3], [1, 4], [2, 5]] as const;
  const doors = walls.flatMap(([i, j], k): readonly Door[] => {
    if (random() < 0.2) return [];
    const [x, y] = corner(j), width = 800 + Math.floor(random() * 5) * 200, off = 1000 + Math.floor(random() * 3000);
    return [{ id: `d${k}`, rooms: [ids[i] ?? "", ids[j] ?? ""], at: j === i + 1 ? [x, y + off] : [x + off, y], width }];
  });
  const rooms = ids.map((id, i): VenueFile["rooms"][number] => ({
    id, name: id, outline: box(...corner(i), 6000, 6000), uses: ["lounge"],
    doors: doors.filter((d) => d.rooms.includes(id)).map((d) => ({
      id: d.id, from: [...d.at] as [number, number], to: (d.at[0] % 6000 === 0 ? [d.at[0], d.at[1] + d.width] : [d.at[0] + d.width, d.at[1]]) as [number, number],
      leads: d.rooms[0] === id ? d.rooms[1] : d.rooms[0], exit: false, for: ["guests" as const], swing: "none" as const,
    })),
  }));
  return { doors, site: siteOf(venueOf({ rooms, packages: [{ id: "hire", name: "Hire", coordinator: false, rooms: ids, turnover: true, dueDays: 42 }] })) };
}

describe("the shortest walk through doors, against every way tried", () => {
  it("takes as long as the quickest of all ways, on 200 random houses of six rooms", () => {
    const random = seeded(23);
    for (let k = 0; k < 200; k++) {
      const { doors, site } = houseOf(random);
      const spot = (i: number): readonly [number, number] => [(i % 3) * 6000 + 500 + Math.floor(random() * 5000), Math.floor(i / 3) * 6000 + 500 + Math.floor(random() * 5000)];
      const from = spot(0), to = spot(5), metres = (p: readonly [number, number], q: readonly [number, number]): number => Math.hypot(p[0] - q[0], p[1] - q[1]) / 1000;
      const middle = (d: Door): readonly [number, number] => (d.at[0] % 6000 === 0 ? [d.at[0], d.at[1] + d.width / 2] : [d.at[0] + d.width / 2, d.at[1]]);
      const tried = (room: string, at: readonly [number, number], used: readonly Door[]): number => Math.min(
        room === "f" ? metres(at, to) / WALK : Infinity,
        ...doors.filter((d) => d.rooms.includes(room) && !used.includes(d)).map((d) =>
          metres(at, middle(d)) / WALK + doorSeconds(d.width) + tried(d.rooms[0] === room ? d.rooms[1] : d.rooms[0], middle(d), [...used, d])),
      );
      const best = tried("a", from, []), walk = walkFrom(site, { room: "a", at: from })({ room: "f", at: to });
      if (best === Infinity) expect(walk).toBeNull(); else expect(walk?.seconds).toBeCloseTo(best, 6);
    }
  });
});
