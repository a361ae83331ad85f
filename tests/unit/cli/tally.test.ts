import { describe, expect, it } from "vitest";
import { counts, sum } from "../../../lib/cli/tally";

const units = (passed: number, failed: number, pending = 0) => ({ numPassedTests: passed, numFailedTests: failed, numPendingTests: pending, numTodoTests: 0 });

describe("counting what the runners report", () => {
  it("reads both runners", () => {
    expect(counts(units(12, 0), true)).toEqual({ passed: 12, failed: 0, skipped: 0 });
    expect(counts({ stats: { expected: 5, unexpected: 1, flaky: 1, skipped: 0 } }, false)).toEqual({ passed: 5 + 1, failed: 1, skipped: 0 });
  });

  it("counts a skipped test as failed: what was not looked at has not passed", () => {
    expect(counts(units(12, 0, 2), true)).toEqual({ passed: 12, failed: 2, skipped: 2 });
  });

  it("counts a runner that broke, said nothing or ran nothing as one failure", () => {
    expect(counts(undefined, false).failed).toBe(1);
    expect(counts(undefined, true).failed).toBe(1);
    expect(counts(units(3, 0), false).failed).toBe(1);
    expect(counts(units(0, 0), true).failed).toBe(1);
  });

  it("adds up", () => {
    expect(sum([{ passed: 1, failed: 0, skipped: 0 }, { passed: 2, failed: 3, skipped: 1 }])).toEqual({ passed: 1 + 2, failed: 3, skipped: 1 });
  });
});
