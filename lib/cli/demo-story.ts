import type { DemoBooking } from "../demo";
import { addBooking, agreeRevision, arrangeFor, chooseLayout, closeBooking, getBooking, returnRequest, saveStep, sendRequest, type Actor, type BookingView, type Outcome } from "../service";
import type { House } from "../service/house";
import { openLink } from "../service/open-link";
import { outbox } from "../store";
import { formsOf, loosened, type Form } from "./demo-forms";

const DAY_MS = 86_400_000;
export const DESK: Actor = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };

/** A booking's story so far: whose, and when and at which revision the last thing happened. */
export type Story = { readonly one: DemoBooking; readonly reference: string; readonly time: number; readonly revision: number };

/** The house at a moment of the past. Mails are sent when the story is told. */
const at = (house: House, time: number): House => ({ ...house, poke: () => {}, clock: { now: () => time } });

/** The desk adds the booking and mails the link; unless the story ends there, the couple opens it and answers. */
export async function beginStory(house: House, one: DemoBooking, now: number): Promise<Story> {
  // Long enough before both today and the day itself for all that follows.
  const start = Math.min(now, Date.parse(`${one.date}T00:00:00Z`)) - 30 * DAY_MS;
  const { reference } = must(await addBooking(at(house, start), DESK, {
    values: { names: one.couple.join("\n"), email: one.email, package: one.package, date: one.date, venue: one.venue, mail: "yes" },
  }), "add");
  if (one.state === "invited") return { one, reference, time: start, revision: 0 };
  const time = start + 2 * DAY_MS;
  const day = at(house, time);
  must(await openLink(day, { key: await mailedKey(house, reference) }), "open");
  if (one.answers) await answer(day, { kind: "couple", reference }, formsOf(one.answers));
  const { revision } = await see(day, { kind: "couple", reference });
  return { one, reference, time, revision };
}

/** The couple chooses and sends, the desk answers. Returns the state it came to; a booking that someone has touched is left to them. */
export async function endStory(house: House, { one, reference, time, revision }: Story, now: number): Promise<string> {
  const couple: Actor = { kind: "couple", reference };
  const day = (days: number): House => at(house, Math.min(time + (days === 0 ? 0 : days + (one.pause ?? 0)) * DAY_MS, now));
  const before = await see(day(0), couple);
  if (before.revision !== revision || !(await chooseFirst(day(3), couple, one))) return (await see(day(0), couple)).state;
  must(await sendRequest(day(4), couple, { reference, revision: (await see(day(4), couple)).revision }), "send");
  const sent = (await see(day(4), couple)).revisions.at(-1);
  if (one.state === "sent" || !sent) return "sent";
  if (one.state === "returned") {
    must(await returnRequest(day(6), DESK, { reference, number: sent.number, reason: one.returned ?? "Please look at this once more." }), "return");
    return "returned";
  }
  must(await agreeRevision(day(6), DESK, { reference, number: sent.number, fingerprint: sent.fingerprint }), "agree");
  if (one.state === "agreed") return "agreed";
  must(await closeBooking(day(50), DESK, { reference, reason: "The day is over." }), "close");
  return "closed";
}

/** The secret in the link that was mailed, read as the couple would. */
async function mailedKey(house: House, reference: string): Promise<string> {
  const mail = (await outbox.list(house.store.db, { booking: reference })).find((one) => one.kind === "invitation");
  return /\/open\/([A-Za-z0-9_-]+)/.exec(mail?.bodyText ?? "")?.[1] ?? "";
}

async function answer(day: House, couple: Actor, forms: readonly Form[]): Promise<void> {
  for (const { step, values } of forms) {
    const { reference, revision } = await see(day, couple);
    must(await saveStep(day, couple, { reference, step, values, revision }), `save ${step}`);
  }
}

/** Takes the first layout offered. Where none is, the couple gives way a little, as couples do; false if that did not help either. */
async function chooseFirst(day: House, couple: Actor, one: DemoBooking): Promise<boolean> {
  for (const answers of [undefined, ...loosened(one.answers ?? { guests: { adults: one.expected } })]) {
    if (answers) await answer(day, couple, formsOf(answers));
    const { reference, revision } = await see(day, couple);
    const found = must(await arrangeFor(day, couple, { reference }), "arrange");
    const layout = found.result.layouts[0];
    if (!layout) continue;
    const chosen = await chooseLayout(day, couple, { reference, layout: layout.id, revision });
    return chosen.ok;
  }
  return false;
}

async function see(day: House, couple: Actor): Promise<BookingView> {
  return must(await getBooking(day, couple, { reference: couple.kind === "couple" ? couple.reference : "" }), "look");
}

/** The demo's data is ours: a refusal here is a fault of the program. */
export function must<T>(outcome: Outcome<T>, what: string): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`demo: ${what}: ${JSON.stringify(outcome.error)}`);
}
