import type { LinkRow } from "./database";
import type { Handle } from "./store";

export type NewLink = Pick<LinkRow, "hash" | "purpose" | "booking" | "person" | "once" | "madeAt" | "expiresAt">;

export async function add(tx: Handle, one: NewLink): Promise<void> {
  await tx.insertInto("links").values({ ...one, usedAt: null, revokedAt: null }).execute();
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

export async function revokeOf(tx: Handle, booking: string, at: string): Promise<void> {
  await tx.updateTable("links").set({ revokedAt: at }).where("booking", "=", booking).where("revokedAt", "is", null).execute();
}

/** How many links a person of the desk was given since a moment: a limit on mails. */
export async function countOf(db: Handle, person: string, since: string): Promise<number> {
  const rows = await db.selectFrom("links").select("hash").where("person", "=", person).where("madeAt", ">=", since).execute();
  return rows.length;
}

export async function countOfBooking(db: Handle, booking: string, since: string): Promise<number> {
  const rows = await db.selectFrom("links").select("hash").where("booking", "=", booking).where("madeAt", ">=", since).execute();
  return rows.length;
}
