import { z } from "zod";

/** Every object of the files refuses fields that it does not know, except inside one named `extra`. */
export const record = <S extends z.ZodRawShape>(shape: S) =>
  z.strictObject({ ...shape, extra: z.record(z.string(), z.unknown()).optional() });

export const LIMITS = {
  guests: 5_000, rooms: 50, coordinate: 1_000_000, stock: 10_000, fileBytes: 5 * 1024 * 1024, nesting: 20,
} as const;

export const millimetres = z.int().min(-LIMITS.coordinate).max(LIMITS.coordinate).describe("millimetres");
export const lengthOf = (least: number) => z.int().min(least).max(LIMITS.coordinate).describe("millimetres");
export const point = z.tuple([millimetres, millimetres]).readonly();
export const outline = z.array(point).min(3).max(2_000).readonly();
/** Degrees clockwise on the page. */
export const angle = z.number().min(-360).max(360).describe("degrees");
export const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "lower-case words with hyphens").max(80)
  .describe("lower-case words with hyphens, at most 80 characters");
export const label = z.string().trim().min(1).max(200);
export const freeText = z.string().max(10_000);
export const dateText = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, "a date as YYYY-MM-DD").refine(isCalendarDate, "a day of the calendar, as YYYY-MM-DD")
  .describe("a day of the calendar, as YYYY-MM-DD");
export const timeText = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "a time of day as HH:MM").describe("a time of day as HH:MM, from 00:00 to 23:59");

/** Octets that mail lets an address, its local part and a label of its domain have: RFC 5321 4.5.3.1, RFC 1035 2.3.4. */
export const MAIL = { address: 254, local: 64, label: 63 } as const;
/** An address as people write it; capitals of the local part are kept. Only ASCII is taken, so characters are octets. */
export const mailAddress = z.email().max(MAIL.address).refine((text) => {
  const at = text.lastIndexOf("@");
  return at <= MAIL.local && text.slice(at + 1).split(".").every((l) => l.length <= MAIL.label);
}, "an e-mail address of at most 254 characters").describe("an e-mail address of at most 254 characters");

export function isCalendarDate(text: string): boolean {
  const [y, m, d] = text.split("-").map(Number) as [number, number, number];
  if (!(m >= 1 && m <= 12)) return false;
  const leap = (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][m - 1] as number;
  return d >= 1 && d <= days;
}

export const shape = z.union([
  record({ diameter: lengthOf(100) }),
  record({ width: lengthOf(50), depth: lengthOf(50) }),
]);
