import { describe, expect, it } from "vitest";
import { briefSchema, type Brief, type Wish } from "../../../../lib/brief";
import { tidewheel } from "../../../../lib/demo";
import { arrange } from "../../../../lib/engine";
import { check } from "../../../../lib/rules";
import { venueSchema } from "../../../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const day = (wishes: readonly Wish[]): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 36 }, ceremony: { here: false },
  meal: { service: "sharing", top: "none" }, displays: ["cake", "welcome"], wishes,
});

describe("wishes", () => {
  it("puts the cake near a door where the couple wish it so, and no must comes of it", () => {
    const asked = day([{ put: "cake", near: "door" }]);
    const layout = arrange(mill, asked, { layouts: 1 }).layouts[0];
    const findings = layout ? check(mill, layout, asked) : [];
    expect(layout).toBeDefined();
    expect(findings.filter((f) => f.level === "must" || f.code.startsWith("wish-"))).toEqual([]);
  });

  it("tells which wishes conflict and lets the last in the couple's order give way", () => {
    const asked = day([{ put: "cake", near: "welcome" }, { put: "cake", "away-from": "welcome" }]);
    const layout = arrange(mill, asked, { layouts: 1 }).layouts[0];
    const findings = layout ? check(mill, layout, asked).filter((f) => f.code.startsWith("wish-")).map((f) => f.code) : [];
    expect(findings).toEqual(["wish-away"]);
    expect(layout?.givesUp?.find((t) => t.includes("go together"))).toContain("cake near the welcome; cake away from the welcome");
  });
});
