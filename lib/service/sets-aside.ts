import { ok } from "../base";
import { readStep } from "../brief/draft";
import type { BookingRow } from "../store";
import { gate } from "./gate";
import { venueOf } from "./get-booking";
import type { House } from "./house";
import type { Actor, FormValues, Outcome, StepId } from "./types";
import { briefOf, chosenOf } from "./view";

/**
 * Whether saving these answers of a step would set the chosen layout aside: what was taken while they were not sure, once said, changes
 * nothing; nor do words to the venue. Looking saves nothing.
 */
export async function setsAside(house: House, actor: Actor, { reference, step, values }: { readonly reference: string; readonly step: StepId; readonly values: FormValues }): Promise<Outcome<boolean>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "answer" });
  if (!booking.ok) return booking;
  const read = readStep(step, values), venue = await venueOf(db, booking.value);
  if (!read.ok || !venue) return ok(false);
  const stands = (row: BookingRow): boolean => chosenOf(house, row, { venue, brief: briefOf(row) })?.outdated === false;
  return ok(stands(booking.value) && !stands({ ...booking.value, draft: { ...booking.value.draft, [step]: read.value } }));
}
