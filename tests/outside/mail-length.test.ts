import { describe, expect, it } from "vitest";
import { mailAddress } from "../../lib/base/schema";

const takes = (address: string) => mailAddress.safeParse(address).success;
/** An address of a given whole length: 64 of local part, the at sign, labels of at most 63. */
const address = (length: number) => {
  const domain = length - 64 - 1;
  const last = domain - 2 * (63 + 1);
  return `${"a".repeat(64)}@${"b".repeat(63)}.${"c".repeat(63)}.${"d".repeat(last)}`;
};

describe("RFC 5321 4.5.3.1 (a path of 256 octets with its brackets, so an address of 254)", () => {
  it("254 octets are taken", () => {
    expect(address(254)).toHaveLength(254);
    expect(takes(address(254))).toBe(true);
  });
  it("255 are refused", () => expect(takes(address(255))).toBe(false));
  it("a local part of 64 octets is taken, of 65 refused", () => {
    expect(takes(`${"a".repeat(64)}@mill.example`)).toBe(true);
    expect(takes(`${"a".repeat(65)}@mill.example`)).toBe(false);
  });
  it("octets are counted, not letters: 63 letters and an ß are 65, and refused", () => {
    const local = `${"a".repeat(63)}ß`;
    expect([local.length, new TextEncoder().encode(local).length]).toEqual([64, 63 + 2]);
    expect(takes(`${local}@mill.example`)).toBe(false);
  });
  it("every length up to 254 is taken and every one after it refused", () => {
    for (let n = 250; n <= 260; n++) expect(takes(address(n)), String(n)).toBe(n <= 254);
  });
  it("a plus sign and capitals are taken as they are", () => expect(mailAddress.parse("Ines+Mill@calloway.example")).toBe("Ines+Mill@calloway.example"));
});

describe("RFC 1035 2.3.4: a label of at most 63 octets", () => {
  it("63 are taken, 64 refused", () => {
    expect(takes(`a@${"b".repeat(63)}.example`)).toBe(true);
    expect(takes(`a@${"b".repeat(64)}.example`)).toBe(false);
  });
});
