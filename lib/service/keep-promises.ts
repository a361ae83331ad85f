import { LIFETIMES } from "../access";
import { step as advance } from "../booking";
import { arrangements, bookings, links, outbox, revisions, sessions } from "../store";
import { carryOut } from "./effects";
import { eraseHeld } from "./erase-booking";
import type { House } from "./house";
import { iso } from "./moment";

const DAY = 24 * 3_600_000;
/** Spent links and sessions hold no name; they are kept so long that an odd sign-in can still be looked into. */
const SPENT_DAYS = 30;

/** Days for which personal data is kept: a booking's after its day, a mail's after it was written. */
export type Keep = { readonly bookings: number; readonly mails: number };
/** What went, or with `dryRun` what would go: references of bookings, numbers of the rest. */
export type Swept = { readonly bookings: readonly string[]; readonly mails: number; readonly links: number; readonly sessions: number; readonly arrangements: number };

/** Erases what has been kept long enough, each booking in a transaction of its own. Done again it finds nothing to do. */
export async function keepPromises(house: House, { keep, dryRun }: { readonly keep: Keep; readonly dryRun: boolean }): Promise<Swept> {
  const { db } = house.store;
  const ago = (days: number): string => iso(house.clock.now() - days * DAY);
  const due = await bookings.namedBefore(db, ago(keep.bookings).slice(0, 10));
  const mails = await outbox.endedBefore(db, ago(keep.mails));
  const spent = { before: ago(SPENT_DAYS), count: dryRun };
  // Counted before the bookings go: what goes with them is not counted twice, and a dry run says the same.
  const rest = {
    links: await links.sweep(db, spent),
    sessions: await sessions.sweep(db, { ...spent, before: iso(house.clock.now() - LIFETIMES.couple.absolute - SPENT_DAYS * DAY) }),
    arrangements: await arrangements.sweep(db, { before: ago(keep.mails), count: dryRun }),
  };
  if (!dryRun) {
    for (const { reference } of due) await letGo(house, reference);
    await outbox.remove(db, mails.map((one) => one.id));
  }
  return { bookings: due.map((one) => one.reference), mails: mails.length, ...rest };
}
async function letGo(house: House, reference: string): Promise<void> {
  await house.store.transaction(async (tx) => {
    const booking = await bookings.hold(tx, reference);
    if (!booking || booking.erasedAt !== null) return;
    const number = await revisions.lastNumber(tx, reference);
    const next = advance({ state: booking.state, lastNumber: number }, { type: "closed", reason: "" });
    if (next.ok) {
      await bookings.change(tx, reference, { state: next.value.state, at: iso(house.clock.now()) });
      await carryOut(tx, house, { booking, effects: next.value.effects, told: { number } });
    }
    await eraseHeld(tx, house, { booking, who: "clock" });
  });
}
