import { fail, ok, type Result } from "../base";
import { perform, performMend, redo, undo, viewOfWork, type HandView, type Work } from "../hand";
import type { Finding, Layout } from "../layout";
import { adjustments } from "../store";
import { benchFor, standsHash, type AdjustBench } from "./adjust-ground";
import { readEdit } from "./adjust-form";
import { faultWords } from "./adjust-words";
import type { Venue } from "../venue";
import { handVoiceOf } from "../words/hand";
import { mannerOf } from "../words/pages";
import { chosenBy } from "./chosen-words";
import type { House } from "./house";
import { nowIso } from "./moment";
import type { Actor, FormValues, Outcome, Refusal } from "./types";

export type AdjustView = HandView;
export type Asking = { readonly reference: string };
export type Deed = Asking & { readonly seen: string; readonly values: FormValues };
export type Turn = Asking & { readonly seen: string; readonly way: "undo" | "redo" | "again" };

/** The version before; where nothing stands otherwise its scenes are the very ones of now, and are told once. */
const wasFor = ({ from, work }: AdjustBench): Pick<Layout, "scenes"> => (standsHash(from) === standsHash(work.layout) ? work.layout : from);

const viewOfBench = (b: AdjustBench): AdjustView => viewOfWork({
  reference: b.subject, venue: b.venue.venue, brief: b.brief, work: b.work, was: wasFor(b), seen: b.seen,
  taken: standsHash(b.work.layout) === standsHash(b.base), ...(b.sent ? { sent: b.sent.number } : {}),
});

/** The bench of a booking or of a venue’s standard layout, for whoever may adjust it as it stands. */
export async function openBench(house: House, actor: Actor, { reference }: Asking): Promise<Outcome<AdjustBench>> {
  return benchFor(house, house.store.db, { actor, subject: reference });
}

/** The layout that is adjusted by hand, as it was left. Looking changes nothing. */
export async function adjusting(house: House, actor: Actor, asking: Asking): Promise<Outcome<AdjustView>> {
  const bench = await openBench(house, actor, asking);
  return bench.ok ? ok(viewOfBench(bench.value)) : bench;
}

/** The venue as who does a deed reads of it: the couple in their own language. Lengths stay the venue's, as they are typed. */
export function heardBy(actor: Actor, { booking, venue }: AdjustBench): Venue {
  const { locale } = actor.kind === "couple" && booking ? mannerOf(venue.venue, chosenBy(booking)) : venue.venue;
  return { ...venue.venue, locale };
}

type Change = (bench: AdjustBench) => Promise<Result<Work, Refusal>>;

/**
 * Changes the work, settles what follows from it, and keeps it. What takes time is done before the transaction, on the state that was
 * named; whoever saved meanwhile is not overwritten: the deed is refused as stale.
 */
async function changed(house: House, actor: Actor, { reference, seen }: Asking & { readonly seen: string }, change: Change): Promise<Outcome<AdjustView>> {
  const before = await openBench(house, actor, { reference });
  if (!before.ok) return before;
  if (before.value.seen !== seen) return fail({ code: "stale", revision: before.value.row?.revision ?? 0 });
  const next = await change(before.value);
  if (!next.ok) return next;
  const { venue, brief } = before.value;
  const work: Work = { ...next.value, layout: await house.works.settle(venue.venue, brief, next.value.layout) };
  return house.store.transaction(async (tx): Promise<Outcome<AdjustView>> => {
    const now = await benchFor(house, tx, { actor, subject: reference, hold: true });
    if (!now.ok) return now;
    if (now.value.seen !== seen) return fail({ code: "stale", revision: now.value.row?.revision ?? 0 });
    const { row, start, from } = now.value;
    const revision = (row?.revision ?? 0) + 1;
    await adjustments.keep(tx, {
      booking: reference, revision, start, taken: row?.start === start ? row.taken : null, base: from, work, changedAt: nowIso(house), changedBy: actor.kind,
    });
    return ok(viewOfBench({ ...now.value, work, seen: `${revision}.${start.slice(0, 12)}` }));
  });
}

/** Does one deed to the plan. */
export async function adjust(house: House, actor: Actor, { values, ...deed }: Deed): Promise<Outcome<AdjustView>> {
  return changed(house, actor, deed, async (bench) => {
    const { work } = bench, heard = heardBy(actor, bench);
    const edit = readEdit(heard, work, values);
    if (!edit.ok) return fail({ code: "invalid", errors: edit.error });
    const next = perform(heard, work, edit.value);
    return next.ok ? next : fail({ code: "invalid", errors: [faultWords(next.error, FIELD[edit.value.do], handVoiceOf(heard.locale))] });
  });
}
const FIELD = { place: "far1", turn: "angle", swap: "with", exchange: "stock", lay: "places", remove: "piece", add: "what", hold: "piece", note: "note" } as const;

/** Takes the last deed back, or does it again; "again": everything from the start. */
export async function adjustTurn(house: House, actor: Actor, { way, ...turn }: Turn): Promise<Outcome<AdjustView>> {
  return changed(house, actor, turn, async ({ work }) => {
    if (way === "redo") return ok(redo(work) ?? work);
    let back = undo(work) ?? work;
    while (way === "again" && back.done > 0) back = undo(back) ?? back;
    return ok(back);
  });
}

/** What putting right came to. `left`: findings of weight must that no move was found for. */
export type PutRight = { readonly view: AdjustView; readonly moved: number; readonly left: readonly Finding[] };

/** Lets the engine put the plan right round the pieces that are held. */
export async function putRight(house: House, actor: Actor, { reference, seen }: Asking & { readonly seen: string }): Promise<Outcome<PutRight>> {
  let moved = 0, left: readonly Finding[] = [];
  const done = await changed(house, actor, { reference, seen }, async (bench) => {
    const { venue, brief, work } = bench;
    const found = await house.works.repair(venue.venue, brief, { layout: work.layout, held: work.held });
    left = found.status === "arranged" ? [] : found.reasons;
    const layout = found.layouts[0] ?? found.closest;
    if (!layout) return ok(work);
    const next = performMend(heardBy(actor, bench), work, layout, found.moved?.length ?? 0);
    if (next.ok) moved = found.moved?.length ?? 0;
    return ok(next.ok ? next.value : work);
  });
  return done.ok ? ok({ view: done.value, moved, left }) : done;
}

