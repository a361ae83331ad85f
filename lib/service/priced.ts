import { answeredOn, isOpenToCouple } from "../booking";
import type { RevisionRow } from "../store";
import type { House } from "./house";
import type { BookingView } from "./types";

/** The day by which a booking's answer counts as late or in time: a brief's `today`. */
export const dayOf = (house: House, timeZone: string, sent: readonly Pick<RevisionRow, "sentAt">[]): string =>
  answeredOn(timeZone, { firstSent: sent[0]?.sentAt, now: house.clock.now() });

/** A booking whose due date has gone by with its chosen layout priced as of today, so that what is shown before sending is what is sent. */
export async function pricedToday(house: House, view: BookingView): Promise<BookingView> {
  const { brief, chosen, venue } = view;
  if (!view.overdue || !isOpenToCouple(view.state) || !brief || !chosen || chosen.outdated) return view;
  const today = dayOf(house, venue.timeZone, view.revisions);
  const quote = await house.works.quote(venue, { ...brief, today }, chosen.layout);
  return { ...view, chosen: { ...chosen, layout: { ...chosen.layout, quote } } };
}
