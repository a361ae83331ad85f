import { AsyncLocalStorage } from "node:async_hooks";
import type { PostgresPool } from "kysely";

/**
 * Marks the run of one transaction, to catch a use of the outer handle inside it: on the embedded database's one connection it
 * would wait for ever, and on a server it would see and write outside the transaction.
 */
const transactions = new AsyncLocalStorage<{ connected: boolean }>();
export const insideTransaction = <T>(work: () => Promise<T>): Promise<T> => {
  if (transactions.getStore()) throw new Error("a transaction is open already: pass its handle on");
  return transactions.run({ connected: false }, work);
};

/** The pool, but that a transaction takes one connection and no second one. */
export function guarded(pool: PostgresPool): PostgresPool {
  return {
    async connect() {
      const run = transactions.getStore();
      if (run?.connected) throw new Error("the outer database handle was used inside a transaction: pass the transaction's handle on");
      if (run) run.connected = true;
      return pool.connect();
    },
    end: () => pool.end(),
  };
}
