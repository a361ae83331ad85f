/**
 * Minor units by currency where they are not two.
 * ISO 4217 list one (SIX Financial Information), from memory, unconfirmed.
 */
const MINOR: Readonly<Record<string, number>> = {
  BIF: 0, CLP: 0, DJF: 0, GNF: 0, ISK: 0, JPY: 0, KMF: 0, KRW: 0, PYG: 0, RWF: 0, UGX: 0, UYI: 0, VND: 0, VUV: 0, XAF: 0, XOF: 0, XPF: 0,
  BHD: 3, IQD: 3, JOD: 3, KWD: 3, LYD: 3, OMR: 3, TND: 3,
  CLF: 4, UYW: 4,
};

/** Decimal digits of a currency's minor unit by ISO 4217: 2 unless listed otherwise. */
export const minorDigits = (currency: string): number => MINOR[currency] ?? 2;

/**
 * An amount in minor units as people write it. Some languages show fewer digits than the currency has; they are
 * followed only where nothing is lost by it.
 */
export function formatMoney(minor: number, currency: string, locale: string): string {
  const digits = minorDigits(currency);
  const usual = new Intl.NumberFormat(locale, { style: "currency", currency });
  const shown = usual.resolvedOptions().maximumFractionDigits ?? digits;
  const lost = shown < digits && minor % 10 ** (digits - shown) !== 0;
  const value = minor / 10 ** digits + 0;
  if (shown === digits || (shown < digits && !lost)) return usual.format(value);
  return new Intl.NumberFormat(locale, { style: "currency", currency, minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
}
