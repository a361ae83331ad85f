import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { spawn, type ChildProcess } from "node:child_process";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { sql } from "kysely";
import { seeded } from "../../lib/base";
import { findTool, TOOLS } from "../../lib/cli/system";
import { tidewheel } from "../../lib/demo";
import { listQueue, type Actor, type QueueFilter } from "../../lib/service";
import { deskLink } from "../../lib/service/ask-link";
import type { House } from "../../lib/service/house";
import { saveVenue } from "../../lib/service/venues";
import { bench as works } from "../../lib/server/bench";
import { search } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { emptyDatabase, postgresServer } from "../contract/support/postgres";

const DESK: Extract<Actor, { kind: "desk" }> = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };
const NOW = Date.UTC(2027, 0, 10, 12);
const FEW = 50, MANY = 10_000, TIMES = 15;
const least = (list: readonly number[]): number => Math.min(...list);

type Place = { readonly dataDir: string; readonly databaseUrl?: string };
type Filled = { readonly house: House; readonly close: () => Promise<void> };

/** A store with so many bookings in every state, each with a history and a mail, as years at a venue leave them. */
async function filled(count: number, place: Place): Promise<Filled> {
  const opened = await openStore(place);
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
  await search.noteMissing(store.db);
  await sql`analyze`.execute(store.db);
  return { house, close: () => store.close() };
}

type Asked = { readonly filter?: QueueFilter; readonly from?: string; readonly search?: string };
const ASKS: readonly (readonly [string, Asked])[] = [
  ["all", {}], ["late", { filter: "overdue" }], ["yours to do", { filter: "waiting" }], ["agreed", { filter: "agreed" }], ["from the middle", { from: "after~0~2027-12-01~Q1" }], ["last page", { from: "last" }],
  ["found by name", { search: "ana 17" }], ["found by reference", { search: "q49" }], ["found by what all have", { search: "example" }],
];
/** The least wall time of a call, ms, since another process can only add to it; and the mean of this process's own time, which they cannot add to. */
type Spent = { readonly wall: number; readonly cpu: number };

async function timesOf({ house }: Filled): Promise<ReadonlyMap<string, Spent>> {
  const out = new Map<string, Spent>();
  for (const [name, ask] of ASKS) {
    for (let i = 0; i < 5; i += 1) await listQueue(house, DESK, ask);
    const spent: number[] = [], began = process.cpuUsage();
    for (let i = 0; i < TIMES; i += 1) {
      const start = performance.now(), seen = await listQueue(house, DESK, ask);
      if (!seen.ok) throw new Error("the queue was refused");
      spent.push(performance.now() - start);
    }
    const { user, system } = process.cpuUsage(began);
    out.set(name, { wall: least(spent), cpu: (user + system) / 1000 / TIMES });
  }
  return out;
}

const freePort = (): Promise<number> => new Promise((done) => {
  const probe = createServer().listen(0, "127.0.0.1", () => { const at = probe.address(); probe.close(() => done(at !== null && typeof at === "object" ? at.port : 0)); });
});

/** Waits until a server answers; fails with what it said where it ends instead. */
async function answering(base: string, server: ChildProcess): Promise<void> {
  let said = "";
  server.stderr?.on("data", (chunk: Buffer) => { said += chunk.toString("utf8"); });
  while (server.exitCode === null) {
    if (await fetch(`${base}/api/health`).then((answer) => answer.ok, () => false)) return;
    await wait(200);
  }
  throw new Error(`the server did not start:\n${said}`);
}

/** The whole page of the built house over the network's own way in, ms: the least of some. */
async function pageOf(place: Place, { house, close }: Filled): Promise<number> {
  const key = new URL(await house.store.transaction((tx) => deskLink(tx, { ...house, clock: { now: () => Date.now() } }, { person: DESK.person, lastsMs: 3_600_000, once: true }))).pathname.split("/").at(-1) ?? "";
  await close();
  const port = await freePort(), base = `http://127.0.0.1:${port}`;
  const server = spawn(process.execPath, ["--import", "tsx", "lib/cli/serve.ts"], {
    env: { ...process.env, PORT: String(port), MARQUETRY_ORIGIN: base, MARQUETRY_DEMO: "1", MARQUETRY_WORKER: "1", MARQUETRY_DESK: DESK.person, DATABASE_URL: place.databaseUrl ?? "", MAIL_URL: "", MARQUETRY_DATA_DIR: place.dataDir }, stdio: ["ignore", "ignore", "pipe"],
  });
  try {
    await answering(base, server);
    const opened = await fetch(`${base}/desk/open/enter`, { method: "POST", redirect: "manual", headers: { Origin: base }, body: new URLSearchParams({ key }) });
    const cookie = opened.headers.getSetCookie().map((line) => line.split(";")[0]).join("; ");
    const spent: number[] = [];
    for (let i = 0; i < TIMES + 5; i += 1) {
      const start = performance.now(), page = await fetch(`${base}/desk`, { headers: { Cookie: cookie }, redirect: "manual" });
      await page.text();
      if (page.status !== 200) throw new Error(`the queue's page answers ${page.status}`);
      if (i >= 5) spent.push(performance.now() - start);
    }
    return least(spent);
  } finally {
    if (server.exitCode === null) await new Promise((gone) => { server.once("exit", gone); server.kill("SIGTERM"); });
  }
}

function told(where: string, few: ReadonlyMap<string, Spent>, many: ReadonlyMap<string, Spent>): void {
  const column = (text: string | number): string => (typeof text === "number" ? text.toFixed(2) : text).padStart(11);
  console.log(`${`the queue, ${where}, ms`.padEnd(34)}${[FEW, MANY].map((n) => `${n}`.padStart(11)).join("")}${column("ratio")}${column("cpu few")}${column("cpu many")}${column("ratio")}`);
  for (const [name, a] of few) { const b = many.get(name); if (b) console.log(`${name.padEnd(34)}${column(a.wall)}${column(b.wall)}${column(b.wall / a.wall)}${column(a.cpu)}${column(b.cpu)}${column(b.cpu / a.cpu)}`); }
}

async function embedded(): Promise<void> {
  const times: ReadonlyMap<string, Spent>[] = [], pages: number[] = [];
  for (const count of [FEW, MANY]) {
    const place = { dataDir: mkdtempSync(join(tmpdir(), "marquetry-queue-")) }, store = await filled(count, place);
    times.push(await timesOf(store));
    if (times[0] && times[1]) told("embedded", times[0], times[1]);
    if (existsSync(".next/BUILD_ID")) pages.push(await pageOf(place, store)); else await store.close();
    rmSync(place.dataDir, { recursive: true, force: true });
  }
  const [small, large] = pages;
  console.log(small === undefined || large === undefined ? "the whole page: not built, `npm run build` first" : `${"the whole page, embedded".padEnd(34)}${small.toFixed(1).padStart(11)}${large.toFixed(1).padStart(11)}${(large / small).toFixed(2).padStart(11)}`);
}

async function onPostgres(): Promise<void> {
  if (!findTool(TOOLS.postgresql)) { console.log("the queue on PostgreSQL: no server here"); return; }
  const server = await postgresServer(), times: ReadonlyMap<string, Spent>[] = [];
  try {
    for (const count of [FEW, MANY]) {
      const database = await emptyDatabase(server.url), store = await filled(count, { dataDir: tmpdir(), databaseUrl: database.url });
      times.push(await timesOf(store));
      await store.close();
      await database.remove();
    }
  } finally { await server.stop(); await server.remove(); }
  const [few, many] = times;
  if (few && many) told("PostgreSQL", few, many);
}

/** How long one page of the queue takes with 50 bookings and with 10,000, on both databases: the use case alone, and the whole page where the house is built. */
export async function queueBench(): Promise<void> {
  await embedded();
  await onPostgres();
}
