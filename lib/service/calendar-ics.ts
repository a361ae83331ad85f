import { ok } from "../base";
import { briefSchema } from "../brief";
import { dayPapers, type DayWanted } from "./day-papers";
import type { House } from "./house";
import type { Actor, Outcome } from "./types";

export type Calendar = { readonly text: string; readonly fileName: string };

/** The calendar file of a booking (RFC 5545): its day, due date, parts and turnovers, as the newest revision has them. */
export async function calendarFor(house: House, actor: Actor, wanted: DayWanted): Promise<Outcome<Calendar>> {
  const found = await dayPapers(house, actor, wanted);
  if (!found.ok) return found;
  const { booking, seen } = found.value;
  const text = await house.works.calendar({
    venue: seen.venue.venue, brief: briefSchema.parse(seen.brief), layout: seen.layout, reference: wanted.reference, revision: seen.number, due: booking.dueDate,
    now: seen.sentAt === undefined ? house.clock.now() : Date.parse(seen.sentAt),
  });
  return ok({ text, fileName: `${wanted.reference}.ics` });
}
