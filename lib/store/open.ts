import { existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { CamelCasePlugin, Kysely, PostgresDialect, sql, type PostgresPool } from "kysely";
import pg from "pg";
import { fail, ok, type Result } from "../base";
import type { Database } from "./database";
import { openFlushed } from "./flushed-files";
import { guarded, insideTransaction } from "./guard";
import { lockFolder, type Locked } from "./lock";
import { isUpToDate, migrate } from "./migrate";
import { PARSERS } from "./parsers";
import { poolOfPglite } from "./pglite-pool";
import type { Store } from "./store";

export type StoreError =
  | Locked
  | { readonly code: "unreadable"; readonly folder: string; readonly why: string }
  | { readonly code: "migration"; readonly why: string };

type Where = { readonly databaseUrl?: string; readonly dataDir: string };

/** Opens the store and brings it up to date: PostgreSQL where an address is given, else the embedded database in a folder. */
export async function openStore(where: Where): Promise<Result<Store, StoreError>> {
  const opened = await openAsItIs(where);
  if (!opened.ok) return opened;
  const moved = await migrate(opened.value.db);
  if (moved.ok) return opened;
  await opened.value.close();
  return fail({ code: "migration", why: moved.error });
}

/** Opens the store as it stands: for what must see it before it is brought up to date. */
export async function openAsItIs(where: Where): Promise<Result<Store, StoreError>> {
  return where.databaseUrl === undefined ? openEmbedded(where.dataDir) : ok(storeOn(serverPool(where.databaseUrl)));
}

async function openEmbedded(dataDir: string): Promise<Result<Store, StoreError>> {
  const lock = lockFolder(dataDir);
  if (!lock.ok) return lock;
  const folder = join(dataDir, "database");
  try {
    if (!existsSync(folder)) await make(folder);
    return ok(storeOn(poolOfPglite(await openFlushed(folder, { parsers: PARSERS })), lock.value));
  } catch (error) {
    lock.value.release();
    return fail({ code: "unreadable", folder, why: error instanceof Error ? error.message : String(error) });
  }
}

/** Makes a new database beside its place and moves it there whole: a first start that is broken off leaves nothing half-made. */
async function make(folder: string): Promise<void> {
  const beside = `${folder}.new`;
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(beside, { recursive: true });
  await (await openFlushed(beside)).close();
  renameSync(beside, folder);
}

function serverPool(connectionString: string): PostgresPool {
  const parsers: pg.CustomTypesConfig = {
    getTypeParser: (oid: number, format?: "text" | "binary") => PARSERS[oid] ?? pg.types.getTypeParser(oid, format),
  };
  const pool = new pg.Pool({ connectionString, types: parsers, max: 10, connectionTimeoutMillis: 10_000, keepAlive: true, application_name: "marquetry" });
  // A connection that breaks between two questions, in the pool or within a transaction, is told by the next question; unheard, its
  // complaint would end the process.
  pool.on("error", () => {});
  pool.on("connect", (client) => { client.on("error", () => {}); });
  return pool;
}

/** `lock`: that of the embedded database's folder. */
function storeOn(pool: PostgresPool, lock?: { readonly release: () => void }): Store {
  const db = new Kysely<Database>({
    dialect: new PostgresDialect({ pool: guarded(pool) }),
    plugins: [new CamelCasePlugin({ maintainNestedObjectKeys: true })],
  });
  const close = async (): Promise<void> => {
    await db.destroy();
    lock?.release();
  };
  const tidy = async (): Promise<void> => { if (lock) await sql`vacuum (analyze)`.execute(db); };
  return { db, close, tidy, isUpToDate: () => isUpToDate(db), transaction: (work) => insideTransaction(() => db.transaction().execute(work)) };
}

/** The problem in words, for the console. */
export function storeErrorText(error: StoreError): string {
  switch (error.code) {
    case "locked":
      return `The data folder ${error.folder} is in use by process ${error.pid}. One process may use it at a time: stop that one, or give this one another folder with MARQUETRY_DATA_DIR.`;
    case "unreadable":
      return `The embedded database in ${error.folder} could not be opened (${error.why}). Put a copy of the folder back, or move it away to begin anew.`;
    case "migration":
      return `The database could not be brought up to date: ${error.why}`;
  }
}
