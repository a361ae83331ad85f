import type { LinkAskRow } from "./database";
import type { Handle } from "./store";

export type NewLinkAsk = Pick<LinkAskRow, "side" | "address" | "booking" | "askedAt" | "browser">;

/** Notes that a link was asked for: the same one statement whoever it is. */
export async function add(db: Handle, one: NewLinkAsk): Promise<void> {
  await db.insertInto("linkAsks").values(one).execute();
}

/** Takes the one that has waited longest out of the table, for whoever holds the transaction; it is back if that fails. */
export function take(tx: Handle): Promise<LinkAskRow | undefined> {
  return tx.deleteFrom("linkAsks").where("id", "=", (eb) => eb.selectFrom("linkAsks").select("id").orderBy("id").limit(1).forUpdate().skipLocked()).returningAll().executeTakeFirst();
}

/** Lets go of what was asked before a moment. */
export async function forget(db: Handle, before: string): Promise<void> {
  await db.deleteFrom("linkAsks").where("askedAt", "<", before).execute();
}
