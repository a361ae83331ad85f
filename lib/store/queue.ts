import { sql, type ExpressionBuilder, type SqlBool } from "kysely";
import type { State } from "../booking";
import type { BookingRow, Database, HistoryRow, MailRow } from "./database";
import type { Handle } from "./store";

/** The day that it is at each venue, YYYY-MM-DD: what is late there is before it. */
export type Today = Readonly<Record<string, string>>;
export type QueueAsk = {
  readonly states?: readonly State[];
  /** Past their due date, at their venue. */
  readonly late?: boolean;
  readonly venue?: string; readonly today: Today;
  /** These alone. */
  readonly only?: readonly string[];
  readonly sort: "due" | "day"; readonly limit: number; readonly skip: number;
};
/** What a line of the queue tells; layouts, which are large, stay where they are. */
export type QueueLine = Pick<BookingRow, "reference" | "venue" | "names" | "email" | "package" | "eventDate" | "dueDate" | "state" | "draft" | "changedAt" | "asked">;

type Build = ExpressionBuilder<Database, "bookings">;
const isLate = (eb: Build, today: Today) => eb.or(Object.entries(today).map(([venue, day]) => eb.and([eb("venue", "=", venue), eb("dueDate", "<", day)])));
/** What waits for someone first, then what is agreed, then what is closed. The index `bookings_queue` has this very expression. */
const rank = sql<number>`(case state when 'agreed' then 1 when 'closed' then 2 else 0 end)`;

/** One page of the queue. */
export function lines(db: Handle, { states, late = false, venue, today, only, sort, limit, skip }: QueueAsk): Promise<QueueLine[]> {
  let query = db.selectFrom("bookings").select(["reference", "venue", "names", "email", "package", "eventDate", "dueDate", "state", "draft", "changedAt", "asked"]);
  if (states !== undefined) query = query.where("state", "in", [...states]);
  if (late) query = query.where((eb) => isLate(eb, today));
  if (venue !== undefined) query = query.where("venue", "=", venue);
  if (only !== undefined) query = query.where((eb) => (only.length === 0 ? eb.val<SqlBool>(false) : eb("reference", "in", [...only])));
  return query.orderBy(rank).orderBy(sort === "day" ? "eventDate" : "dueDate").orderBy("reference").limit(limit).offset(skip).execute();
}

export type Count = { readonly state: State; readonly all: number; readonly late: number };
/** How many stand in each state, and how many of them are past their due date. */
export async function counts(db: Handle, { venue, today, only }: Pick<QueueAsk, "venue" | "today" | "only">): Promise<readonly Count[]> {
  let query = db.selectFrom("bookings").select((eb) => ["state", eb.fn.countAll<number>().as("all"), eb.fn.countAll<number>().filterWhere((one) => isLate(one, today)).as("late")]).groupBy("state");
  if (venue !== undefined) query = query.where("venue", "=", venue);
  if (only !== undefined) query = query.where((eb) => (only.length === 0 ? eb.val<SqlBool>(false) : eb("reference", "in", [...only])));
  return (await query.execute()).map((row) => ({ state: row.state, all: Number(row.all), late: Number(row.late) }));
}

/** All that a search looks through. */
export function searched(db: Handle): Promise<Pick<BookingRow, "reference" | "names" | "email">[]> {
  return db.selectFrom("bookings").select(["reference", "names", "email"]).execute();
}

/** The newest line of the history, and the fate of the newest mail to the couple, of each of these bookings. */
export async function lastOf(db: Handle, references: readonly string[]): Promise<{ readonly lines: ReadonlyMap<string, HistoryRow>; readonly mails: ReadonlyMap<string, Pick<MailRow, "state" | "why">> }> {
  if (references.length === 0) return { lines: new Map(), mails: new Map() };
  const these = [...references];
  const lasts = await db.selectFrom("history").selectAll().where("booking", "in", these).distinctOn("booking").orderBy("booking").orderBy("id", "desc").execute();
  const fates = await db.selectFrom("mails").select(["booking", "state", "why"]).where("booking", "in", these).where("kind", "!=", "desk-notice").distinctOn("booking").orderBy("booking").orderBy("id", "desc").execute();
  return {
    lines: new Map(lasts.flatMap((row) => (row.booking === null ? [] : [[row.booking, row]]))),
    mails: new Map(fates.flatMap((row) => (row.booking === null ? [] : [[row.booking, row]]))),
  };
}
