/** A length for people: metres to the centimetre (millimetres under a metre), or feet and inches to the half inch. */
export function lengthText(mm: number, system: "metric" | "imperial"): string {
  if (system === "metric") return Math.abs(mm) < 1000 ? `${Math.round(mm)} mm` : `${(mm / 1000).toFixed(mm % 10 === 0 ? 2 : 3)} m`;
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
export function areaText(m2: number, system: "metric" | "imperial"): string {
  return system === "metric" ? `${m2.toFixed(1)} m²` : `${Math.round(m2 / 0.09290304)} sq ft`;
}
