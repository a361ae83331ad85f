import { LIFETIMES } from "../access";
import { arrangements, bookings, links, outbox, sessions, staff } from "../store";
import { closeHeld } from "./close-booking";
import { eraseHeld } from "./erase-booking";
import type { House } from "./house";
import { iso } from "./moment";

const DAY = 24 * 3_600_000;
/** Spent links and sessions hold no name; they are kept so long that an odd sign-in can still be looked into. */
const SPENT_DAYS = 30;

/** Days for which personal data is kept: a booking's after its day, a mail's after it was written. */
export type Keep = { readonly bookings: number; readonly mails: number };
/** What went, or with `dryRun` what would go: references of bookings, numbers of the rest. */
export type Swept = { readonly bookings: readonly string[]; readonly mails: number; readonly links: number; readonly sessions: number; readonly arrangements: number; /** People who are of the desk no longer. */ readonly staff: number };

/** Erases what has been kept long enough, each booking in a transaction of its own. Done again it finds nothing to do. */
export async function keepPromises(house: House, { keep, dryRun }: { readonly keep: Keep; readonly dryRun: boolean }): Promise<Swept> {
  const { db } = house.store;
  const ago = (days: number): string => iso(house.clock.now() - days * DAY);
  const due = await bookings.namedBefore(db, ago(keep.bookings).slice(0, 10));
  const spent = { before: ago(SPENT_DAYS), count: dryRun };
  // Counted before the bookings go: what goes with them is not counted twice, and a dry run says the same.
  const rest = {
    mails: await outbox.sweep(db, { before: ago(keep.mails), count: dryRun }),
    links: await links.sweep(db, spent),
    sessions: await sessions.sweep(db, { ...spent, before: iso(house.clock.now() - LIFETIMES.couple.absolute - SPENT_DAYS * DAY) }),
    arrangements: await arrangements.sweep(db, { before: ago(keep.mails), count: dryRun }),
  };
  // Who was taken out of the settings is told by nobody: it is seen here.
  const left = await staff.strangers(db, house.deskPeople);
  if (!dryRun) for (const person of left) await house.store.transaction((tx) => staff.forget(tx, person, iso(house.clock.now())));
  const references = due.map((one) => one.reference);
  if (!dryRun) for (const reference of references) await letGo(house, reference);
  return { bookings: references, ...rest, staff: left.length };
}

async function letGo(house: House, reference: string): Promise<void> {
  await house.store.transaction(async (tx) => {
    const booking = await bookings.hold(tx, reference);
    if (!booking || booking.erasedAt !== null) return;
    if (booking.state !== "closed") await closeHeld(tx, house, { booking, who: "clock", reason: "" });
    await eraseHeld(tx, house, { booking, who: "clock" });
  });
}
