import { inject } from "vitest";
import { emptyDatabase } from "./postgres";
import { tempFolder } from "./temp";
import { copyTemplate } from "./template";

/** Where a test keeps its store: in a folder, or where this run is on PostgreSQL in an empty database of its server. */
export type Place = { readonly dataDir: string; readonly databaseUrl?: string; readonly remove: () => Promise<void> };

export const onPostgres = (): boolean => inject("postgres") !== undefined;

/** As a new venue finds it: not even tables are there. */
export const blankPlace = (): Promise<Place> => placeWith("blank");
/** Ready for a store; in a folder the tables are there already, since making them takes seconds. */
export const emptyPlace = (): Promise<Place> => placeWith("ready");

async function placeWith(kind: "ready" | "blank"): Promise<Place> {
  const folder = tempFolder();
  const server = inject("postgres");
  if (server === undefined) {
    await copyTemplate(folder.path, kind);
    return { dataDir: folder.path, remove: async () => folder.remove() };
  }
  const database = await emptyDatabase(server);
  return { dataDir: folder.path, databaseUrl: database.url, remove: async () => { await database.remove(); folder.remove(); } };
}
