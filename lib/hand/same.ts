/** A value as text that is the same for equal values whatever the order of their fields; what is undefined is as what is absent. */
export const canonical = (value: unknown): string => JSON.stringify(value, (_, v: unknown) =>
  typeof v === "object" && v !== null && !Array.isArray(v) ? Object.fromEntries(Object.entries(v).filter(([, x]) => x !== undefined).sort(([a], [b]) => (a < b ? -1 : 1))) : v) ?? "";
