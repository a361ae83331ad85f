import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { run } from "../../../lib/cli/run";

export type Called = { readonly code: number; readonly out: string; readonly err: string; readonly lines: readonly string[] };

/** Runs a command in this process. */
export async function call(...argv: readonly string[]): Promise<Called> {
  let out = "", err = "", now = 0;
  const code = await run(argv, { out: (t) => { out += t; }, err: (t) => { err += t; }, clock: { now: () => now++ } });
  return { code, out, err, lines: err.split("\n").filter((l) => l !== "") };
}

/** A folder of this test's own. */
export function folder(): { readonly write: (name: string, content: unknown) => string; readonly at: string; readonly clear: () => void } {
  const at = mkdtempSync(path.join(tmpdir(), "marquetry-test-"));
  return {
    at,
    write: (name, content) => {
      const file = path.join(at, name);
      writeFileSync(file, typeof content === "string" || content instanceof Uint8Array ? content : JSON.stringify(content));
      return file;
    },
    clear: () => rmSync(at, { recursive: true, force: true }),
  };
}
