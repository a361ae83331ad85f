import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import { STAGES, stopwatch } from "../../../lib/engine/stopwatch";
import { venueSchema } from "../../../lib/venue";

/** A clock that goes on by one at each look. */
const ticking = () => { let t = 0; return { now: () => t++, today: () => "2027-06-12" }; };

describe("the times of the stages", () => {
  it("count a stage without those that run inside it", () => {
    let t = 0;
    const watch = stopwatch({ now: () => t });
    watch.time("check", () => { t += 3; watch.time("rows", () => { t += 5; watch.time("ways", () => { t += 7; }); }); t += 2; });
    watch.time("rows", () => { t += 1; });
    expect(watch.read()).toEqual({ totalMs: 3 + 5 + 7 + 2 + 1, stages: { check: 3 + 2, rows: 5 + 1, ways: 7 } });
  });

  it("are told for every stage that a day goes through, and add up to no more than the whole", () => {
    const brief = briefSchema.parse({
      format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 40 },
      meal: { service: "buffet" }, music: { by: "dj", dancing: 0.35 }, displays: ["welcome"],
    });
    const { timing } = arrange(venueSchema.parse(tidewheel), brief, { clock: ticking(), layouts: 1 });
    expect([...Object.keys(timing.stages)].sort()).toEqual([...STAGES].sort());
    expect(Object.values(timing.stages).reduce((n, ms) => n + ms, 0)).toBeLessThanOrEqual(timing.totalMs);
  });
});
