import { CAUTIONS } from "../cautions";
import type { Entry, Phrase } from "./say";

type Some<T> = Readonly<Partial<Record<Phrase, T>>>;

/** British sentences for one thing alone, where they differ from those for several. */
export const ones: Some<string> = {
  "{n} answers need another look": "One answer needs another look",
  "in {n} days": "in {n} day", "{n} days late": "{n} day late", "{n} players": "{n} player",
  "Before it a crew of {crew} turn the room over in {n} minutes.": "Before it a crew of {crew} turn the room over in {n} minute.", "Before it a crew of {crew} carry chairs over from another room, in {n} minutes.": "Before it a crew of {crew} carry chairs over from another room, in {n} minute.", "It takes {n} moves.": "It takes {n} move.",
  "{n} places": "{n} place", "{n} places in the {rooms}.": "{n} place in the {rooms}.", "{n} chairs in rows in the {room}.": "{n} chair in rows in the {room}.", "{n} minutes, crew of {crew}": "{n} minute, crew of {crew}",
  "{n} things fall short of what is wanted": "{n} thing falls short of what is wanted",
};

/** Where American English says it otherwise. */
export const us: Some<Entry> = {
  [CAUTIONS]: "Planning aid. The posted occupancy, the fire marshal, the licensing and building departments and the venue's own safety plan govern; a qualified person must check exits, electrical loads, rigging and outdoor structures before the doors open.",
  "In metres": "In meters", "Favours": "Favors", "Comb of three arms": "Comb with three arms",
  "Mail a fresh link": "Email a fresh link", "The mail is gone?": "Lost the email?", "Open the link in your mail": "Open the link in your email", "Look in your mail": "Check your email", "Your mail address": "Your email address", "Their mail address (optional)": "Their email address (optional)",
  "If you have booked: open the link in the mail we sent you.": "If you have booked: open the link in the email we sent you.",
  "Saved. The link in your mail brings you back here, on this device or another.": "Saved. The link in your email brings you back here, on this device or another.",
  "A table of small bites": "An appetizer table", "Settles and chairs between bar and dance floor.": "Sofas and chairs between bar and dance floor.",
  "Away from the loudspeakers": "Away from the speakers", "Away from the loudspeakers.": "Away from the speakers.", "A table, two loudspeakers, power at hand.": "A table, two speakers, power at hand.", "Over the house’s own loudspeakers.": "Over the house’s own speakers.",
  "Shorter queues; it takes floor.": "Shorter lines; it takes floor.", "A top table, one side": "A head table, one side",
};
