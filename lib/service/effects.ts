import { assertNever } from "../base";
import type { Effect } from "../booking";
import { messages, type Message } from "../mail";
import { heldRooms, links, sessions, type BookingRow, type Handle } from "../store";
import { noticed } from "./desk-people";
import type { House } from "./house";
import { dropLate } from "./late-works";
import { nowIso } from "./moment";
import { aboutOf, coupleLink, deskPage, queueMail } from "./post";

/** What the mails of an effect tell, as far as the event knew it. */
export type Told = {
  readonly number: number; readonly reason?: string; /** Labels of the pieces that a return speaks of. */ readonly pieces?: readonly string[]; readonly fingerprint?: string;
  readonly guests?: number; readonly musts?: number; readonly shoulds?: number;
};

/** Carries out the state machine's effects, in the transaction that records its step. */
export async function carryOut(tx: Handle, house: House, what: { readonly booking: BookingRow; readonly effects: readonly Effect[]; readonly told: Told }): Promise<void> {
  for (const effect of what.effects) {
    switch (effect.do) {
      case "withdraw-links":
        await links.revokeOf(tx, what.booking.reference, nowIso(house));
        await sessions.endOf(tx, what.booking.reference, nowIso(house));
        await heldRooms.release(tx, what.booking.reference);
        await dropLate(tx, what.booking.reference);
        break;
      case "mail":
        await mailFor(tx, house, { ...what, what: effect.what });
        break;
      default:
        assertNever(effect);
    }
  }
}

type Mail = { readonly booking: BookingRow; readonly told: Told; readonly what: Extract<Effect, { do: "mail" }>["what"] };

async function mailFor(tx: Handle, house: House, { booking, told, what }: Mail): Promise<void> {
  const about = await aboutOf(tx, booking);
  const mail = async (to: string, message: Message): Promise<void> => {
    await queueMail(tx, house, { message, to, fromName: about.venueName, booking: booking.reference });
  };
  const toCouple = (message: Message): Promise<void> => mail(booking.email, message);
  const { number } = told;
  switch (what) {
    case "sent-to-couple":
      return toCouple(messages.sentToCouple(about, { number, href: await coupleLink(tx, house, booking) }));
    case "sent-to-desk": {
      const { guests = 0, musts = 0, shoulds = 0 } = told;
      const message = messages.sentToDesk(about, { number, guests, musts, shoulds, href: deskPage(house, booking.reference) });
      for (const person of await noticed(house, tx)) await mail(person, message);
      return;
    }
    case "returned":
      return toCouple(messages.returned(about, { number, reason: told.reason ?? "", pieces: told.pieces ?? [], href: await coupleLink(tx, house, booking) }));
    case "amended":
      return toCouple(messages.amended(about, { number, href: await coupleLink(tx, house, booking) }));
    case "changed":
      return toCouple(messages.changed(about, { number, guests: told.guests ?? 0, href: await coupleLink(tx, house, booking) }));
    case "agreed":
      return toCouple(messages.agreed(about, { number, fingerprint: told.fingerprint ?? "", href: await coupleLink(tx, house, booking) }));
    default:
      return assertNever(what);
  }
}
