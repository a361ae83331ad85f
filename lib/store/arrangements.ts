import type { ArrangeResult } from "../layout";
import { remembered } from "./remembered";
import type { Handle } from "./store";

/** Results of the engine by what they were worked out from: the same question has the same answer, so it is asked once. */
export const find = remembered<ArrangeResult>(60, async (db, key) => (await db.selectFrom("arrangements").select("result").where("key", "=", key).executeTakeFirst())?.result);

export async function keep(db: Handle, one: { readonly key: string; readonly result: ArrangeResult; readonly at: string }): Promise<void> {
  await db.insertInto("arrangements").values({ key: one.key, result: JSON.stringify(one.result), madeAt: one.at })
    .onConflict((conflict) => conflict.column("key").doNothing()).execute();
}

/** How many were worked out before a moment; removes them unless they are only to be counted. They can be worked out again. */
export async function sweep(db: Handle, { before, count }: { readonly before: string; readonly count: boolean }): Promise<number> {
  const old = await db.selectFrom("arrangements").select("key").where("madeAt", "<", before).execute();
  if (!count && old.length > 0) await db.deleteFrom("arrangements").where("key", "in", old.map((one) => one.key)).execute();
  return old.length;
}
