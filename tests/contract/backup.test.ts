import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { tidewheel } from "../../lib/demo";
import { agreeRevision } from "../../lib/service";
import { fingerprintOf } from "../../lib/service/agree-revision";
import { history, outbox, revisions, type Store } from "../../lib/store";
import { backup, readBackup, restore, LEFT_OUT, TABLES, type Backup } from "../../lib/store/backup";
import { migrate, migrationNames } from "../../lib/store/migrate";
import { openAsItIs, openStore, storeErrorText } from "../../lib/store/open";
import { added, DESK, testHouse, type TestHouse } from "./support/house";
import { sendFirst } from "./support/line";
import { blankPlace, type Place } from "./support/place";
import { tempFolder } from "./support/temp";

const folder = tempFolder();
const FILE = join(folder.path, "mill.backup");
let house: TestHouse;
let place: Place;
let close: () => Promise<void>;
let agreed = "";
const places: Place[] = [];
const blank = async (): Promise<Place> => { const made = await blankPlace(); places.push(made); return made; };

beforeAll(async () => {
  ({ house, place, close } = await testHouse());
  agreed = await added(house, { names: "Zoë \"Ånd\" \\ O'Neill & يسرى" });
  await agreeRevision(house, DESK, { reference: agreed, ...await sendFirst(house, agreed) });
  await added(house);
});
afterAll(async () => {
  await close();
  for (const one of places) await one.remove();
  folder.remove();
});

const run = (script: string, file: string, where: Place) => new Promise<{ readonly code: number | null; readonly said: string }>((resolve) => {
  const child = spawn(process.execPath, ["--import", "tsx", `lib/cli/${script}.ts`, file], { env: { ...process.env, DATABASE_URL: where.databaseUrl ?? "", MARQUETRY_DATA_DIR: where.dataDir }, stdio: ["ignore", "ignore", "pipe"] });
  let said = "";
  child.stderr.on("data", (chunk: Buffer) => { said += chunk.toString("utf8"); });
  child.once("close", (code) => { resolve({ code, said }); });
});
async function opened(where: Place, how = openStore): Promise<Store> {
  const one = await how(where);
  if (!one.ok) throw new Error(storeErrorText(one.error));
  return one.value;
}
function whole(lines: readonly string[]): Backup {
  const read = readBackup(lines);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}
const rowsOf = async (store: Store): Promise<readonly string[]> => (await backup(store, "")).lines.slice(1, -1);

describe("a backup", () => {
  it("knows every table that there is", async () => {
    const { rows } = await sql<{ readonly name: string }>`select table_name as name from information_schema.tables where table_schema = current_schema()`.execute(house.store.db);
    expect(rows.map((one) => one.name).filter((name) => !name.startsWith("kysely_")).sort()).toEqual([...TABLES, ...LEFT_OUT].sort());
  });

  it("is put back into an empty store row for row, and the house goes on there", async () => {
    const { lines, counts } = await backup(house.store, "2027-01-10T12:00:00.000Z");
    expect(counts).toMatchObject({ bookings: 2, revisions: 1 });
    const store = await opened(await blank(), openAsItIs);
    expect(await restore(store, whole(lines))).toMatchObject({ ok: true, value: { bookings: 2, revisions: 1 } });
    expect(await rowsOf(store)).toEqual(await rowsOf(house.store));
    // The agreed revision still gives its fingerprint, the history still takes no change, and the next row's number is free.
    const [revision] = await revisions.listOf(store.db, agreed);
    if (!revision) throw new Error("the revision is gone");
    expect(await fingerprintOf(store.db, tidewheel.id, revision)).toBe(revision.fingerprint);
    await expect(sql`delete from history`.execute(store.db)).rejects.toThrow("rows are only added");
    await history.add(store.db, { booking: agreed, at: "2027-01-10T12:00:00.000Z", who: "desk", what: "looked" });
    const waiting = (await outbox.counts(store.db)).waiting;
    await added({ ...house, store });
    expect((await outbox.counts(store.db)).waiting).toBe(waiting + 1);
    await store.close();
  });

  it("is not put where something is, nor from a file that is cut short, changed, or newer", async () => {
    const { lines } = await backup(house.store, "");
    const before = await rowsOf(house.store);
    expect(await restore(house.store, whole(lines))).toEqual({ ok: false, error: { code: "not-empty" } });
    expect(await rowsOf(house.store)).toEqual(before);
    const changed = lines.map((line) => line.replace(/couple\d+@/, "another@"));
    expect(changed).not.toEqual(lines);
    for (const bad of [lines.slice(0, -2), changed, ["{}"], [""], ["no JSON"]]) {
      expect(readBackup(bad)).toMatchObject({ ok: false, error: { code: "not-a-backup" } });
    }
    const newer = lines.slice(0, -1).map((line) => line.replace(migrationNames().at(-1) ?? "none", "9999-later"));
    const sha256 = createHash("sha256").update(newer.join("\n")).digest("hex");
    expect(readBackup([...newer, JSON.stringify({ sha256 })])).toEqual({ ok: false, error: { code: "newer", migration: "9999-later" } });
  });

  it("of an older version is brought up to date", async () => {
    const old = await opened(await blank(), openAsItIs);
    expect(await migrate(old.db, "0002-counts")).toMatchObject({ ok: true });
    await sql`insert into bookings values ('AAAA-33', 'mill', '["A"]', 'a@example.org', 'dry-hire', '2027-06-12', '2027-05-01', 'invited', 0, '{}', null, null, now(), now())`.execute(old.db);
    const { lines } = await backup(old, "");
    await old.close();
    const store = await opened(await blank(), openAsItIs);
    expect(await restore(store, whole(lines))).toMatchObject({ ok: true, value: { bookings: 1 } });
    expect(await store.db.selectFrom("bookings").select(["reference", "setAt"]).execute()).toEqual([{ reference: "AAAA-33", setAt: null }]);
    await store.close();
  });
});

describe("npm run backup and npm run restore", () => {
  it("write one file for its owner alone, never over another, and put it back", async () => {
    const rows = await rowsOf(house.store);
    // The embedded database has room for one process.
    await house.store.close();
    expect(await run("backup", FILE, place)).toMatchObject({ code: 0, said: expect.stringContaining("2 bookings") });
    expect(statSync(FILE).mode & 0o777).toBe(0o600);
    expect(existsSync(`${FILE}.part`)).toBe(false);
    expect(await run("backup", FILE, place)).toMatchObject({ code: 2 });
    const target = await blank();
    expect(await run("restore", FILE, target)).toMatchObject({ code: 0, said: expect.stringContaining("2 bookings") });
    writeFileSync(`${FILE}.short`, gzipSync(gunzipSync(readFileSync(FILE)).subarray(0, -100)));
    expect(await run("restore", `${FILE}.short`, target)).toMatchObject({ code: 2, said: expect.stringContaining("no backup") });
    expect(await run("restore", join(folder.path, "none"), target)).toMatchObject({ code: 2 });
    const store = await opened(target);
    expect(await rowsOf(store)).toEqual(rows);
    await store.close();
    // Five programs are started one after the other.
  }, 240_000);
});
