const formats = new Map<string, Intl.NumberFormat>();
/** A figure with so many decimals and the decimal sign of a language; no signs between thousands, which plans do not write. */
function figure(n: number, digits: number, locale: string): string {
  const key = `${locale}/${digits}`;
  const format = formats.get(key) ?? new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits, useGrouping: false });
  formats.set(key, format);
  return format.format(n);
}

/** A length for people: metres to the centimetre (millimetres under a metre), or feet and inches to the half inch. */
export function lengthText(mm: number, system: "metric" | "imperial", locale = "en"): string {
  if (system === "metric") return Math.abs(mm) < 1000 ? `${Math.round(mm)} mm` : `${figure(mm / 1000, mm % 10 === 0 ? 2 : 3, locale)} m`;
  const halves = Math.round(mm / 12.7);
  const sign = halves < 0 ? "-" : "";
  const n = Math.abs(halves);
  const feet = Math.floor(n / 24), rest = n % 24;
  const whole = Math.floor(rest / 2);
  const inches = `${whole === 0 && rest % 2 === 1 ? "" : whole}${rest % 2 === 1 ? "½" : ""} in`;
  if (feet === 0) return Math.abs(mm) > 0 && n === 0 ? "under ½ in" : `${sign}${inches}`;
  return rest === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${inches}`;
}

/** An area for people, from square metres. */
export function areaText(m2: number, system: "metric" | "imperial", locale = "en"): string {
  return system === "metric" ? `${figure(m2, 1, locale)} m²` : `${Math.round(m2 / 0.09290304)} sq ft`;
}

/** An area to the hundredth of a square metre, or the tenth of a square foot. */
export function exactAreaText(m2: number, system: "metric" | "imperial", locale = "en"): string {
  const [n, digits, unit] = system === "metric" ? [m2, 2, "m²"] as const : [m2 / 0.09290304, 1, "sq ft"] as const;
  return `${new Intl.NumberFormat(locale, { maximumFractionDigits: digits, useGrouping: false }).format(n)} ${unit}`;
}
