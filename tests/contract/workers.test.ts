import { spawn, type ChildProcess } from "node:child_process";
import { simpleParser } from "mailparser";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { outbox, type Store } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { mailServer, type MailServer } from "./support/mail-server";
import { emptyPlace, type Place } from "./support/place";

let place: Place;
let store: Store;
let server: MailServer;
const workers: ChildProcess[] = [];
beforeAll(async () => {
  place = await emptyPlace();
  const opened = await openStore(place);
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  store = opened.value;
  server = await mailServer();
});
afterAll(async () => {
  for (const one of workers) one.kill("SIGKILL");
  await store.close();
  await server.close();
  await place.remove();
});

async function worker(): Promise<ChildProcess> {
  const child = spawn(process.execPath, ["--import", "tsx", "lib/cli/worker.ts"], {
    env: { ...process.env, DATABASE_URL: place.databaseUrl ?? "", MAIL_URL: server.url, MARQUETRY_LOG: "error" }, stdio: ["ignore", "pipe", "inherit"],
  });
  workers.push(child);
  await new Promise<void>((resolve, reject) => {
    child.stdout?.once("data", () => { resolve(); });
    child.once("exit", (code) => { reject(new Error(`the worker ended with ${code}`)); });
  });
  return child;
}
const ended = (child: ChildProcess): Promise<number | null> => new Promise((resolve) => { child.once("exit", (code) => { resolve(code); }); });

const queue = (to: string): Promise<boolean> => outbox.queue(store.db, {
  kind: "trial", booking: null, recipient: to, fromName: "Mill", subject: "s", bodyText: "t", bodyHtml: "<p>t</p>", messageId: `<${to}>`, replyTo: null, onceKey: null, unsubscribe: null, queuedAt: new Date(0).toISOString(),
});
const recipients = async (): Promise<readonly string[]> => Promise.all(server.got.map(async (raw) => (await simpleParser(raw)).messageId ?? ""));
async function until(done: () => Promise<boolean> | boolean): Promise<void> {
  for (let tries = 0; tries < 400; tries += 1) {
    if (await done()) return;
    await new Promise((again) => { setTimeout(again, 100); });
  }
  throw new Error("waited 40 s in vain");
}

describe("workers beside one another", () => {
  it("send each of sixty mails once, and end well when told to", async () => {
    for (let i = 0; i < 60; i += 1) await queue(`m${i}@example.org`);
    const three = await Promise.all([worker(), worker(), worker()]);
    await until(async () => (await outbox.counts(store.db)).waiting === 0);
    const sent = await recipients();
    expect(sent).toHaveLength(60);
    expect(new Set(sent).size).toBe(60);
    const codes = three.map(ended);
    for (const one of three) one.kill("SIGTERM");
    expect(await Promise.all(codes)).toEqual([0, 0, 0]);
  });

  it("send again, under the same message id, what one had in hand when it died", async () => {
    server.got.length = 0;
    server.verdict = "never";
    await queue("late@example.org");
    const first = await worker();
    await until(async () => (await outbox.list(store.db))[0]?.state === "sending");
    const gone = ended(first);
    first.kill("SIGKILL");
    await gone;
    server.verdict = undefined;
    expect((await outbox.list(store.db))[0]?.state).toBe("sending");
    // The claim runs out after two minutes; here the clock of the row is put back instead.
    await store.db.updateTable("mails").set({ dueAt: new Date(0).toISOString() }).where("recipient", "=", "late@example.org").execute();
    await worker();
    await until(() => server.got.length > 0);
    expect(await recipients()).toEqual(["<late@example.org>"]);
    await until(async () => (await outbox.list(store.db))[0]?.state === "sent");
    expect((await outbox.list(store.db))[0]).toMatchObject({ attempts: 2 });
  });

  it("send again, under the same message id, what had left when one died before it could note so: a mail program shows it once", async () => {
    server.got.length = 0;
    server.verdict = "taken";
    await queue("twice@example.org");
    const first = await worker();
    await until(() => server.got.length > 0);
    const gone = ended(first);
    first.kill("SIGKILL");
    await gone;
    server.verdict = undefined;
    await store.db.updateTable("mails").set({ dueAt: new Date(0).toISOString() }).where("recipient", "=", "twice@example.org").execute();
    await worker();
    await until(async () => (await outbox.list(store.db))[0]?.state === "sent");
    expect(await recipients()).toEqual(["<twice@example.org>", "<twice@example.org>"]);
  });
});
