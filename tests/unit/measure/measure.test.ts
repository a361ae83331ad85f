import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatArea, formatDay, formatLength, formatMoney, formatSize, minorDigits, parseLength } from "../../../lib/measure";

const metric = { system: "metric", locale: "en-GB" } as const;
const imperial = { system: "imperial", locale: "en-US" } as const;

describe("lengths", () => {
  it("writes metres with two decimals, and the unit when asked", () => {
    expect(formatLength(16_200, metric)).toBe("16.20");
    expect(formatLength(1_680, { ...metric, unit: true })).toBe("1.68\u00a0m");
    expect(formatLength(16_200, { system: "metric", locale: "de-DE" })).toBe("16,20");
  });
  it("carries twelve inches into a foot", () => {
    expect(formatLength(53 * 304.8 + 2 * 25.4, imperial)).toBe("53′\u00a02″");
    expect(formatLength(8 * 304.8 + 23.9 * 25.4, imperial)).toBe("10′");
    expect(formatLength(11.6 * 25.4, imperial)).toBe("1′");
    for (let mm = 0; mm < 20_000; mm += 7) expect(formatLength(mm, imperial)).not.toMatch(/\u00a0(1[2-9]|[2-9]\d)″/);
  });
  it("writes sizes and areas", () => {
    expect(formatSize(16_200, 9_400, metric)).toBe("16.20\u00a0×\u00a09.40");
    expect(formatArea(16_200 * 9_400, metric)).toBe("152.3\u00a0m²");
    expect(formatArea(304.8 * 304.8 * 64 * 40, imperial)).toBe("2,560\u00a0sq\u00a0ft");
  });
  it("reads back what it writes, within its rounding", () => {
    for (const mm of [40, 305, 1_680, 16_200, 19_507]) {
      for (const style of [metric, imperial]) {
        const read = parseLength(formatLength(mm, style), style);
        expect(read.ok && Math.abs(read.value - mm)).toBeLessThanOrEqual(style.system === "metric" ? 5 : 12.7);
      }
    }
  });
  it("gives back whole inches as they were typed, however often the units are switched, and moves nothing by being shown", () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 400 * 12 }), (inches) => {
      const typed = `${Math.floor(inches / 12)}′ ${inches % 12}″`, read = parseLength(typed, imperial);
      if (!read.ok) throw new Error(`${typed} is not read`);
      // What is kept is whole millimetres, nearest to the inches that were typed (1 in = 25.4 mm, exactly).
      expect(read.value).toBe(Math.round(inches * 25.4));
      for (let i = 0; i < 20; i += 1) {
        const shown = formatLength(read.value, i % 2 === 0 ? imperial : metric), again = parseLength(shown, i % 2 === 0 ? imperial : metric);
        if (i % 2 === 0) expect(again).toEqual(read);
        expect(shown).not.toMatch(/1[2-9]″/);
      }
    }));
    expect(formatLength(12.5 * 304.8, imperial)).toBe("12′\u00a06″");
  });
  it("reads either system's units and refuses the rest", () => {
    expect(parseLength("168 cm", imperial)).toEqual({ ok: true, value: 1_680 });
    expect(parseLength("5' 6\"", metric)).toEqual({ ok: true, value: 1_676 });
    expect(parseLength("5 ft 6 in", metric)).toEqual({ ok: true, value: 1_676 });
    expect(parseLength("1,5", metric)).toEqual({ ok: true, value: 1_500 });
    expect(parseLength("12", imperial)).toEqual({ ok: true, value: 3_658 });
    expect(parseLength("wide", metric).ok).toBe(false);
  });
});

describe("money", () => {
  it("knows currencies with no, two and three digits", () => {
    expect([minorDigits("JPY"), minorDigits("GBP"), minorDigits("BHD")]).toEqual([0, 2, 3]);
    expect(formatMoney(31_800, "GBP", "en-GB")).toBe("£318.00");
    expect(formatMoney(1_234, "JPY", "en-US")).toBe("¥1,234");
    expect(formatMoney(1_234, "BHD", "en-US")).toMatch(/1\.234$/);
  });
  it("shows every digit that carries something", () => {
    expect(formatMoney(150, "LAK", "en-US")).toMatch(/1\.50$/);
  });
});

describe("days", () => {
  it("are the same on every machine", () => {
    expect(formatDay("2027-06-12", "en-GB")).toBe("Saturday 12 June 2027");
    expect(formatDay("2027-06-12", "en-US")).toBe("Saturday, June 12, 2027");
  });
});
