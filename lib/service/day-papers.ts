import { fail, ok } from "../base";
import type { BookingRow } from "../store";
import { deskGate, gate } from "./gate";
import type { House } from "./house";
import { seenLayout, type Seen } from "./seen-layout";
import type { Actor, Outcome } from "./types";

export type DayWanted = { readonly reference: string; readonly number?: number };
export type DayPapers = { readonly booking: BookingRow; readonly seen: Seen };

/** What the day's papers are made from: a revision that was sent, the agreed one first; by the desk alone. */
export async function dayPapers(house: House, actor: Actor, { reference, number }: DayWanted): Promise<Outcome<DayPapers>> {
  const desk = deskGate(actor, "queue");
  if (!desk.ok) return desk;
  const booking = await gate(house.store.db, actor, { reference, action: "look" });
  if (!booking.ok) return booking;
  const { state } = booking.value;
  if (number === undefined && state !== "sent" && state !== "agreed") return fail({ code: "wrong-state", state });
  const seen = await seenLayout(house, booking.value, { number });
  return seen.ok ? ok({ booking: booking.value, seen: seen.value }) : seen;
}
