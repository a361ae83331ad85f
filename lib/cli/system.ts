import { spawnSync } from "node:child_process";

/** A program of the system that the tests need: where it is looked for, and the system's package that holds it. */
export type Tool = { readonly name: string; readonly places: readonly string[]; readonly packages: readonly string[] };

export const TOOLS: Readonly<Record<"chromium" | "qpdf", Tool>> = {
  chromium: {
    name: "Chromium", packages: ["chromium"],
    places: [
      "chromium", "chromium-browser", "google-chrome-stable", "google-chrome",
      "/Applications/Chromium.app/Contents/MacOS/Chromium", "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    ],
  },
  qpdf: { name: "qpdf", packages: ["qpdf"], places: ["qpdf"] },
};

/** The program's full path, or undefined. A place counts only if it answers: some systems keep a stand-in of that name. */
export function findTool(tool: Tool, first?: string): string | undefined {
  for (const place of [...(first ? [first] : []), ...tool.places]) {
    const path = spawnSync("sh", ["-c", 'command -v "$0"', place], { encoding: "utf8" }).stdout.trim();
    if (path !== "" && spawnSync(path, ["--version"], { stdio: "ignore", timeout: 60_000 }).status === 0) return path;
  }
  return undefined;
}
