import { readConfig } from "../config";
import { openHouse } from "../server/house";
import { makeLog } from "../server/log";
import { keepPromises } from "../service/keep-promises";

/** `npm run retention [-- --dry-run]`: erases what has been kept long enough, as the server does once a day, or says what that would be. */
const dryRun = process.argv.includes("--dry-run");
const say = (words: string): void => { process.stderr.write(`${words}\n`); };

async function run(): Promise<number> {
  const config = readConfig();
  if (!config.ok) { say(config.error.join("\n")); return 2; }
  const opened = await openHouse({ ...config.value, worker: false }, makeLog("error"));
  if (!opened.ok) { say(opened.error); return 1; }
  try {
    const { bookings, ...rest } = await keepPromises(opened.value.house, { keep: config.value.keep, dryRun });
    process.stdout.write(`${JSON.stringify({ dryRun, keepDays: config.value.keep, bookings, ...rest }, null, 2)}\n`);
    return 0;
  } finally {
    await opened.value.close();
  }
}

process.exitCode = await run();
