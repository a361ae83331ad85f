import { appendFileSync, mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { pairFrom, proveOne, soakOne } from "./soak";

/**
 * npm run soak [-- --from N --count M --files FOLDER --proofs --effort STEPS]: arranges the random days of M seeds from N on and prints what came of
 * them; with --proofs only the bounds are asked, and what they call impossible is worked out again.
 * With --effort, a search ends after so many steps (lib/engine/effort.ts): more days in the same time, and what ends early must be as true.
 * With a folder, the files of each fault and a line a seed are kept there. Ends with 1 where anything is wrong.
 */
const { values } = parseArgs({ options: { from: { type: "string", default: "1" }, count: { type: "string", default: "200" }, files: { type: "string" }, proofs: { type: "boolean", default: false }, effort: { type: "string" } } });
const from = Number(values.from), count = Number(values.count), effort = values.effort === undefined ? undefined : Number(values.effort);
if (effort !== undefined && !(Number.isSafeInteger(effort) && effort >= 1)) {
  process.stderr.write("command line: --effort: allowed: a whole number of steps, at least 1\n");
  process.exit(2);
}
if (!Number.isSafeInteger(from) || !Number.isSafeInteger(count) || from < 0 || count < 1) {
  process.stderr.write("command line: --from, --count: allowed: whole numbers, --count at least 1\n");
  process.exit(2);
}
const tally: Record<string, number> = { arranged: 0, impossible: 0, "not-found": 0, crashed: 0 };
let faults = 0, slowest = { seed: 0, ms: 0 };
const started = process.cpuUsage();
if (values.files) mkdirSync(values.files, { recursive: true });
for (let seed = from; seed < from + count; seed++) {
  const at = performance.now();
  const told = values.proofs ? proveOne(seed) : soakOne(seed, effort);
  const ms = performance.now() - at;
  if (ms > slowest.ms) slowest = { seed, ms };
  tally[told.status] = (tally[told.status] ?? 0) + 1;
  for (const f of told.faults) process.stdout.write(`seed ${seed}: ${f}\n`);
  if (told.faults.length > 0) {
    faults++;
    if (values.files && told.status !== "crashed") {
      const pair = pairFrom(seed);
      for (const kind of ["venue", "brief"] as const) writeFileSync(path.join(values.files, `${seed}.${kind}.json`), JSON.stringify(pair[kind], null, 1));
    }
  }
  if (values.files && !values.proofs) appendFileSync(path.join(values.files, "seeds.txt"), `${seed} ${told.status} ${Math.round(ms)} ms${told.faults.length > 0 ? ` ${told.faults.length} faults` : ""}\n`);
}
const cpu = process.cpuUsage(started);
process.stdout.write(`${JSON.stringify({ from, count, ...tally, faults, cpuSeconds: Math.round((cpu.user + cpu.system) / 1e6), slowest: { seed: slowest.seed, ms: Math.round(slowest.ms) } })}\n`);
process.exitCode = faults === 0 ? 0 : 1;
