import type { BriefFile } from "../brief";
import type { LateWorkRow } from "./database";
import type { Handle } from "./store";

export type NewLateWork = { readonly booking: string; readonly number: number; readonly brief: BriefFile; readonly askedAt: string; readonly askedBy: string };

/** Asks for a change to be worked out, in place of what was asked before. */
export async function ask(tx: Handle, { booking, ...one }: NewLateWork): Promise<void> {
  const row = { ...one, brief: JSON.stringify(one.brief), tries: 0, until: null, fault: null };
  await tx.insertInto("lateWorks").values({ booking, ...row }).onConflict((conflict) => conflict.column("booking").doUpdateSet(row)).execute();
}

export function find(db: Handle, booking: string): Promise<LateWorkRow | undefined> {
  return db.selectFrom("lateWorks").selectAll().where("booking", "=", booking).executeTakeFirst();
}

/** Claims the one that has waited longest, for one process alone, until a moment. */
export function claim(db: Handle, { now, until }: { readonly now: string; readonly until: string }): Promise<LateWorkRow | undefined> {
  return db.updateTable("lateWorks").set((eb) => ({ until, tries: eb("tries", "+", 1) }))
    .where("booking", "=", (eb) => eb.selectFrom("lateWorks").select("booking").where("fault", "is", null)
      .where((one) => one.or([one("until", "is", null), one("until", "<", now)])).orderBy("askedAt").limit(1).forUpdate().skipLocked())
    .returningAll().executeTakeFirst();
}

/** Ends a work if it is still the one that was asked; false where something else was asked meanwhile. */
export async function end(tx: Handle, { booking, askedAt }: Pick<LateWorkRow, "booking" | "askedAt">): Promise<boolean> {
  return (await tx.deleteFrom("lateWorks").where("booking", "=", booking).where("askedAt", "=", askedAt).executeTakeFirst()).numDeletedRows === 1n;
}

/** Notes why a work broke. It is taken up again, or with `last` left for whoever looks. */
export async function broke(db: Handle, { booking, askedAt, fault, last }: Pick<LateWorkRow, "booking" | "askedAt"> & { readonly fault: string; readonly last: boolean }): Promise<void> {
  await db.updateTable("lateWorks").set({ until: null, fault: last ? fault : null }).where("booking", "=", booking).where("askedAt", "=", askedAt).execute();
}

export async function drop(tx: Handle, booking: string): Promise<void> {
  await tx.deleteFrom("lateWorks").where("booking", "=", booking).execute();
}
