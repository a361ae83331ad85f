import { describe, expect, it } from "vitest";
import { seeded } from "../../../../lib/base";
import { finish } from "../../../../lib/engine/turnover";

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
