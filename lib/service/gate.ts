import { fail, ok, type Result } from "../base";
import { may, STATES, type BookingAction, type DeskAction, type Role } from "../booking";
import { bookings, type BookingRow, type Handle, type history } from "../store";
import type { Actor, Refusal } from "./types";

/** An actor as seen from one booking. */
export function roleFor(actor: Actor, reference: string): Role {
  switch (actor.kind) {
    case "desk": return actor.role;
    case "couple": return actor.reference === reference ? "couple" : "stranger";
    case "look": return actor.reference === reference ? "look" : "stranger";
    case "nobody": return "nobody";
  }
}

/** Under whom an actor's deeds stand in the history. */
export const whoIs = (actor: Actor): history.Doer => (actor.kind === "desk" ? { staff: actor.person } : actor.kind);

type Ask = { readonly reference: string; readonly action: BookingAction; readonly hold?: boolean };

/**
 * The one gate to a booking: who may never do this is turned away before it is known whether the booking exists;
 * who may, but not as the booking stands, is told how it stands.
 */
export async function gate(db: Handle, actor: Actor, { reference, action, hold = false }: Ask): Promise<Result<BookingRow, Refusal>> {
  const role = roleFor(actor, reference);
  if (!STATES.some((state) => may(role, action, state))) return fail({ code: "not-allowed" });
  const booking = await (hold ? bookings.hold(db, reference) : bookings.find(db, reference));
  if (!booking) return fail({ code: "not-found" });
  return may(role, action, booking.state) ? ok(booking) : fail({ code: "wrong-state", state: booking.state });
}

/** The gate to what belongs to no one booking. */
export function deskGate(actor: Actor, action: DeskAction): Result<string, Refusal> {
  return actor.kind === "desk" && may(actor.role, action) ? ok(actor.person) : fail({ code: "not-allowed" });
}
