import type { SessionRow } from "./database";
import type { Handle } from "./store";

export async function add(tx: Handle, one: Omit<SessionRow, "seenAt" | "endedAt" | "link"> & { readonly link?: string }): Promise<void> {
  await tx.insertInto("sessions").values({ ...one, link: one.link ?? null, seenAt: one.madeAt, endedAt: null }).execute();
}

export function find(db: Handle, hash: string): Promise<SessionRow | undefined> {
  return db.selectFrom("sessions").selectAll().where("hash", "=", hash).where("endedAt", "is", null).executeTakeFirst();
}

export async function seen(db: Handle, hash: string, at: string): Promise<void> {
  await db.updateTable("sessions").set({ seenAt: at }).where("hash", "=", hash).execute();
}

export async function end(db: Handle, hash: string, at: string): Promise<void> {
  await db.updateTable("sessions").set({ endedAt: at }).where("hash", "=", hash).where("endedAt", "is", null).execute();
}

export async function endOf(tx: Handle, booking: string, at: string): Promise<void> {
  await tx.updateTable("sessions").set({ endedAt: at }).where("booking", "=", booking).where("endedAt", "is", null).execute();
}

export async function removeOf(tx: Handle, booking: string): Promise<void> {
  await tx.deleteFrom("sessions").where("booking", "=", booking).execute();
}

/** How many ended, or were last used, before a moment; removes them unless they are only to be counted. */
export async function sweep(db: Handle, { before, count }: { readonly before: string; readonly count: boolean }): Promise<number> {
  const over = await db.selectFrom("sessions").select("hash").where((eb) => eb.or([eb("endedAt", "<", before), eb("seenAt", "<", before)])).execute();
  if (!count && over.length > 0) await db.deleteFrom("sessions").where("hash", "in", over.map((one) => one.hash)).execute();
  return over.length;
}

/** Ends every visit that a link opened. */
export async function endOfLink(tx: Handle, link: string, at: string): Promise<void> {
  await tx.updateTable("sessions").set({ endedAt: at }).where("link", "=", link).where("endedAt", "is", null).execute();
}
