import type { Kysely, Transaction } from "kysely";
import type { Database } from "./database";

/** What a question is asked through: the outer handle, or a transaction's. */
export type Handle = Kysely<Database> | Transaction<Database>;

export type Store = {
  readonly db: Kysely<Database>;
  /** Runs `work` in one transaction. Inside it only the handle that it is given may be used. */
  readonly transaction: <T>(work: (tx: Transaction<Database>) => Promise<T>) => Promise<T>;
  /** Have all migrations of this version run? Throws where the database does not answer. */
  readonly isUpToDate: () => Promise<boolean>;
  /** Sweeps out what changes left behind, and counts what there is for the planner of questions. A server does so by itself; there this does nothing. */
  readonly tidy: () => Promise<void>;
  readonly close: () => Promise<void>;
};
