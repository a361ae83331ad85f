import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import { seeded } from "../../lib/base";
import { dueDate, makeReference, STATES } from "../../lib/booking";
import { findTool, TOOLS } from "../../lib/cli/system";
import { tidewheel } from "../../lib/demo";
import { listQueue, type Actor, type QueueFilter } from "../../lib/service";
import { deskLink } from "../../lib/service/desk-link";
import type { House } from "../../lib/service/house";
import { saveVenue } from "../../lib/service/venues";
import { bench as works } from "../../lib/server/bench";
import { search } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { emptyDatabase, postgresServer } from "../contract/support/postgres";
import { begun, ended, freePort, ready, share } from "./serving";

const DESK: Extract<Actor, { kind: "desk" }> = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };
const FEW = 50, MANY = 10_000, TIMES = 15, WARM = 5;
const DAY = 86_400_000;
const middle = (list: readonly number[]): number => share(list, 0.5);

type Place = { readonly dataDir: string; readonly databaseUrl?: string };
type Filled = { readonly place: Place; readonly house: House; readonly close: () => Promise<void> };

const FIRST = ["Ana", "Zoë", "李 明", "Måns", "Siobhán", "Иван", "Amélie", "Tom", "Ngọc", "Grace"], LAST = ["Ashdown", "Brennan", "O’Shea", "Nguyễn", "Petrova", "Sørensen", "Kowalski", "Ferreira"];

/** So many bookings in every state, as years at a venue leave them; their days from a month ahead on, the same for one number each time. */
function rowsOf(count: number) {
  const random = seeded(17), today = Date.now();
  const pick = (from: readonly string[]): string => from[Math.floor(random() * from.length)] ?? "";
  const references = new Set<string>();
  while (references.size < count) references.add(makeReference(random));
  return [...references].map((reference, n) => {
    const eventDate = new Date(today + (32 + Math.floor(random() * 700)) * DAY).toISOString().slice(0, 10);
    return {
      reference, names: [`${pick(FIRST)} ${pick(LAST)}`, `${pick(FIRST)} ${pick(LAST)}`], email: `couple${n}@example.org`, event: eventDate, due: dueDate(eventDate, 42), state: STATES[n % STATES.length],
      draft: { guests: { adults: 40 + (n % 60) } },
    };
  });
}

/** A store so filled, each booking with its history and a mail that left: a table by one statement, all of them in one transaction. */
async function filled(count: number, place: Place): Promise<Filled> {
  const opened = await openStore(place);
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  const store = opened.value;
  const house: House = { origin: "http://localhost:1", demo: true, deskPeople: [DESK.person], mailFrom: DESK.person, store, clock: { now: () => Date.now() }, random: seeded(1), works, poke: () => {} };
  await saveVenue(house, DESK, tidewheel);
  await store.transaction(async (tx) => {
    await sql`insert into bookings (reference, venue, names, email, package, event_date, due_date, state, revision, draft, created_at, changed_at)
      select reference, 'tidewheel-mill', names, email, 'dry-hire', event, due, state, 0, draft, now(), now()
      from json_to_recordset(${JSON.stringify(rowsOf(count))}::json) as r (reference text, names json, email text, event date, due date, state text, draft json)`.execute(tx);
    await sql`insert into history (booking, at, who, what, data) select reference, now(), 'couple', what, '{}' from bookings, unnest(array['added', 'opened', 'link-mailed']) what`.execute(tx);
    await sql`insert into mails (kind, booking, recipient, from_name, subject, body_text, body_html, message_id, state, due_at, queued_at)
      select 'invitation', reference, email, 'Tidewheel Mill', 'Your room layout', 'Open the link.', '<p>Open the link.</p>', '<' || reference || '@localhost>', 'sent', now(), now() from bookings`.execute(tx);
    await search.noteMissing(tx);
  });
  // As both databases are once a day.
  await sql`vacuum (analyze)`.execute(store.db);
  return { place, house, close: () => store.close() };
}

type Asked = { readonly filter?: QueueFilter; readonly from?: string; readonly search?: string };
/** What is asked, and the same as the page's address has it. */
const ASKS: readonly (readonly [string, Asked, string])[] = [
  ["all", {}, ""], ["late", { filter: "overdue" }, "?show=overdue"], ["yours to do", { filter: "waiting" }, "?show=waiting"], ["agreed", { filter: "agreed" }, "?show=agreed"], ["last page", { from: "last" }, "?from=last"],
  ["found by name", { search: "brennan" }, "?find=brennan"], ["found by reference", { search: "QK" }, "?find=QK"], ["found by address", { search: "couple17@" }, "?find=couple17%40"], ["found by what all have", { search: "example" }, "?find=example"],
];

type Pair<T> = { readonly few: T; readonly many: T };
type Measured = { readonly times: readonly number[]; readonly lines: number };
type Times = ReadonlyMap<string, Pair<Measured>>;
/** Asks one thing; tells how many lines came. */
type Ask = (which: (typeof ASKS)[number]) => Promise<number>;

/** Each kind in turn, few and many by turns, so that what else the machine does falls on both. */
async function alternately(ask: Pair<Ask>): Promise<Times> {
  const out = new Map<string, Pair<Measured>>();
  for (const which of ASKS) {
    const spent: Pair<number[]> = { few: [], many: [] }, lines = { few: 0, many: 0 };
    for (let i = 0; i < WARM + TIMES; i += 1) for (const size of ["few", "many"] as const) {
      const start = performance.now();
      lines[size] = await ask[size](which);
      if (i >= WARM) spent[size].push(performance.now() - start);
    }
    out.set(which[0], { few: { times: spent.few, lines: lines.few }, many: { times: spent.many, lines: lines.many } });
  }
  return out;
}

const byTheVerb = ({ house }: Filled): Ask => async ([, ask]) => {
  const seen = await listQueue(house, DESK, ask);
  if (!seen.ok) throw new Error("the queue was refused");
  return seen.value.rows.length;
};

type Served = { readonly ask: Ask; readonly end: () => Promise<void> };

/** The built house on a store that is filled and let go, and a visitor of the desk. */
async function served({ place, house, close }: Filled): Promise<Served> {
  const key = new URL(await house.store.transaction((tx) => deskLink(tx, house, { person: DESK.person, lastsMs: 3_600_000, once: true }))).pathname.split("/").at(-1) ?? "";
  await close();
  const port = await freePort(), base = `http://localhost:${port}`;
  const server = begun("serve", {
    PORT: String(port), MARQUETRY_ORIGIN: base, MARQUETRY_DEMO: "0", MARQUETRY_LOG: "error", MARQUETRY_DESK: DESK.person, MARQUETRY_DATA_DIR: place.dataDir, DATABASE_URL: place.databaseUrl ?? "",
    // The embedded database has room for one process: there the server keeps the dates too.
    MARQUETRY_WORKER: place.databaseUrl === undefined ? "1" : "0", MAIL_URL: "", MARQUETRY_MAIL_FROM: DESK.person,
  });
  try {
    await ready(server, base);
    const opened = await fetch(`${base}/desk/open/enter`, { method: "POST", redirect: "manual", headers: { Origin: base }, body: new URLSearchParams({ key }) });
    const cookie = opened.headers.getSetCookie().map((line) => line.split(";")[0]).join("; ");
    const ask: Ask = async ([, , query]) => {
      const page = await fetch(`${base}/desk${query}`, { headers: { Cookie: cookie }, redirect: "manual" });
      const text = await page.text();
      if (page.status !== 200) throw new Error(`the queue's page answers ${page.status}`);
      return new Set(text.match(/\/desk\/bookings\/[A-Z0-9]{4}-\d\d/g)).size;
    };
    return { ask, end: () => ended(server) };
  } catch (error) {
    await ended(server);
    throw error;
  }
}

function told(where: string, times: Times): void {
  const column = (text: string | number): string => (typeof text === "number" ? text.toFixed(2) : text).padStart(12);
  console.log(`${`${where}, middle ms`.padEnd(40)}${column(`of ${FEW}`)}${column(`of ${MANY}`)}${column("ratio")}${column("lines")}`);
  for (const [name, { few, many }] of times) console.log(`${name.padEnd(40)}${column(middle(few.times))}${column(middle(many.times))}${column(middle(many.times) / middle(few.times))}${column(`${few.lines}, ${many.lines}`)}`);
}

async function measured(where: string, places: Pair<Place>): Promise<void> {
  const stores = { few: await filled(FEW, places.few), many: await filled(MANY, places.many) };
  told(`the queue's verb, ${where}`, await alternately({ few: byTheVerb(stores.few), many: byTheVerb(stores.many) }));
  if (!existsSync(".next/BUILD_ID")) { console.log("the whole page: not built, `npm run build` first"); await stores.few.close(); await stores.many.close(); return; }
  const few = await served(stores.few);
  try {
    const many = await served(stores.many);
    try { told(`the whole page, ${where}`, await alternately({ few: few.ask, many: many.ask })); } finally { await many.end(); }
  } finally { await few.end(); }
}

async function embedded(): Promise<void> {
  const place = (): Place => ({ dataDir: mkdtempSync(join(tmpdir(), "marquetry-queue-")) }), places = { few: place(), many: place() };
  try { await measured("embedded", places); } finally { for (const { dataDir } of [places.few, places.many]) rmSync(dataDir, { recursive: true, force: true }); }
}

async function onPostgres(): Promise<void> {
  if (!findTool(TOOLS.postgresql)) { console.log("the queue on PostgreSQL: no server here"); return; }
  const server = await postgresServer();
  try {
    const place = async (): Promise<Place> => ({ dataDir: tmpdir(), databaseUrl: (await emptyDatabase(server.url)).url });
    await measured("PostgreSQL", { few: await place(), many: await place() });
  } finally { await server.remove(); }
}

/** How long one page of the queue takes with 50 bookings and with 10,000, on both databases: the verb alone, and the whole page over HTTP where the house is built. */
export async function queueBench(): Promise<void> {
  await embedded();
  await onPostgres();
}
