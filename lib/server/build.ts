import { spawnSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { settingsWith } from "../config";

const SOURCES = ["app", "components", "lib", "public", "package.json", "package-lock.json", "next.config.mjs", "tsconfig.json"];

/** Is there a build, and is nothing that it was made from newer? */
export function isBuilt(dir: string): boolean {
  const built = changedAt(join(dir, ".next", "BUILD_ID"));
  return built > 0 && SOURCES.every((name) => newest(join(dir, name)) <= built);
}

/**
 * The works' thread as one file. From the sources a thread takes a second or two to begin, which read and translated each of some
 * hundred files, and the names that the translator keeps for every function cost a tenth of its time ever after.
 */
export const threadFile = (dir: string): string => join(dir, ".next", "works", "works-thread.mjs");

/** Builds the pages and the works' thread; false if that failed. What the builder says goes to standard error. */
export function build(dir: string): boolean {
  const next = createRequire(join(dir, "package.json")).resolve("next/dist/bin/next");
  const run = spawnSync(process.execPath, [next, "build"], { cwd: dir, stdio: ["ignore", 2, 2], env: settingsWith({ NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" }) });
  return run.status === 0 && bundleThread(dir, threadFile(dir));
}

/** Writes the works' thread as one file, which stands in the project's folder so that it finds the packages; false if that failed. */
export function bundleThread(dir: string, outfile: string): boolean {
  const { errors } = buildSync({
    absWorkingDir: dir, entryPoints: ["lib/server/works-thread.ts"], outfile, bundle: true, platform: "node", format: "esm", target: "node20", packages: "external", logLevel: "warning",
  });
  return errors.length === 0;
}

function newest(path: string): number {
  const own = changedAt(path);
  const names = own > 0 && statSync(path).isDirectory() ? readdirSync(path) : [];
  return names.reduce((latest, name) => Math.max(latest, newest(join(path, name))), own);
}

function changedAt(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}
