import { describe, expect, it } from "vitest";
import { formatMoney, minorDigits } from "../../lib/measure";

/** Where CLDR shows fewer digits than ISO 4217 keeps, as Node's Intl holds it; everywhere else the two agree. */
const SHOWN_WITHOUT = [
  "AFN", "ALL", "COP", "HUF", "IDR", "IQD", "IRR", "KPW", "LAK", "LBP", "MGA", "MMK", "PKR", "RSD", "SLL", "SOS", "SYP", "TZS", "UZS", "YER", "ZMK",
];
const shownDigits = (currency: string): number => new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? -1;
const plain = (text: string): string => text.replaceAll(/\s/g, " ");
const digits = (text: string): string => text.replaceAll(/[^\d]/g, "");

describe("ISO 4217 minor units (second-hand: OPC UA Part 3 8.61 and others; the rest from memory, unconfirmed)", () => {
  it.each([
    ["GBP", 2], ["USD", 2], ["EUR", 2], ["AUD", 2], ["HUF", 2], ["IDR", 2], ["COP", 2], ["JPY", 0], ["KRW", 0], ["VND", 0], ["ISK", 0],
    ["BHD", 3], ["KWD", 3], ["JOD", 3], ["TND", 3], ["CLF", 4],
  ] as const)("%s has %i", (currency, expected) => expect(minorDigits(currency)).toBe(expected));

  it("are those of every currency that Intl knows, but where CLDR shows fewer digits than the ledger keeps", () => {
    const others = Intl.supportedValuesOf("currency").filter((c) => shownDigits(c) !== minorDigits(c));
    for (const c of others) expect(SHOWN_WITHOUT, c).toContain(c);
    for (const c of others) expect(shownDigits(c), c).toBeLessThan(minorDigits(c));
  });
});

describe("CLDR display digits, as Intl gives them: shown digits are not the ledger's", () => {
  it("yen have none: ¥1,500 is 1500 minor units", () => expect(plain(formatMoney(1500, "JPY", "ja-JP"))).toMatch(/1,500$/));
  it("dinars of Bahrain have three: 1234 minor units are 1.234", () => expect(plain(formatMoney(1234, "BHD", "en-GB"))).toContain("1.234"));
  it("forints are shown without a fraction where there is none", () => {
    expect(digits(formatMoney(1500 * 100, "HUF", "hu-HU"))).toMatch(/^1500(00)?$/);
  });
  it("and with it where one would be lost", () => expect(digits(formatMoney(1500 * 100 + 50, "HUF", "hu-HU"))).toBe("150050"));
  it("no amount in any currency is shown as another than it is", () => {
    for (const currency of Intl.supportedValuesOf("currency")) for (const minor of [0, 1, 5, 99, 100, 12_345, 1_000_000]) {
      const shown = (/\d[\d,]*(\.\d+)?/.exec(formatMoney(minor, currency, "en-GB"))?.[0] ?? "").replaceAll(",", "");
      expect(Math.round(Number(shown) * 10 ** minorDigits(currency)), `${currency} ${minor}`).toBe(minor);
    }
  });
});
