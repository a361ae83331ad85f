import type { Venue } from "../venue";

const WHOLE = 10_000n;

/** Half up to a whole minor unit: a half goes away from the smaller figure. Both at least 0, over > 0. */
export const halfUp = (part: bigint, over: bigint): number => Number((2n * part + over) / (2n * over));

/**
 * Tax on an amount of minor units, rounded half up. Prices that hold it already: amount x bp / (10000 + bp); else amount x bp / 10000.
 * Half up at the third decimal is what the Streamlined Sales and Use Tax Agreement, section 324, asks of sellers.
 */
export function taxOn(amount: number, tax: Pick<Venue["tax"], "basisPoints" | "included">): number {
  const bp = BigInt(tax.basisPoints);
  return halfUp(BigInt(amount) * bp, tax.included ? WHOLE + bp : WHOLE);
}

export type Taxed = { readonly amount: number; readonly taxed: boolean };

/** Net, tax and total of priced lines, in minor units; the tax rounded line by line or once, as the venue says. */
export function sums(lines: readonly Taxed[], tax: Venue["tax"]): { readonly net: number; readonly tax: number; readonly total: number } {
  const all = lines.reduce((n, l) => n + l.amount, 0);
  const taxed = lines.filter((l) => l.taxed);
  const due = tax.of === "line"
    ? taxed.reduce((n, l) => n + taxOn(l.amount, tax), 0)
    : taxOn(taxed.reduce((n, l) => n + l.amount, 0), tax);
  return tax.included ? { net: all - due, tax: due, total: all } : { net: all, tax: due, total: all + due };
}
