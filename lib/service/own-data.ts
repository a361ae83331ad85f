import { ok } from "../base";
import { adjustments, history, outbox, revisions } from "../store";
import { chosenBy } from "./chosen-words";
import { gate } from "./gate";
import type { House } from "./house";
import type { Actor, Outcome } from "./types";
import { revisionView } from "./view";

/** All that is kept of a couple, for themselves to take away: a file for people and programs alike. Links, sessions and hashes of secrets are not in it. */
export async function ownData(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<{ readonly text: string; readonly fileName: string }>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "take-out" });
  if (!booking.ok) return booking;
  const { names, email, package: pack, eventDate, dueDate, state, draft, chosen, createdAt, changedAt } = booking.value, reads = chosenBy(booking.value);
  const mails = (await outbox.list(db, { booking: reference })).filter((one) => one.recipient === email).reverse();
  const data = {
    format: "marquetry.own-data/1", reference, names, email, package: pack, date: eventDate, dueDate, state, createdAt, changedAt, reads,
    answers: draft, chosenLayout: chosen, layoutUnderTheHand: (await adjustments.find(db, reference))?.work.layout,
    revisions: (await revisions.listOf(db, reference)).map(revisionView),
    history: (await history.listOf(db, reference)).map(({ at, who, what, data: more }) => ({ at, by: who.startsWith("desk") ? "desk" : who, what, ...more })),
    mails: mails.map(({ subject, queuedAt, sentAt, state: fate }) => ({ subject, writtenAt: queuedAt, sentAt, state: fate })),
  };
  return ok({ text: `${JSON.stringify(data, null, 2)}\n`, fileName: `${reference}.json` });
}
