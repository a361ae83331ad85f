import { parse } from "csv-parse/sync";
import { fail, ok, type Result, foldedWords } from "../base";

/** What a list may tell of a booking. Names may stand in one column or in two. */
export type Column = "names" | "email" | "date" | "package" | "guests" | "venue";
export type Line = { /** Of the text that was pasted, from 1; the header is 1. */ readonly number: number; readonly cells: Readonly<Partial<Record<Column, string>>> };
export type List = { readonly lines: readonly Line[]; /** Headings that were not understood, and so are left out. */ readonly left: readonly string[] };

export const MOST_LINES = 500;
const MOST_LETTERS = 1_000_000;

/** Words of a heading, without case, accents and signs: what spreadsheets of venues call their columns. */
const HEADINGS: Readonly<Record<Column, readonly string[]>> = {
  names: ["names", "name", "couple", "couples names", "clients", "client", "client names", "partner 1", "partner 2", "name 1", "name 2", "first name", "bride", "groom", "booked by"],
  email: ["mail", "email", "e mail", "mail address", "email address", "e mail address", "address", "contact email"],
  date: ["date", "day", "the day", "event date", "wedding date", "date of event", "date of wedding", "wedding"],
  package: ["package", "packages", "hire", "plan"],
  guests: ["guests", "number of guests", "adults", "guest count", "numbers", "pax"],
  venue: ["venue", "house", "site"],
};
const columnOf = (heading: string): Column | undefined => (["names", "email", "date", "package", "guests", "venue"] as const).find((c) => HEADINGS[c].includes(foldedWords(heading)));

/** The sign between columns: the one that the header row has most of. */
function signOf(text: string): string {
  const head = text.slice(0, text.search(/[\r\n]/) < 0 ? undefined : text.search(/[\r\n]/));
  const count = (sign: string): number => head.split(sign).length - 1;
  return ["\t", ";", ","].sort((a, b) => count(b) - count(a))[0] ?? ",";
}

/**
 * A pasted list as lines of cells by column (RFC 4180, or with semicolons or tabs, as spreadsheets put on the clipboard).
 * The first row names the columns. The error says what is amiss with the list as a whole.
 */
export function readList(text: string): Result<List, string> {
  if (text.trim() === "") return fail("Paste the list here first, its heading row with it.");
  if (text.length > MOST_LETTERS) return fail(`The list has ${text.length} letters; ${MOST_LETTERS} can be read at once.`);
  let rows: string[][];
  try {
    rows = parse(text.trim(), { bom: true, delimiter: signOf(text.trim()), relax_column_count: true, skip_empty_lines: true, trim: true });
  } catch (error) {
    return fail(`The list could not be read: ${error instanceof Error ? error.message : "a quotation mark is left open"}.`);
  }
  const [head = [], ...body] = rows;
  const columns = head.map(columnOf);
  const missing = (["names", "email", "date", "package"] as const).filter((c) => !columns.includes(c));
  if (missing.length > 0) return fail(`The first row must name the columns: names, mail, date and package, and guests if you have them. Not found: ${missing.map((c) => (c === "email" ? "mail" : c)).join(", ")}.`);
  if (body.length === 0) return fail("There is no row under the heading row.");
  if (body.length > MOST_LINES) return fail(`The list has ${body.length} rows; ${MOST_LINES} can be added at once.`);
  return ok({
    left: head.filter((h, i) => columns[i] === undefined && h !== ""),
    lines: body.map((cells, i) => ({ number: i + 2, cells: cellsOf(columns, cells) })),
  });
}

function cellsOf(columns: readonly (Column | undefined)[], cells: readonly string[]): Line["cells"] {
  const out: Partial<Record<Column, string>> = {};
  columns.forEach((column, i) => {
    const text = cells[i]?.trim() ?? "";
    if (column === undefined || text === "") return;
    out[column] = out[column] === undefined ? text : column === "names" ? `${out[column]}\n${text}` : out[column];
  });
  return out;
}

/** A day as lists write it: 2027-06-12; or with the venue's own order of day and month, 12/06/2027, 12.6.27. Anything else stays as typed. */
export function dayIn(text: string, locale: string): string {
  const read = /^(\d{1,2})[./\s-](\d{1,2})[./\s-](\d{4}|\d{2})$/.exec(text.trim());
  if (!read) return text;
  const [, a = "", b = "", year = ""] = read;
  const order = new Intl.DateTimeFormat(locale, { day: "numeric", month: "numeric", timeZone: "UTC" }).formatToParts(new Date(0)).filter((p) => p.type === "day" || p.type === "month").map((p) => p.type);
  const [day, month] = order[0] === "month" ? [b, a] : [a, b];
  return `${year.length === 2 ? `20${year}` : year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
}
