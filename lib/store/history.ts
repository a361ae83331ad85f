import type { HistoryRow } from "./database";
import type { Handle } from "./store";

export type Entry = {
  readonly booking: string | null; readonly at: string; readonly who: string; readonly what: string;
  readonly data?: Readonly<Record<string, unknown>>;
};

/** Adds a line; lines are never changed (the database refuses it). */
export async function add(tx: Handle, entry: Entry): Promise<void> {
  await tx.insertInto("history").values({ ...entry, data: JSON.stringify(entry.data ?? {}) }).execute();
}

/** Oldest first. */
export function listOf(db: Handle, booking: string): Promise<HistoryRow[]> {
  return db.selectFrom("history").selectAll().where("booking", "=", booking).orderBy("id").execute();
}
