import { createHash } from "node:crypto";
import { sql, type Transaction } from "kysely";
import { fail, ok, type Result } from "../base";
import type { Database } from "./database";
import { migrate, migrationNames } from "./migrate";
import type { Store } from "./store";

const FORMAT = "marquetry.backup/1";
/** In the order in which rows may be put back: what is pointed at goes first. A test holds that no table is missing. */
export const TABLES = ["staff", "venue_versions", "bookings", "revisions", "links", "sessions", "mails", "history", "counts", "arrangements", "adjustments", "held_rooms", "people", "late_changes", "venue_drafts", "late_works"] as const;

/** What is not in a backup: what the database or the store works out from the rest, and what stands for seconds. */
export const LEFT_OUT = ["booking_counts", "booking_search", "link_asks"] as const;

type Row = Readonly<Record<string, string | null>>;
export type Counts = Readonly<Record<string, number>>;
export type BackupFault =
  | { readonly code: "not-a-backup"; readonly why: string }
  | { readonly code: "not-empty" }
  | { readonly code: "newer"; readonly migration: string };

/**
 * The whole store as one moment saw it: a line of JSON that says what it is, a line for each row, its values as the database writes
 * them, and a line with the SHA-256 of all before. It can be put back on either kind of database.
 */
export async function backup(store: Store, at: string): Promise<{ readonly lines: readonly string[]; readonly counts: Counts }> {
  return store.db.transaction().setIsolationLevel("repeatable read").execute(async (tx) => {
    const { rows: moved } = await sql<{ readonly name: string }>`select name from kysely_migration order by name desc limit 1`.execute(tx);
    const lines = [JSON.stringify({ format: FORMAT, migration: moved[0]?.name, at })];
    const counts: Record<string, number> = {};
    for (const table of TABLES) {
      const rows = await rowsOf(tx, table);
      counts[table] = rows.length;
      for (const row of rows) lines.push(JSON.stringify({ table, row }));
    }
    return { lines: [...lines, JSON.stringify({ sha256: sumOf(lines) })], counts };
  });
}

/** Puts a backup into an empty store, all of it or nothing, and brings it up to date. */
export async function restore(store: Store, { migration, rows }: Backup): Promise<Result<Counts, BackupFault>> {
  const { rows: there } = await sql`select 1 from information_schema.tables where table_schema = current_schema()`.execute(store.db);
  if (there.length > 0) return fail({ code: "not-empty" });
  const laid = await migrate(store.db, migration);
  if (!laid.ok) throw new Error(laid.error);
  const counts: Record<string, number> = {};
  await store.transaction(async (tx) => {
    for (const { table, row } of rows) {
      await putBack(tx, table, row);
      counts[table] = (counts[table] ?? 0) + 1;
    }
    for (const table of ["mails", "history", ...(counts["staff"] === undefined ? [] : ["staff"])]) {
      await sql`select setval(pg_get_serial_sequence(${table}, 'id'), (select coalesce(max(id), 0) + 1 from ${sql.table(table)}), false)`.execute(tx);
    }
  });
  const moved = await migrate(store.db);
  if (!moved.ok) throw new Error(moved.error);
  return ok(counts);
}

async function columnsOf(tx: Transaction<Database>, table: string): Promise<readonly string[]> {
  const { rows } = await sql<{ readonly name: string }>`select column_name as name from information_schema.columns
    where table_schema = current_schema() and table_name = ${table} order by ordinal_position`.execute(tx);
  return rows.map((one) => one.name);
}

/** Every value as text: what JSON, a moment or a number would lose on the way through a program is kept. */
async function rowsOf(tx: Transaction<Database>, table: string): Promise<readonly Row[]> {
  const columns = await columnsOf(tx, table);
  if (columns.length === 0) return [];
  const texts = sql.join(columns.map((name) => sql`${sql.ref(name)}::text`));
  const { rows } = await sql<{ readonly all: readonly (string | null)[] }>`select array[${texts}] as "all" from ${sql.table(table)} order by 1`.execute(tx);
  return rows.map(({ all }) => Object.fromEntries(columns.map((name, at) => [name, all[at] ?? null])));
}

async function putBack(tx: Transaction<Database>, table: string, row: Row): Promise<void> {
  const names = Object.keys(row);
  await sql`insert into ${sql.table(table)} (${sql.join(names.map((name) => sql.ref(name)))}) overriding system value
    values (${sql.join(names.map((name) => sql`${row[name]}`))})`.execute(tx);
}

export type Backup = { readonly migration: string; readonly rows: readonly { readonly table: string; readonly row: Row }[] };

/** Reads a backup's lines, and sees that they are whole and of a version that is known here. */
export function readBackup(lines: readonly string[]): Result<Backup, BackupFault> {
  const bad = (why: string): Result<never, BackupFault> => fail({ code: "not-a-backup", why });
  try {
    const [head, ...others] = lines.map((line): Readonly<Record<string, unknown>> => JSON.parse(line));
    const tail = others.pop();
    if (head?.["format"] !== FORMAT || typeof head["migration"] !== "string") return bad("its first line is not that of a backup");
    if (tail?.["sha256"] !== sumOf(lines.slice(0, -1))) return bad("it is cut short or was changed");
    if (!migrationNames().includes(head["migration"])) return fail({ code: "newer", migration: head["migration"] });
    const rows = others.map(({ table, row }) => {
      if (typeof table !== "string" || !TABLES.some((one) => one === table) || typeof row !== "object" || row === null) throw new Error("a line is not a row");
      return { table, row: Object.fromEntries(Object.entries(row).map(([name, value]) => [name, typeof value === "string" ? value : null])) };
    });
    return ok({ migration: head["migration"], rows });
  } catch (error) {
    return bad(error instanceof Error ? error.message : String(error));
  }
}

const sumOf = (lines: readonly string[]): string => createHash("sha256").update(lines.join("\n")).digest("hex");

export function backupFaultText(fault: BackupFault): string {
  switch (fault.code) {
    case "not-a-backup": return `This is no backup that could be put back: ${fault.why}. Nothing was changed.`;
    case "not-empty": return "There is something in this database already, and a backup is put into an empty one alone. Nothing was changed.";
    case "newer": return `The backup was made by a newer Marquetry (${fault.migration}). Put it back with that one. Nothing was changed.`;
  }
}
