/**
 * One text for one value, whatever order its fields were written in: fields sorted by UTF-16 code units, no spaces,
 * numbers and strings as JSON.stringify writes them (RFC 8785, JSON Canonicalization Scheme). Fields that are undefined are left out.
 * Throws on what JSON cannot hold.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === "boolean" || typeof value === "string") return JSON.stringify(value);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new Error(`not a number of JSON: ${value}`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map((one) => canonicalJson(one === undefined ? null : one)).join(",")}]`;
  if (typeof value === "object") {
    const fields = Object.entries(value).filter(([, one]) => one !== undefined).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    return `{${fields.map(([name, one]) => `${JSON.stringify(name)}:${canonicalJson(one)}`).join(",")}}`;
  }
  throw new Error(`not a value of JSON: ${typeof value}`);
}
