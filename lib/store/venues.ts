import { venueSchema, type Venue, type VenueFile } from "../venue";
import type { Handle } from "./store";

export type VenueVersion = { readonly id: string; readonly version: number; readonly hash: string; readonly venue: Venue };

/** Read once and kept: a version never changes. */
const kept = new Map<string, Venue>();

/** Saves a file as the venue's next version; the newest is the current one. The same file again is the version it was. */
export async function save(tx: Handle, one: { readonly file: VenueFile; readonly hash: string; readonly at: string; readonly by: string }): Promise<number> {
  const newest = await tx.selectFrom("venueVersions").select(["version", "hash"]).where("venue", "=", one.file.id).orderBy("version", "desc").executeTakeFirst();
  if (newest?.hash === one.hash) return newest.version;
  const version = (newest?.version ?? 0) + 1;
  await tx.insertInto("venueVersions").values({
    venue: one.file.id, version, file: JSON.stringify(one.file), hash: one.hash, savedAt: one.at, savedBy: one.by,
  }).execute();
  return version;
}

/** The current version, or the one asked for. */
export async function find(db: Handle, id: string, version?: number): Promise<VenueVersion | undefined> {
  let query = db.selectFrom("venueVersions").selectAll().where("venue", "=", id).orderBy("version", "desc").limit(1);
  if (version !== undefined) query = query.where("version", "=", version);
  const row = await query.executeTakeFirst();
  return row && { id: row.venue, version: row.version, hash: row.hash, venue: read(row) };
}

/** The current version of every venue, in the order they were first saved. */
export async function list(db: Handle): Promise<VenueVersion[]> {
  const rows = await db.selectFrom("venueVersions").select(["venue", (eb) => eb.fn.min("savedAt").as("first")]).groupBy("venue").orderBy("first").orderBy("venue").execute();
  const found: VenueVersion[] = [];
  for (const row of rows) {
    const one = await find(db, row.venue);
    if (one) found.push(one);
  }
  return found;
}

function read(row: { readonly hash: string; readonly file: VenueFile }): Venue {
  const before = kept.get(row.hash);
  if (before) return before;
  const venue = venueSchema.parse(row.file);
  kept.set(row.hash, venue);
  return venue;
}
