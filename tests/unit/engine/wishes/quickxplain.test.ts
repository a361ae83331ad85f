import { describe, expect, it } from "vitest";
import { seeded } from "../../../../lib/base";
import { quickXplain } from "../../../../lib/engine/wishes";

/** A set holds unless it has all of some clashing set in it. */
const holding = (clashes: readonly (readonly number[])[]) => (set: readonly number[]): boolean => !clashes.some((c) => c.every((x) => set.includes(x)));

describe("which wishes conflict (Junker, AAAI 2004)", () => {
  it("says nothing where all hold together", () => {
    expect(quickXplain([1, 2, 3], holding([[1, 9]]))).toBeNull();
  });

  it("names the two that clash among many", () => {
    expect([...(quickXplain([1, 2, 3, 4, 5, 6, 7], holding([[2, 6]])) ?? [])].sort()).toEqual([2, 6]);
  });

  it("blames the less important where there is a choice: the conflict whose worst member is the most important", () => {
    // 1+2 clash and 3+7 clash: what the couple put first conflicts already.
    expect([...(quickXplain([1, 2, 3, 4, 5, 6, 7], holding([[3, 7], [1, 2]])) ?? [])].sort()).toEqual([1, 2]);
  });

  it("gives a set of which nothing can be left out, in 400 random cases", () => {
    const next = seeded(5);
    for (let k = 0; k < 400; k++) {
      const n = 1 + Math.floor(next() * 9), list = Array.from({ length: n }, (_, i) => i);
      const clashes = Array.from({ length: 1 + Math.floor(next() * 4) }, () => list.filter(() => next() < 0.4)).filter((c) => c.length > 0);
      const holds = holding(clashes), found = quickXplain(list, holds);
      if (found === null) { expect(holds(list)).toBe(true); continue; }
      expect(holds(found)).toBe(false);
      for (const x of found) expect(holds(found.filter((y) => y !== x))).toBe(true);
    }
  });
});
