import { inject } from "vitest";
import { emptyDatabase } from "./postgres";
import { tempFolder } from "./temp";
import { copyTemplate } from "./template";

/** Where a test keeps its store: in a folder, or where this run is on PostgreSQL in an empty database of its server. */
export type Place = { readonly dataDir: string; readonly databaseUrl?: string; readonly remove: () => Promise<void> };

export const onPostgres = (): boolean => inject("postgres") !== undefined;

export async function emptyPlace(): Promise<Place> {
  const folder = tempFolder();
  const server = inject("postgres");
  if (server === undefined) {
    await copyTemplate(folder.path);
    return { dataDir: folder.path, remove: async () => folder.remove() };
  }
  const database = await emptyDatabase(server);
  return { dataDir: folder.path, databaseUrl: database.url, remove: async () => { await database.remove(); folder.remove(); } };
}
