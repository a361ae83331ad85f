import type { HistoryRow } from "./database";
import * as staff from "./staff";
import type { Handle } from "./store";

/** Who did it: a person of the desk by their address, which is kept as their number; or "couple", "clock" and the like. */
export type Doer = string | { readonly staff: string };
export type Entry = {
  readonly booking: string | null; readonly at: string; readonly who: Doer; readonly what: string;
  readonly data?: Readonly<Record<string, unknown>>;
};
/** A line with the address of whoever did it at the desk; null once they have left. */
export type Line = HistoryRow & { readonly person: string | null };

/** Adds a line; lines are never changed (the database refuses it). */
export async function add(tx: Handle, { who, data, ...entry }: Entry): Promise<void> {
  const doer = typeof who === "string" ? { who, staff: null } : { who: "desk", staff: await staff.idOf(tx, who.staff) };
  await tx.insertInto("history").values({ ...entry, ...doer, data: JSON.stringify(data ?? {}) }).execute();
}

/** Oldest first. */
export function listOf(db: Handle, booking: string): Promise<Line[]> {
  return db.selectFrom("history").leftJoin("staff", "staff.id", "history.staff").selectAll("history").select("staff.email as person")
    .where("booking", "=", booking).orderBy("history.id").execute();
}
