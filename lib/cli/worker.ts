import { readConfig } from "../config";
import { openHouse } from "../server/house";
import { makeLog } from "../server/log";

/** `npm run worker`: sends the mails and keeps the due dates beside servers that do not (MARQUETRY_WORKER=0). Any number of them may run on one PostgreSQL. */
function stopWith(words: string): never {
  process.stderr.write(`${words}\n`);
  process.exit(2);
}

const config = readConfig();
if (!config.ok) stopWith(`These settings are not as they should be:\n${config.error.map((one) => `  ${one}`).join("\n")}`);
if (config.value.databaseUrl === undefined) stopWith("DATABASE_URL: not set. The embedded database has room for one process, and its server does the work itself.");
const log = makeLog(config.value.log);
const opened = await openHouse({ ...config.value, worker: true }, log);
if (!opened.ok) stopWith(opened.error);
const { keepTime, close } = opened.value;
keepTime();

let stopping = false;
const stop = async (): Promise<void> => {
  if (stopping) return;
  stopping = true;
  clearInterval(awake);
  await close();
  process.exit(0);
};
// Everything else that waits here lets the process end.
const awake = setInterval(() => undefined, 60_000);
process.on("SIGTERM", () => void stop());
process.on("SIGINT", () => void stop());
process.stdout.write("Working: mails are sent, due dates kept.\n");
