import { randomBytes } from "node:crypto";
import { openStore, storeErrorText } from "../../../lib/store/open";
import { bookings, history, outbox } from "../../../lib/store";

/**
 * A program that saves one booking over and over until it is killed: a new revision, its line in the history and its mail, in one
 * transaction each. It says first what it found, then each revision once it is saved. The last argument is how many bytes, that cannot be packed smaller, each mail holds.
 */
const [dataDir = "", databaseUrl, letters = "1"] = process.argv.slice(2);
const opened = await openStore({ dataDir, databaseUrl: databaseUrl === "" ? undefined : databaseUrl });
if (!opened.ok) throw new Error(storeErrorText(opened.error));
const { db, transaction } = opened.value;
const AT = "2027-01-02T03:04:05.678Z";
const REFERENCE = "AAAA-33";

if (!(await bookings.find(db, REFERENCE))) {
  await bookings.add(db, { reference: REFERENCE, venue: "mill", names: ["Zoë"], email: "zoe@example.org", package: "hire", eventDate: "2027-06-12", dueDate: "2027-05-01", createdAt: AT });
}
const found = await bookings.find(db, REFERENCE);
const lines = await history.listOf(db, REFERENCE);
const { waiting } = await outbox.counts(db);
process.stdout.write(`found ${found?.revision} ${lines.length} ${waiting}\n`);

for (;;) {
  const revision = await transaction(async (tx) => {
    const held = await bookings.hold(tx, REFERENCE);
    await bookings.change(tx, REFERENCE, { at: AT });
    await history.add(tx, { booking: REFERENCE, at: AT, who: "couple", what: "saved" });
    await outbox.queue(tx, { kind: "trial", booking: REFERENCE, recipient: "zoe@example.org", fromName: "Mill", subject: "s", bodyText: randomBytes(Number(letters)).toString("base64"), bodyHtml: "h", messageId: "m", replyTo: null, onceKey: null, unsubscribe: null, queuedAt: AT });
    return (held?.revision ?? 0) + 1;
  });
  process.stdout.write(`saved ${revision}\n`);
}
