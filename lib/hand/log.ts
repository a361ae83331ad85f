import { fail, ok, type Result } from "../base";
import type { Layout } from "../layout";
import type { Venue } from "../venue";
import { applyEdit } from "./edit";
import { applyPatch, inverse, isEmpty, patchBetween } from "./patch";
import { sayEdit, sayMend } from "./say";
import type { Edit, EditFault, Entry, Work } from "./types";

/** Deeds kept, at the most: the oldest can then no longer be undone. */
const MOST = 400;

export const beginWork = (layout: Layout): Work => ({ layout, held: [], entries: [], done: 0 });

function record(work: Work, next: Pick<Work, "layout" | "held">, entry: Entry): Work {
  const entries = [...work.entries.slice(0, work.done), entry].slice(-MOST);
  return { ...next, entries, done: entries.length };
}

/** Does one deed: what had been undone is forgotten. */
export function perform(venue: Venue, work: Work, edit: Edit): Result<Work, EditFault> {
  const next = applyEdit(venue, work, edit);
  if (!next.ok) return next;
  const patch = patchBetween(work, next.value);
  if (isEmpty(patch)) return fail({ code: "same" });
  return ok(record(work, next.value, { edit, said: sayEdit(venue, { was: work, now: next.value, edit }), patch }));
}

/** Takes over what the engine made of the plan, as one deed that can be undone. */
export function performMend(venue: Venue, work: Work, layout: Layout, moved: number): Result<Work, EditFault> {
  const next = { layout: { ...work.layout, scenes: layout.scenes }, held: work.held };
  const patch = patchBetween(work, next);
  if (isEmpty(patch)) return fail({ code: "same" });
  return ok(record(work, next, { edit: { do: "mend", moved }, said: sayMend(venue, moved), patch }));
}

export const lastDone = (work: Work): Entry | undefined => work.entries[work.done - 1];
export const nextUndone = (work: Work): Entry | undefined => work.entries[work.done];

/** Takes the last deed back; null where there is none. */
export function undo(work: Work): Work | null {
  const entry = lastDone(work);
  return entry ? { ...work, ...applyPatch(work, inverse(entry.patch)), done: work.done - 1 } : null;
}

/** Does again what was undone last; null where there is none. */
export function redo(work: Work): Work | null {
  const entry = nextUndone(work);
  return entry ? { ...work, ...applyPatch(work, entry.patch), done: work.done + 1 } : null;
}
