import { spawn } from "node:child_process";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { seeded } from "../../lib/base";
import { emptyPlace, type Place } from "./support/place";

/** How often; more by MARQUETRY_KILLS. */
const TIMES = Number(process.env["MARQUETRY_KILLS"] ?? "8");
let place: Place;
beforeAll(async () => { place = await emptyPlace(); });
afterAll(() => place.remove());

type Life = { readonly found: readonly number[]; readonly saved: number };

/** Lets the saver run and kills it some milliseconds after its first save, wherever it then is. */
const lifeOf = (afterMs: number): Promise<Life> => new Promise((resolve, reject) => {
  const child = spawn(process.execPath, ["--import", "tsx", "tests/contract/support/saver.ts", place.dataDir, place.databaseUrl ?? ""], { stdio: ["ignore", "pipe", "inherit"] });
  let said = "";
  let timer: NodeJS.Timeout | undefined;
  child.stdout.on("data", (chunk: Buffer) => {
    said += chunk.toString("utf8");
    if (said.includes("saved")) timer ??= setTimeout(() => child.kill("SIGKILL"), afterMs);
  });
  child.once("close", (code, signal) => {
    if (signal !== "SIGKILL") reject(new Error(`the saver ended by itself (${code}):\n${said}`));
    const found = /^found (\d+) (\d+) (\d+)$/m.exec(said)?.slice(1).map(Number) ?? [];
    // The last line may be cut off in the middle: only whole ones were told.
    const saved = [...said.matchAll(/^saved (\d+)\n/gm)].map(([, revision]) => Number(revision)).at(-1) ?? 0;
    resolve({ found, saved });
  });
});

describe("a process that is killed in the middle of its saves", () => {
  it(`loses nothing that it had said was saved, and leaves nothing half saved (${TIMES} times)`, async () => {
    const random = seeded(7);
    let told = 0;
    for (let time = 0; time < TIMES; time += 1) {
      const life = await lifeOf(Math.floor(random() * 60));
      const [revision = -1, lines, mails] = life.found;
      // One more may have been saved than there was time to say.
      expect([told, told + 1]).toContain(revision);
      expect([lines, mails]).toEqual([revision, revision]);
      told = Math.max(revision, life.saved);
    }
    expect(told).toBeGreaterThanOrEqual(TIMES);
  }, 60_000 + TIMES * 20_000);
});
