import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { filesUnder } from "./tree";

/** Every place that writes a date, with what it is told. */
const places = (): readonly { readonly path: string; readonly call: string }[] => ["app", "components", "lib"].flatMap((folder) => filesUnder(folder)).filter((path) => /\.tsx?$/.test(path))
  .flatMap((path) => [...readFileSync(path, "utf8").matchAll(/(Intl\.DateTimeFormat\(|\.toLocale(?:Date|Time)?String\()([^;]*)/g)].map((m) => ({ path, call: m[0] })));

describe("dates", () => {
  it("are written with a zone and a locale that are named, and never with the machine's", () => {
    const all = places();
    expect(all.length).toBeGreaterThan(4);
    // The one that only tries a zone out names it; options may be made a line before.
    expect(all.filter(({ call }) => !/timeZone/.test(call)).map(({ path, call }) => `${path}: ${call.slice(0, 80)}`)).toEqual([]);
    expect(all.filter(({ call }) => /Format\(\s*(undefined|\))|String\(\s*\)/.test(call))).toEqual([]);
  });
});
