import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium, type Browser, type BrowserContext, type CDPSession, type Page } from "@playwright/test";
import { findTool, TOOLS } from "../../lib/cli/system";
import startDemo from "../browser/start-demo";
import { atTheDesk, base, invite, person, toLayouts } from "../browser/world";

/** What a page of the couple's costs beside an empty page of the same framework, and whether the main thread is ever held up while the engine runs. */
export type PageCost = { readonly name: string; readonly scriptKb: number; readonly paintMs: number };
export type Held = { readonly name: string; /** Tasks of the main thread over 50 ms. */ readonly tasks: number; /** The longest, ms. */ readonly longest: number; readonly seconds: number };

const ROOT = join(import.meta.dirname, "../..");
const SLOWED = 4, LOADS = 5;
/** How long one thing is waited for before the bench says what did not come, ms. */
const PATIENCE_MS = 120_000;
const PATHS = ["/open", "/request", "/request/guests", "/request/ceremony", "/request/meal", "/request/music", "/request/displays", "/request/extras", "/request/layout", "/request/layout/a", "/request/layout/adjust", "/request/send", "/request/share"];

const freePort = (): Promise<number> => new Promise((resolve) => {
  const probe = createServer().listen(0, "127.0.0.1", () => { const at = probe.address(); probe.close(() => resolve(at !== null && typeof at === "object" ? at.port : 0)); });
});

/** An empty page, built and served by the same framework in a folder of its own. */
async function emptyPage(): Promise<{ readonly address: string; readonly stop: () => void }> {
  const folder = mkdtempSync(join(tmpdir(), "marquetry-empty-"));
  // The builder follows no link out of its folder: the packages are linked file by file.
  spawnSync("cp", ["-al", join(ROOT, "node_modules"), join(folder, "node_modules")]);
  mkdirSync(join(folder, "app"));
  writeFileSync(join(folder, "package.json"), JSON.stringify({ name: "empty", private: true, type: "module" }));
  writeFileSync(join(folder, "app/layout.jsx"), "export default function Layout({ children }) { return <html lang=\"en\"><body>{children}</body></html>; }\n");
  writeFileSync(join(folder, "app/page.jsx"), "export default function Page() { return <p>Nothing</p>; }\n");
  const next = join(folder, "node_modules/next/dist/bin/next");
  const built = spawnSync(process.execPath, [next, "build"], { cwd: folder, encoding: "utf8", env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1" } });
  if (built.status !== 0) throw new Error(`the empty page was not built:\n${built.stdout}${built.stderr}`);
  const port = await freePort();
  const server = spawn(process.execPath, [next, "start", "-p", String(port)], { cwd: folder, stdio: "ignore" });
  const address = `http://localhost:${port}/`;
  for (let tries = 0; tries < 200 && !(await fetch(address).then((a) => a.ok, () => false)); tries += 1) await new Promise((done) => { setTimeout(done, 200); });
  return { address, stop: () => { server.kill("SIGKILL"); rmSync(folder, { recursive: true, force: true }); } };
}

/** The scripts that a page's own text asks for, as they travel, KB. */
async function scriptOf({ request }: BrowserContext, address: string): Promise<number> {
  const text = await (await request.get(address)).text();
  const sources = [...text.matchAll(/<script\b([^>]*)>/g)].map((m) => m[1] ?? "").filter((tag) => !/nomodule/i.test(tag)).flatMap((tag) => /\bsrc="([^"]+)"/.exec(tag)?.[1] ?? []);
  let sum = 0;
  for (const source of new Set(sources)) sum += gzipSync(await (await request.get(new URL(source, address).href)).body()).length;
  return sum / 1024;
}

/** Watches for the largest paint (W3C Largest Contentful Paint), from before the page's own scripts. */
async function watch(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const seen = { paint: 0 };
    Object.assign(globalThis, { seen });
    new PerformanceObserver((list) => { for (const one of list.getEntries()) seen.paint = one.startTime; }).observe({ type: "largest-contentful-paint", buffered: true });
  });
}
const paintOf = (page: Page): Promise<number> => page.evaluate("globalThis.seen.paint");
/** Slows the page's main thread. The slowing itself keeps a processor busy even while the page rests: it lasts as long as what is measured. */
async function slowed(page: Page): Promise<CDPSession> {
  const tools = await page.context().newCDPSession(page);
  await tools.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  return tools;
}

type Where = { readonly context: BrowserContext; readonly name: string; readonly address: string };

/** One load in a tab of its own: what an earlier page still had in hand neither breaks it off nor slows it. */
async function load({ context, name, address }: Where): Promise<number> {
  const page = await context.newPage();
  try {
    await slowed(page);
    await page.goto(address, { waitUntil: "load", timeout: PATIENCE_MS });
    await page.waitForTimeout(300);
    const paint = await paintOf(page);
    if (paint === 0) throw new Error(`${name} has painted nothing`);
    return paint;
  } finally { await page.close(); }
}

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? NaN;

/** The middle of each page's largest paints. The empty page is loaded before each of them: whatever else the machine does, it does to both. */
async function paintsOf(bare: Where, where: readonly Where[]): Promise<ReadonlyMap<string, number>> {
  const seen = new Map<string, number[]>();
  for (let i = 0; i < LOADS; i += 1) {
    for (const one of where.flatMap((page) => [bare, page])) seen.set(one.name, [...(seen.get(one.name) ?? []), await load(one)]);
  }
  return new Map([...seen].map(([name, list]) => [name, median(list)]));
}

type TraceEvent = { readonly name: string; readonly ph: string; readonly pid: number; readonly tid: number; readonly ts: number; readonly dur?: number; readonly tdur?: number; readonly args?: { readonly name?: string } };
const isTrace = (x: unknown): x is { readonly traceEvents: readonly TraceEvent[] } => typeof x === "object" && x !== null && "traceEvents" in x;

/**
 * The tasks of the pages' main threads in a trace, ms of the thread's own time: what other programs took from it does not count, nor what
 * the bench itself asked of the page by the browser's own tools.
 */
function tasksIn(trace: Buffer): readonly number[] {
  const read: unknown = JSON.parse(trace.toString("utf8"));
  if (!isTrace(read)) return [];
  const events = read.traceEvents;
  const mains = new Set(events.filter((e) => e.ph === "M" && e.name === "thread_name" && e.args?.name === "CrRendererMain").map((e) => `${e.pid}/${e.tid}`));
  const onMain = events.filter((e) => e.ph === "X" && mains.has(`${e.pid}/${e.tid}`));
  const asked = onMain.filter((e) => JSON.stringify(e.args ?? {}).includes("DevToolsSession"));
  const within = (one: TraceEvent, task: TraceEvent): boolean => one.pid === task.pid && one.tid === task.tid && one.ts >= task.ts && one.ts <= task.ts + (task.dur ?? 0);
  return onMain.filter((e) => e.name.endsWith("::RunTask") && !asked.some((one) => within(one, e))).map((e) => (e.tdur ?? 0) / 1000);
}

/** Answers given as a person gives them, until each has been laid out; what held the main thread meanwhile. */
async function heldWhile(page: Page, name: string, deed: () => Promise<void>): Promise<Held> {
  await page.waitForTimeout(1_500);
  const tools = await slowed(page);
  const browser = page.context().browser();
  await browser?.startTracing(page, { categories: ["toplevel", "disabled-by-default-devtools.timeline", "devtools.timeline"] });
  const from = Date.now();
  await deed();
  const seconds = (Date.now() - from) / 1000;
  const trace = await browser?.stopTracing();
  await tools.detach();
  const tasks = trace ? tasksIn(trace) : [];
  if (tasks.length === 0) throw new Error("the trace holds no task of the page");
  return { name, tasks: tasks.filter((ms) => ms > 50).length, longest: Math.max(...tasks), seconds };
}

async function measured(browser: Browser): Promise<{ readonly empty: PageCost; readonly pages: readonly PageCost[]; readonly held: readonly Held[] }> {
  const how = { width: 390, scripts: true };
  const desk = await atTheDesk(browser, how);
  const { link } = await invite(desk, { names: "Bea Onslow\nKit Marlow", email: "bench@example.org", date: "2029-10-06" });
  const us = await person(browser, how);
  await us.go(link);
  await us.press("Open our day");
  const { page } = us;
  await watch(page.context());
  // How many fit is counted once after the server's start: a venue's server has that behind it.
  const counted = async (): Promise<boolean> => !(await (await page.request.get(`${base()}/request/meal`)).text()).includes("is being counted");
  for (const until = Date.now() + 5 * PATIENCE_MS; !(await counted());) {
    if (Date.now() > until) throw new Error("how many fit has not been counted");
    await page.waitForTimeout(1_000);
  }
  await us.go("/request/guests");
  const laid = page.locator(".effect figcaption", { hasText: "not saved yet" });
  const held = [await heldWhile(page, "guests: 60, then 92", async () => {
    await page.getByLabel("Adults").pressSequentially("60", { delay: 80 });
    await laid.waitFor({ timeout: PATIENCE_MS });
    await page.getByLabel("Adults").fill("92");
    await page.locator(".live-state", { hasText: "Laying it out" }).waitFor({ timeout: PATIENCE_MS });
    await page.locator(".live-state:empty").waitFor({ state: "attached", timeout: PATIENCE_MS });
  })];
  await us.go("/request/guests");
  await page.getByLabel("Adults").fill("70");
  await us.press("Save and continue");
  await us.go("/request/meal");
  held.push(await heldWhile(page, "meal: rounds, then long tables", async () => {
    await page.getByLabel("Round tables only").check();
    await page.getByLabel("Long tables only").check();
    await laid.waitFor({ timeout: PATIENCE_MS });
  }));
  await toLayouts(us, { adults: 70, children: 4 });
  await page.getByRole("radio").first().check({ force: true });
  await us.press("Save and continue");
  await page.goto("about:blank");
  const nothing = await emptyPage();
  const lone = await browser.newContext({ viewport: { width: 390, height: 900 } });
  await watch(lone);
  const costs: PageCost[] = [];
  try {
    const bare: Where = { context: lone, name: "an empty page", address: nothing.address };
    const where = PATHS.map((path): Where => ({ context: page.context(), name: path, address: base() + path }));
    const paints = await paintsOf(bare, where);
    for (const { context, name, address } of [bare, ...where]) costs.push({ name, scriptKb: await scriptOf(context, address), paintMs: paints.get(name) ?? NaN });
  } finally { nothing.stop(); }
  const [empty, ...pages] = costs;
  if (!empty) throw new Error("nothing was measured");
  return { empty, pages, held };
}

/** Measures with the processor slowed four times, at 390 px. */
export async function pageBench(): Promise<Awaited<ReturnType<typeof measured>>> {
  const path = findTool(TOOLS.chromium, process.env.CHROMIUM_PATH);
  if (!path) throw new Error("No Chromium here: `npm run fetch-browser` brings it.");
  const stop = await startDemo();
  const browser = await chromium.launch({ executablePath: path, args: [...(process.getuid?.() === 0 ? ["--no-sandbox"] : []), "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"] });
  try { return await measured(browser); } finally { await browser.close(); await stop(); }
}
