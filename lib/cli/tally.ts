import { z } from "zod";

export type Counts = { readonly passed: number; readonly failed: number; readonly skipped: number };

const vitest = z.object({ numPassedTests: z.number(), numFailedTests: z.number(), numPendingTests: z.number(), numTodoTests: z.number().default(0) });
const playwright = z.object({ stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number(), skipped: z.number() }) });

/**
 * What a runner of tests reports, counted. A test that was skipped is counted apart and as failed besides: what was not
 * looked at has not passed. A runner that ends badly without naming a test that failed counts as one failure.
 */
export function counts(report: unknown, endedWell: boolean): Counts {
  const { passed, failed, skipped } = told(report);
  const bad = failed + skipped;
  return { passed, failed: endedWell && passed > 0 ? bad : Math.max(1, bad), skipped };
}

function told(report: unknown): Counts {
  const units = vitest.safeParse(report);
  if (units.success) return { passed: units.data.numPassedTests, failed: units.data.numFailedTests, skipped: units.data.numPendingTests + units.data.numTodoTests };
  const pages = playwright.safeParse(report);
  if (!pages.success) return { passed: 0, failed: 0, skipped: 0 };
  // A test of the browser that passes at its second try has passed; the runner names it as flaky, for us to mend.
  const { expected, unexpected, flaky, skipped } = pages.data.stats;
  return { passed: expected + flaky, failed: unexpected, skipped };
}

export const sum = (all: readonly Counts[]): Counts => all.reduce(
  (total, one) => ({ passed: total.passed + one.passed, failed: total.failed + one.failed, skipped: total.skipped + one.skipped }),
  { passed: 0, failed: 0, skipped: 0 },
);
