import { sql } from "kysely";
import type { Layout } from "../layout";
import type { Draft } from "../brief/draft";
import { isOpenToCouple, OPEN_TO_COUPLE, type State } from "../booking";
import type { AskedOfDesk, BookingRow, FinalGuests } from "./database";
import * as search from "./search";
import type { Handle } from "./store";

export type NewBooking = Pick<BookingRow, "reference" | "venue" | "names" | "email" | "package" | "eventDate" | "dueDate" | "createdAt"> & { /** What the desk knows of their answers already. */ readonly draft?: Draft; readonly language?: string };

export async function add(db: Handle, one: NewBooking): Promise<void> {
  await db.insertInto("bookings").values({
    ...one, names: JSON.stringify(one.names), state: "invited", revision: 0, draft: JSON.stringify(one.draft ?? {}), chosen: null, chosenKey: null, setLayout: null, setVersion: null, setAt: null, erasedAt: null, closedReason: null, quietAt: null, language: one.language ?? null, lengths: null, asked: null, finalGuests: null, finalAt: null, changedAt: one.createdAt,
  }).execute();
  await search.note(db, one);
}

export function find(db: Handle, reference: string): Promise<BookingRow | undefined> {
  return db.selectFrom("bookings").selectAll().where("reference", "=", reference).executeTakeFirst();
}

/** Whether there is such a booking; its row is long, and every request asks. */
export async function isThere(db: Handle, reference: string): Promise<boolean> {
  return (await db.selectFrom("bookings").select("reference").where("reference", "=", reference).executeTakeFirst()) !== undefined;
}

/** The booking, held until the transaction ends: two changes of one booking come one after the other. */
export function hold(tx: Handle, reference: string): Promise<BookingRow | undefined> {
  return tx.selectFrom("bookings").selectAll().where("reference", "=", reference).forUpdate().executeTakeFirst();
}

export function list(db: Handle): Promise<BookingRow[]> {
  return db.selectFrom("bookings").selectAll().orderBy("dueDate").orderBy("reference").execute();
}

export async function count(db: Handle): Promise<number> {
  const row = await db.selectFrom("bookings").select(sql<number>`count(*)`.as("n")).executeTakeFirstOrThrow();
  return Number(row.n);
}

/** The bookings of a mail address, in whatever letters it is written. */
export function ofAddress(db: Handle, email: string): Promise<BookingRow[]> {
  return db.selectFrom("bookings").selectAll().where(sql<string>`lower(email)`, "=", email.trim().toLowerCase()).orderBy("dueDate").execute();
}

/** Bookings that still wait for their couple, due on or before a day. */
export function open(db: Handle, dueBy: string): Promise<BookingRow[]> {
  return db.selectFrom("bookings").selectAll().where("state", "in", [...OPEN_TO_COUPLE]).where("dueDate", "<=", dueBy).orderBy("dueDate").execute();
}

/** Whether its couple have still to send their layout, and never said that they want no reminders. */
export async function wantsReminders(db: Handle, reference: string): Promise<boolean> {
  const row = await db.selectFrom("bookings").select(["state", "quietAt"]).where("reference", "=", reference).executeTakeFirst();
  return row !== undefined && row.quietAt === null && isOpenToCouple(row.state);
}

/** Bookings with a layout that have not told their final numbers, whose day is near enough for them to be due by a day. */
export function numbersOpen(db: Handle, dueBy: string): Promise<BookingRow[]> {
  // The longest notice is a matter of the package; 90 days before the day is before any.
  return db.selectFrom("bookings").selectAll().where("state", "in", ["sent", "agreed"]).where("finalGuests", "is", null)
    .where(sql<boolean>`event_date <= ${dueBy}::date + 90`).orderBy("eventDate").execute();
}

/** Puts the venue's own layout down, once: false if that was done before; `again`: in place of one of an older version. */
export async function setByVenue(tx: Handle, reference: string, what: { readonly layout: Layout; readonly version: number; readonly at: string; readonly again?: boolean }): Promise<boolean> {
  const done = await tx.updateTable("bookings").set({ setLayout: JSON.stringify(what.layout), setVersion: what.version, setAt: what.at })
    .where("reference", "=", reference).where((eb) => (what.again ? eb.or([eb("setVersion", "is", null), eb("setVersion", "!=", what.version)]) : eb("setAt", "is", null))).executeTakeFirst();
  return done.numUpdatedRows === 1n;
}

/** Bookings whose names are still here, of a day before `before`. */
export function namedBefore(db: Handle, before: string): Promise<BookingRow[]> {
  return db.selectFrom("bookings").selectAll().where("erasedAt", "is", null).where("eventDate", "<", before).orderBy("eventDate").orderBy("reference").execute();
}

/** Takes out who it was for, what they answered and what they chose. The caller holds the row, and closed it before. */
export async function erase(tx: Handle, reference: string, at: string): Promise<void> {
  await tx.updateTable("bookings").set((eb) => ({
    revision: eb("revision", "+", 1), changedAt: at, erasedAt: at, names: "[]", email: "", draft: "{}", chosen: null, chosenKey: null, closedReason: null, asked: null, finalGuests: null, finalAt: null,
  })).where("reference", "=", reference).execute();
  await search.forget(tx, reference);
}

/** Keeps what they chose to read. No answer of theirs is changed by it, so that no page grows stale. */
export async function keepWords(db: Handle, reference: string, words: Pick<BookingRow, "language" | "lengths">): Promise<void> {
  await db.updateTable("bookings").set(words).where("reference", "=", reference).execute();
}

/** Notes, once, that they want no more reminders. */
export async function quieten(tx: Handle, reference: string, at: string): Promise<boolean> {
  const done = await tx.updateTable("bookings").set({ quietAt: at }).where("reference", "=", reference).where("quietAt", "is", null).executeTakeFirst();
  return done.numUpdatedRows === 1n;
}

export async function noteClosing(tx: Handle, reference: string, reason: string): Promise<void> {
  await tx.updateTable("bookings").set({ closedReason: reason }).where("reference", "=", reference).execute();
}

/** What was asked is answered, but for the wish to be erased: that is answered by erasing alone. */
const ANSWERED = sql<string | null>`case when asked->>'what' = 'erase' then asked end`;

export type Change = {
  readonly state?: State; readonly draft?: Draft; readonly chosen?: { readonly layout: Layout; readonly key: string };
  readonly asked?: AskedOfDesk | "done"; readonly email?: string; readonly final?: { readonly guests: FinalGuests; readonly at: string }; readonly at: string;
};

/** Writes a change and counts the revision up. The caller holds the row. */
export async function change(tx: Handle, reference: string, what: Change): Promise<void> {
  await tx.updateTable("bookings").set((eb) => ({
    revision: eb("revision", "+", 1), changedAt: what.at,
    ...(what.state === undefined ? {} : { state: what.state }),
    ...(what.draft === undefined ? {} : { draft: JSON.stringify(what.draft) }),
    ...(what.chosen === undefined ? {} : { chosen: JSON.stringify(what.chosen.layout), chosenKey: what.chosen.key }),
    ...(what.asked === undefined ? {} : { asked: what.asked === "done" ? ANSWERED : JSON.stringify(what.asked) }),
    ...(what.email === undefined ? {} : { email: what.email }),
    ...(what.final === undefined ? {} : { finalGuests: JSON.stringify(what.final.guests), finalAt: what.final.at }),
  })).where("reference", "=", reference).execute();
  if (what.email !== undefined) { const now = await find(tx, reference); if (now) await search.note(tx, now); }
}
