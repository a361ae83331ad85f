import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { seeded } from "../../lib/base";
import { readConfig } from "../../lib/config";
import { tidewheel } from "../../lib/demo";
import { openHouse } from "../../lib/server/house";
import { makeLog } from "../../lib/server/log";
import { addBooking, type Actor, type House } from "../../lib/service";
import { deskLink } from "../../lib/service/ask-link";
import { saveVenue } from "../../lib/service/venues";
import { outbox } from "../../lib/store";
import { sendFirst } from "../contract/support/line";

/**
 * Fifty couples at their answers and five coordinators at their desk, for ten minutes (MARQUETRY_LOAD_MINUTES), over the network's own
 * way in: what was acknowledged must stand at the end. Prints the 95th percentile of a page and of a save as a ratio to the plainest page of
 * the same server in the same run, and the server's memory. DATABASE_URL names an empty PostgreSQL database; else the embedded one is used.
 */
const COUPLES = 50, COORDINATORS = 5, SENT = 5;
const DESK: Actor = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };
const random = seeded(50);
const between = (least: number, most: number): number => least + random() * (most - least);

const freePort = (): Promise<number> => new Promise((done) => {
  const probe = createServer().listen(0, "127.0.0.1", () => {
    const at = probe.address();
    probe.close(() => done(at !== null && typeof at === "object" ? at.port : 0));
  });
});

type Guests = { readonly reference: string; readonly key: string; adults: number; acknowledged: number };

async function fill(house: House): Promise<{ readonly couples: readonly Guests[]; readonly desk: readonly string[] }> {
  await saveVenue(house, DESK, tidewheel);
  const couples: Guests[] = [];
  for (let i = 0; i < COUPLES + SENT; i += 1) {
    const day = new Date(Date.UTC(new Date().getUTCFullYear() + 1, 3, 1 + i)).toISOString().slice(0, 10);
    const made = await addBooking(house, DESK, { values: { names: `Ana ${i} & Bo ${i}`, email: `c${i}@example.org`, package: "dry-hire", date: day, mail: "yes" } });
    if (!made.ok) throw new Error(JSON.stringify(made.error));
    const { reference } = made.value;
    const mail = (await outbox.list(house.store.db, { booking: reference }))[0];
    couples.push({ reference, key: /\/open\/([\w-]{32})/.exec(mail?.bodyText ?? "")?.[1] ?? "", adults: 0, acknowledged: 0 });
  }
  // The first days: they stand on the queue's first page.
  for (const { reference } of couples.splice(0, SENT)) await sendFirst(house, reference);
  const desk: string[] = [];
  for (let i = 0; i < COORDINATORS; i += 1) desk.push(new URL(await house.store.transaction((tx) => deskLink(tx, house, { person: "desk@tidewheel.example", lastsMs: 3_600_000, once: true }))).pathname.split("/").at(-1) ?? "");
  return { couples, desk };
}

/** A browser as far as its cookie and its clock go. */
class Visitor {
  private cookie = "";
  constructor(private readonly base: string, private readonly times: Map<string, number[]>) {}
  async ask(kind: string, path: string, form?: Readonly<Record<string, string>>): Promise<{ readonly status: number; readonly to: string; readonly text: string }> {
    const began = performance.now();
    const answer = await fetch(this.base + path, {
      method: form ? "POST" : "GET", redirect: "manual", headers: { Cookie: this.cookie, ...(form ? { Origin: this.base } : {}) }, body: form && new URLSearchParams(form),
    });
    const text = await answer.text();
    this.times.set(kind, [...(this.times.get(kind) ?? []), performance.now() - began]);
    for (const line of answer.headers.getSetCookie()) this.cookie = line.split(";")[0] ?? "";
    if (answer.status >= 400) throw new Error(`${path}: ${answer.status} ${text.slice(0, 200)}`);
    return { status: answer.status, to: answer.headers.get("location") ?? "", text };
  }
}

const hidden = (text: string, name: string): string => new RegExp(`name="${name}"[^>]*value="([^"]*)"|value="([^"]*)"[^>]*name="${name}"`).exec(text)?.slice(1).find((one) => one !== undefined) ?? "";

async function edit(visitor: Visitor, couple: Guests): Promise<void> {
  const page = await visitor.ask("page", "/request/guests");
  await wait(between(2_000, 6_000));
  couple.adults = Math.floor(between(30, 90));
  const form = { adults: String(couple.adults), revision: hidden(page.text, "revision"), was: hidden(page.text, "was"), then: "later" };
  const saved = await visitor.ask("save", "/request/guests/save", form);
  if (saved.status !== 303 || saved.to.includes("kept")) throw new Error(`not saved: ${saved.status} ${saved.to}`);
  couple.acknowledged = couple.adults;
  if (random() < 0.04) await visitor.ask("layouts", "/request/layout");
}

async function review(visitor: Visitor): Promise<void> {
  const queue = await visitor.ask("page", "/desk");
  const links = [...new Set([...queue.text.matchAll(/href="(\/desk\/bookings\/[A-Z0-9]{4}-\d\d)"/g)].map(([, href]) => href ?? ""))];
  const href = links[Math.floor(random() * links.length)];
  await wait(between(1_000, 3_000));
  if (!href) return;
  const page = await visitor.ask("review", href);
  const paper = /href="(\/api\/proposal\.pdf[^"]*)"/.exec(page.text)?.[1];
  if (paper) await visitor.ask("proposal", paper.replaceAll("&amp;", "&"));
  await wait(between(1_000, 3_000));
}

const memory = (server: ChildProcess): number => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${server.pid}/status`, "utf8"))?.[1] ?? "0") / 1024;
const share = (list: readonly number[], part: number): number => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * part))] ?? 0;

async function started(port: number, dataDir: string): Promise<ChildProcess> {
  const server = spawn(process.execPath, ["--import", "tsx", "lib/cli/serve.ts"], {
    cwd: resolve("."), stdio: ["ignore", "pipe", "inherit"], env: { ...process.env, PORT: String(port), MARQUETRY_ORIGIN: "", MARQUETRY_DATA_DIR: dataDir, MARQUETRY_LOG: "error", MAIL_URL: "", MARQUETRY_DEMO: "0" },
  });
  server.stdout.resume();
  for (;;) {
    if (server.exitCode !== null) throw new Error(`the server ended (${server.exitCode})`);
    const up = await fetch(`http://localhost:${port}/api/health/ready`).then((answer) => answer.ok, () => false);
    if (up) return server;
    await wait(250);
  }
}

export async function load(print: (...cells: readonly (string | number)[]) => void): Promise<void> {
  const dataDir = mkdtempSync(join(tmpdir(), "marquetry-load-"));
  const port = await freePort(), base = `http://localhost:${port}`;
  const config = readConfig({ ...process.env, PORT: String(port), MARQUETRY_ORIGIN: "", MARQUETRY_DATA_DIR: dataDir, MAIL_URL: "" });
  if (!config.ok) throw new Error(config.error.join("\n"));
  const opened = await openHouse({ ...config.value, worker: false }, makeLog("error"));
  if (!opened.ok) throw new Error(opened.error);
  const { couples, desk } = await fill(opened.value.house);
  await opened.value.close();

  const server = await started(port, dataDir);
  const times = new Map<string, number[]>();
  const ends = performance.now() + Number(process.env["MARQUETRY_LOAD_MINUTES"] ?? "10") * 60_000;
  const weights: number[] = [];
  const until = async (work: () => Promise<unknown>): Promise<void> => { while (performance.now() < ends) await work(); };
  const weighing = setInterval(() => weights.push(memory(server)), 5_000);
  try {
    const visitors = await Promise.all(couples.map(async (couple) => {
      const visitor = new Visitor(base, times);
      await visitor.ask("open", "/open/enter", { key: couple.key });
      return { visitor, couple };
    }));
    const coordinators = await Promise.all(desk.map(async (key) => { const one = new Visitor(base, times); await one.ask("open", "/desk/open/enter", { key }); return one; }));
    const plain = new Visitor(base, times);
    await Promise.all([
      ...visitors.map(({ visitor, couple }) => until(() => edit(visitor, couple))), ...coordinators.map((one) => until(() => review(one))),
      until(async () => { await plain.ask("plainest page", "/open"); await wait(1_000); }),
    ]);
    let lost = 0;
    for (const { visitor, couple } of visitors) if (hidden((await visitor.ask("end", "/request/guests")).text, "adults") !== String(couple.acknowledged)) lost += 1;
    const plainest = share(times.get("plainest page") ?? [], 0.95);
    print("under load", "asked", "p50 ms", "p95 ms", "ratio");
    for (const kind of ["plainest page", "page", "save", "layouts", "review", "proposal"]) { const list = times.get(kind) ?? []; print(kind, list.length, share(list, 0.5), share(list, 0.95), share(list, 0.95) / plainest); }
    print("answers acknowledged and lost, of couples", lost, couples.length);
    const third = Math.max(1, Math.floor(weights.length / 3));
    print("server's memory, MB: first third, last third", Math.max(...weights.slice(0, third)), Math.max(...weights.slice(-third)));
  } finally {
    clearInterval(weighing);
    server.kill("SIGTERM");
    await new Promise((done) => server.once("exit", done));
    rmSync(dataDir, { recursive: true, force: true });
  }
}
