import { buildSync } from "esbuild";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { drawingBench } from "./drawing";
import type { parts as ofOne } from "./engine";
import { hand } from "./hand";
import { line, type Part } from "./line";
import { load } from "./load";
import { pageBench } from "./page";
import { papers } from "./papers";
import { queueBench } from "./queue";

/**
 * Prints ratios and times; writes nothing but the engine's one file. `npm run bench [-- packing solver growth weddings composed checks drawing papers page queue hand]`, and by name alone `load` and `load-postgresql`. Times are the
 * processor's, so that a busy machine tells much the same.
 */
const ENGINE = ["packing", "solver", "growth", "weddings", "composed", "checks"] as const;

let engine: Readonly<Record<string, Part>> | null = null;
/** The benches of the engine, put into one file first, as the built works have it: from many files it takes longer. */
async function ofEngine(name: string): Promise<void> {
  if (!engine) {
    const outfile = join(import.meta.dirname, "../../.out/bench-engine.mjs");
    buildSync({ entryPoints: [join(import.meta.dirname, "engine.ts")], outfile, bundle: true, platform: "node", format: "esm", packages: "external", logLevel: "error" });
    const made: { readonly parts: typeof ofOne } = await import(pathToFileURL(outfile).href);
    engine = made.parts;
  }
  await engine[name]?.();
}

function drawing(): void {
  line("drawing", "ms", "aim");
  for (const { name, ms, aim } of drawingBench()) line(name, ms, aim ?? "");
}

async function page(): Promise<void> {
  const { empty, pages, held } = await pageBench();
  line("pages, processor slowed four times", "script KB", "ratio", "paint ms", "ratio");
  line(empty.name, empty.scriptKb, 1, empty.paintMs, 1);
  for (const one of pages) line(one.name, one.scriptKb, one.scriptKb / empty.scriptKb, one.paintMs, one.paintMs / empty.paintMs);
  line("while the engine runs", "over 50 ms", "longest", "seconds");
  for (const one of held) line(one.name, one.tasks, one.longest, one.seconds);
}

const parts: Readonly<Record<string, Part>> = {
  ...Object.fromEntries(ENGINE.map((name) => [name, () => ofEngine(name)])),
  drawing, papers, page, queue: queueBench, hand: () => hand(line), load: () => load(line, "embedded"), "load-postgresql": () => load(line, "postgresql"),
};
const asked = process.argv.slice(2);
/** Ten minutes each: only where they are named. */
const LONG: readonly string[] = ["load", "load-postgresql"];
for (const [name, part] of Object.entries(parts)) if (asked.length === 0 ? !LONG.includes(name) : asked.includes(name)) await part();
