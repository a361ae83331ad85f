import { randomBytes } from "node:crypto";
import type { FieldError, FormValues } from "@/lib/service";

/** What was typed, held for the page that the answer to a POST redirects to. Never in the address, never in a cookie. */
export type Kept = {
  readonly form: string;
  /** Whose booking it belongs to; shown to nobody else. */
  readonly owner: string;
  readonly values: FormValues;
  readonly errors: readonly FieldError[];
  /** The save that was refused began from an older revision; another has been made since. */
  readonly stale?: boolean;
  /** What the form began from: shown again, it must not pass for one that knows what was saved meanwhile. */
  readonly base?: { readonly revision: string; readonly was: string };
};

const HOURS = 24;
const MOST = 2_000;
type Shelf = Map<string, { readonly kept: Kept; readonly until: number }>;

// Pages and routes are bundled apart: only globalThis is one and the same to both.
const world: typeof globalThis & { marquetryKept?: Shelf } = globalThis;
const shelf = (): Shelf => (world.marquetryKept ??= new Map());

/** Holds it and gives the key that finds it again (128 random bits). */
export function keep(kept: Kept): string {
  const key = randomBytes(16).toString("hex");
  const all = shelf();
  for (const [old, held] of all) if (held.until < Date.now() || all.size >= MOST) all.delete(old);
  all.set(key, { kept, until: Date.now() + HOURS * 3_600_000 });
  return key;
}

/** What is held under a key, if it is this owner's and this form's. Looking does not use it up: Back and reload show it again. */
export function heldFor(key: string | undefined, form: string, owner: string): Kept | null {
  const held = key ? shelf().get(key) : undefined;
  if (!held || held.until < Date.now()) return null;
  return held.kept.form === form && held.kept.owner === owner ? held.kept : null;
}

/** The form that something held belongs to, for going back there after the link is opened again. */
export function heldForm(key: string | undefined, owner: string): string | null {
  const held = key ? shelf().get(key) : undefined;
  return held && held.until >= Date.now() && held.kept.owner === owner ? held.kept.form : null;
}
