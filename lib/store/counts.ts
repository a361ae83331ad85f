import type { Capacity } from "../layout";
import type { Handle } from "./store";

/** How many fit in a venue's rooms, by what it was worked out from. */
export async function find(db: Handle, key: string): Promise<Capacity | undefined> {
  const row = await db.selectFrom("counts").select("result").where("key", "=", key).executeTakeFirst();
  return row?.result;
}

export async function keep(db: Handle, one: { readonly key: string; readonly result: Capacity; readonly at: string }): Promise<void> {
  await db.insertInto("counts").values({ key: one.key, result: JSON.stringify(one.result), madeAt: one.at })
    .onConflict((conflict) => conflict.column("key").doNothing()).execute();
}
