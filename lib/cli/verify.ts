import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { settingsWith } from "../config";
import { counts, sum, type Counts } from "./tally";

/**
 * `npm run verify`: everything that is checked here, one step after another. A step that fails does not stop the next, so
 * that all is told at once; the last line counts what passed and what failed. A step without tests of its own counts as one.
 */
const dir = fileURLToPath(new URL("../..", import.meta.url));
type Step = { readonly script: string; readonly report?: string };

const STEPS: readonly Step[] = [
  { script: "fetch-system" },
  { script: "build" },
  { script: "types" },
  { script: "lint" },
  { script: "directions" },
  { script: "unused" },
  { script: "test:all", report: ".out/vitest.json" },
  { script: "test:browser", report: ".out/playwright.json" },
];

function run({ script, report }: Step): Counts {
  const path = report === undefined ? undefined : `${dir}/${report}`;
  if (path) rmSync(path, { force: true });
  process.stdout.write(`\n── ${script}\n`);
  const ended = spawnSync("npm", ["run", "--silent", script], { cwd: dir, stdio: ["ignore", "inherit", "inherit"], env: settingsWith({ NEXT_TELEMETRY_DISABLED: "1" }) });
  const well = ended.status === 0;
  if (!path) return well ? { passed: 1, failed: 0, skipped: 0 } : { passed: 0, failed: 1, skipped: 0 };
  return counts(read(path), well);
}

function read(path: string): unknown {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch {
    return undefined;
  }
}

mkdirSync(`${dir}/.out`, { recursive: true });
const asked = process.argv.slice(2);
const done = STEPS.filter((step) => asked.length === 0 || asked.includes(step.script)).map((step) => {
  const start = performance.now();
  const found = run(step);
  return { step, found, seconds: Math.round((performance.now() - start) / 1000) };
});

process.stdout.write("\n");
for (const { step, found, seconds } of done) {
  const skipped = found.skipped > 0 ? `, ${found.skipped} skipped` : "";
  process.stdout.write(`${found.failed > 0 ? "✗" : "✓"} ${step.script.padEnd(14)} ${String(seconds).padStart(4)} s   ${found.passed} passed, ${found.failed} failed${skipped}\n`);
}
const total = sum(done.map(({ found }) => found));
process.exitCode = total.failed > 0 ? 1 : 0;
process.stdout.write(`\n${total.passed} passed, ${total.failed} failed\n`);
