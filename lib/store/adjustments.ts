import type { AdjustmentRow } from "./database";
import type { Handle } from "./store";

/** A layout under the hand, as it was left. */
export function find(db: Handle, booking: string): Promise<AdjustmentRow | undefined> {
  return db.selectFrom("adjustments").selectAll().where("booking", "=", booking).executeTakeFirst();
}

/** Writes it in place of what was there. The caller holds the booking's row, and has looked at the revision. */
export async function keep(tx: Handle, one: AdjustmentRow): Promise<void> {
  const { booking, ...rest } = { ...one, base: JSON.stringify(one.base), work: JSON.stringify(one.work) };
  await tx.insertInto("adjustments").values({ booking, ...rest }).onConflict((c) => c.column("booking").doUpdateSet(rest)).execute();
}

export async function drop(tx: Handle, booking: string): Promise<void> {
  await tx.deleteFrom("adjustments").where("booking", "=", booking).execute();
}
