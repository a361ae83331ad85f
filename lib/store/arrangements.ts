import type { ArrangeResult } from "../layout";
import type { Handle } from "./store";

/** Results of the engine by what they were worked out from: the same question has the same answer, so it is asked once. */
export async function find(db: Handle, key: string): Promise<ArrangeResult | undefined> {
  const row = await db.selectFrom("arrangements").select("result").where("key", "=", key).executeTakeFirst();
  return row?.result;
}

export async function keep(db: Handle, one: { readonly key: string; readonly result: ArrangeResult; readonly at: string }): Promise<void> {
  await db.insertInto("arrangements").values({ key: one.key, result: JSON.stringify(one.result), madeAt: one.at })
    .onConflict((conflict) => conflict.column("key").doNothing()).execute();
}
