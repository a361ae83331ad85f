import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const START_MS = 600_000;

/** A port that nobody listens on. */
const freePort = (): Promise<number> => new Promise((resolve, reject) => {
  const probe = createServer().once("error", reject).listen(0, "127.0.0.1", () => {
    const at = probe.address();
    probe.close(() => resolve(at !== null && typeof at === "object" ? at.port : 0));
  });
});

/** Starts the demonstration on a folder of its own, and reads from what it prints how the desk is opened. */
export default async function startDemo(): Promise<() => Promise<void>> {
  if (process.env.MARQUETRY_TEST_BASE && process.env.MARQUETRY_TEST_DESK) return async () => undefined;
  const data = mkdtempSync(join(tmpdir(), "marquetry-browser-"));
  const port = process.env.MARQUETRY_TEST_PORT ?? String(await freePort());
  const server = spawn(process.execPath, ["--import", "tsx", "lib/cli/serve.ts", "--demo"], {
    cwd: join(import.meta.dirname, "../.."), env: { ...process.env, PORT: port, MARQUETRY_ORIGIN: "", DATABASE_URL: "", MAIL_URL: "", MARQUETRY_DATA_DIR: data }, stdio: ["ignore", "pipe", "pipe"],
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
  process.env.MARQUETRY_TEST_BASE = new URL(desk).origin;
  process.env.MARQUETRY_TEST_DESK = desk;
  return async () => {
    server.kill("SIGTERM");
    await new Promise((done) => server.once("exit", done));
    rmSync(data, { recursive: true, force: true });
  };
}
