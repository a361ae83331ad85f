import { fail, ok, foldedWords } from "../base";
import { readStep } from "../brief/draft";
import { bookings, venues, type Handle } from "../store";
import type { VenueVersion } from "../store/venues";
import { addRead, readBooking, type Read } from "./add-booking";
import { deskGate } from "./gate";
import type { House } from "./house";
import { dayIn, readList, type Column, type Line } from "./pasted-columns";
import type { Actor, Draft, FieldError, Outcome } from "./types";

export type PastedRow = {
  /** The line of the text that was pasted, from 1. */
  readonly line: number;
  readonly cells: Readonly<Partial<Record<Column, string>>>;
  /** What would be added; absent where something is amiss. */
  readonly good?: { readonly names: readonly string[]; readonly email: string; readonly date: string; readonly dueDate: string; readonly venueName: string; readonly packageName: string; readonly guests?: number };
  readonly faults: readonly FieldError[];
};
export type Pasted = { readonly rows: readonly PastedRow[]; readonly good: number; readonly left: readonly string[] };

type Row = PastedRow & { readonly read?: Read; readonly draft?: Draft };
type Seen = Omit<Pasted, "rows"> & { readonly rows: readonly Row[] };

/** Reads a pasted list and says of each row what it would add or what is amiss. Adds nothing. */
export async function lookAtPasted(house: House, actor: Actor, { text }: { readonly text: string }): Promise<Outcome<Pasted>> {
  const desk = deskGate(actor, "add");
  if (!desk.ok) return desk;
  const seen = await readPasted(house.store.db, house, text);
  return seen.ok ? ok({ ...seen.value, rows: seen.value.rows.map(({ read: _, draft: __, ...row }) => row) }) : seen;
}

/**
 * Adds every good row of a pasted list, all of them or none, and mails their links when `mail`. `good`: how many there were when it was
 * looked at; where there are fewer or more by now, nothing is added.
 */
export async function addPasted(house: House, actor: Actor, { text, good, mail }: { readonly text: string; readonly good: number; readonly mail: boolean }): Promise<Outcome<{ readonly references: readonly string[] }>> {
  const desk = deskGate(actor, "add");
  if (!desk.ok) return desk;
  const done = await house.store.transaction(async (tx): Promise<Outcome<{ readonly references: readonly string[] }>> => {
    const seen = await readPasted(tx, house, text);
    if (!seen.ok) return seen;
    if (seen.value.good !== good || good === 0) return fail({ code: "stale", revision: seen.value.good });
    const references: string[] = [];
    for (const { read, draft } of seen.value.rows) if (read) references.push(await addRead(tx, house, { read, draft, actor, mail }));
    return ok({ references });
  });
  house.poke();
  return done;
}

async function readPasted(db: Handle, house: House, text: string): Promise<Outcome<Seen>> {
  const list = readList(text);
  if (!list.ok) return fail({ code: "invalid", errors: [{ field: "list", message: list.error }] });
  const all = await venues.list(db), rows: Row[] = [];
  const seen = new Map<string, number>();
  for (const line of list.value.lines) {
    const row = readRow(line, { all, now: house.clock.now() });
    rows.push(row.read ? await unlessThere(db, row, seen) : row);
  }
  return ok({ rows, left: list.value.left, good: rows.filter((one) => one.read).length });
}

/** The same couple on the same day, in the list above or in the queue, is a booking that is there already. */
async function unlessThere(db: Handle, row: Row, seen: Map<string, number>): Promise<Row> {
  if (!row.read) return row;
  const { email, eventDate } = row.read, key = `${email.toLowerCase()} ${eventDate}`;
  const twice = (message: string): Row => ({ line: row.line, cells: row.cells, faults: [{ field: "email", message }] });
  const before = seen.get(key);
  if (before !== undefined) return twice(`The same address and day stand in line ${before}.`);
  seen.set(key, row.line);
  const there = (await bookings.ofAddress(db, email)).find((one) => one.eventDate === eventDate);
  return there ? twice(`There is a booking of this address on this day: ${there.reference}.`) : row;
}

function readRow({ number: line, cells }: Line, { all, now }: { readonly all: readonly VenueVersion[]; readonly now: number }): Row {
  const wanted = foldedWords(cells.venue ?? "");
  const venue = wanted === "" ? venueOfPackage(all, cells.package ?? "") ?? all[0] : all.find((v) => foldedWords(v.id) === wanted || foldedWords(v.venue.name) === wanted);
  if (!venue) return { line, cells, faults: [{ field: "venue", message: `There is no venue “${cells.venue ?? ""}”; there are ${all.map((v) => v.venue.name).join(", ")}.` }] };
  const pack = packageOf(venue, cells.package ?? "");
  const guests = cells.guests === undefined ? undefined : readStep("guests", { adults: cells.guests });
  const read = readBooking(venue, { names: cells.names, email: cells.email, date: dayIn(cells.date ?? "", venue.venue.locale), package: pack?.id ?? "" }, now);
  const faults = [
    ...(read.ok ? [] : read.error.map((one) => (one.field === "package" ? { field: "package", message: `There is no package “${cells.package ?? ""}”; there are ${venue.venue.packages.map((p) => p.name).join(", ")}.` } : one))),
    ...(guests === undefined || guests.ok ? [] : [{ field: "guests", message: `“${cells.guests ?? ""}” is not a number of guests; type a whole number, or nothing.` }]),
  ];
  if (faults.length > 0 || !read.ok) return { line, cells, faults };
  const draft: Draft = guests?.ok && guests.value?.adults !== undefined ? { guests: guests.value } : {};
  const { names, email, eventDate: date, dueDate } = read.value;
  return { line, cells, faults: [], read: read.value, draft, good: { names, email, date, dueDate, venueName: venue.venue.name, packageName: pack?.name ?? "", guests: draft.guests?.adults } };
}

const packageOf = (venue: VenueVersion, text: string): VenueVersion["venue"]["packages"][number] | undefined =>
  venue.venue.packages.find((p) => foldedWords(text) !== "" && (foldedWords(p.id) === foldedWords(text) || foldedWords(p.name) === foldedWords(text)));
const venueOfPackage = (all: readonly VenueVersion[], text: string): VenueVersion | undefined => all.find((v) => packageOf(v, text));
