import { sql } from "kysely";
import { outbox } from "../store";
import type { House } from "./house";

export type Health = { readonly ok: boolean; readonly store: "answers" | "does not answer"; readonly mails: { readonly waiting: number; readonly failed: number } };

/** Whether what the pages stand on is there. Mails that failed are told, but are no reason to call the house ill. */
export async function health(house: House): Promise<Health> {
  try {
    await sql`select 1`.execute(house.store.db);
    return { ok: true, store: "answers", mails: await outbox.counts(house.store.db) };
  } catch {
    return { ok: false, store: "does not answer", mails: { waiting: 0, failed: 0 } };
  }
}
