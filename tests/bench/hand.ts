import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { chromium, type CDPSession, type Page } from "@playwright/test";
import { briefSchema } from "../../lib/brief";
import { findTool, TOOLS } from "../../lib/cli/system";
import { readConfig } from "../../lib/config";
import { applyEdit, nudged, snap, stringsOf } from "../../lib/hand";
import type { Item, Layout, Scene } from "../../lib/layout";
import { checker } from "../../lib/rules";
import { openHouse } from "../../lib/server/house";
import { makeLog } from "../../lib/server/log";
import { addBooking, type Actor, type House } from "../../lib/service";
import { saveVenue } from "../../lib/service/venues";
import { outbox } from "../../lib/store";
import { chooseFirst } from "../contract/support/line";
import { hallFor } from "./weddings";

/**
 * A plan of some 400 pieces under the hand: what the check costs for one place of a moving piece, and how a drag runs in Chromium with
 * the processor slowed four times. Frames are counted from the browser's own trace; the time of the page's thread is what it worked, so
 * that a busy machine tells much the same.
 */
const GUESTS = 380, SLOWED = 4, MOVES = 300;
const DESK: Actor = { kind: "desk", person: "desk@tidewheel.example", role: "manager" };
type Line = (...cells: readonly (string | number)[]) => void;

const spent = (): number => { const u = process.cpuUsage(); return (u.user + u.system) / 1000; };
const part = (list: readonly number[], share: number): number => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * share))] ?? 0;
const freePort = (): Promise<number> => new Promise((done) => {
  const probe = createServer().listen(0, "127.0.0.1", () => { const at = probe.address(); probe.close(() => done(at !== null && typeof at === "object" ? at.port : 0)); });
});

/** A couple of the large hall who have chosen their layout, and the key that opens their day. */
async function fill(house: House): Promise<{ readonly key: string; readonly layout: Layout }> {
  const venue = hallFor(GUESTS);
  await saveVenue(house, DESK, venue);
  const made = await addBooking(house, DESK, { values: { names: "Ana & Bo", email: "c@example.org", package: "hire", date: "2029-06-02", mail: "yes" } });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  const { reference } = made.value;
  const layout = (await chooseFirst(house, reference, String(GUESTS))).chosen?.layout;
  if (!layout) throw new Error("the hall has no layout for these guests");
  const mail = (await outbox.list(house.store.db, { booking: reference }))[0];
  return { key: /\/open\/([\w-]{32})/.exec(mail?.bodyText ?? "")?.[1] ?? "", layout };
}

/** The part of the day with the most pieces, and a table of it. */
function fullest(layout: Layout): { readonly scene: Scene; readonly item: Item } {
  const scene = [...layout.scenes].sort((a, b) => b.items.length - a.items.length)[0];
  const item = scene?.items.find((i) => i.kind !== "chair") ?? scene?.items[0];
  if (!scene || !item) throw new Error("nothing stands in the hall");
  return { scene, item };
}

function thinking(line: Line, layout: Layout): void {
  const venue = hallFor(GUESTS), brief = briefSchema.parse({ format: "marquetry.brief/1", package: "hire", date: "2029-06-02", guests: { adults: GUESTS } });
  const { scene, item } = fullest(layout), room = venue.rooms[0];
  if (!room) return;
  const judge = checker(venue, brief, layout);
  const times: number[] = [], pulls: number[] = [];
  for (let k = 0; k < 60; k++) {
    const at = nudged(item, [(k % 10) * 40, Math.floor(k / 10) * 40]);
    const a = spent();
    const next = applyEdit(venue, { layout, held: [] }, { do: "place", scene: scene.id, piece: item.id, room: item.room, at });
    if (next.ok) void judge.next(next.value.layout).findings;
    const b = spent();
    const moved = { ...item, at: snap({ room, item: { ...item, at }, others: scene.items, within: 200 }).at };
    stringsOf(room, moved, scene.items);
    times.push(b - a);
    pulls.push(spent() - b);
  }
  line(`check of one place, ${scene.items.length} pieces in that part`, part(times.slice(5), 0.5), part(times.slice(5), 0.95));
  line("snapping and strings of one place", part(pulls.slice(5), 0.5), part(pulls.slice(5), 0.95));
}

type Event = { readonly name: string; readonly ph: string; readonly ts: number; readonly dur?: number; readonly tdur?: number; readonly pid: number; readonly tid: number; readonly args?: { readonly name?: string } };

/** What the browser did between two moments, by its own trace. */
async function traced(cdp: CDPSession, work: () => Promise<void>): Promise<readonly Event[]> {
  const events: Event[] = [];
  cdp.on("Tracing.dataCollected", ({ value }) => { events.push(...(value as unknown as readonly Event[])); });
  await cdp.send("Tracing.start", { transferMode: "ReportEvents", traceConfig: { includedCategories: ["devtools.timeline", "toplevel", "disabled-by-default-devtools.timeline", "disabled-by-default-devtools.timeline.frame"] } });
  await work();
  const ended = new Promise((done) => cdp.once("Tracing.tracingComplete", done));
  await cdp.send("Tracing.end");
  await ended;
  return events;
}

async function dragging(line: Line, page: Page, item: Item): Promise<void> {
  // A chair of the rows has no element of its own: any piece is found by the mark about it once it is chosen.
  const mark = page.locator(".hand-stage .hand-over .s-accent").first();
  await page.locator("#choose").selectOption(item.id);
  await mark.scrollIntoViewIfNeeded();
  const box = await mark.boundingBox();
  if (!box) throw new Error("the piece is not seen");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 8, y + 8);
  // As text: what tsx makes of a function that has a name is not known in the page.
  await page.evaluate("(function () { window.ticks = []; requestAnimationFrame(function tick(at) { window.ticks.push(at); requestAnimationFrame(tick); }); })()");
  const events = await traced(cdp, async () => { for (let k = 0; k < MOVES; k++) await page.mouse.move(x + 60 * Math.sin(k / 12), y + 40 * Math.cos(k / 15)); });
  const ticks = await page.evaluate(() => (window as unknown as { readonly ticks: readonly number[] }).ticks);
  await page.mouse.up();
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const gaps = ticks.slice(1).map((t, i) => t - (ticks[i] ?? t));
  // Chromium's name of the task differs by its version; the page's thread is the busiest of those that pages run on.
  const named = events.some((e) => e.name === "RunTask") ? "RunTask" : "ThreadControllerImpl::RunTask", isTask = (e: Event): boolean => e.name === named;
  const [tasks] = events.filter((e) => e.name === "thread_name" && e.args?.name === "CrRendererMain")
    .map((t) => events.filter((e) => isTask(e) && e.pid === t.pid && e.tid === t.tid).map((e) => (e.tdur ?? e.dur ?? 0) / 1000)).sort((a, b) => b.length - a.length);
  if (!tasks || tasks.length === 0) throw new Error(`no task of the page's thread is in the trace of ${events.length} events`);
  line(`drag, processor ${SLOWED} x slower: frames a second (median, 5th percentile)`, 1000 / part(gaps, 0.5), 1000 / part(gaps, 0.95));
  line("the page's thread at work a frame, ms", tasks.reduce((n, t) => n + t, 0) / Math.max(1, ticks.length), part(tasks, 0.99));
  line("longest task, ms of the thread", Math.max(...tasks, 0), "");
}

async function started(port: number, dataDir: string): Promise<ChildProcess> {
  const server = spawn(process.execPath, ["--import", "tsx", "lib/cli/serve.ts"], {
    cwd: resolve("."), stdio: ["ignore", "pipe", "inherit"], env: { ...process.env, PORT: String(port), MARQUETRY_ORIGIN: "", MARQUETRY_DATA_DIR: dataDir, MARQUETRY_LOG: "error", MAIL_URL: "", MARQUETRY_DEMO: "0" },
  });
  // The framework says things of its own first; only this line means that the port is open.
  await new Promise<void>((done, fail) => {
    let said = "";
    server.stdout.on("data", (chunk: Buffer) => { said += chunk.toString("utf8"); if (said.includes("answers at")) done(); });
    server.once("exit", (code) => fail(new Error(`the server ended (${code}):\n${said}`)));
  });
  return server;
}

/** Needs the built pages and Chromium. */
export async function hand(line: Line): Promise<void> {
  const dataDir = mkdtempSync(join(tmpdir(), "marquetry-hand-")), port = await freePort();
  const config = readConfig({ ...process.env, PORT: String(port), MARQUETRY_ORIGIN: "", MARQUETRY_DATA_DIR: dataDir, MAIL_URL: "" });
  if (!config.ok) throw new Error(config.error.join("\n"));
  const opened = await openHouse({ ...config.value, worker: false }, makeLog("error"));
  if (!opened.ok) throw new Error(opened.error);
  const { key, layout } = await fill(opened.value.house);
  await opened.value.close();
  const { scene, item } = fullest(layout);
  line("a plan under the hand", "median", "95th/most");
  thinking(line, layout);
  const server = await started(port, dataDir);
  const browser = await chromium.launch({ executablePath: findTool(TOOLS.chromium, process.env["CHROMIUM_PATH"]), args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"] });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    page.setDefaultTimeout(240_000);
    await page.goto(`http://localhost:${port}/open/${key}`);
    await page.getByRole("button", { name: "Open our day" }).click();
    await page.waitForURL("**/request");
    await page.goto(`http://localhost:${port}/request/layout/adjust?part=${scene.id}`);
    await page.locator(".hand-stage .plan:not(.hand-over)").waitFor({ timeout: 240_000 });
    line(`pieces on the plan: ${scene.title}`, scene.items.length, "");
    await dragging(line, page, item);
  } finally {
    await browser.close();
    server.kill("SIGTERM");
    await new Promise((done) => server.once("exit", done));
    rmSync(dataDir, { recursive: true, force: true });
  }
}
