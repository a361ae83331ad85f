import type { SessionRow } from "./database";
import type { Handle } from "./store";

export async function add(tx: Handle, one: Omit<SessionRow, "seenAt" | "endedAt">): Promise<void> {
  await tx.insertInto("sessions").values({ ...one, seenAt: one.madeAt, endedAt: null }).execute();
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
