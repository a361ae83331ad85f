import { describe, expect, it } from "vitest";
import { formatMoney, minorDigits } from "../../lib/measure";

describe("ISO 4217 minor units (from memory, unconfirmed; checked against the ledger digits below)", () => {
  it.each([["GBP", 2], ["USD", 2], ["EUR", 2], ["JPY", 0], ["KRW", 0], ["BHD", 3], ["KWD", 3], ["HUF", 2]] as const)("%s has %i", (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits);
  });
});

describe("CLDR display digits, as Intl gives them: shown digits are not the ledger's", () => {
  const plain = (text: string) => text.replaceAll(/\s/g, " ");
  it("yen have none", () => expect(plain(formatMoney(1500, "JPY", "en-GB"))).toContain("1,500"));
  it("dinars of Bahrain have three", () => expect(plain(formatMoney(1234, "BHD", "en-GB"))).toContain("1.234"));
  it("forints show a fraction only where one would be lost", () => {
    const digits = (text: string) => text.replaceAll(/[^\d]/g, "");
    expect(digits(formatMoney(150_000, "HUF", "hu-HU"))).toMatch(/^1500(00)?$/);
    expect(digits(formatMoney(150_050, "HUF", "hu-HU"))).toBe("150050");
  });
});
