import type { Clock } from "../base";
import { withoutKeys, type Transport } from "../mail";
import { bookings, outbox, type MailRow, type Store } from "../store";

const CLAIM_MS = 2 * 60_000;
const MOST_ATTEMPTS = 6;

export type Post = {
  readonly store: Store;
  readonly transport: Transport;
  readonly clock: Clock;
  readonly from: string;
  /** The demo shows what was mailed, links and all; elsewhere a delivered letter keeps no secret. */
  readonly keepLinks: boolean;
  /** Writes, before each round, what was asked for and is not in the outbox yet. */
  readonly before?: () => Promise<unknown>;
  /** Hears how each letter fared. */
  readonly told?: (how: Delivered) => void;
};
/** "again": refused for now, and to be tried again; "taken back": nobody needed it any more. */
export type Delivered = "sent" | "again" | "failed" | "taken back";

/** Sends every mail that is due; returns how many left. At least once: a sender that stops in the middle has its letter sent again. */
export async function deliverDue(post: Post): Promise<number> {
  let left = 0;
  for (;;) {
    const now = post.clock.now();
    const mail = await outbox.claim(post.store.db, { now: iso(now), until: iso(now + CLAIM_MS) });
    if (!mail) return left;
    const how = await deliver(post, mail);
    post.told?.(how);
    if (how === "sent") left += 1;
  }
}

async function deliver(post: Post, mail: MailRow): Promise<Delivered> {
  if (await isIdle(post, mail)) {
    await outbox.takeBack(post.store.db, mail.id);
    return "taken back";
  }
  const sent = await post.transport.send({
    from: { name: mail.fromName, address: post.from }, to: mail.recipient, subject: mail.subject,
    text: mail.bodyText, html: mail.bodyHtml, messageId: mail.messageId, date: mail.queuedAt,
    replyTo: mail.replyTo ?? undefined, thread: threadOf(mail), unsubscribe: mail.unsubscribe ?? undefined,
  });
  const at = post.clock.now();
  if (sent.ok) {
    const tidy = post.keepLinks ? (words: string) => words : withoutKeys;
    await outbox.markSent(post.store.db, { id: mail.id, at: iso(at), bodyText: tidy(mail.bodyText), bodyHtml: tidy(mail.bodyHtml) });
    return "sent";
  }
  const again = sent.lasting || mail.attempts >= MOST_ATTEMPTS ? undefined : iso(at + pause(mail.attempts));
  await outbox.markFailed(post.store.db, { id: mail.id, why: sent.why, again });
  return again === undefined ? "failed" : "again";
}

/** The letters of one booking hang on a message that was never sent: its name is made from the booking's reference alone. */
function threadOf({ booking, messageId }: MailRow): string | undefined {
  return booking === null ? undefined : `<booking.${booking.toLowerCase()}${messageId.slice(messageId.indexOf("@"))}`;
}

/** A reminder that waited, for the mail server say, while its couple sent their layout, or said that they want none. */
async function isIdle({ store }: Post, { kind, booking }: MailRow): Promise<boolean> {
  if (kind !== "reminder" || booking === null) return false;
  return !(await bookings.wantsReminders(store.db, booking));
}

/** One minute, then three times as long each time: 1, 3, 9, 27, 81 minutes. */
const pause = (attempts: number): number => 60_000 * 3 ** (attempts - 1);
const iso = (ms: number): string => new Date(ms).toISOString();
