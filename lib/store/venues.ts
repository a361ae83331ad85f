import { venueSchema, type Venue, type VenueFile } from "../venue";
import * as staff from "./staff";
import type { Handle } from "./store";

export type VenueVersion = { readonly id: string; readonly version: number; readonly hash: string; readonly venue: Venue };

/** Read once and kept: a version never changes. */
const kept = new Map<string, Venue>();
const HEAD = ["venue", "version", "hash"] as const;
type Head = { readonly venue: string; readonly version: number; readonly hash: string };

/**
 * Saves a file as the venue's next version; the newest is the current one. The same file again is the version it was.
 * `after`: the version that it was made from. It is followed by this one or, where another was saved meanwhile, the row
 * meets that one's and the database refuses it (`isClash`): what the transaction read before may be older than the newest.
 */
export async function save(tx: Handle, one: { readonly file: VenueFile; readonly hash: string; readonly at: string; readonly by: string; readonly after?: number }): Promise<number> {
  const newest = await tx.selectFrom("venueVersions").select(["version", "hash"]).where("venue", "=", one.file.id).orderBy("version", "desc").executeTakeFirst();
  const after = one.after ?? newest?.version ?? 0;
  if (newest?.version === after && newest.hash === one.hash) return newest.version;
  const version = after + 1;
  await tx.insertInto("venueVersions").values({
    venue: one.file.id, version, file: JSON.stringify(one.file), hash: one.hash, savedAt: one.at, staff: await staff.idOf(tx, one.by),
  }).execute();
  return version;
}

/** The current version, or the one asked for. */
export async function find(db: Handle, id: string, version?: number): Promise<VenueVersion | undefined> {
  let query = db.selectFrom("venueVersions").select(HEAD).where("venue", "=", id).orderBy("version", "desc").limit(1);
  if (version !== undefined) query = query.where("version", "=", version);
  const row = await query.executeTakeFirst();
  return row && whole(db, row);
}

/** The current version of every venue, in the order they were first saved. */
export async function list(db: Handle): Promise<VenueVersion[]> {
  const rows = await db.selectFrom("venueVersions").select(HEAD).orderBy("savedAt").orderBy("venue").orderBy("version").execute();
  // Who was saved first stands first; a later version takes the place of the one before.
  const newest = new Map<string, Head>();
  for (const row of rows) if (row.version > (newest.get(row.venue)?.version ?? 0)) newest.set(row.venue, row);
  const found: VenueVersion[] = [];
  for (const row of newest.values()) found.push(await whole(db, row));
  return found;
}

/** The file itself is fetched once: it is long, and every page asks which version is the current one. */
async function whole(db: Handle, { venue: id, version, hash }: Head): Promise<VenueVersion> {
  const before = kept.get(hash);
  if (before) return { id, version, hash, venue: before };
  const { file } = await db.selectFrom("venueVersions").select("file").where("venue", "=", id).where("version", "=", version).executeTakeFirstOrThrow();
  const venue = venueSchema.parse(file);
  kept.set(hash, venue);
  return { id, version, hash, venue };
}
