import type { DeskRole } from "../booking";
import type { PersonRow } from "./database";
import * as staff from "./staff";
import type { Handle } from "./store";

/** Someone who was let in, and by whom; null once that one has left. */
export type Person = PersonRow & { readonly invitedBy: string | null };

/** Those who are let in, by address. */
export function list(db: Handle): Promise<Person[]> {
  return db.selectFrom("people").leftJoin("staff", "staff.id", "people.staff").selectAll("people").select("staff.email as invitedBy").orderBy("people.email").execute();
}

export function find(db: Handle, email: string): Promise<PersonRow | undefined> {
  return db.selectFrom("people").selectAll().where("email", "=", email).executeTakeFirst();
}

/** Lets a person in, or gives one that is there another role. */
export async function put(tx: Handle, one: { readonly email: string; readonly role: DeskRole; readonly at: string; readonly by: string }): Promise<void> {
  const row = { role: one.role, invitedAt: one.at, staff: await staff.idOf(tx, one.by) };
  await tx.insertInto("people").values({ email: one.email, ...row }).onConflict((conflict) => conflict.column("email").doUpdateSet(row)).execute();
}

/** Lets a person go: false if they were not there. What they have open is closed, and their address goes from every table. */
export async function revoke(tx: Handle, email: string, at: string): Promise<boolean> {
  const done = await tx.deleteFrom("people").where("email", "=", email).executeTakeFirst();
  if (done.numDeletedRows === 0n) return false;
  await staff.forget(tx, email, at);
  return true;
}
