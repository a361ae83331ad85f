import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { FINDING_CODES, findingText, REFUSAL_CODES } from "../../../lib/words/findings";
import { es } from "../../../lib/words/findings/es";
import { refusals } from "../../../lib/words/findings/refusals-es";
import { lengthText } from "../../../lib/words/lengths";
import { layoutOf, roundTable, venueOf } from "./kit";

describe("words of findings", () => {
  it("hold a sentence for every code that a rule gives", () => {
    const dir = new URL("../../../lib/rules/", import.meta.url);
    const codes = readdirSync(dir).filter((f) => f.endsWith(".ts")).flatMap((f) =>
      [...readFileSync(new URL(f, dir), "utf8").matchAll(/code: (?:[^,\n"]*\? )?"([a-z-]+)"(?: : "([a-z-]+)")?/g)].flatMap((m) => [m[1], m[2]].filter((c) => c !== undefined)));
    expect(codes.length).toBeGreaterThan(40);
    expect(codes.filter((c) => !FINDING_CODES.includes(c))).toEqual([]);
  });

  it("are in Spanish for every code too, with the names and lengths of the English", () => {
    expect(Object.keys(es).sort()).toEqual([...FINDING_CODES].sort());
    expect(Object.keys(refusals).sort()).toEqual([...REFUSAL_CODES].sort());
    const layout = layoutOf("meal", [{ ...roundTable("t1", [10000, 6000]), label: "Mesa 1" }, { ...roundTable("t2", [13000, 6000]), label: "Mesa 2" }]);
    const finding = { code: "table-gap", level: "must" as const, source: "x", scene: "meal" as const, items: ["t1", "t2"], data: { a: "t1", b: "t2", gap: 1219, limit: 1372 } };
    expect(findingText(finding, { venue: venueOf({ locale: "es-MX" }), layout })).toBe("Mesa 1 y Mesa 2 están a 1.219 m donde un sitio da a la otra; 1.372 m es lo mínimo.");
    // Spain writes a comma where Mexico writes a point (CLDR, as Intl gives it).
    expect(findingText(finding, { venue: venueOf({ locale: "es-ES" }), layout })).toContain("1,219 m");
  });

  it("name pieces by their label and lengths in the venue's measure", () => {
    const layout = layoutOf("meal", [{ ...roundTable("t1", [10000, 6000]), label: "Table 1" }, { ...roundTable("t2", [13000, 6000]), label: "Table 2" }]);
    const finding = { code: "table-gap", level: "must" as const, source: "x", scene: "meal" as const, items: ["t1", "t2"], data: { a: "t1", b: "t2", gap: 1219, limit: 1372 } };
    expect(findingText(finding, { venue: venueOf(), layout })).toBe("Table 1 and Table 2 stand 1.219 m apart where a place faces the other; 1.372 m is the least.");
    expect(findingText(finding, { venue: venueOf({ lengths: "imperial" }), layout })).toBe("Table 1 and Table 2 stand 4 ft apart where a place faces the other; 4 ft 6 in is the least.");
  });

  it("are spelt as America spells them for who reads American English", () => {
    const finding = { code: "not-placed", level: "should" as const, source: "x", items: [], data: { what: "appetisers" } };
    const said = (locale: string): string => findingText(finding, { venue: venueOf({ locale }), layout: layoutOf("meal", []) });
    expect(said("en-GB")).toContain("a table for appetisers");
    expect(said("en-US")).toBe(said("en-GB").replace("appetisers", "appetizers"));
  });

  it("say lengths in metres, millimetres under one, or feet and inches", () => {
    expect([914, 1000, 1524, 1525].map((n) => lengthText(n, "metric"))).toEqual(["914 mm", "1.00 m", "1.524 m", "1.525 m"]);
    expect([914, 1524, 13, 3].map((n) => lengthText(n, "imperial"))).toEqual(["3 ft", "5 ft", "½ in", "under ½ in"]);
  });
});
