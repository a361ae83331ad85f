import type { BriefFile } from "../brief";
import type { ArrangeResult } from "../layout";
import type { LateChangeRow } from "./database";
import type { Handle } from "./store";

export type NewLateChange = { readonly booking: string; readonly number: number; readonly brief: BriefFile; readonly result: ArrangeResult; readonly madeAt: string; readonly madeBy: string };

/** Keeps what was worked out, in place of what was kept before. */
export async function keep(tx: Handle, one: NewLateChange): Promise<void> {
  await drop(tx, one.booking);
  await tx.insertInto("lateChanges").values({ ...one, brief: JSON.stringify(one.brief), result: JSON.stringify(one.result) }).execute();
}

export function find(db: Handle, booking: string): Promise<LateChangeRow | undefined> {
  return db.selectFrom("lateChanges").selectAll().where("booking", "=", booking).executeTakeFirst();
}

export async function drop(tx: Handle, booking: string): Promise<void> {
  await tx.deleteFrom("lateChanges").where("booking", "=", booking).execute();
}
