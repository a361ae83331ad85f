import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Migrator, sql, type Kysely, type Migration } from "kysely";
import { fail, ok, type Result } from "../base";
import { noteMissing } from "./search";
import type { Database } from "./database";

const FOLDER = join(fileURLToPath(new URL(".", import.meta.url)), "migrations");

/** Runs the SQL files that have not run yet, in the order of their names; no further than `last`, where it is given. Returns the names that ran. */
export async function migrate(db: Kysely<Database>, last?: string): Promise<Result<readonly string[], string>> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => readMigrations() } });
  const { error, results } = last === undefined ? await migrator.migrateToLatest() : await migrator.migrateTo(last);
  if (error !== undefined) return fail(error instanceof Error ? error.message : JSON.stringify(error));
  // What bookings are found by is folded by our own rules, which SQL does not have.
  if (last === undefined && (results ?? []).length > 0) await noteMissing(db);
  return ok((results ?? []).filter((one) => one.status === "Success").map((one) => one.migrationName));
}

/** Have all run? */
export async function isUpToDate(db: Kysely<Database>): Promise<boolean> {
  const { rows } = await sql<{ readonly name: string }>`select name from kysely_migration`.execute(db);
  return migrationNames().every((name) => rows.some((one) => one.name === name));
}

export const migrationNames = (): readonly string[] => Object.keys(readMigrations());

function readMigrations(): Record<string, Migration> {
  const names = readdirSync(FOLDER).filter((name) => name.endsWith(".sql")).sort();
  return Object.fromEntries(names.map((name) => {
    const text = readFileSync(join(FOLDER, name), "utf8");
    return [name.slice(0, -4), { up: async (tx: Kysely<unknown>) => { await sql.raw(text).execute(tx); } }];
  }));
}
