import { seeded } from "../../../lib/base";
import { tidewheel } from "../../../lib/demo";
import { asked, type Asked } from "./works";
import type { House } from "../../../lib/service/house";
import { saveVenue } from "../../../lib/service/venues";
import { addBooking, openLink, type Actor } from "../../../lib/service";
import { openStore, storeErrorText } from "../../../lib/store/open";
import { outbox } from "../../../lib/store";
import { emptyPlace, type Place } from "./place";

export const DESK: Extract<Actor, { kind: "desk" }> = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };
export const NOBODY: Actor = { kind: "nobody" };
export const coupleOf = (reference: string): Actor => ({ kind: "couple", reference });

/** A clock that stands still until it is moved. */
export type TestClock = { now: () => number; time: number };
export type TestHouse = House & { readonly clock: TestClock; readonly asked: Asked };

/** A house on a real database of its own, embedded or on a server, with Tidewheel Mill in it. Works are small and count their calls. */
export async function testHouse(changes: Partial<House> = {}): Promise<{ readonly house: TestHouse; readonly place: Place; readonly close: () => Promise<void> }> {
  const place = await emptyPlace();
  const opened = await openStore(place);
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  const clock: TestClock = { time: Date.UTC(2027, 0, 10, 12), now: () => clock.time };
  const works = asked();
  const house: TestHouse = {
    origin: "http://localhost:4101", demo: true, deskPeople: ["desk@tidewheel.example", "second@tidewheel.example"], mailFrom: "desk@tidewheel.example",
    store: opened.value, random: seeded(1), poke: () => {}, works: works.works, ...changes, clock, asked: works,
  };
  const saved = await saveVenue(house, DESK, tidewheel);
  if (!saved.ok) throw new Error("the demo's venue was refused");
  return { house, place, close: async () => { await opened.value.close(); await place.remove(); } };
}

let counter = 0;
/** A booking just added, its link mailed. */
export async function added(house: House, changes: Readonly<Record<string, string>> = {}): Promise<string> {
  counter += 1;
  const made = await addBooking(house, DESK, {
    values: { names: "Zoë Ånd & 李 明", email: `couple${counter}@example.org`, package: "dry-hire", date: "2027-06-12", mail: "yes", ...changes },
  });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value.reference;
}

/** The key in the newest mail of a kind. */
export async function mailedKey(house: House, reference: string | undefined, kind = "invitation"): Promise<string> {
  const mail = (await outbox.list(house.store.db, { booking: reference })).find((one) => one.kind === kind);
  return /\/open\/([A-Za-z0-9_-]+)/.exec(mail?.bodyText ?? "")?.[1] ?? "";
}

/** Opens the mailed link; gives the Cookie header that the browser would send from then on. */
export async function cookieOf(house: House, key: string): Promise<string> {
  const opened = await openLink(house, { key });
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  return `${opened.value.cookie.name}=${opened.value.cookie.value}`;
}

