import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sums, taxOn } from "../../lib/fees";

const added = (basisPoints: number) => ({ basisPoints, included: false });
const held = (basisPoints: number) => ({ basisPoints, included: true });

describe("Streamlined Sales and Use Tax Agreement, section 324: tax to the third decimal, up where that is greater than four", () => {
  it("$0.125 becomes $0.13", () => {
    // 12.5 % of $1.00
    expect(taxOn(100, added(1250))).toBe(13);
  });
  it("$0.1249 becomes $0.12", () => {
    // 12.49 % of $1.00
    expect(taxOn(100, added(1249))).toBe(12);
  });
  it("item by item and by invoice may differ, and each keeps to its own", () => {
    // 5 % of $0.10 three times: three half cents go up each alone, one and a half go up to two together.
    const lines = [10, 10, 10].map((amount) => ({ amount, taxed: true }));
    const tax = { name: "Sales tax", basisPoints: 500, included: false } as const;
    expect(sums(lines, { ...tax, of: "line" }).tax).toBe(1 + 1 + 1);
    expect(sums(lines, { ...tax, of: "total" }).tax).toBe(Math.floor(1.5 + 0.5));
  });
});

describe("HMRC Notice 700, the VAT fraction of a price that holds the tax (1/6 at 20 %), rounded half up as retailers may not round down", () => {
  it("20 % in £1.20 is 20 p", () => expect(taxOn(120, held(2000))).toBe(120 / 6));
  it("20 % in 3 p is half a penny, and goes up", () => expect(taxOn(3, held(2000))).toBe(1));
  it("20 % in 2 p is a third of a penny, and goes down", () => expect(taxOn(2, held(2000))).toBe(0));
});

describe("half up in whole numbers, whatever the size", () => {
  it("agrees with the definition 2·tax − 2·exact in (−1, 1]", () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 5_000_000_000_000 }), fc.integer({ min: 0, max: 10_000 }), fc.boolean(), (amount, bp, included) => {
      const over = BigInt(included ? 10_000 + bp : 10_000);
      const twice = 2n * (BigInt(taxOn(amount, { basisPoints: bp, included })) * over - BigInt(amount) * BigInt(bp));
      return twice > -over && twice <= over;
    }));
  });
  it("untaxed lines bear none, and the total is the sum of the lines where prices hold the tax", () => {
    const q = sums([{ amount: 1000, taxed: true }, { amount: 500, taxed: false }], { name: "VAT", basisPoints: 2000, of: "line", included: true });
    expect(q).toEqual({ net: 1500 - 167, tax: 167, total: 1500 });
  });
});
