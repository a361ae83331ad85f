import type { House } from "./house";

export type Health = { readonly ok: boolean; readonly store: "answers" | "does not answer"; readonly migrations: "up to date" | "behind" | "not known" };

/** Whether what the pages stand on is there: a store that answers, with the tables of this version. How busy it is, is nobody's business here. */
export async function health(house: House): Promise<Health> {
  try {
    const upToDate = await house.store.isUpToDate();
    return { ok: upToDate, store: "answers", migrations: upToDate ? "up to date" : "behind" };
  } catch {
    return { ok: false, store: "does not answer", migrations: "not known" };
  }
}
