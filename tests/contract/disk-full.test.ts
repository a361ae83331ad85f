import { spawn } from "node:child_process";
import { afterAll, beforeAll, expect, it } from "vitest";
import { bookings, history } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { emptyPlace, type Place } from "./support/place";

let place: Place;
beforeAll(async () => { place = await emptyPlace(); });
afterAll(() => place.remove());

type Ended = { readonly code: number | null; readonly saved: number; readonly complaint: string };

/** Saves large mails, no file of its folder longer than so many KB, until that ends it. The shell's limit is the kernel's own: a write past it fails as on a full disk. */
const saveWithin = (kilobytes: number): Promise<Ended> => new Promise((resolve) => {
  const run = `ulimit -f ${kilobytes}; exec ${JSON.stringify(process.execPath)} --import tsx tests/contract/support/saver.ts ${JSON.stringify(place.dataDir)} "" 200000`;
  // Without this the signal that goes with the limit would end the process before the write could fail.
  const child = spawn("bash", ["-c", `trap '' XFSZ; ${run}`], { stdio: ["ignore", "pipe", "pipe"] });
  let said = "", complaint = "";
  child.stdout.on("data", (chunk: Buffer) => { said += chunk.toString("utf8"); });
  child.stderr.on("data", (chunk: Buffer) => { complaint += chunk.toString("utf8"); });
  child.once("close", (code) => { resolve({ code, saved: [...said.matchAll(/^saved (\d+)\n/gm)].map(([, revision]) => Number(revision)).at(-1) ?? 0, complaint }); });
});

it("a disk that runs full ends a save with a complaint; what was saved before stands whole, and with room again saving goes on", async () => {
  const { code, saved, complaint } = await saveWithin(18 * 1024);
  expect(code).not.toBe(0);
  expect(complaint).toMatch(/could not (extend|write)|No space|too large|EFBIG|ENOSPC|I\/O error/i);
  expect(saved).toBeGreaterThan(10);
  const opened = await openStore(place);
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  const { db, close, transaction } = opened.value;
  const found = await bookings.find(db, "AAAA-33");
  expect([saved, saved + 1]).toContain(found?.revision);
  expect(await history.listOf(db, "AAAA-33")).toHaveLength(found?.revision ?? -1);
  await transaction((tx) => bookings.change(tx, "AAAA-33", { at: "2027-01-02T03:04:05.678Z" }));
  expect((await bookings.find(db, "AAAA-33"))?.revision).toBe((found?.revision ?? 0) + 1);
  await close();
});
