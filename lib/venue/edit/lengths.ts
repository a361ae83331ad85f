import { formatLength, lengthStyle, minorDigits, parseLength } from "../../measure";
import type { Venue } from "../schema";

type Speech = Pick<Venue, "lengths" | "locale">;
const INCH = 25.4;

/**
 * A length as it stands in a field: metres, or feet and inches, with as many decimals as it takes to read the same millimetres back.
 * Always with a point: a field is typed into on any keyboard.
 */
export function shownLength(mm: number, { lengths }: Pick<Venue, "lengths">): string {
  const sign = mm < 0 ? "-" : "", whole = Math.abs(Math.round(mm));
  if (lengths === "metric") return `${sign}${(whole / 1000).toFixed(3).replace(/0$/, "")}`;
  const near = Math.round(whole / INCH);
  const inches = Math.round(near * INCH) === whole ? near : Math.round((whole / INCH) * 100) / 100;
  const feet = Math.floor(inches / 12), rest = Math.round((inches - feet * 12) * 100) / 100;
  return `${sign}${feet === 0 && rest > 0 ? "" : `${feet}'`}${rest === 0 ? "" : `${feet === 0 ? "" : " "}${rest}"`}`;
}

/** A typed length in millimetres, or undefined; a minus sign may stand before it. */
export function typedLength(text: string, { lengths }: Pick<Venue, "lengths">): number | undefined {
  const bare = text.trim().replace(/^[-\u2212]\s*/, "");
  const read = parseLength(bare, { system: lengths });
  if (!read.ok) return undefined;
  return bare === text.trim() || read.value === 0 ? read.value : -read.value;
}

export const saidLength = (mm: number, venue: Speech): string => formatLength(mm, lengthStyle(venue, true));
export const exampleLength = ({ lengths }: Pick<Venue, "lengths">): string => (lengths === "metric" ? "1.20 m" : "4' 6\"");

/** An amount in minor units as it stands in a field: 45.00, or 4500 where the currency has no smaller unit. */
export const shownMoney = (minor: number, currency: string): string => (minor / 10 ** minorDigits(currency)).toFixed(minorDigits(currency));

/** A typed amount in minor units, or undefined. */
export function typedMoney(text: string, currency: string): number | undefined {
  const digits = minorDigits(currency);
  const read = /^(\d{1,9})(?:[.,](\d+))?$/.exec(text.trim().replace(/[\s\u00a0']/g, ""));
  if (!read || (read[2] ?? "").length > digits) return undefined;
  return Number(read[1]) * 10 ** digits + Number((read[2] ?? "").padEnd(digits, "0"));
}
