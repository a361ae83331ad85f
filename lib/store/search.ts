import { sql } from "kysely";
import { folded } from "../base";
import type { BookingRow } from "./database";
import type { Handle } from "./store";

type Known = Pick<BookingRow, "reference" | "names" | "email">;

/** Every run of two and of three characters in a text, each once. */
export function gramsOf(text: string): readonly string[] {
  const signs = [...text];
  return [...new Set([2, 3].flatMap((size) => signs.slice(0, Math.max(0, signs.length - size + 1)).map((_, i) => signs.slice(i, i + size).join(""))))];
}

const foundBy = ({ reference, names, email }: Known): string => [reference, reference.replace("-", ""), email, ...names].map(folded).join("\n");
const listOf = (grams: readonly string[]) => sql<readonly string[]>`array(select json_array_elements_text(${JSON.stringify(grams)}::json))`;

function rowOf(known: Known): { readonly booking: string; readonly foundBy: string; readonly grams: ReturnType<typeof listOf> } {
  const text = foundBy(known);
  // Runs over a line's end are of two things; nobody types them.
  return { booking: known.reference, foundBy: text, grams: listOf([...new Set(text.split("\n").flatMap(gramsOf))]) };
}

/** Notes what a booking is found by, in place of what was noted before. */
export async function note(tx: Handle, known: Known): Promise<void> {
  const { booking, ...row } = rowOf(known);
  await tx.insertInto("bookingSearch").values({ booking, ...row }).onConflict((conflict) => conflict.column("booking").doUpdateSet(row)).execute();
}

/** Takes out all that a booking was found by but its reference. */
export const forget = (tx: Handle, reference: string): Promise<void> => note(tx, { reference, names: [], email: "" });

/** Rows written by one statement. */
const TOGETHER = 200;

/** Notes it for bookings of which it is not noted: those that an older version, or a backup, put here. */
export async function noteMissing(db: Handle): Promise<void> {
  const rows = await db.selectFrom("bookings").leftJoin("bookingSearch", "bookingSearch.booking", "bookings.reference").where("bookingSearch.booking", "is", null)
    .select(["reference", "names", "email"]).execute();
  for (let i = 0; i < rows.length; i += TOGETHER) await db.insertInto("bookingSearch").values(rows.slice(i, i + TOGETHER).map(rowOf)).execute();
}

/** Bookings in whose names, reference or address a text stands, `most` of them and not in any order. */
export async function matching(db: Handle, text: string, most: number): Promise<readonly string[]> {
  const wanted = folded(text), size = [...wanted].length;
  const grams = gramsOf(wanted).filter((gram) => [...gram].length === Math.min(3, size));
  let query = db.selectFrom("bookingSearch").select("booking").where(sql<boolean>`position(${wanted} in found_by) > 0`).limit(most);
  // One character alone has no runs: all are looked through.
  if (grams.length > 0) query = query.where(sql<boolean>`grams @> ${listOf(grams)}`);
  return (await query.execute()).map((row) => row.booking);
}
