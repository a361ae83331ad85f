import { createHash, randomBytes } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { openAsItIs, openStore, storeErrorText } from "../../../lib/store/open";

const MIGRATIONS = "lib/store/migrations";

/** Puts a new embedded database into a folder, with our tables or with none: made once, by the store itself, and copied from then on; making one takes seconds. */
export async function copyTemplate(to: string, kind: "ready" | "blank"): Promise<void> {
  const template = join(".out", `template-${kind}-${version()}`);
  if (!existsSync(template)) await make(template, kind === "ready" ? openStore : openAsItIs);
  cpSync(join(template, "database"), join(to, "database"), { recursive: true });
}

/** What a new database depends on: its engine, and our migrations. */
function version(): string {
  const hash = createHash("sha256").update(readFileSync("node_modules/@electric-sql/pglite/package.json"));
  for (const name of readdirSync(MIGRATIONS).sort()) hash.update(name).update(readFileSync(join(MIGRATIONS, name)));
  return hash.digest("hex").slice(0, 16);
}

/** Beside its place and moved there whole: two tests may make it at once, and either's is as good. */
async function make(template: string, open: typeof openStore): Promise<void> {
  const beside = `${template}.${randomBytes(4).toString("hex")}`;
  mkdirSync(beside, { recursive: true });
  const opened = await open({ dataDir: beside });
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  await opened.value.close();
  try {
    renameSync(beside, template);
  } catch {
    rmSync(beside, { recursive: true });
  }
}
