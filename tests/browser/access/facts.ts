import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { readConfig } from "../../../lib/config";
import { tidewheel } from "../../../lib/demo";
import type { ArrangeResult } from "../../../lib/layout";
import { bench } from "../../../lib/server/bench";
import { openHouse } from "../../../lib/server/house";
import { makeLog } from "../../../lib/server/log";
import {
  addBooking, adjusting, agreeRevision, closeBooking, getBooking, invitePerson, lateChangeOf, listLookLinks, makeLookLink, openLink, remindNow, workOutChange, type Actor, type House,
} from "../../../lib/service";
import { workOutWaiting } from "../../../lib/service/late-works";
import { deskLink } from "../../../lib/service/desk-link";
import { saveVenue } from "../../../lib/service/venues";
import { outbox } from "../../../lib/store";
import { chooseFirst, sendFirst, value } from "../../contract/support/line";
import { emptyDatabase, postgresServer } from "../../contract/support/postgres";
import { freePort, started } from "../ground";

export const ROLES = ["couple A", "couple B", "family", "desk look", "desk", "manager", "nobody"] as const;
export type Role = (typeof ROLES)[number];
/** How far couple A's booking has come when it is asked about. */
export type Stand = "invited" | "chosen" | "sent" | "agreed" | "changed" | "closed";

/** Couple A's booking and all that its own pages would send back about it; the cookies of those who ask. */
export type Facts = {
  readonly reference: string; readonly email: string; readonly revision: string; readonly fingerprint: string; readonly layout: string;
  readonly bench: { readonly seen: string; readonly scene: string; readonly piece: string }; readonly change: string;
  readonly coupleKey: string; readonly deskKey: string; readonly quietKey: string; readonly lookId: string; readonly mailId: string; readonly venueVersion: string;
  /** One of the desk who is let go. */
  readonly leaving: string;
  readonly cookies: Readonly<Record<Role, string>>;
};
export type World = {
  readonly base: string;
  readonly factsAt: (stand: Stand) => Promise<Facts>;
  /** A mark of everything that the house keeps, another after any change; what belongs to couple B is left out, and so is the note of when a visit was last seen. */
  readonly kept: () => Promise<string>;
  /** Every booking's row, by its reference. */
  readonly bookings: () => Promise<ReadonlyMap<string, Readonly<Record<string, unknown>>>>;
  readonly close: () => Promise<void>;
};

const MANAGER = "manager@mill.example";
const DESK: Actor = { kind: "desk", person: MANAGER, role: "manager" };
const TABLES = ["venue_versions", "bookings", "revisions", "links", "sessions", "mails", "history", "held_rooms", "people", "late_changes", "late_works", "adjustments", "venue_drafts", "staff", "link_asks"] as const;
type Table = (typeof TABLES)[number];
/** The column by which a table tells whose booking a row is about. */
const APART: Readonly<Partial<Record<Table, string>>> = {
  bookings: "reference", revisions: "booking", links: "booking", sessions: "booking", mails: "booking", history: "booking", held_rooms: "booking", late_changes: "booking", late_works: "booking", adjustments: "booking", link_asks: "booking",
};
/** What a visit notes of itself is no change. */
const MARKS: Readonly<Partial<Record<Table, string>>> = { sessions: "(to_jsonb(sessions) - 'seen_at')::text" };

/** One answer of the engine for all bookings: which days they are on moves no table. */
function askedOnce(): Pick<House["works"], "arrange"> {
  let once: Promise<ArrangeResult> | undefined;
  return { arrange: (...args) => (once ??= bench.arrange(...args)) };
}

/** The house as a venue runs it, on PostgreSQL and without a worker, so that nothing moves but by what is asked. */
export async function world(): Promise<World> {
  const folder = mkdtempSync(join(tmpdir(), "marquetry-access-"));
  const postgres = await postgresServer();
  const { url } = await emptyDatabase(postgres.url);
  const port = String(await freePort());
  const settings = {
    PORT: port, MARQUETRY_ORIGIN: "", MARQUETRY_HOST: "127.0.0.1", MARQUETRY_DEMO: "1", MARQUETRY_LOG: "warn", MARQUETRY_DATA_DIR: join(folder, "unused"), DATABASE_URL: url,
    MAIL_URL: "", MARQUETRY_WORKER: "0", MARQUETRY_DESK: MANAGER, MARQUETRY_MAIL_FROM: "plans@mill.example",
  };
  const config = readConfig(settings);
  if (!config.ok) throw new Error(config.error.join("\n"));
  const opened = await openHouse(config.value, makeLog("error"));
  if (!opened.ok) throw new Error(opened.error);
  const house: House = { ...opened.value.house, works: { ...bench, ...askedOnce() } };
  value(await saveVenue(house, DESK, tidewheel));
  for (const [role, email] of [["desk", "desk@mill.example"], ["desk-look", "look@mill.example"]] as const) value(await invitePerson(house, DESK, { values: { email, role } }));
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const server = await started(settings);

  const cookieBy = async (key: string): Promise<string> => { const { cookie } = value(await openLink(house, { key })); return `${cookie.name}=${cookie.value}`; };
  const deskKey = (person: string): Promise<string> => house.store.transaction(async (tx) => lastOf(await deskLink(tx, house, { person, lastsMs: 3_600_000, once: false })));
  const added = async (names: string, email: string): Promise<string> => {
    days += 1;
    const date = new Date(Date.UTC(2029, 0, days)).toISOString().slice(0, 10);
    return value(await addBooking(house, DESK, { values: { names, email, package: "dry-hire", date, mail: "yes" } })).reference;
  };
  const mailed = async (reference: string): Promise<string> => /\/open\/([\w-]{32})/.exec((await outbox.list(house.store.db, { booking: reference })).find((one) => one.kind === "invitation")?.bodyText ?? "")?.[1] ?? "";
  let days = 0;
  const others = new Map<Stand, { readonly reference: string; readonly cookie: string }>();

  /** Brings a booking as far as that. */
  async function walk(reference: string, stand: Stand): Promise<void> {
    if (stand === "invited") return;
    if (stand === "chosen") { await chooseFirst(house, reference); return; }
    if (stand === "closed") { value(await closeBooking(house, DESK, { reference, reason: "" })); return; }
    const { fingerprint } = await sendFirst(house, reference);
    if (stand === "sent") return;
    value(await agreeRevision(house, DESK, { reference, number: 1, fingerprint }));
    if (stand === "changed") { value(await workOutChange(house, DESK, { reference, values: { adults: "39" } })); await workOutWaiting(house); }
  }
  const deskCookies = { "desk look": await cookieBy(await deskKey("look@mill.example")), desk: await cookieBy(await deskKey("desk@mill.example")), manager: await cookieBy(await deskKey(MANAGER)) };

  async function factsAt(stand: Stand): Promise<Facts> {
    if (!others.has(stand)) {
      const reference = await added("Bea & Bob", `b.${stand}@example.org`), cookie = await cookieBy(await mailed(reference));
      await walk(reference, stand);
      others.set(stand, { reference, cookie });
    }
    const email = `a${days}@example.org`, reference = await added("Ada & Abe", email), couple: Actor = { kind: "couple", reference };
    const coupleKey = await mailed(reference), cookie = await cookieBy(coupleKey);
    const leaving = `leaving${days}@mill.example`;
    value(await invitePerson(house, DESK, { values: { email: leaving, role: "desk" } }));
    value(await remindNow(house, DESK, { reference }));
    const look = value(await makeLookLink(house, couple, { reference, label: "Aunt", email: "" }));
    const lookCookie = await cookieBy(lastOf(look.href)), lookId = value(await listLookLinks(house, couple, { reference }))[0]?.id ?? "";
    await walk(reference, stand);
    const seen = value(await getBooking(house, DESK, { reference }));
    const mails = await outbox.list(house.store.db, { booking: reference });
    const hand = await adjusting(house, DESK, { reference }), change = await lateChangeOf(house, DESK, { reference });
    const scene = hand.ok ? hand.value.layout.scenes.find((one) => one.id === "meal") : undefined;
    return {
      reference, email, revision: String(seen.revision), fingerprint: seen.revisions.at(-1)?.fingerprint ?? "", layout: "a", coupleKey, lookId,
      bench: { seen: hand.ok ? hand.value.seen : "", scene: "meal", piece: scene?.items.find((one) => one.kind === "table")?.id ?? "" },
      change: change.ok ? (change.value?.madeAt ?? "") : "", deskKey: await deskKey(MANAGER), quietKey: /\/quiet\/([\w-]{32})/.exec(mails.map((one) => one.bodyText).join("\n"))?.[1] ?? "",
      mailId: String(mails[0]?.id ?? ""), venueVersion: String(seen.venueVersion), leaving,
      cookies: { "couple A": cookie, "couple B": others.get(stand)?.cookie ?? "", family: lookCookie, ...deskCookies, nobody: "" },
    };
  }

  const settled = async (): Promise<void> => {
    // A late change that was asked for is worked out behind its page: it is waited for.
    while ((await client.query("select 1 from late_works where fault is null")).rows.length > 0) await new Promise((done) => { setTimeout(done, 200); });
  };
  /** A row that was written anew, even with the same in it, has another transaction and another place: nothing long has to be read. */
  const kept = async (): Promise<string> => {
    await settled();
    const apart = [...others.values()].map((one) => one.reference);
    const { rows } = await client.query<{ readonly mark: string }>(TABLES.map((table) => `select '${table}' || coalesce(string_agg(${MARKS[table] ?? "ctid || ' ' || xmin"}, ',' order by ${MARKS[table] ?? "ctid"}), '') as mark from ${table}${APART[table] ? ` where ${APART[table]} is null or ${APART[table]} <> all ($1)` : ""}`).join(" union all "), [apart]);
    return rows.map(({ mark }) => mark).join("\n");
  };
  const bookings = async (): Promise<ReadonlyMap<string, Readonly<Record<string, unknown>>>> => {
    await settled();
    const { rows } = await client.query<{ readonly row: Readonly<Record<string, unknown>> }>("select to_jsonb(bookings) as row from bookings");
    return new Map(rows.map(({ row }) => [String(row["reference"]), row]));
  };
  const close = async (): Promise<void> => {
    const ended = new Promise((done) => { server.once("exit", done); });
    server.kill("SIGTERM");
    await ended;
    await client.end();
    await opened.value.close();
    await postgres.remove();
    rmSync(folder, { recursive: true, force: true });
  };
  return { base: `http://localhost:${port}`, factsAt, kept, bookings, close };
}

const lastOf = (href: string): string => new URL(href).pathname.split("/").at(-1) ?? "";
