import { spawnSync } from "node:child_process";
import { settingsWith } from "../config";
import { findTool, TOOLS, type Tool } from "./system";

/**
 * `npm run fetch-system` and `npm run fetch-browser`: finds the programs of the system that the tests need, and takes
 * those that are missing from the system's own packages. A missing one ends with 1: what needs it is never left out.
 */
const say = (words: string): void => { process.stderr.write(`${words}\n`); };
const runs = (command: string, args: readonly string[]): boolean =>
  spawnSync(command, args, { stdio: ["ignore", 2, 2], env: settingsWith({ DEBIAN_FRONTEND: "noninteractive" }) }).status === 0;
const has = (command: string): boolean => spawnSync(command, ["--version"], { stdio: "ignore" }).status === 0;

/** How this system takes a package: as root, or by sudo where it asks for no password. */
function installer(): ((packages: readonly string[]) => boolean) | undefined {
  if (!has("apt-get")) return undefined;
  const root = process.getuid?.() === 0;
  if (!root && spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status !== 0) return undefined;
  const apt = (...args: readonly string[]): boolean => (root ? runs("apt-get", args) : runs("sudo", ["-n", "apt-get", ...args]));
  return (packages) => apt("-qq", "update") && apt("-qq", "install", "-y", "--no-install-recommends", ...packages);
}

const asked = process.argv.slice(2);
const tools = Object.entries(TOOLS).filter(([name]) => asked.length === 0 || asked.includes(name));
const locate = (name: string, tool: Tool): string | undefined => findTool(tool, name === "chromium" ? settingsWith({})["CHROMIUM_PATH"] : undefined);

const missing = tools.filter(([name, tool]) => locate(name, tool) === undefined);
if (missing.length > 0) {
  const packages = missing.flatMap(([, tool]) => tool.packages);
  const install = installer();
  if (install) {
    say(`Taking ${packages.join(", ")} from the system's packages…`);
    install(packages);
  }
}
for (const [name, tool] of tools) {
  const found = locate(name, tool);
  if (found) {
    say(`${tool.name}: ${found}`);
    continue;
  }
  process.exitCode = 1;
  say(`${tool.name} is not here, and could not be taken from the system's packages. Install it and run this again:`);
  say(`  Debian: apt-get install ${tool.packages.join(" ")}   Fedora: dnf install ${tool.packages.join(" ")}   Alpine: apk add ${tool.packages.join(" ")}   macOS: brew install ${tool.packages.join(" ")}`);
  if (name === "chromium") say("  A Chromium or Chrome that lies elsewhere: CHROMIUM_PATH=/its/path npm run verify");
}
