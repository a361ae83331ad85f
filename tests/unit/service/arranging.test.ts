import { expect, it } from "vitest";
import type { ArrangeResult } from "../../../lib/layout";
import { join } from "../../../lib/service/arranging";

const RESULT: ArrangeResult = { format: "marquetry.result/1", status: "not-found", layouts: [], reasons: [], instead: [], engine: { version: "0", seed: 1 }, timing: { totalMs: 0, stages: {} } };

it("an asker who saw no answer before another's search ended is given that answer, and the engine is not asked again", async () => {
  let kept: ArrangeResult | undefined;
  let searches = 0;
  const ask = (asker: string): Promise<ArrangeResult> => join({
    key: "the same question", asker,
    look: () => Promise.resolve(kept),
    start: () => { searches += 1; return Promise.resolve(RESULT); },
    keep: (result) => { kept = result; return Promise.resolve(); },
  });
  // Both looked, found nothing and came here, the second after the first's search had ended.
  expect(await ask("A")).toBe(RESULT);
  expect(await ask("B")).toBe(RESULT);
  expect(searches).toBe(1);
});
