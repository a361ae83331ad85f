import type { LinkRow } from "./database";
import type { Handle } from "./store";

export type NewLink = Pick<LinkRow, "hash" | "purpose" | "booking" | "person" | "once" | "madeAt" | "expiresAt"> & { readonly label?: string; readonly browser?: string | null };

export async function add(tx: Handle, one: NewLink): Promise<void> {
  await tx.insertInto("links").values({ ...one, label: one.label ?? null, browser: one.browser ?? null, usedAt: null, revokedAt: null }).execute();
}

export function find(db: Handle, hash: string): Promise<LinkRow | undefined> {
  return db.selectFrom("links").selectAll().where("hash", "=", hash).executeTakeFirst();
}

/** Marks the link used; false if a one-time link was used before (or at the same moment by another request). */
export async function use(tx: Handle, hash: string, at: string): Promise<boolean> {
  const done = await tx.updateTable("links").set({ usedAt: at }).where("hash", "=", hash).where("revokedAt", "is", null)
    .where((eb) => eb.or([eb("once", "=", false), eb("usedAt", "is", null)])).executeTakeFirst();
  return done.numUpdatedRows === 1n;
}

/** Withdraws a booking's links: all of them, or the couple's own, so that those who may only look keep theirs. */
export async function revokeOf(tx: Handle, booking: string, at: string, purpose?: "couple"): Promise<void> {
  let query = tx.updateTable("links").set({ revokedAt: at }).where("booking", "=", booking).where("revokedAt", "is", null);
  if (purpose) query = query.where("purpose", "=", purpose);
  await query.execute();
}

/** The look-only links of a booking, the newest first; withdrawn ones too. */
export function lookLinks(db: Handle, booking: string): Promise<LinkRow[]> {
  return db.selectFrom("links").selectAll().where("booking", "=", booking).where("purpose", "=", "look").orderBy("madeAt", "desc").orderBy("hash").execute();
}

export async function revoke(tx: Handle, hash: string, at: string): Promise<void> {
  await tx.updateTable("links").set({ revokedAt: at }).where("hash", "=", hash).where("revokedAt", "is", null).execute();
}

/** How many links a person of the desk was given since a moment: a limit on mails. */
export async function countOf(db: Handle, person: string, since: string): Promise<number> {
  const rows = await db.selectFrom("links").select("hash").where("person", "=", person).where("label", "is", null).where("madeAt", ">=", since).execute();
  return rows.length;
}

export async function countOfBooking(db: Handle, booking: string, since: string): Promise<number> {
  const rows = await db.selectFrom("links").select("hash").where("booking", "=", booking).where("purpose", "=", "couple").where("madeAt", ">=", since).execute();
  return rows.length;
}

export async function removeOf(tx: Handle, booking: string): Promise<void> {
  await tx.deleteFrom("links").where("booking", "=", booking).execute();
}

/** How many ran out or were revoked before a moment; removes them unless they are only to be counted. */
export async function sweep(db: Handle, { before, count }: { readonly before: string; readonly count: boolean }): Promise<number> {
  const over = await db.selectFrom("links").select("hash").where((eb) => eb.or([eb("expiresAt", "<", before), eb("revokedAt", "<", before)])).execute();
  if (!count && over.length > 0) await db.deleteFrom("links").where("hash", "in", over.map((one) => one.hash)).execute();
  return over.length;
}
