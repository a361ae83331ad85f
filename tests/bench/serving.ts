import { spawn, type ChildProcess } from "node:child_process";
import { createServer } from "node:net";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";

/** A house of its own processes, as a bench asks it over the network's own way in. */
export type Settings = Readonly<Record<string, string>>;

/** A port that nobody listens on. */
export const freePort = (): Promise<number> => new Promise((done) => {
  const probe = createServer().listen(0, "127.0.0.1", () => {
    const at = probe.address();
    probe.close(() => done(at !== null && typeof at === "object" ? at.port : 0));
  });
});

/** Starts one of the house's programs; what it complains of is shown. */
export function begun(program: "serve" | "worker", settings: Settings): ChildProcess {
  const child = spawn(process.execPath, ["--import", "tsx", `lib/cli/${program}.ts`], { cwd: join(import.meta.dirname, "../.."), stdio: ["ignore", "pipe", "inherit"], env: { ...process.env, ...settings } });
  child.stdout.resume();
  return child;
}

const START_MS = 120_000;
/** Waits until a server takes requests; throws where it ends, or is not ready after two minutes. */
export async function ready(server: ChildProcess, base: string): Promise<void> {
  for (const late = performance.now() + START_MS; performance.now() < late; await wait(200)) {
    if (server.exitCode !== null) throw new Error(`the server ended (${server.exitCode})`);
    if (await fetch(`${base}/api/health/ready`).then((answer) => answer.ok, () => false)) return;
  }
  throw new Error(`the server was not ready after ${START_MS / 1000} s`);
}

/** Tells a process to stop, and waits until it has. */
export async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const end = new Promise((done) => { child.once("exit", done); });
  child.kill("SIGTERM");
  await end;
}

/** The number below which a share of a list lies. */
export const share = (list: readonly number[], part: number): number => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * part))] ?? 0;
