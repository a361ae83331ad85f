import { sql } from "kysely";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seeded } from "../../lib/base";
import { tidewheel } from "../../lib/demo";
import { listQueue, type Actor, type QueueFilter } from "../../lib/service";
import type { House } from "../../lib/service/house";
import { saveVenue } from "../../lib/service/venues";
import { bench as works } from "../../lib/server/bench";
import { openStore, storeErrorText } from "../../lib/store/open";

const DESK: Extract<Actor, { kind: "desk" }> = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };
const NOW = Date.UTC(2027, 0, 10, 12);
const TIMES = 15;
const least = (list: readonly number[]): number => Math.min(...list);

/** A store with so many bookings in every state, each with a history and a mail, as a year at a venue leaves them. */
async function filled(count: number): Promise<{ readonly house: House; readonly close: () => Promise<void> }> {
  const folder = mkdtempSync(join(tmpdir(), "marquetry-queue-")), opened = await openStore({ dataDir: folder });
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  const store = opened.value;
  const house: House = { origin: "http://localhost:1", demo: true, deskPeople: [DESK.person], mailFrom: DESK.person, store, clock: { now: () => NOW }, random: seeded(1), works, poke: () => {} };
  await saveVenue(house, DESK, tidewheel);
  await sql`insert into bookings (reference, venue, names, email, package, event_date, due_date, state, revision, draft, created_at, changed_at)
    select 'Q' || n, 'tidewheel-mill', json_build_array('Ana ' || n, 'Bo ' || n), 'c' || n || '@example.org', 'dry-hire', date '2027-01-01' + (n * 7919) % 700, date '2027-01-01' + (n * 7919) % 700 - 42,
      (array['invited','started','sent','returned','agreed','closed'])[1 + n % 6], 0, json_build_object('guests', json_build_object('adults', 40 + n % 60)), now(), now() from generate_series(1, ${count}) n`.execute(store.db);
  await sql`insert into history (booking, at, who, what, data) select 'Q' || n, now(), 'couple', what, '{}' from generate_series(1, ${count}) n, unnest(array['added','opened','link-mailed']) what`.execute(store.db);
  await sql`insert into mails (kind, booking, recipient, from_name, subject, body_text, body_html, message_id, state, due_at, queued_at)
    select 'invitation', 'Q' || n, 'c@example.org', 'Mill', 's', 't', 'h', 'm', 'sent', now(), now() from generate_series(1, ${count}) n`.execute(store.db);
  await sql`analyze`.execute(store.db);
  return { house, close: async () => { await store.close(); rmSync(folder, { recursive: true, force: true }); } };
}

async function timesOf(count: number): Promise<ReadonlyMap<string, number>> {
  const { house, close } = await filled(count);
  const asks: readonly (readonly [string, { readonly filter?: QueueFilter; readonly page?: number; readonly search?: string }])[] = [["all", {}], ["late", { filter: "overdue" }], ["yours to do", { filter: "waiting" }], ["last page", { page: 1e6 }], ["found by name", { search: "ana 17" }]];
  const out = new Map<string, number>();
  for (const [name, ask] of asks) {
    const spent: number[] = [];
    for (let i = 0; i < 5; i += 1) await listQueue(house, DESK, ask);
    for (let i = 0; i < TIMES; i += 1) {
      const start = performance.now(), seen = await listQueue(house, DESK, ask);
      if (!seen.ok) throw new Error("the queue was refused");
      spent.push(performance.now() - start);
    }
    out.set(name, least(spent));
  }
  await close();
  return out;
}

/** How long one page of the queue takes with 50 bookings and with 10,000, least of some, since another process can only add to it; the last column is their ratio. A page of it takes some sixty more to make. */
export async function queueBench(): Promise<void> {
  const few = await timesOf(50), many = await timesOf(10_000);
  console.log(`${"the queue, ms".padEnd(24)}${"50".padStart(10)}${"10,000".padStart(10)}${"ratio".padStart(10)}`);
  for (const [name, ms] of few) { const most = many.get(name) ?? NaN; console.log(`${name.padEnd(24)}${ms.toFixed(1).padStart(10)}${most.toFixed(1).padStart(10)}${(most / ms).toFixed(2).padStart(10)}`); }
}
