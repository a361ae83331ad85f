import { spawnSync } from "node:child_process";

/** A program of the system that the tests need: where it is looked for (a name on the path, or a pattern of the shell), the system's package that holds it, and how it is asked whether it is there (`--version`). */
export type Tool = { readonly name: string; readonly places: readonly string[]; readonly packages: readonly string[]; readonly asked?: string };

export const TOOLS: Readonly<Record<"chromium" | "qpdf" | "openssl" | "postgresql", Tool>> = {
  chromium: {
    name: "Chromium", packages: ["chromium"],
    places: [
      "chromium", "chromium-browser", "google-chrome-stable", "google-chrome",
      "/Applications/Chromium.app/Contents/MacOS/Chromium", "/Applications/Google\\ Chrome.app/Contents/MacOS/Google\\ Chrome",
    ],
  },
  qpdf: { name: "qpdf", packages: ["qpdf"], places: ["qpdf"] },
  // Certificates for the tests' own mail server.
  openssl: { name: "OpenSSL", packages: ["openssl"], places: ["openssl"], asked: "version" },
  // The server, not only its client: distributions keep it off the path, a folder a version.
  postgresql: {
    name: "PostgreSQL", packages: ["postgresql"],
    places: ["postgres", "/usr/lib/postgresql/*/bin/postgres", "/usr/pgsql-*/bin/postgres", "/usr/libexec/postgresql*/postgres", "/opt/homebrew/opt/postgresql@*/bin/postgres"],
  },
};

/** The program's full path, or undefined. A place counts only if it answers: some systems keep a stand-in of that name. */
export function findTool(tool: Tool, first?: string): string | undefined {
  for (const path of [...(first ? [first] : []), ...tool.places.flatMap(pathsAt)]) {
    if (spawnSync(path, [tool.asked ?? "--version"], { stdio: "ignore", timeout: 60_000 }).status === 0) return path;
  }
  return undefined;
}

/** What the shell finds at a place; of several versions the newest first. */
function pathsAt(place: string): readonly string[] {
  const look = place.startsWith("/") ? `ls -1d ${place} 2>/dev/null | sort -rV` : `command -v ${place}`;
  return spawnSync("sh", ["-c", look], { encoding: "utf8" }).stdout.split("\n").filter((line) => line !== "");
}
