import { spawn } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { settingsWith } from "../config";
import { counts, sum, type Counts } from "./tally";

/**
 * `npm run verify`: everything that is checked here, one step after another; those that only read, two at a time. A step that
 * fails does not stop the next, so that all is told at once; the last line counts what passed and what failed. A step without
 * tests of its own counts as one.
 */
const dir = fileURLToPath(new URL("../..", import.meta.url));
type Step = { readonly script: string; readonly report?: string };

/** Stage after stage; in a stage its lanes side by side. */
const STAGES: readonly (readonly (readonly Step[])[])[] = [
  [[{ script: "fetch-system" }, { script: "build" }]],
  [[{ script: "types" }], [{ script: "lint" }, { script: "directions" }, { script: "unused" }]],
  [[{ script: "test:all", report: ".out/vitest.json" }, { script: "test:browser", report: ".out/playwright.json" }]],
];

/** Runs a script of package.json. Beside another it is told whole at its end, so that no two speak at once. */
const ran = (script: string, alone: boolean): Promise<boolean> => new Promise((resolve) => {
  const heading = `\n── ${script}\n`;
  if (alone) process.stdout.write(heading);
  const out = alone ? "inherit" : "pipe";
  const child = spawn("npm", ["run", "--silent", script], { cwd: dir, stdio: ["ignore", out, out], env: settingsWith({ NEXT_TELEMETRY_DISABLED: "1" }) });
  const said: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on("data", (chunk: Buffer) => { said.push(chunk); });
  child.once("error", () => { resolve(false); });
  child.once("close", (code) => {
    if (!alone) process.stdout.write(Buffer.concat([Buffer.from(heading), ...said]));
    resolve(code === 0);
  });
});

async function run({ script, report }: Step, alone: boolean): Promise<Counts> {
  const path = report === undefined ? undefined : `${dir}/${report}`;
  if (path) rmSync(path, { force: true });
  const well = await ran(script, alone);
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
type Done = { readonly step: Step; readonly found: Counts; readonly seconds: number };
async function lane(steps: readonly Step[], alone: boolean): Promise<readonly Done[]> {
  const done: Done[] = [];
  for (const step of steps) {
    const start = performance.now();
    const found = await run(step, alone);
    done.push({ step, found, seconds: Math.round((performance.now() - start) / 1000) });
  }
  return done;
}
const done: Done[] = [];
const wanted = STAGES.map((lanes) => lanes.map((steps) => steps.filter(({ script }) => asked.length === 0 || asked.includes(script))).filter((steps) => steps.length > 0));
for (const lanes of wanted) done.push(...(await Promise.all(lanes.map((steps) => lane(steps, lanes.length === 1)))).flat());

process.stdout.write("\n");
for (const { step, found, seconds } of done) {
  const skipped = found.skipped > 0 ? `, ${found.skipped} skipped` : "";
  process.stdout.write(`${found.failed > 0 ? "✗" : "✓"} ${step.script.padEnd(14)} ${String(seconds).padStart(4)} s   ${found.passed} passed, ${found.failed} failed${skipped}\n`);
}
const total = sum(done.map(({ found }) => found));
process.exitCode = total.failed > 0 ? 1 : 0;
process.stdout.write(`\n${total.passed} passed, ${total.failed} failed\n`);
