import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FullConfig } from "@playwright/test";

const START_MS = 600_000;

/** A port that nobody listens on. */
const freePort = (): Promise<number> => new Promise((resolve, reject) => {
  const probe = createServer().once("error", reject).listen(0, "127.0.0.1", () => {
    const at = probe.address();
    probe.close(() => resolve(at !== null && typeof at === "object" ? at.port : 0));
  });
});

type House = { readonly desk: string; readonly close: () => Promise<void> };

/** Starts the demonstration on a folder of its own, and reads from what it prints how the desk is opened. */
async function demo(): Promise<House> {
  const data = mkdtempSync(join(tmpdir(), "marquetry-browser-"));
  const server = spawn(process.execPath, ["--import", "tsx", "lib/cli/serve.ts", "--demo"], {
    cwd: join(import.meta.dirname, "../.."), env: { ...process.env, PORT: String(await freePort()), MARQUETRY_ORIGIN: "", DATABASE_URL: "", MAIL_URL: "", MARQUETRY_DATA_DIR: data }, stdio: ["ignore", "pipe", "pipe"],
  });
  const desk = await new Promise<string>((resolve, reject) => {
    let said = "";
    const late = setTimeout(() => reject(new Error(`the demo did not start in ${START_MS / 1000} s:\n${said}`)), START_MS);
    const hear = (chunk: Buffer): void => {
      said += chunk.toString("utf8");
      const link = /The desk \(this link[^\n]*\n\s*(https?:\/\/\S+\/open\/\S+)/.exec(said)?.[1];
      if (link) { clearTimeout(late); resolve(link); }
    };
    server.stdout.on("data", hear);
    server.stderr.on("data", hear);
    server.once("exit", (code) => reject(new Error(`the demo ended (${code}):\n${said}`)));
  });
  return {
    desk,
    close: async () => {
      server.kill("SIGTERM");
      await new Promise((done) => server.once("exit", done));
      rmSync(data, { recursive: true, force: true });
    },
  };
}

/** Starts that many houses, and leaves their desks' addresses where the tests look for them; `MARQUETRY_TEST_DESK` takes one that stands already. */
export async function startDemos(count: number): Promise<() => Promise<void>> {
  if (process.env.MARQUETRY_TEST_DESK) return async () => undefined;
  const houses = await Promise.all(Array.from({ length: count }, demo));
  process.env.MARQUETRY_TEST_DESK = houses.map(({ desk }) => desk).join(" ");
  return async () => { await Promise.all(houses.map((house) => house.close())); };
}

/** A house for each worker: no test sees what another does in its own. */
export default (config: FullConfig): Promise<() => Promise<void>> => startDemos(config.workers);
