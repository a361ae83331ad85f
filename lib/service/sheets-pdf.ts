import { ok } from "../base";
import { todayAt } from "../booking";
import { briefSchema } from "../brief";
import { dayPapers, type DayWanted } from "./day-papers";
import type { House } from "./house";
import type { Pdf } from "./proposal-pdf";
import type { Actor, Outcome } from "./types";

/** The day's sheets of a revision, or of the newest one. A revision prints the same bytes every time. */
export async function sheetsPdfFor(house: House, actor: Actor, wanted: DayWanted): Promise<Outcome<Pdf>> {
  const found = await dayPapers(house, actor, wanted);
  if (!found.ok) return found;
  const { venue, brief, layout, number: revision, fingerprint, sentAt, agreedAt } = found.value.seen;
  const bytes = await house.works.sheetsPdf({
    venue: venue.venue, brief: briefSchema.parse(brief), layout, reference: wanted.reference, revision, fingerprint,
    agreedOn: agreedAt && todayAt(venue.venue.timeZone, Date.parse(agreedAt)),
    now: sentAt === undefined ? house.clock.now() : Date.parse(sentAt),
  });
  return ok({ bytes, fileName: `${wanted.reference}-sheets-${revision}.pdf` });
}
