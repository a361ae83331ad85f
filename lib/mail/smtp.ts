import { createTransport } from "nodemailer";
import { faultOf, type Sent, type Transport } from "./transport";

/** Milliseconds. A letter's claim in the outbox outlasts all of them together, so that no second sender takes it meanwhile. */
const PATIENCE = { connectionTimeout: 15_000, greetingTimeout: 15_000, socketTimeout: 30_000, dnsTimeout: 10_000 };
const LONGEST = 90_000;

export type SmtpServer = {
  /** smtp:// (STARTTLS) or smtps:// (TLS at once), with user and password in it where the server asks for them. */
  readonly url: string;
  /** Certificates (PEM) that are trusted instead of the system's: the venue's own authority. */
  readonly ca?: string;
  /** Milliseconds; tests are less patient. */
  readonly patience?: number;
};

/** A mail server. What it is told goes enciphered, unless it is this machine or the address ends with `?requireTLS=false`. */
export function smtp({ url, ca, patience = LONGEST }: SmtpServer): Transport {
  const address = new URL(url);
  const transport = createTransport({
    url, ...PATIENCE, requireTLS: mustEncipher(address), ...(ca === undefined ? {} : { tls: { ca } }),
    disableFileAccess: true, disableUrlAccess: true,
  });
  return {
    close: () => transport.close(),
    async send(letter) {
      const fault = faultOf(letter);
      if (fault) return fault;
      try {
        await within(patience, transport.sendMail({
          from: letter.from, to: letter.to, replyTo: letter.replyTo, subject: letter.subject, text: letter.text, html: letter.html,
          messageId: letter.messageId, references: letter.thread, date: letter.date, encoding: "utf-8",
          // RFC 3834, 5: replies by machines to a machine's mail are to be kept from.
          headers: { "Auto-Submitted": "auto-generated", ...listHeaders(letter.unsubscribe) },
        }));
        return { ok: true };
      } catch (error) {
        return refusal(error, address.password);
      }
    },
  };
}

/** RFC 8058, 3.1: both fields together, and an https address; without one a mail program shows its own button to nobody. */
const listHeaders = (href: string | undefined): Readonly<Record<string, string>> =>
  href?.startsWith("https://") ? { "List-Unsubscribe": `<${href}>`, "List-Unsubscribe-Post": "List-Unsubscribe=One-Click" } : {};

const LOCAL: readonly string[] = ["localhost", "127.0.0.1", "[::1]"];
/** Is a server that offers no STARTTLS to be sent nothing? */
export function mustEncipher({ protocol, hostname, searchParams }: URL): boolean {
  return protocol === "smtp:" && searchParams.get("requireTLS") !== "false" && !LOCAL.includes(hostname);
}

/** A server may also feed us a sign every so often and never end: the letter is then taken for not sent. */
async function within<T>(ms: number, work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => { timer = setTimeout(() => reject(new Error(`the mail server did not answer within ${Math.ceil(ms / 1000)} s`)), ms); });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}

function refusal(error: unknown, password: string): Sent {
  const words = error instanceof Error ? error.message.replace(/\s+/g, " ").slice(0, 300) : "not sent";
  const secrets = [password, decodeURIComponent(password)].filter((one) => one !== "");
  return { ok: false, why: secrets.reduce((text, secret) => text.replaceAll(secret, "…"), words), lasting: isLasting(error) };
}

/**
 * 5yz replies are final, 4yz are not (RFC 5321, 4.2.1); but only those to the letter itself. A server that refuses our password,
 * or us altogether, says nothing of the letter: that is mended here, and the letter waits for it.
 */
function isLasting(error: unknown): boolean {
  if (!(error instanceof Error) || !("responseCode" in error) || typeof error.responseCode !== "number") return false;
  const command = "command" in error && typeof error.command === "string" ? error.command : "";
  return error.responseCode >= 500 && /^(MAIL FROM|RCPT TO|DATA)/.test(command);
}
