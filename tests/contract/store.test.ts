import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bookings, history, outbox, type Store } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { emptyPlace, onPostgres, type Place } from "./support/place";

const AT = "2027-01-02T03:04:05.678Z";
let store: Store;
let place: Place;

beforeAll(async () => {
  place = await emptyPlace();
  const opened = await openStore(place);
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  store = opened.value;
});
afterAll(async () => {
  await store.close();
  await place.remove();
});

const booking = (reference: string) => ({
  reference, venue: "mill", names: ["Zoë Ånd", "李 明"], email: "zoe@example.org", package: "hire",
  eventDate: "2027-06-12", dueDate: "2027-05-01", createdAt: AT,
});
const mail = (booking: string | null) => ({
  kind: "invitation", booking, recipient: "zoe@example.org", fromName: "Mill", subject: "s", bodyText: "t", bodyHtml: "h", messageId: "m", replyTo: null, onceKey: null, unsubscribe: null, queuedAt: AT,
});

describe("the database", () => {
  it("is a server where this run is on one, and else the embedded one", async () => {
    const { rows } = await sql<{ readonly served: boolean }>`select inet_server_port() is not null as served`.execute(store.db);
    expect(rows).toEqual([{ served: onPostgres() }]);
  });

  it("gives days and moments back as the text that went in, and names in any script", async () => {
    await bookings.add(store.db, booking("AAAA-22"));
    const found = await bookings.find(store.db, "AAAA-22");
    expect(found).toMatchObject({ eventDate: "2027-06-12", dueDate: "2027-05-01", createdAt: AT, names: ["Zoë Ånd", "李 明"], revision: 0, state: "invited" });
  });

  it("undoes a statement, its history and its mail together", async () => {
    const attempt = store.transaction(async (tx) => {
      await bookings.add(tx, booking("BBBB-22"));
      await outbox.queue(tx, mail("BBBB-22"));
      await history.add(tx, { booking: "BBBB-22", at: AT, who: "desk", what: "added" });
      throw new Error("stop here");
    });
    await expect(attempt).rejects.toThrow("stop here");
    expect(await bookings.find(store.db, "BBBB-22")).toBeUndefined();
    expect(await outbox.list(store.db, { booking: "BBBB-22" })).toEqual([]);
    expect(await history.listOf(store.db, "BBBB-22")).toEqual([]);
  });

  it("refuses to call a transaction done whose statement failed and was swallowed", async () => {
    const attempt = store.transaction(async (tx) => {
      await bookings.add(tx, booking("CCCC-22"));
      await sql`select no_such_column`.execute(tx).catch(() => undefined);
    });
    await expect(attempt).rejects.toThrow();
    expect(await bookings.find(store.db, "CCCC-22")).toBeUndefined();
  });

  it("queues transactions up, so that twenty counts at once lose none", async () => {
    await bookings.add(store.db, booking("DDDD-22"));
    await Promise.all(Array.from({ length: 20 }, () => store.transaction(async (tx) => {
      const held = await bookings.hold(tx, "DDDD-22");
      await bookings.change(tx, held?.reference ?? "", { at: AT });
    })));
    expect((await bookings.find(store.db, "DDDD-22"))?.revision).toBe(20);
  });

  it("throws at once when the outer handle is used inside a transaction", async () => {
    const attempt = store.transaction(async () => bookings.find(store.db, "AAAA-22"));
    await expect(attempt).rejects.toThrow("outer database handle");
    expect(await bookings.find(store.db, "AAAA-22")).toBeDefined();
  });

  it("refuses to change or delete a line of the history", async () => {
    await history.add(store.db, { booking: null, at: AT, who: "desk", what: "looked" });
    await expect(sql`update history set what = 'other'`.execute(store.db)).rejects.toThrow("rows are only added");
    await expect(sql`delete from history`.execute(store.db)).rejects.toThrow("rows are only added");
  });

  it("hands a queued mail to one of two senders, and again when the first has stopped", async () => {
    await outbox.queue(store.db, mail(null));
    const when = { now: AT, until: "2027-01-02T03:06:05.678Z" };
    const claims = await Promise.all([outbox.claim(store.db, when), outbox.claim(store.db, when)]);
    expect(claims.filter((one) => one !== undefined)).toHaveLength(1);
    expect(await outbox.claim(store.db, { now: "2027-01-02T03:07:00.000Z", until: "2027-01-02T03:09:00.000Z" })).toMatchObject({ attempts: 2 });
  });
});
