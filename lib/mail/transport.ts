import { createTransport } from "nodemailer";
import { headerText, singleAddress } from "./header";

export type Letter = {
  readonly from: { readonly name: string; readonly address: string };
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly messageId: string;
  /** ISO 8601: when it was written, not when it got away. */
  readonly date: string;
};

/** How a letter fared. `lasting`: trying again will not help. */
export type Sent = { readonly ok: true } | { readonly ok: false; readonly why: string; readonly lasting: boolean };
export type Transport = { readonly send: (letter: Letter) => Promise<Sent>; readonly close: () => void; readonly keepsSecrets: boolean };

/** Nothing leaves the machine: the outbox itself is the mailbox, and the letter counts as delivered into it. */
export const mailbox: Transport = { send: async (letter) => faultOf(letter) ?? { ok: true }, close: () => {}, keepsSecrets: true };

/** No server is set and no demo is on. */
export const nowhere: Transport = {
  send: async () => ({ ok: false, why: "No mail server is set (MARQUETRY_MAIL_URL).", lasting: true }), close: () => {}, keepsSecrets: false,
};

/** A mail server by its address, smtp:// or smtps://, with user and password in it where it asks for them. */
export function smtp(url: string): Transport {
  const transport = createTransport(url, {});
  return {
    keepsSecrets: false,
    close: () => transport.close(),
    async send(letter) {
      const fault = faultOf(letter);
      if (fault) return fault;
      try {
        await transport.sendMail({
          from: letter.from, to: letter.to, subject: letter.subject, text: letter.text, html: letter.html,
          messageId: letter.messageId, date: letter.date, encoding: "utf-8",
          // RFC 3834, 5: replies by machines to a machine's mail are to be kept from.
          headers: { "Auto-Submitted": "auto-generated" },
          disableFileAccess: true, disableUrlAccess: true,
        });
        return { ok: true };
      } catch (error) {
        return { ok: false, why: error instanceof Error ? error.message.slice(0, 300) : "not sent", lasting: isLasting(error) };
      }
    },
  };
}

function faultOf(letter: Letter): Sent | undefined {
  const checks = [singleAddress(letter.to), headerText("subject", letter.subject), headerText("from", letter.from.name), headerText("message-id", letter.messageId)];
  for (const check of checks) if (!check.ok) return { ok: false, why: `The field "${check.error.field}" holds what a mail's header may not.`, lasting: true };
  return undefined;
}

/** 5yz replies are final, 4yz are not (RFC 5321, 4.2.1). */
function isLasting(error: unknown): boolean {
  return error instanceof Error && "responseCode" in error && typeof error.responseCode === "number" && error.responseCode >= 500;
}
