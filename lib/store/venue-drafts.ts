import { venueSchema, type Venue } from "../venue";
import type { VenueDraftRow } from "./database";
import * as staff from "./staff";
import type { Handle } from "./store";

/** A venue as it is being written. `base`: the version that it began from, 0 for none; `number` counts its saves. */
export type VenueDraft = { readonly id: string; readonly base: number; readonly number: number; readonly venue: Venue; readonly savedAt: string };

export async function list(db: Handle): Promise<readonly VenueDraft[]> {
  return (await db.selectFrom("venueDrafts").selectAll().orderBy("savedAt").execute()).flatMap(read);
}

export async function find(db: Handle, id: string): Promise<VenueDraft | undefined> {
  return (await db.selectFrom("venueDrafts").selectAll().where("venue", "=", id).execute()).flatMap(read)[0];
}

/** The draft of a venue, held until the transaction ends. */
export async function hold(tx: Handle, id: string): Promise<VenueDraft | undefined> {
  return (await tx.selectFrom("venueDrafts").selectAll().where("venue", "=", id).forUpdate().execute()).flatMap(read)[0];
}

/** Keeps a draft in place of the one that was held; a clash where another was begun at the same moment. */
export async function keep(tx: Handle, { venue, base, number, at, by }: { readonly venue: Venue; readonly base: number; readonly number: number; readonly at: string; readonly by: string }): Promise<void> {
  const row = { base, number, file: JSON.stringify(venue), savedAt: at, staff: await staff.idOf(tx, by) };
  if (number > 1) await tx.updateTable("venueDrafts").set(row).where("venue", "=", venue.id).execute();
  else await tx.insertInto("venueDrafts").values({ venue: venue.id, ...row }).execute();
}

export async function drop(tx: Handle, id: string): Promise<boolean> {
  return (await tx.deleteFrom("venueDrafts").where("venue", "=", id).executeTakeFirst()).numDeletedRows === 1n;
}

/** A draft of an older form that is no venue's any more is as none: what is agreed and in use does not rest on it. */
function read(row: VenueDraftRow): readonly VenueDraft[] {
  const venue = venueSchema.safeParse(row.file);
  return venue.success ? [{ id: row.venue, base: row.base, number: row.number, venue: venue.data, savedAt: row.savedAt }] : [];
}
