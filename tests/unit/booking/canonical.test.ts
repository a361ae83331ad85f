import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson, sealedText } from "../../../lib/booking";

const shuffled = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(shuffled);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).reverse().map(([key, one]) => [key, shuffled(one)]));
};

describe("canonical JSON", () => {
  it("writes fields by their UTF-16 units and numbers as ECMAScript does (RFC 8785, 3.2.2 and 3.2.3)", () => {
    // The property names of the RFC's own example, section 3.2.3.
    const names = { "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis" };
    expect(Object.values(JSON.parse(canonicalJson(Object.entries(names))) as [string, string][])).toHaveLength(7);
    expect([...canonicalJson(names).matchAll(/:"([^"]+)"/g)].map((one) => one[1])).toEqual([
      "Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis", "Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh",
    ]);
    expect(canonicalJson([333333333.33333329, 1e30, 4.5, 2e-3, 0.000000000000000000000000001])).toBe("[333333333.3333333,1e+30,4.5,0.002,1e-27]");
  });

  it("is the same text whatever order the fields came in, and reads back as the same value", () => {
    fc.assert(fc.property(fc.jsonValue(), (value) => {
      expect(canonicalJson(shuffled(value))).toBe(canonicalJson(value));
      expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }));
  });

  it("leaves out what is undefined and throws on what JSON cannot hold", () => {
    expect(canonicalJson({ a: 1, b: undefined })).toBe('{"a":1}');
    expect(() => canonicalJson({ a: Number.NaN })).toThrow("not a number of JSON");
    expect(() => canonicalJson(() => 1)).toThrow("not a value of JSON");
  });
});

describe("what a fingerprint covers", () => {
  const sealed = {
    reference: "QK7M-34", number: 1, venue: { id: "mill", version: 1, hash: "aa" }, brief: { guests: 1 }, layout: { id: "a" }, quote: { total: 1 }, findings: [], whole: "cc",
  };

  it("changes with each of its parts", () => {
    const texts = [
      sealed, { ...sealed, reference: "QK7M-36" }, { ...sealed, number: 2 }, { ...sealed, venue: { ...sealed.venue, hash: "ab" } },
      { ...sealed, venue: { ...sealed.venue, version: 2 } }, { ...sealed, brief: { guests: 2 } }, { ...sealed, layout: { id: "b" } },
      { ...sealed, quote: { total: 2 } }, { ...sealed, findings: [1] }, { ...sealed, whole: "cd" },
    ].map(sealedText);
    expect(new Set(texts).size).toBe(texts.length);
  });
});
