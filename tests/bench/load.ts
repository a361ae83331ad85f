import type { ChildProcess } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { seeded } from "../../lib/base";
import { readConfig } from "../../lib/config";
import { tidewheel } from "../../lib/demo";
import { openHouse } from "../../lib/server/house";
import { makeLog } from "../../lib/server/log";
import { addBooking, type Actor, type House } from "../../lib/service";
import { deskLink } from "../../lib/service/desk-link";
import { saveVenue } from "../../lib/service/venues";
import { outbox } from "../../lib/store";
import { sendFirst } from "../contract/support/line";
import { mailServer } from "../contract/support/mail-server";
import { emptyDatabase, postgresServer } from "../contract/support/postgres";
import { begun, ended, freePort, ready, share } from "./serving";

/**
 * Fifty couples at their answers and five coordinators at their desk, for ten minutes (MARQUETRY_LOAD_MINUTES), over the network's own
 * way in: what was acknowledged must stand at the end. Prints the 95th percentile of a page and of a save as a ratio to the plainest page of
 * the same server in the same run, and the memory of each process. On the embedded database one process does it all; on PostgreSQL, which the bench
 * starts for itself, one serves and another sends the mails, to a mail server of the bench's own.
 */
export type Ground = "embedded" | "postgresql";
const COUPLES = 50, COORDINATORS = 5, SENT = 5;
const DESK: Actor = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };
const random = seeded(50);
const between = (least: number, most: number): number => least + random() * (most - least);

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

const memory = (one: ChildProcess): number => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${one.pid}/status`, "utf8"))?.[1] ?? "0") / 1024;

type Under = { readonly settings: Readonly<Record<string, string>>; readonly letters: () => number; readonly end: () => Promise<void> };

/** What the house stands on, and how it is told. */
async function standing(on: Ground): Promise<Under> {
  const dataDir = mkdtempSync(join(tmpdir(), "marquetry-load-")), port = String(await freePort());
  const settings = { PORT: port, MARQUETRY_ORIGIN: "", MARQUETRY_DATA_DIR: dataDir, MARQUETRY_LOG: "error", MAIL_URL: "", MARQUETRY_DEMO: "0", DATABASE_URL: "", MARQUETRY_WORKER: "1", MARQUETRY_METRICS: "" };
  const tidy = (): void => { rmSync(dataDir, { recursive: true, force: true }); };
  if (on === "embedded") return { settings, letters: () => 0, end: async () => { tidy(); } };
  const postgres = await postgresServer(), mail = await mailServer();
  const { url } = await emptyDatabase(postgres.url);
  return {
    settings: { ...settings, DATABASE_URL: url, MAIL_URL: mail.url, MARQUETRY_WORKER: "0" }, letters: () => mail.got.length,
    end: async () => { await postgres.remove(); await mail.close(); tidy(); },
  };
}

export async function load(print: (...cells: readonly (string | number)[]) => void, on: Ground): Promise<void> {
  const under = await standing(on), { settings } = under, base = `http://localhost:${settings["PORT"]}`;
  const config = readConfig(settings);
  if (!config.ok) throw new Error(config.error.join("\n"));
  const opened = await openHouse({ ...config.value, worker: false }, makeLog("error"));
  if (!opened.ok) throw new Error(opened.error);
  const { couples, desk } = await fill(opened.value.house);
  await opened.value.close();

  const server = begun("serve", settings), worker = on === "postgresql" ? begun("worker", settings) : undefined;
  const running = worker ? [server, worker] : [server];
  const times = new Map<string, number[]>(), weights: (readonly number[])[] = [];
  const weighing = setInterval(() => weights.push(running.map(memory)), 5_000);
  try {
    await ready(server, base);
    const visitors: { readonly visitor: Visitor; readonly couple: Guests }[] = [], coordinators: Visitor[] = [];
    const plain = new Visitor(base, times);
    // One after the other, and every kind of page once: what is timed is a house in use, not one that has just been opened.
    for (const couple of couples) { const visitor = new Visitor(base, times); await visitor.ask("open", "/open/enter", { key: couple.key }); visitors.push({ visitor, couple }); }
    for (const key of desk) { const one = new Visitor(base, times); await one.ask("open", "/desk/open/enter", { key }); coordinators.push(one); }
    await Promise.all([...visitors.slice(0, 1).map(({ visitor, couple }) => edit(visitor, couple)), ...coordinators.slice(0, 1).map(review), plain.ask("plainest page", "/open")]);
    times.clear();
    const ends = performance.now() + Number(process.env["MARQUETRY_LOAD_MINUTES"] ?? "10") * 60_000;
    const until = async (work: () => Promise<unknown>): Promise<void> => { await wait(between(0, 6_000)); while (performance.now() < ends) await work(); };
    await Promise.all([
      ...visitors.map(({ visitor, couple }) => until(() => edit(visitor, couple))), ...coordinators.map((one) => until(() => review(one))),
      until(async () => { await plain.ask("plainest page", "/open"); await wait(1_000); }),
    ]);
    let lost = 0;
    for (const { visitor, couple } of visitors) if (hidden((await visitor.ask("end", "/request/guests")).text, "adults") !== String(couple.acknowledged)) lost += 1;
    const plainest = share(times.get("plainest page") ?? [], 0.95);
    print(`under load, ${on}`, "asked", "p50 ms", "p95 ms", "ratio");
    for (const kind of ["plainest page", "page", "save", "layouts", "review", "proposal"]) { const list = times.get(kind) ?? []; print(kind, list.length, share(list, 0.5), share(list, 0.95), share(list, 0.95) / plainest); }
    print("couples whose last answer was lost, of", lost, couples.length);
    const third = Math.max(1, Math.floor(weights.length / 3));
    const most = (of: readonly (readonly number[])[], k: number): number => Math.max(...of.map((one) => one[k] ?? 0));
    running.forEach((_, k) => { print(`${k === 0 ? "server" : "worker"}: MB in the first and the last third`, most(weights.slice(0, third), k), most(weights.slice(-third), k)); });
    if (worker) print("letters that left meanwhile", under.letters());
  } finally {
    clearInterval(weighing);
    for (const one of running) await ended(one);
    await under.end();
  }
}
