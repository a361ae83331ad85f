import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson, withoutNames } from "../../../lib/booking";

const brief = {
  format: "marquetry.brief/1", couple: ["Ana Silva", "Bo Lind"], guests: { adults: 80 }, notes: "Aunt Ida must not sit by Uncle Per.",
  brought: [{ what: "Arch", width: 1200, depth: 600 }, { what: "Grandfather Lind's arch", width: 900, depth: 500 }],
};
const layout = {
  id: "a", title: "Rounds in rows",
  scenes: [{ items: [
    { id: "t1", label: "Table 1", note: "Ida sits here" }, { id: "arch-1", label: "Grandfather Lind's arch" }, { id: "arch-2", label: "Arch" }, { id: "x", label: "March table" },
  ] }],
};
const findings = [{ code: "out-of-reach", text: "Grandfather Lind's arch stands 0.9 m from the arch." }];
const quote = { lines: [{ charge: "moving", text: "Arch carried in" }], total: 100 };
const whole = { brief, layout, quote, findings };

describe("a revision without its names", () => {
  const left = withoutNames(whole);
  const text = canonicalJson(left);

  it("keeps no name, no note and no word of what is brought", () => {
    for (const word of ["Ana", "Bo Lind", "Ida", "Per", "Grandfather", "\"Arch\""]) expect(text).not.toContain(word);
    expect(text).toContain("Item brought 2 stands 0.9 m from the Item brought 1.");
    expect(text).toContain("March table");
  });

  it("keeps counts, places, prices and ids", () => {
    expect(left.brief).toMatchObject({ guests: { adults: 80 }, brought: [{ width: 1200 }, { width: 900 }] });
    expect(text).toContain('"id":"arch-1"');
    expect(text).toContain('"total":100');
  });

  it("is the same when the names are taken out again, whatever was brought", () => {
    const word = fc.oneof(fc.constantFrom("item", "brought", "Item brought 1", "1", "a+b", "(x)", "a/b-c", "Zoë's [box]", "鏡台"), fc.string({ minLength: 1, maxLength: 12 }));
    fc.assert(fc.property(fc.array(word, { maxLength: 5 }), fc.array(word, { maxLength: 8 }), (things, labels) => {
      const first = withoutNames({ ...whole, brief: { ...brief, brought: things.map((what) => ({ what })) }, layout: { items: labels.map((label) => ({ label: `${label} by ${things.join(" and ")}` })) } });
      expect(withoutNames(first)).toEqual(first);
    }), { seed: 20_271_125, numRuns: 500 });
  });
});
