import { sql } from "kysely";
import { migrationNames } from "../store/migrate";
import type { House } from "./house";

export type Health = { readonly ok: boolean; readonly store: "answers" | "does not answer"; readonly migrations: "up to date" | "behind" | "not known" };

/** Whether what the pages stand on is there: a store that answers, with the tables of this version. How busy it is, is nobody's business here. */
export async function health(house: House): Promise<Health> {
  try {
    const { rows } = await sql<{ readonly name: string }>`select name from kysely_migration`.execute(house.store.db);
    const behind = migrationNames().some((name) => !rows.some((one) => one.name === name));
    return { ok: !behind, store: "answers", migrations: behind ? "behind" : "up to date" };
  } catch {
    return { ok: false, store: "does not answer", migrations: "not known" };
  }
}
