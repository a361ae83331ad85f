import { sql, type ExpressionBuilder, type Expression, type SqlBool } from "kysely";
import { OPEN_TO_COUPLE, type State } from "../booking";
import type { BookingRow, Database, HistoryRow, MailRow } from "./database";
import type { Handle } from "./store";

/** The day that it is at each venue, YYYY-MM-DD: what is late there is before it. */
export type Today = Readonly<Record<string, string>>;
/** Where a page of the queue begins: after a line, or before one, or at the end. Days as YYYY-MM-DD. */
export type Place = { readonly rank: number; readonly day: string; readonly reference: string };
export type From = { readonly after: Place } | { readonly before: Place | "the end" };
export type QueueAsk = {
  readonly states?: readonly State[];
  /** Past their due date, at their venue. */
  readonly late?: boolean;
  readonly venue?: string; readonly today: Today;
  /** These alone. */
  readonly only?: readonly string[];
  readonly sort: "due" | "day"; readonly limit: number;
  /** Left out: from the beginning. */
  readonly from?: From;
};
/** What a line of the queue tells; layouts, which are large, stay where they are. */
export type QueueLine = Pick<BookingRow, "reference" | "venue" | "names" | "email" | "package" | "eventDate" | "dueDate" | "state" | "draft" | "changedAt" | "asked">;

type Build = ExpressionBuilder<Database, "bookings">;
const isLate = (eb: Build, today: Today) => eb.and([
  // The latest of the days bounds the index; each venue's own decides.
  eb("dueDate", "<", Object.values(today).sort().at(-1) ?? "0001-01-01"),
  eb.or(Object.entries(today).map(([venue, day]) => eb.and([eb("venue", "=", venue), eb("dueDate", "<", day)]))),
]);
/** What waits for someone first, then what is agreed, then what is closed. The indices of the queue have this very expression. */
const rank = sql<number>`(case state when 'agreed' then 1 when 'closed' then 2 else 0 end)`;
/** Is one way of looking within one rank? Then the day leads, and its own index serves. */
const oneRank = (states: readonly State[] | undefined): boolean => states !== undefined && (states.length === 1 || !states.some((s) => s === "agreed" || s === "closed"));

/** One page of the queue, found from where it begins, however far that is. */
export async function lines(db: Handle, { states, late = false, venue, today, only, sort, limit, from }: QueueAsk): Promise<QueueLine[]> {
  const day = sort === "day" ? "eventDate" : "dueDate", back = from !== undefined && "before" in from, way = back ? "desc" : "asc", flat = oneRank(states);
  let query = db.selectFrom("bookings").select(["reference", "venue", "names", "email", "package", "eventDate", "dueDate", "state", "draft", "changedAt", "asked"]);
  // Written out rather than as parameters: only so is the index of those that are open found.
  if (states !== undefined) query = query.where(stateIn(states));
  if (late) query = query.where((eb) => isLate(eb, today));
  if (venue !== undefined) query = query.where("venue", "=", venue);
  if (only !== undefined) query = query.where((eb) => (only.length === 0 ? eb.val<SqlBool>(false) : eb("reference", "in", [...only])));
  const at = from === undefined ? undefined : "after" in from ? from.after : from.before;
  if (at !== undefined && at !== "the end") query = query.where(beyond(at, { day, back, flat }));
  const ordered = flat ? query : query.orderBy(rank, way);
  const found = await ordered.orderBy(day, way).orderBy("reference", way).limit(limit).execute();
  return back ? found.reverse() : found;
}

const stateIn = (states: readonly State[]): Expression<SqlBool> => (states.length === 1 ? sql<SqlBool>`state = ${sql.lit(states[0])}` : sql<SqlBool>`state in (${sql.join(states.map((s) => sql.lit(s)))})`);

function beyond(at: Place, { day, back, flat }: { readonly day: "eventDate" | "dueDate"; readonly back: boolean; readonly flat: boolean }): Expression<SqlBool> {
  const sign = back ? sql`<` : sql`>`, by = sql.ref(day);
  return flat ? sql<SqlBool>`(${by}, reference) ${sign} (${at.day}::date, ${at.reference})` : sql<SqlBool>`(${rank}, ${by}, reference) ${sign} (${at.rank}, ${at.day}::date, ${at.reference})`;
}

/** Where a line stands in the queue. */
export const placeOf = ({ state, reference, eventDate, dueDate }: QueueLine, sort: "due" | "day"): Place =>
  ({ rank: state === "agreed" ? 1 : state === "closed" ? 2 : 0, day: sort === "day" ? eventDate : dueDate, reference });

export type Counts = { readonly states: ReadonlyMap<State, number>; readonly late: number };

/** How many stand in each state, and how many of the open ones are past their due date. Of all, the first are kept and only the late ones counted. */
export async function counts(db: Handle, { venue, today, only }: Pick<QueueAsk, "venue" | "today" | "only">): Promise<Counts> {
  const byState = only === undefined ? keptCounts(db, venue) : countedOf(db, only, venue);
  let late = db.selectFrom("bookings").select((eb) => eb.fn.countAll<number>().as("n")).where(stateIn(OPEN_TO_COUPLE)).where((eb) => isLate(eb, today));
  if (venue !== undefined) late = late.where("venue", "=", venue);
  if (only !== undefined) late = late.where((eb) => (only.length === 0 ? eb.val<SqlBool>(false) : eb("reference", "in", [...only])));
  return { states: new Map((await byState).map((row) => [row.state, Number(row.n)])), late: Number((await late.executeTakeFirstOrThrow()).n) };
}

type StateCount = { readonly state: State; readonly n: number | string };
async function keptCounts(db: Handle, venue: string | undefined): Promise<readonly StateCount[]> {
  let query = db.selectFrom("bookingCounts").select((eb) => ["state", eb.fn.sum<number>("n").as("n")]).groupBy("state");
  if (venue !== undefined) query = query.where("venue", "=", venue);
  return query.execute();
}

async function countedOf(db: Handle, only: readonly string[], venue: string | undefined): Promise<readonly StateCount[]> {
  if (only.length === 0) return [];
  let query = db.selectFrom("bookings").select((eb) => ["state", eb.fn.countAll<number>().as("n")]).where("reference", "in", [...only]).groupBy("state");
  if (venue !== undefined) query = query.where("venue", "=", venue);
  return query.execute();
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
