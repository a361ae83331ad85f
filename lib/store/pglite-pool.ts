import type { PGlite } from "@electric-sql/pglite";
import type { PostgresPool, PostgresPoolClient, PostgresQueryResult } from "kysely";
import { asCommand } from "./command";

/**
 * PGlite dressed as the part of pg.Pool that the query builder uses. PGlite is one connection, so whoever connects waits for the
 * one before to release: transactions queue up and never mix.
 */
export function poolOfPglite(database: PGlite): PostgresPool {
  let last: Promise<void> = Promise.resolve();
  return {
    async connect() {
      let release = (): void => {};
      const before = last;
      last = new Promise((done) => { release = done; });
      await before;
      return clientOf(database, release);
    },
    async end() {
      await last;
      if (!database.closed) await database.close();
    },
  };
}

function clientOf(database: PGlite, release: () => void): PostgresPoolClient {
  async function ask<R>(text: string, parameters: readonly unknown[]): Promise<PostgresQueryResult<R>> {
    // Only the simple protocol takes several statements at once, as a migration file holds them.
    const results = parameters.length === 0 ? await database.exec(text) : [await database.query<R>(text, [...parameters])];
    const result = results.at(-1);
    const rows: R[] = [];
    for (const row of result?.rows ?? []) rows.push(row as R);
    return { command: asCommand(result?.command), rowCount: result?.rowCount ?? result?.affectedRows ?? 0, rows };
  }
  function query(text: unknown, parameters?: readonly unknown[]): never {
    if (typeof text !== "string") throw new Error("cursors are not used here");
    return ask(text, parameters ?? []) as never;
  }
  return { query, release };
}
