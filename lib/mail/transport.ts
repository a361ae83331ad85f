import { headerText, singleAddress } from "./header";

export type Letter = {
  readonly from: { readonly name: string; readonly address: string };
  /** Whom an answer reaches: a person, where the sender's address is a machine's (RFC 3834, 3.1.3 speaks of the like). */
  readonly replyTo?: string;
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly messageId: string;
  /** The message that all letters of one booking hang on, so that mail programs show them together (RFC 5322, 3.6.4). */
  readonly thread?: string;
  /** Where one press says "no more of these" (RFC 8058): an https address that a POST alone acts on. */
  readonly unsubscribe?: string;
  /** ISO 8601: when it was written, not when it got away. */
  readonly date: string;
};

/** How a letter fared. `lasting`: trying again will not help. */
export type Sent = { readonly ok: true } | { readonly ok: false; readonly why: string; readonly lasting: boolean };
export type Transport = { readonly send: (letter: Letter) => Promise<Sent>; readonly close: () => void };

/** Nothing leaves the machine: the outbox itself is the mailbox, and the letter counts as delivered into it. */
export const mailbox: Transport = { send: async (letter) => faultOf(letter) ?? { ok: true }, close: () => {} };

/** No server is set and no demo is on. */
export const nowhere: Transport = {
  send: async () => ({ ok: false, why: "No mail server is set (MAIL_URL).", lasting: true }), close: () => {},
};

/** What a letter's header may not hold, found before anything is sent. */
export function faultOf(letter: Letter): Sent | undefined {
  const checks = [
    singleAddress(letter.to), headerText("subject", letter.subject), headerText("from", letter.from.name), headerText("message-id", letter.messageId),
    ...(letter.replyTo === undefined ? [] : [singleAddress(letter.replyTo)]), headerText("references", letter.thread ?? ""), headerText("list-unsubscribe", letter.unsubscribe ?? ""),
  ];
  for (const check of checks) if (!check.ok) return { ok: false, why: `The field "${check.error.field}" holds what a mail's header may not.`, lasting: true };
  return undefined;
}
