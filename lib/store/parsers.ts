/** How values come out of the database, alike on both drivers. Keys are the object ids of PostgreSQL's built-in types. */
const OID = { int8: 20, date: 1082, timestamp: 1114, timestamptz: 1184, interval: 1186 } as const;

export const PARSERS: Readonly<Record<number, (text: string) => unknown>> = {
  [OID.int8]: wholeNumber,
  /** A day stays the text YYYY-MM-DD: a Date would shift it by the machine's zone. */
  [OID.date]: (text) => text,
  [OID.timestamp]: (text) => text,
  /** A moment comes out as ISO 8601 in UTC. */
  [OID.timestamptz]: (text) => new Date(text).toISOString(),
  [OID.interval]: (text) => text,
};

function wholeNumber(text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new Error(`int8 out of range: ${text}`);
  return value;
}
