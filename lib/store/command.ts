import type { PostgresQueryResult } from "kysely";

type Command = PostgresQueryResult<unknown>["command"];
const COMMANDS: readonly Command[] = ["UPDATE", "DELETE", "INSERT", "SELECT", "MERGE", "COMMIT", "ROLLBACK"];

/** The word of the command tag; anything else (BEGIN, CREATE…) counts no rows, and so passes as a SELECT. */
export const asCommand = (text: string | undefined): Command => COMMANDS.find((one) => one === text) ?? "SELECT";
