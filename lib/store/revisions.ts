import type { RevisionRow } from "./database";
import type { Handle } from "./store";

export type NewRevision = Omit<RevisionRow, "returnedAt" | "agreedAt" | "reason" | "pieces" | "erasedAt">;

export async function add(tx: Handle, one: NewRevision): Promise<void> {
  await tx.insertInto("revisions").values({
    ...one, brief: JSON.stringify(one.brief), layout: JSON.stringify(one.layout), quote: JSON.stringify(one.quote),
    findings: JSON.stringify(one.findings), returnedAt: null, agreedAt: null, reason: null, pieces: null, erasedAt: null,
  }).execute();
}

/** Oldest first. */
export function listOf(db: Handle, booking: string): Promise<RevisionRow[]> {
  return db.selectFrom("revisions").selectAll().where("booking", "=", booking).orderBy("number").execute();
}

export function find(db: Handle, booking: string, number: number): Promise<RevisionRow | undefined> {
  return db.selectFrom("revisions").selectAll().where("booking", "=", booking).where("number", "=", number).executeTakeFirst();
}

export async function lastNumber(db: Handle, booking: string): Promise<number> {
  const row = await db.selectFrom("revisions").select((eb) => eb.fn.max("number").as("n")).where("booking", "=", booking).executeTakeFirst();
  return row?.n ?? 0;
}

export async function markReturned(tx: Handle, one: { readonly booking: string; readonly number: number; readonly reason: string; /** Ids of the pieces that it speaks of. */ readonly pieces?: readonly string[]; readonly at: string }): Promise<void> {
  await tx.updateTable("revisions").set({ returnedAt: one.at, reason: one.reason, pieces: one.pieces && one.pieces.length > 0 ? JSON.stringify(one.pieces) : null }).where("booking", "=", one.booking).where("number", "=", one.number).execute();
}

export async function markAgreed(tx: Handle, one: { readonly booking: string; readonly number: number; readonly at: string }): Promise<void> {
  await tx.updateTable("revisions").set({ agreedAt: one.at }).where("booking", "=", one.booking).where("number", "=", one.number).execute();
}

export type Nameless = { readonly booking: string; readonly number: number; readonly at: string } & Readonly<Record<"brief" | "layout" | "quote" | "findings", unknown>>;

/** Puts what is left without names in place of a revision, once. The database refuses to let fingerprint or agreement change with it. */
export async function erase(tx: Handle, { booking, number, brief, layout, quote, findings, at }: Nameless): Promise<void> {
  await tx.updateTable("revisions").set({
    brief: JSON.stringify(brief), layout: JSON.stringify(layout), quote: JSON.stringify(quote), findings: JSON.stringify(findings), reason: null, salt: null, erasedAt: at,
  }).where("booking", "=", booking).where("number", "=", number).where("erasedAt", "is", null).execute();
}
