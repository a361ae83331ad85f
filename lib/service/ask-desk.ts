import { fail, ok } from "../base";
import { messages } from "../mail";
import { bookings, history, type AskedOfDesk, type BookingRow, type Handle } from "../store";
import { gate, whoIs } from "./gate";
import { noticed } from "./desk-people";
import type { House } from "./house";
import { nowIso } from "./moment";
import { aboutOf, deskPage, queueMail } from "./post";
import type { Actor, Outcome } from "./types";

const DEEDS: Readonly<Record<AskedOfDesk["what"], string>> = { change: "change-asked", draft: "draft-asked", erase: "erasure-asked" };
type Asked = Pick<AskedOfDesk, "what" | "words"> & { readonly booking: BookingRow; readonly who: history.Doer };

/** Notes what a booking's couple ask of the desk, and mails it to whoever is there. */
export async function noteAsked(tx: Handle, house: House, { booking, who, what, words }: Asked): Promise<void> {
  const { reference } = booking, at = nowIso(house);
  await history.add(tx, { booking: reference, at, who, what: DEEDS[what] });
  await bookings.change(tx, reference, { asked: { what, words, at }, at });
  const about = await aboutOf(tx, booking);
  for (const person of await noticed(house, tx)) {
    await queueMail(tx, house, { message: messages.askedOfDesk(about, { what, words, href: deskPage(house, reference) }), to: person, fromName: about.venueName, booking: reference });
  }
}

type Ask = { readonly reference: string; readonly what: AskedOfDesk["what"]; readonly words: string };
const MOST = 2_000;

/** Asks the desk by mail, and leaves a line in the history. What is agreed stands as it is until the desk acts. */
export async function askDesk(house: House, actor: Actor, { reference, what, words }: Ask): Promise<Outcome<null>> {
  const said = words.replace(/\r\n?/g, "\n").replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, "").trim();
  const done = await house.store.transaction(async (tx): Promise<Outcome<null>> => {
    const held = await gate(tx, actor, { reference, action: "ask", hold: true });
    if (!held.ok) return held;
    const booking = held.value;
    if ((what === "change") !== (booking.state === "agreed")) return fail({ code: "wrong-state", state: booking.state });
    if (what === "change" && said === "") return fail({ code: "invalid", errors: [{ field: "words", message: "Write what should change, so that the desk can answer it." }] });
    if (said.length > MOST) return fail({ code: "invalid", errors: [{ field: "words", message: "Keep it under 2,000 characters." }] });
    await noteAsked(tx, house, { booking, who: whoIs(actor), what, words: said });
    return ok(null);
  });
  if (done.ok) house.poke();
  return done;
}
