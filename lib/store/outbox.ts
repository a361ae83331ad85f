import type { MailRow } from "./database";
import type { Handle } from "./store";

export type NewMail = Pick<MailRow, "kind" | "booking" | "recipient" | "fromName" | "subject" | "bodyText" | "bodyHtml" | "messageId" | "replyTo" | "onceKey" | "unsubscribe" | "queuedAt">;

/**
 * Queues a mail in the transaction of the change that causes it: neither is there without the other. False where a mail of the same
 * once-key is there already: nothing is queued then.
 */
export async function queue(tx: Handle, one: NewMail): Promise<boolean> {
  const done = await tx.insertInto("mails").values({ ...one, state: "queued", why: null, attempts: 0, dueAt: one.queuedAt, sentAt: null })
    .onConflict((conflict) => conflict.column("onceKey").doNothing()).executeTakeFirst();
  return done.numInsertedOrUpdatedRows === 1n;
}

/** Claims the next mail that is due, for one sender alone; a claim runs out at `until`, so that a stopped sender loses nothing. */
export async function claim(db: Handle, when: { readonly now: string; readonly until: string }): Promise<MailRow | undefined> {
  return db.updateTable("mails").set((eb) => ({ state: "sending", dueAt: when.until, attempts: eb("attempts", "+", 1) }))
    .where("id", "=", (eb) => eb.selectFrom("mails").select("id").where("state", "in", ["queued", "sending"]).where("dueAt", "<=", when.now)
      .orderBy("dueAt").orderBy("id").limit(1).forUpdate().skipLocked())
    .returningAll().executeTakeFirst();
}

export async function markSent(db: Handle, one: { readonly id: number; readonly at: string; readonly bodyText: string; readonly bodyHtml: string }): Promise<void> {
  await db.updateTable("mails").set({ state: "sent", sentAt: one.at, why: null, unsubscribe: null, bodyText: one.bodyText, bodyHtml: one.bodyHtml }).where("id", "=", one.id).execute();
}

/** Takes back a mail that was not sent and that nobody needs any more. */
export async function takeBack(db: Handle, id: number): Promise<void> {
  await db.deleteFrom("mails").where("id", "=", id).where("state", "in", ["queued", "sending"]).execute();
}

/** Failed for good, or to be tried again at `again`. */
export async function markFailed(db: Handle, one: { readonly id: number; readonly why: string; readonly again?: string }): Promise<void> {
  await db.updateTable("mails").set(one.again === undefined ? { state: "failed", why: one.why } : { state: "queued", why: one.why, dueAt: one.again })
    .where("id", "=", one.id).execute();
}

/** Newest first. */
export function list(db: Handle, of: { readonly booking?: string } = {}): Promise<MailRow[]> {
  let query = db.selectFrom("mails").selectAll().orderBy("id", "desc").limit(500);
  if (of.booking !== undefined) query = query.where("booking", "=", of.booking);
  return query.execute();
}

/** When the mail that has been due longest came to be due. */
export async function oldestDue(db: Handle, now: string): Promise<string | undefined> {
  const row = await db.selectFrom("mails").select("dueAt").where("state", "in", ["queued", "sending"]).where("dueAt", "<=", now).orderBy("dueAt").limit(1).executeTakeFirst();
  return row?.dueAt;
}

export async function counts(db: Handle): Promise<{ readonly waiting: number; readonly failed: number }> {
  const rows = await db.selectFrom("mails").select("state").where("state", "!=", "sent").execute();
  const failed = rows.filter((row) => row.state === "failed").length;
  return { waiting: rows.length - failed, failed };
}

/** Removes all mails about a booking, sent or not. */
export async function removeOf(tx: Handle, booking: string): Promise<void> {
  await tx.deleteFrom("mails").where("booking", "=", booking).execute();
}

/** How many ended, well or not, and were queued before a moment; removes them unless they are only to be counted. */
export async function sweep(db: Handle, { before, count }: { readonly before: string; readonly count: boolean }): Promise<number> {
  const over = await db.selectFrom("mails").select("id").where("state", "in", ["sent", "failed"]).where("queuedAt", "<", before).execute();
  if (!count && over.length > 0) await db.deleteFrom("mails").where("id", "in", over.map((one) => one.id)).execute();
  return over.length;
}
