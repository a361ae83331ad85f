import { demoBookings, larkspur, tidewheel, type DemoBooking } from "../demo";
import { todayAt } from "../booking";
import { saveVenue } from "../service/venues";
import type { House } from "../service/house";
import { bookings } from "../store";
import { beginStory, DESK, endStory, must, type Story } from "./demo-story";

const DAY_MS = 86_400_000;

/** What is left to do after the beginning: the stories that need the engine. */
export type Seeding = { readonly fresh: boolean; readonly rest: (house: House, say: (words: string) => void) => Promise<void> };

/**
 * Fills an empty store with the two venues and their bookings, each walked into its state by the use cases that couples and desk run,
 * by a clock of its own. At once: everyone is added, has opened the link and answered. The rest, which needs the engine, is handed
 * back to be run while the pages are served already. A demo that is there is left alone, but for stories that were broken off.
 */
export async function seedDemo(house: House): Promise<Seeding> {
  const now = house.clock.now();
  const fresh = (await bookings.count(house.store.db)) === 0;
  if (fresh) await saveVenues(house, now);
  const stories = fresh ? await beginAll(house, now) : await brokenOff(house, now);
  return { fresh, rest: (working, say) => endAll(working, { stories, now, say }) };
}

async function saveVenues(house: House, now: number): Promise<void> {
  // The first venue saved is the house that the public pages speak for.
  for (const [days, file] of [[121, tidewheel], [120, larkspur]] as const) {
    must(await saveVenue({ ...house, clock: { now: () => now - days * DAY_MS } }, DESK, file), `venue ${file.id}`);
  }
}

async function beginAll(house: House, now: number): Promise<readonly Story[]> {
  const stories: Story[] = [];
  for (const one of demoBookings(todayAt(tidewheel.timeZone, now))) stories.push(await beginStory(house, one, now));
  return stories;
}

/** Stories whose couple has answered and done no more, though their state lies further on. */
async function brokenOff(house: House, now: number): Promise<readonly Story[]> {
  const rows = await bookings.list(house.store.db);
  const telling = new Map(demoBookings(todayAt(tidewheel.timeZone, now)).map((one): readonly [string, DemoBooking] => [one.email, one]));
  return rows.flatMap((row) => {
    const one = telling.get(row.email);
    if (!one || row.state !== "started" || row.chosen !== null) return [];
    return [{ one: { ...one, date: row.eventDate }, reference: row.reference, time: Date.parse(row.changedAt), revision: row.revision }];
  });
}

async function endAll(house: House, { stories, now, say }: { readonly stories: readonly Story[]; readonly now: number; readonly say: (words: string) => void }): Promise<void> {
  const open = stories.filter(({ one }) => one.state !== "invited" && one.state !== "started");
  for (const [index, story] of open.entries()) {
    const state = await endStory(house, story, now).catch((error: unknown) => `left where it is (${error instanceof Error ? error.message : String(error)})`);
    say(`Demo, ${index + 1} of ${open.length}: ${story.one.couple.join(" & ")}, ${state}`);
  }
}
