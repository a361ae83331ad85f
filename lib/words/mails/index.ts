import type { Entry, Voice } from "../pages/say";
import { voicesOf } from "../pages/voices";
import { es } from "./es";

/** A sentence of the couple's mails; the British one is the key. */
export type MailPhrase = keyof typeof es;
type Some<T> = Readonly<Partial<Record<MailPhrase, T>>>;

/** British sentences for one thing alone. */
const ones: Some<string> = {
  "in {n} days": "in {n} day", "Your layout for {n} guests: revision {number} ({reference})": "Your layout for {n} guest: revision {number} ({reference})",
  "{venue} has changed your agreed layout for {n} guests, moving as little as it could. It stands as revision {number} and is not agreed yet; until it is, the revision that was agreed holds.": "{venue} has changed your agreed layout for {n} guest, moving as little as it could. It stands as revision {number} and is not agreed yet; until it is, the revision that was agreed holds.",
};

/** Where American English says it otherwise. */
const us: Some<Entry> = {
  "A plan made with Marquetry is a planning aid. The venue's posted figures and its own safety plan govern, and a competent person must check before the doors open.": "A plan made with Marquetry is a planning aid. The venue's posted figures and its own safety plan govern, and a qualified person must check before the doors open.",
  "Your layout for {day} has reached {venue} as revision {number}. It is not agreed yet: the venue reads it, and then agrees it or returns it to you with a reason. You will have a mail either way.": "Your layout for {day} has reached {venue} as revision {number}. It is not agreed to yet: the venue reads it, and then agrees to it or returns it to you with a reason. You will get an email either way.",
  "They can withdraw the link at any time. If you do not know them, let this mail be.": "They can withdraw the link at any time. If you do not know them, you can ignore this email.",
};

const isPhrase = (text: string): text is MailPhrase => text in es;
export const MAIL_PHRASES: readonly MailPhrase[] = Object.keys(es).filter(isPhrase);

export type MailVoice = Voice<MailPhrase>;
/** The voice that writes a couple's mails in a language. */
export const mailVoice = voicesOf({ es, us, ones }, MAIL_PHRASES);
