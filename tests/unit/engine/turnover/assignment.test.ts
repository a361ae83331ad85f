import { describe, expect, it } from "vitest";
import { seeded } from "../../../../lib/base";
import { assign, finish, matching } from "../../../../lib/engine/turnover";

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

describe("assign", () => {
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

describe("finish", () => {
  it("never falls when the crew is smaller or a job longer, on 300 random lists", () => {
    const random = seeded(5);
    for (let k = 0; k < 300; k++) {
      const jobs = Array.from({ length: 1 + Math.floor(random() * 30) }, () => ({ minutes: random() * 9 }));
      for (let crew = 1; crew < 8; crew++) expect(finish(jobs, crew)).toBeGreaterThanOrEqual(finish(jobs, crew + 1) - 1e-9);
      const which = Math.floor(random() * jobs.length);
      const longer = jobs.map((j, i) => (i === which ? { minutes: j.minutes + random() * 4 } : j));
      for (let crew = 1; crew < 8; crew++) expect(finish(longer, crew)).toBeGreaterThanOrEqual(finish(jobs, crew) - 1e-9);
    }
  });
});
