import { fail, ok } from "../base";
import { outbox } from "../store";
import { deskGate } from "./gate";
import type { House } from "./house";
import type { Actor, MailView, Outcome } from "./types";
import { mailView } from "./view";

/** Everything mailed, newest first. Only while the demo is on: elsewhere a mail is its reader's own. */
export async function listMailbox(house: House, actor: Actor, { reference }: { readonly reference?: string }): Promise<Outcome<readonly MailView[]>> {
  const desk = deskGate(actor, "mailbox");
  if (!desk.ok) return desk;
  if (!house.demo) return fail({ code: "not-found" });
  return ok((await outbox.list(house.store.db, { booking: reference })).map(mailView));
}
