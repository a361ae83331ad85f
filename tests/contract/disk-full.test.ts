import { spawn, spawnSync } from "node:child_process";
import { afterEach, expect, it } from "vitest";
import { bookings, history } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { emptyPlace } from "./support/place";
import { emptyDatabase, postgresServer } from "./support/postgres";
import { tempFolder } from "./support/temp";

type Where = { readonly dataDir: string; readonly databaseUrl?: string };
type Ended = { readonly code: number | null; readonly saved: number; readonly complaint: string };

const clean: (() => Promise<void> | void)[] = [];
afterEach(async () => { for (const one of clean.splice(0).reverse()) await one(); });

/** Saves large mails, by a process whose files may grow no longer than so many KB, until that ends it. The shell's limit is the kernel's own: a write past it fails as on a full disk. */
const saveUntilFull = ({ dataDir, databaseUrl = "" }: Where, kilobytes: number | "unlimited"): Promise<Ended> => new Promise((resolve) => {
  const run = `ulimit -f ${kilobytes}; exec ${JSON.stringify(process.execPath)} --import tsx tests/contract/support/saver.ts ${JSON.stringify(dataDir)} ${JSON.stringify(databaseUrl)} 200000`;
  // Without this the signal that goes with the limit would end the process before the write could fail.
  const child = spawn("bash", ["-c", `trap '' XFSZ; ${run}`], { stdio: ["ignore", "pipe", "pipe"] });
  let said = "", complaint = "";
  child.stdout.on("data", (chunk: Buffer) => { said += chunk.toString("utf8"); });
  child.stderr.on("data", (chunk: Buffer) => { complaint += chunk.toString("utf8"); });
  child.once("close", (code) => { resolve({ code, saved: [...said.matchAll(/^saved (\d+)\n/gm)].map(([, revision]) => Number(revision)).at(-1) ?? 0, complaint }); });
});

/** What was acknowledged stands whole, nothing stands by half, and saving goes on. */
async function standsWhole(where: Where, saved: number): Promise<void> {
  const opened = await openStore(where);
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  const { db, close, transaction } = opened.value;
  const found = await bookings.find(db, "AAAA-33");
  expect([saved, saved + 1]).toContain(found?.revision);
  expect(await history.listOf(db, "AAAA-33")).toHaveLength(found?.revision ?? -1);
  await transaction((tx) => bookings.change(tx, "AAAA-33", { at: "2027-01-02T03:04:05.678Z" }));
  expect((await bookings.find(db, "AAAA-33"))?.revision).toBe((found?.revision ?? 0) + 1);
  await close();
}

const COMPLAINT = /could not (extend|write)|No space|too large|EFBIG|ENOSPC|I\/O error|terminat|ECONNRESET|recovery mode/i;

it("a disk that runs full ends a save with a complaint; what was saved before stands whole, and with room again saving goes on", async () => {
  const place = await emptyPlace();
  clean.push(() => place.remove());
  const { code, saved, complaint } = await saveUntilFull(place, 18 * 1024);
  expect(code).not.toBe(0);
  expect(complaint).toMatch(COMPLAINT);
  expect(saved).toBeGreaterThan(10);
  await standsWhole(place, saved);
});

/** A server on a small disk of its own, that is full when it is full; where mounting is not ours to do, one whose files may not grow. */
async function smallServer() {
  const folder = tempFolder();
  clean.push(() => { folder.remove(); });
  const mounted = process.getuid?.() === 0 && spawnSync("mount", ["-t", "tmpfs", "-o", "size=110m,mode=0777", "tmpfs", folder.path]).status === 0;
  if (mounted) clean.push(() => { spawnSync("umount", [folder.path]); });
  // A piece of the log has 16 MB, and has to fit.
  const server = await postgresServer(mounted ? { within: folder.path } : { longestFile: 18 * 1024 });
  clean.push(() => server.remove());
  const moreRoom = async (): Promise<void> => {
    if (!mounted) return;
    spawnSync("mount", ["-o", "remount,size=400m", folder.path]);
    // A server that could not even write its log has ended, and is started by whoever keeps it.
    await server.stop("at once");
    await server.start();
  };
  return { server, moreRoom, mounted };
}

it("a PostgreSQL server's disk that runs full does the same", async () => {
  const { server, moreRoom, mounted } = await smallServer();
  const { url } = await emptyDatabase(server.url);
  const where = { dataDir: "", databaseUrl: url };
  const { code, saved, complaint } = await saveUntilFull(where, "unlimited");
  expect(code).not.toBe(0);
  expect(complaint, mounted ? "a small disk" : "a limit of its files").toMatch(COMPLAINT);
  expect(saved).toBeGreaterThan(10);
  await moreRoom();
  await standsWhole(where, saved);
});
