import { createServer } from "node:net";
import { fileURLToPath } from "node:url";
import { isRunByNpm, readConfig, setDefaults, setEnvironment } from "../config";
import { build, isBuilt } from "../server/build";
import { openHouse } from "../server/house";
import { makeLog } from "../server/log";
import { serve } from "../server/serve";
import { makeWorks } from "../server/works";
import { countAhead } from "../service/capacity-for";
import { seedDemo, type Seeding } from "./seed-demo";
import { addressesOf } from "./addresses";

/** `npm start`, `npm run dev` and `npm run demo`: serves the pages; the demo is built and seeded first where it has to be. */
const dir = fileURLToPath(new URL("../..", import.meta.url));
const has = (flag: string): boolean => process.argv.includes(flag);
const dev = has("--dev");
const demo = has("--demo");
const say = (words: string): void => { process.stderr.write(`${words}\n`); };

function stopWith(words: string): never {
  say(words);
  process.exit(1);
}

const portTaken = (port: number): string => `Port ${port} is taken. Give another one: PORT=${port + 1} npm run ${demo ? "demo" : "start"}`;

const isPortFree = (port: number): Promise<boolean> => new Promise((resolve) => {
  const probe = createServer().once("error", () => resolve(false)).once("listening", () => probe.close(() => resolve(true)));
  probe.listen(port);
});

if (demo) {
  setEnvironment({ MARQUETRY_DEMO: "1" });
  setDefaults({ MARQUETRY_LOG: "warn" });
}
const config = readConfig();
if (!config.ok) stopWith(`These settings are not as they should be:\n${config.error.map((one) => `  ${one}`).join("\n")}`);
const log = makeLog(config.value.log);

if (!dev && !isBuilt(dir)) {
  if (!demo) stopWith("The pages are not built, or were changed since. Run `npm run build` first.");
  say("Building the pages (once; about half a minute)…");
  if (!build(dir)) stopWith("The pages could not be built.");
}

// Before the store is touched: a second start must not disturb a first one.
if (!(await isPortFree(config.value.port))) stopWith(portTaken(config.value.port));
const opened = await openHouse(config.value, log);
if (!opened.ok) stopWith(opened.error);
const { house, metrics, keepTime, close } = opened.value;

let seeding: Seeding | undefined;
let serving: { readonly stop: () => Promise<void> } | undefined;
let stopping = false;
const stop = async (): Promise<void> => {
  if (stopping) return;
  stopping = true;
  await serving?.stop();
  await close();
  process.exit(0);
};
process.on("SIGTERM", () => void stop());
process.on("SIGINT", () => void stop());
// npm ends its shell on a signal and leaves the shell's child behind: without it we would hold the store for ever.
if (isRunByNpm()) {
  const parent = process.ppid;
  setInterval(() => { if (process.ppid !== parent) void stop(); }, 1_000).unref();
}

try {
  if (demo) seeding = await seedDemo(house);
  serving = await serve({ config: config.value, log, dev, dir, metrics });
} catch (error) {
  await close();
  stopWith(error instanceof Error && "code" in error && error.code === "EADDRINUSE"
    ? portTaken(config.value.port)
    : `The server could not start: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
}
process.stdout.write(await addressesOf(house, { demo, more: seeding?.fresh ?? false }));
countAhead(house).catch((error: unknown) => { if (!stopping) log.warn({ err: error }, "the rooms could not be counted ahead"); });
if (seeding) await tellTheRest(seeding);
if (!stopping) keepTime();

/** The stories that need the engine go on while the pages are served; their own threads keep the visitors' free. */
async function tellTheRest({ fresh, rest }: Seeding): Promise<void> {
  const works = makeWorks();
  let told = 0;
  try {
    await rest({ ...house, works: works.works }, (words) => { told += 1; say(words); });
    if (fresh && told > 0) process.stdout.write(await addressesOf(house, { demo }));
  } catch (error) {
    if (!stopping) say(`The demo's bookings could not all be walked to their state: ${error instanceof Error ? error.message : String(error)}`);
  } finally {
    await works.close();
  }
}
