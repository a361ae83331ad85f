import { closeSync, existsSync, fsyncSync, openSync, renameSync, writeSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { readConfig } from "../config";
import { backup } from "../store/backup";
import { openStore, storeErrorText } from "../store/open";

/** `npm run backup -- FILE`: writes the whole store into one file, whole or not at all. Exit 0: done; 1: the store does not open; 2: a setting or the file is wrong. */
const say = (words: string): void => { process.stderr.write(`${words}\n`); };

async function run(file: string | undefined): Promise<number> {
  const config = readConfig();
  if (!config.ok) { say(config.error.join("\n")); return 2; }
  if (file === undefined) { say("Give it the file to write: npm run backup -- marquetry-2027-06-01.backup"); return 2; }
  if (existsSync(file)) { say(`${file} is there already, and is not written over.`); return 2; }
  const opened = await openStore(config.value);
  if (!opened.ok) { say(storeErrorText(opened.error)); return 1; }
  const { lines, counts } = await backup(opened.value, new Date().toISOString());
  await opened.value.close();
  write(file, gzipSync(lines.join("\n")));
  say(`${file}: ${Object.entries(counts).map(([table, count]) => `${count} ${table}`).join(", ")}. It holds couples' answers and links that open: keep it as you keep the database.`);
  return 0;
}

/** Read by its owner alone, on the disk before it has its name. */
function write(file: string, bytes: Uint8Array): void {
  const part = `${file}.part`;
  const open = openSync(part, "w", 0o600);
  for (let at = 0; at < bytes.length;) at += writeSync(open, bytes, at);
  fsyncSync(open);
  closeSync(open);
  renameSync(part, file);
}

process.exitCode = await run(process.argv[2]);
