import { describe, expect, it } from "vitest";
import { arrange } from "../../../lib/engine";
import { check } from "../../../lib/rules";
import { foundOf } from "../../../lib/words/rain";
import { ENGLISH } from "../../../lib/words/pages";
import { day, mill } from "../../bench/weddings";

describe("a day with its wet-weather twin", () => {
  it("carries the findings that the whole of it has, twin and all, as they are sent", () => {
    const asked = day("hosted-weekend", 20), brief = { ...asked, ceremony: { ...asked.ceremony, room: "sluice-terrace" } }, layouts = arrange(mill, brief, { layouts: 3, instead: false }).layouts.filter((l) => l.wet);
    expect(layouts.length).toBeGreaterThan(0);
    for (const l of layouts) expect(l.findings).toEqual(check(mill, l, brief));
  });

  it("tells what is found in the rain alone as found in the rain, and nothing twice", () => {
    const f = { code: "wall-gap", level: "should" as const, text: "Tight.", source: "the venue's own figure", items: [] };
    const layout = { findings: [f], wet: { scenes: [], turnovers: [], findings: [f, { ...f, text: "Tighter." }] } };
    expect(foundOf(layout, ENGLISH).map((one) => one.text)).toEqual(["Tight.", "If it rains: Tighter."]);
  });
});
