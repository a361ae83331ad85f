import { fail, ok } from "../base";
import type { State } from "../booking";
import type { Draft } from "../brief/draft";
import type { Layout } from "../layout";
import { revisions, type BookingRow, type Handle } from "../store";
import type { Venue } from "../venue";
import type { Chosen } from "../words/pages";
import { chosenBy } from "./chosen-words";
import { gate } from "./gate";
import { venueOf } from "./get-booking";
import type { House } from "./house";
import type { Actor, Outcome } from "./types";

/** What a look-only link shows: plan and answers. No fees, no findings, no words to or from the desk, no addresses. */
export type Glance = {
  readonly reference: string; readonly names: readonly string[]; readonly date: string; readonly venue: Venue; readonly packageName: string; readonly state: State;
  /** What the couple chose to read: who looks reads it so, unless they choose otherwise. */
  readonly reads: Chosen;
  readonly draft: Draft;
  readonly layout?: Layout;
  /** What the layout is: sent as a revision, agreed, set by the venue, or only chosen so far. */
  readonly standing?: "chosen" | "sent" | "agreed" | "set";
  readonly changedAt: string;
};

/** A booking as those see it who may only look. */
export async function glance(house: House, actor: Actor, { reference }: { readonly reference: string }): Promise<Outcome<Glance>> {
  const { db } = house.store;
  const booking = await gate(db, actor, { reference, action: "glance" });
  if (!booking.ok) return booking;
  const row = booking.value;
  const venue = await venueOf(db, row);
  if (!venue) return fail({ code: "not-found" });
  const { extras } = row.draft;
  return ok({
    reference, names: row.names, date: row.eventDate, venue: venue.venue, state: row.state, changedAt: row.changedAt, reads: chosenBy(row),
    packageName: venue.venue.packages.find((one) => one.id === row.package)?.name ?? row.package,
    draft: { ...row.draft, ...(extras ? { extras: { ...extras, notes: "" } } : {}) },
    ...(await shown(db, row)),
  });
}

async function shown(db: Handle, row: BookingRow): Promise<Pick<Glance, "layout" | "standing">> {
  const bare = ({ quote: _, findings: _found, ...layout }: Layout): Layout => ({ ...layout, findings: [] });
  if (row.state === "sent" || row.state === "agreed") {
    const last = await revisions.find(db, row.reference, await revisions.lastNumber(db, row.reference));
    return last ? { layout: bare(last.layout), standing: row.state } : {};
  }
  if (row.chosen) return { layout: bare(row.chosen), standing: "chosen" };
  return row.setLayout ? { layout: bare(row.setLayout), standing: "set" } : {};
}
