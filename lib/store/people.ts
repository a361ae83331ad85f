import type { DeskRole } from "../booking";
import type { PersonRow } from "./database";
import type { Handle } from "./store";

/** Those who were invited and not let go, by address. */
export function list(db: Handle): Promise<PersonRow[]> {
  return db.selectFrom("people").selectAll().where("revokedAt", "is", null).orderBy("email").execute();
}

export function find(db: Handle, email: string): Promise<PersonRow | undefined> {
  return db.selectFrom("people").selectAll().where("email", "=", email).where("revokedAt", "is", null).executeTakeFirst();
}

/** Invites a person, or gives one that is there another role. */
export async function put(tx: Handle, one: { readonly email: string; readonly role: DeskRole; readonly at: string; readonly by: string }): Promise<void> {
  await tx.insertInto("people").values({ email: one.email, role: one.role, invitedAt: one.at, invitedBy: one.by, revokedAt: null })
    .onConflict((conflict) => conflict.column("email").doUpdateSet({ role: one.role, invitedAt: one.at, invitedBy: one.by, revokedAt: null })).execute();
}

/** Lets a person go: false if they were not there. Their sessions end at once. */
export async function revoke(tx: Handle, email: string, at: string): Promise<boolean> {
  const done = await tx.updateTable("people").set({ revokedAt: at }).where("email", "=", email).where("revokedAt", "is", null).executeTakeFirst();
  await tx.updateTable("sessions").set({ endedAt: at }).where("person", "=", email).where("endedAt", "is", null).execute();
  return done.numUpdatedRows === 1n;
}
