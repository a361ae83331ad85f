import { arrangeFor, chooseLayout, getBooking, saveStep, sendRequest, type Actor, type BookingView, type Outcome, type SentRevision } from "../../../lib/service";
import type { House } from "../../../lib/service/house";

/** The line that every couple goes, by the verbs that their pages call; with no test runner about it, so that benches go it too. */
export function value<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.error));
  return outcome.value;
}

const coupleOf = (reference: string): Actor => ({ kind: "couple", reference });
/** The booking as its couple sees it now. */
export const seenBy = async (house: House, reference: string): Promise<BookingView> => value(await getBooking(house, coupleOf(reference), { reference }));

/** So many adults answered, and the first layout chosen. */
export async function chooseFirst(house: House, reference: string, adults = "40"): Promise<BookingView> {
  const actor = coupleOf(reference);
  const revision = async (): Promise<number> => (await seenBy(house, reference)).revision;
  value(await saveStep(house, actor, { reference, step: "guests", values: { adults }, revision: await revision() }));
  const { result } = value(await arrangeFor(house, actor, { reference }));
  value(await chooseLayout(house, actor, { reference, layout: result.layouts[0]?.id ?? "", revision: await revision() }));
  return seenBy(house, reference);
}

/** The same, and sent. */
export async function sendFirst(house: House, reference: string): Promise<SentRevision> {
  const { revision } = await chooseFirst(house, reference);
  return value(await sendRequest(house, coupleOf(reference), { reference, revision }));
}
