import { deskLink } from "../service/desk-link";
import { coupleLink } from "../service/post";
import type { House } from "../service/house";
import type { State } from "../booking";
import { bookings, type BookingRow } from "../store";

const DAY_MS = 24 * 3_600_000;

/** What to open, for the console. The demo prints links made afresh, as a mail would hold them; `more`: while bookings are still walked to their states, and more addresses are to come. */
export async function addressesOf(house: House, { demo, more = false }: { readonly demo: boolean; readonly more?: boolean }): Promise<string> {
  const person = house.deskPeople[0];
  if (!demo || person === undefined) return `\nMarquetry answers at ${house.origin}\nThe desk: ${house.origin}/desk\n\n`;
  const all = await bookings.list(house.store.db);
  // One who has not begun, one who may go on, one who is done; where it can be, before its due date.
  const today = new Date(house.clock.now()).toISOString().slice(0, 10);
  const first = (state: State): BookingRow | undefined => { const those = all.filter((one) => one.state === state); return those.find((one) => one.dueDate >= today) ?? those[0]; };
  const couples = [first("invited"), first("returned"), first("agreed")];
  const lines = await house.store.transaction(async (tx) => {
    const made: string[] = [];
    for (const booking of couples) {
      if (booking) made.push(`  ${booking.names.join(" & ")} (${booking.state}, ${booking.reference})\n    ${await coupleLink(tx, house, booking)}`);
    }
    const desk = await deskLink(tx, house, { person, lastsMs: DAY_MS, once: false });
    return [...made, `  The desk (this link signs you in; good for a day)\n    ${desk}`];
  });
  return `\nMarquetry answers at ${house.origin}\n\nOpen one of these:\n\n${lines.join("\n\n")}\n\n  Everything mailed, once you are signed in to the desk\n    ${house.origin}/desk/mailbox\n\n${more ? "The other couples are still answering, choosing and sending: in a minute or two all addresses are printed again, theirs among them.\n" : ""}Ctrl-C stops it.\n\n`;
}
