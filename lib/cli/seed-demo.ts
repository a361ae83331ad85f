import { demoBookings, larkspur, tidewheel, type DemoBooking } from "../demo";
import { openLink } from "../service/open-link";
import { addBooking, agreeRevision, arrangeFor, chooseLayout, closeBooking, getBooking, returnRequest, saveStep, sendRequest, type Actor, type BookingView, type Outcome } from "../service";
import type { House } from "../service/house";
import { saveVenue } from "../service/venues";
import { bookings, outbox } from "../store";
import { todayAt } from "../booking";
import { formsOf, loosened } from "./demo-forms";

const DAY_MS = 86_400_000;
const DESK: Actor = { kind: "desk", person: "desk@tidewheel.example" };

/**
 * Fills an empty store with the two venues and their bookings, each walked into its state by the use cases that couples and desk run,
 * by a clock of its own. A store that holds bookings is left as it is.
 */
export async function seedDemo(house: House, say: (words: string) => void): Promise<void> {
  if ((await bookings.count(house.store.db)) > 0) return;
  const now = house.clock.now();
  // The first venue saved is the house that the public pages speak for.
  for (const [days, file] of [[121, tidewheel], [120, larkspur]] as const) {
    must(await saveVenue({ ...house, clock: { now: () => now - days * DAY_MS } }, DESK, file), `venue ${file.id}`);
  }
  const all = demoBookings(todayAt(tidewheel.timeZone, now));
  say(`Seeding the demo: two venues and ${all.length} bookings. The layouts are worked out one by one…`);
  for (const [index, one] of all.entries()) {
    const state = await walk(house, one, now);
    say(`  ${index + 1} of ${all.length}: ${one.couple.join(" & ")}, ${state}`);
  }
}

/** Walks one booking from the desk's form to its state. Returns the state it came to. */
async function walk(house: House, one: DemoBooking, now: number): Promise<string> {
  // The story of a booking begins before both today and its own day; each deed is some hours after the one before.
  let time = Math.min(now, Date.parse(`${one.date}T00:00:00Z`)) - 30 * DAY_MS;
  const day: House = { ...house, poke: () => {}, clock: { now: () => time } };
  const pass = (days: number): void => { time = Math.min(time + days * DAY_MS, now); };

  const added = must(await addBooking(day, DESK, {
    values: { names: one.couple.join("\n"), email: one.email, package: one.package, date: one.date, venue: one.venue, mail: "yes" },
  }), "add");
  const { reference } = added;
  const couple: Actor = { kind: "couple", reference };
  if (one.state === "invited") return "invited";

  pass(2);
  must(await openLink(day, { key: await mailedKey(house, reference) }), "open");
  if (one.answers) await answer(day, couple, formsOf(one.answers));
  if (one.state === "started") return "started";

  pass(3);
  if (!(await chooseFirst(day, couple, one))) return (await see(day, couple)).state;
  pass(1);
  must(await sendRequest(day, couple, { reference, revision: (await see(day, couple)).revision }), "send");
  if (one.state === "sent") return "sent";

  pass(2);
  const revision = (await see(day, couple)).revisions.at(-1);
  if (!revision) return "sent";
  if (one.state === "returned") {
    must(await returnRequest(day, DESK, { reference, number: revision.number, reason: one.returned ?? "Please look at this once more." }), "return");
    return "returned";
  }
  must(await agreeRevision(day, DESK, { reference, number: revision.number, fingerprint: revision.fingerprint }), "agree");
  if (one.state === "agreed") return "agreed";

  pass(40);
  must(await closeBooking(day, DESK, { reference, reason: "The day is over." }), "close");
  return "closed";
}

/** The secret in the link that was mailed, read as the couple would. */
async function mailedKey(house: House, reference: string): Promise<string> {
  const mail = (await outbox.list(house.store.db, { booking: reference })).find((one) => one.kind === "invitation");
  return /\/open\/([A-Za-z0-9_-]+)/.exec(mail?.bodyText ?? "")?.[1] ?? "";
}

async function answer(day: House, couple: Actor, forms: ReturnType<typeof formsOf>): Promise<void> {
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
    must(await chooseLayout(day, couple, { reference, layout: layout.id, revision }), "choose");
    return true;
  }
  return false;
}

async function see(day: House, couple: Actor): Promise<BookingView> {
  return must(await getBooking(day, couple, { reference: couple.kind === "couple" ? couple.reference : "" }), "look");
}

/** The demo's data is ours: a refusal here is a fault of the program. */
function must<T>(outcome: Outcome<T>, what: string): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`demo: ${what}: ${JSON.stringify(outcome.error)}`);
}
