import { outbox } from "../store";
import type { House } from "./house";
import { nowIso } from "./moment";

export type Health = {
  readonly ok: boolean;
  readonly store: "answers" | "does not answer";
  readonly migrations: "up to date" | "behind" | "not known";
  /** Do mails leave when they are due? A mail server that is away is no reason to keep people from their pages: it is told, and the rest goes on. */
  readonly mails: "leave" | "wait" | "not known";
};
/** A mail that is due leaves at the next round, within seconds. */
const LATE_MS = 10 * 60_000;

/** Whether what the pages stand on is there: a store that answers, with the tables of this version. How busy it is, is nobody's business here. */
export async function health(house: House): Promise<Health> {
  try {
    const upToDate = await house.store.isUpToDate();
    const due = upToDate ? await outbox.oldestDue(house.store.db, nowIso(house)) : undefined;
    const mails = !upToDate ? "not known" : due !== undefined && house.clock.now() - Date.parse(due) > LATE_MS ? "wait" : "leave";
    return { ok: upToDate, store: "answers", migrations: upToDate ? "up to date" : "behind", mails };
  } catch {
    return { ok: false, store: "does not answer", migrations: "not known", mails: "not known" };
  }
}
