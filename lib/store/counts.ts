import type { Capacity } from "../layout";
import { remembered } from "./remembered";
import type { Handle } from "./store";

/** How many fit in a venue's rooms, by what it was worked out from. */
export const find = remembered<Capacity>(20, async (db, key) => (await db.selectFrom("counts").select("result").where("key", "=", key).executeTakeFirst())?.result);

export async function keep(db: Handle, one: { readonly key: string; readonly result: Capacity; readonly at: string }): Promise<void> {
  await db.insertInto("counts").values({ key: one.key, result: JSON.stringify(one.result), madeAt: one.at })
    .onConflict((conflict) => conflict.column("key").doNothing()).execute();
}
