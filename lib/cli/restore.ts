import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { readConfig } from "../config";
import { backupFaultText, readBackup, restore } from "../store/backup";
import { openAsItIs, storeErrorText } from "../store/open";

/** `npm run restore -- FILE`: puts a backup into an empty store and brings it up to date. Exit 0: done; 1: it could not be put there; 2: a setting or the file is wrong. */
const say = (words: string): void => { process.stderr.write(`${words}\n`); };

async function run(file: string | undefined): Promise<number> {
  const config = readConfig();
  if (!config.ok) { say(config.error.join("\n")); return 2; }
  const lines = file === undefined ? undefined : read(file);
  if (!lines) { say(file === undefined ? "Give it the file to read: npm run restore -- marquetry-2027-06-01.backup" : `${file} cannot be read, or is no backup.`); return 2; }
  const backup = readBackup(lines);
  if (!backup.ok) { say(backupFaultText(backup.error)); return 2; }
  const opened = await openAsItIs(config.value);
  if (!opened.ok) { say(storeErrorText(opened.error)); return 1; }
  const done = await restore(opened.value, backup.value);
  await opened.value.close();
  say(done.ok ? `Put back: ${Object.entries(done.value).map(([table, count]) => `${count} ${table}`).join(", ")}.` : backupFaultText(done.error));
  return done.ok ? 0 : 1;
}

function read(file: string): readonly string[] | undefined {
  try {
    return gunzipSync(readFileSync(file)).toString("utf8").split("\n");
  } catch {
    return undefined;
  }
}

process.exitCode = await run(process.argv[2]);
