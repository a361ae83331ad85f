import type { Handle } from "./store";

/** The number under which a person's deeds at the desk stand. A person is there from their first deed on. */
export async function idOf(tx: Handle, person: string): Promise<number> {
  const email = person.trim().toLowerCase();
  await tx.insertInto("staff").values({ email, leftAt: null }).onConflict((conflict) => conflict.column("email").doNothing()).execute();
  return (await tx.selectFrom("staff").select("id").where("email", "=", email).executeTakeFirstOrThrow()).id;
}

/** Addresses that are kept of people who are of the desk no longer, by those who are. */
export async function strangers(db: Handle, fixed: readonly string[]): Promise<readonly string[]> {
  const rows = await db.selectFrom("staff").select("email").where("email", "is not", null).where("email", "not in", (eb) => eb.selectFrom("people").select("email")).execute();
  return rows.flatMap(({ email }) => (email === null || fixed.some((one) => one.toLowerCase() === email) ? [] : [email]));
}

/** Takes a person's address out of every table of the desk. What they did stays, under their number. */
export async function forget(tx: Handle, email: string, at: string): Promise<void> {
  await tx.updateTable("sessions").set({ endedAt: at }).where("person", "=", email).where("endedAt", "is", null).execute();
  await tx.updateTable("sessions").set({ person: null }).where("person", "=", email).execute();
  await tx.updateTable("links").set({ revokedAt: at }).where("person", "=", email).where("revokedAt", "is", null).execute();
  await tx.updateTable("links").set({ person: null }).where("person", "=", email).execute();
  await tx.deleteFrom("mails").where("recipient", "=", email).where("kind", "like", "desk-%").execute();
  await tx.updateTable("staff").set({ email: null, leftAt: at }).where("email", "=", email).execute();
}
