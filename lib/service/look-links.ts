import { fail, ok } from "../base";
import { HOUR, LOOK_LINKS } from "../access";
import { messages, singleAddress } from "../mail";
import { history, links, sessions, type LinkRow } from "../store";
import { gate, whoIs } from "./gate";
import type { House } from "./house";
import { nowIso } from "./moment";
import { aboutOf, bookingLink, queueMail } from "./post";
import type { Actor, FieldError, Outcome } from "./types";

export type LookLink = {
  /** Names it for withdrawing; it opens nothing. */
  readonly id: string;
  readonly label: string; readonly madeAt: string; readonly lastOpenedAt?: string;
};
type Make = { readonly reference: string; /** For whom, as the couple put it. */ readonly label: string; /** Where it is mailed to; empty: the couple hand it on themselves. */ readonly email: string };
export type MadeLink = { readonly href: string; readonly mailed: boolean };

const viewOf = (row: LinkRow): LookLink => ({ id: row.hash.slice(0, 16), label: row.label ?? "", madeAt: row.madeAt, lastOpenedAt: row.usedAt ?? undefined });
const stands = (row: LinkRow, now: number): boolean => row.revokedAt === null && Date.parse(row.expiresAt) > now;

/** The look-only links that stand, the newest first. */
export async function listLookLinks(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<readonly LookLink[]>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "share" });
  if (!booking.ok) return booking;
  return ok((await links.lookLinks(db, reference)).filter((row) => stands(row, house.clock.now())).map(viewOf));
}

function faultsIn({ label, email }: Pick<Make, "label" | "email">): readonly FieldError[] {
  return [
    ...(label.length === 0 || label.length > 80 || /[\u0000-\u001f\u007f]/.test(label) ? [{ field: "label", message: "Type for whom it is, in 80 characters at the most." }] : []),
    ...(email !== "" && !singleAddress(email).ok ? [{ field: "email", message: "Type one mail address, such as ana@example.org, or leave it empty." }] : []),
  ];
}

/** Makes a link that shows plan and answers and changes nothing. Its address is given once: only its hash is kept. */
export async function makeLookLink(house: House, actor: Actor, { reference, label, email }: Make): Promise<Outcome<MadeLink>> {
  const asked = { label: label.trim(), email: email.trim() };
  const done = await house.store.transaction(async (tx): Promise<Outcome<MadeLink>> => {
    const held = await gate(tx, actor, { reference, action: "share", hold: true });
    if (!held.ok) return held;
    const now = house.clock.now();
    const made = await links.lookLinks(tx, reference);
    const many = made.filter((row) => stands(row, now)).length >= LOOK_LINKS.standing || made.filter((row) => Date.parse(row.madeAt) > now - HOUR).length >= LOOK_LINKS.anHour;
    const errors = many ? [{ field: "label", message: "Many links were made of late. Withdraw one that is not needed, or wait an hour." }] : faultsIn(asked);
    if (errors.length > 0) return fail({ code: "invalid", errors });
    const href = await bookingLink(tx, house, held.value, { purpose: "look", label: asked.label });
    if (asked.email !== "") {
      const about = await aboutOf(tx, held.value);
      await queueMail(tx, house, { message: messages.lookLink(about, { href, label: asked.label }), to: asked.email, fromName: about.venueName, booking: reference });
    }
    await history.add(tx, { booking: reference, at: nowIso(house), who: whoIs(actor), what: "look-link-made" });
    return ok({ href, mailed: asked.email !== "" });
  });
  if (done.ok && done.value.mailed) house.poke();
  return done;
}

/** Withdraws one: it opens nothing any more, and whoever came by it is out at once. */
export async function withdrawLookLink(house: House, actor: Actor, { reference, id }: { readonly reference: string; readonly id: string }): Promise<Outcome<null>> {
  return house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "share", hold: true });
    if (!held.ok) return held;
    const row = (await links.lookLinks(tx, reference)).find((one) => one.hash.slice(0, 16) === id);
    if (!row) return fail({ code: "not-found" });
    const at = nowIso(house);
    await links.revoke(tx, row.hash, at);
    await sessions.endOfLink(tx, row.hash, at);
    await history.add(tx, { booking: reference, at, who: whoIs(actor), what: "look-link-withdrawn" });
    return ok(null);
  });
}
