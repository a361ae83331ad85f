import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { agreeRevision, askErasure, closeBooking, eraseBooking, getBooking, listQueue, openLink, ownData, proposalPdfFor, saveStep, sheetsPdfFor } from "../../lib/service";
import { deliverDue } from "../../lib/jobs";
import { mailbox } from "../../lib/mail/transport";
import { fingerprintOf } from "../../lib/service/agree-revision";
import { keepPromises } from "../../lib/service/keep-promises";
import { bookings, lateChanges, revisions } from "../../lib/store";
import type { ArrangeResult } from "../../lib/layout";
import { iso } from "../../lib/service/moment";
import type { House } from "../../lib/service/house";
import { added, coupleOf, DESK, mailedKey, testHouse, type TestHouse } from "./support/house";
import { seenBy, sendFirst, value } from "./support/line";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(async () => { await close(); });

const NAMES = ["Zdzisława", "Oyelaran"];
const NOTHING: ArrangeResult = { format: "marquetry.result/1", status: "not-found", layouts: [], reasons: [], instead: [], engine: { version: "0", seed: 1 }, timing: { totalMs: 0, stages: {} } };
const KEEP = { bookings: 730, mails: 180 };

let days = 0;
/** Each on a day of its own: two agreed bookings hold no room together. */
async function agreed(): Promise<string> {
  days += 1;
  const date = `2027-05-0${days}`;
  const reference = await added(house, { names: NAMES.join(" & "), email: "zdzislawa@example.org", date });
  value(await saveStep(house, coupleOf(reference), { reference, step: "extras", values: { notes: "Zdzisława's mother hears badly." }, revision: (await seenBy(house, reference)).revision }));
  const sent = await sendFirst(house, reference);
  value(await agreeRevision(house, DESK, { reference, ...sent }));
  return reference;
}

const at = (moment: string): House => ({ ...house, clock: { now: () => Date.parse(moment) } });

/** Every row of every table, as text. */
async function everything(): Promise<string> {
  const { rows } = await sql<{ readonly name: string }>`select table_name as name from information_schema.tables where table_schema = current_schema()`.execute(house.store.db);
  const texts: string[] = [];
  for (const { name } of rows) texts.push(JSON.stringify((await sql`select * from ${sql.table(name)}`.execute(house.store.db)).rows));
  return texts.join("\n");
}

describe("what a couple is known by", () => {
  it("is theirs to take away, and nobody else's", async () => {
    const reference = await agreed();
    const taken = await ownData(house, coupleOf(reference), { reference });
    if (!taken.ok) throw new Error(JSON.stringify(taken.error));
    const read: Readonly<Record<string, unknown>> = JSON.parse(taken.value.text);
    expect(read).toMatchObject({ format: "marquetry.own-data/1", names: NAMES, email: "zdzislawa@example.org", answers: { guests: { adults: 40 } } });
    expect(taken.value.text).toContain("hears badly");
    expect(taken.value.text).not.toMatch(/"(hash|salt|whole|chosenKey|messageId)"/);
    expect(await ownData(house, coupleOf(await added(house)), { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
    expect(await ownData(house, { kind: "nobody" }, { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
  });

  it("is erased of a closed booking to the last word, and the fingerprint still comes out", async () => {
    const reference = await agreed();
    expect(await eraseBooking(house, DESK, { reference })).toEqual({ ok: false, error: { code: "wrong-state", state: "agreed" } });
    await closeBooking(house, DESK, { reference, reason: "Zdzisława rang: they marry elsewhere." });
    expect(await eraseBooking(house, coupleOf(reference), { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
    const before = await revisions.find(house.store.db, reference, 1);
    expect(await eraseBooking(house, DESK, { reference })).toEqual({ ok: true, value: null });
    const after = await revisions.find(house.store.db, reference, 1);
    expect(after?.fingerprint).toBe(before?.fingerprint);
    expect(after && (await fingerprintOf(house.store.db, "tidewheel-mill", after))).toBe(before?.fingerprint);
    expect([after?.salt, after?.reason]).toEqual([null, null]);
    expect(after?.brief.guests).toMatchObject({ adults: 40 });
    const seen = await getBooking(house, DESK, { reference });
    expect(seen.ok && [seen.value.names, seen.value.email, seen.value.closedReason]).toEqual([["Names erased"], "", undefined]);
    expect(seen.ok && seen.value.history.map((one) => one.what).slice(-2)).toEqual(["closed", "erased"]);
    for (const paper of [await proposalPdfFor(house, DESK, { reference, number: 1 }), await sheetsPdfFor(house, DESK, { reference, number: 1 })]) expect(paper).toMatchObject({ ok: true });
    expect(await eraseBooking(house, DESK, { reference })).toEqual({ ok: false, error: { code: "not-found" } });
  });

  it("is erased at their wish by one deed of the desk, which closes their booking; until then the wish stands and is told once", async () => {
    const reference = await agreed(), us = coupleOf(reference);
    expect(await askErasure(house, DESK, { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
    expect(await askErasure(house, coupleOf(await added(house)), { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
    for (let times = 0; times < 2; times += 1) expect(await askErasure(house, us, { reference })).toEqual({ ok: true, value: null });
    const queue = value(await listQueue(house, DESK, { search: reference }));
    expect(queue.rows.map((one) => [one.reference, one.asked])).toEqual([[reference, "erase"]]);
    // A draft that the desk offers, and all that answers another wish, leaves this one standing.
    await bookings.change(house.store.db, reference, { asked: "done", at: iso(house.clock.now()) });
    const seen = value(await getBooking(house, DESK, { reference }));
    expect(seen.asked?.what).toBe("erase");
    expect(seen.history.filter((one) => one.what === "erasure-asked")).toHaveLength(1);
    const told = seen.mails.filter((one) => one.subject.includes("ask for their data to be erased")).map((one) => one.to);
    expect(told).toContain(DESK.person);
    expect(new Set(told).size).toBe(told.length);
    expect(await eraseBooking(house, us, { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
    expect(await eraseBooking(house, DESK, { reference })).toEqual({ ok: true, value: null });
    const after = value(await getBooking(house, DESK, { reference }));
    expect([after.state, after.names, after.email, after.asked, after.mails]).toEqual(["closed", ["Names erased"], "", undefined, []]);
    expect(after.history.map((one) => one.what).slice(-2)).toEqual(["closed", "erased"]);
  });

  it("that was erased stays so: the database refuses to write into the revision again, or to change its fingerprint with it", async () => {
    const reference = await agreed();
    const { db } = house.store;
    await expect(sql`update revisions set fingerprint = 'ff', erased_at = now(), salt = null where booking = ${reference}`.execute(db)).rejects.toThrow("refused");
    await expect(sql`update revisions set erased_at = now() where booking = ${reference}`.execute(db)).rejects.toThrow("refused");
    await expect(sql`update revisions set brief = '{}' where booking = ${reference}`.execute(db)).rejects.toThrow("refused");
    await closeBooking(house, DESK, { reference, reason: "" });
    await eraseBooking(house, DESK, { reference });
    await expect(sql`update revisions set reason = 'x' where booking = ${reference}`.execute(db)).rejects.toThrow("refused");
  });
});

describe("what was kept long enough", () => {
  it("is named by a dry run that changes nothing, then goes, and the second time there is nothing left to do", async () => {
    const old = await agreed();
    const young = await added(house, { names: "Ida & Per", date: "2027-06-12" });
    // Worked out for new numbers and not taken: it speaks of the couple too.
    const row = await revisions.find(house.store.db, old, 1);
    if (!row) throw new Error("no revision");
    await lateChanges.keep(house.store.db, { booking: old, number: 1, brief: row.brief, result: NOTHING, madeAt: iso(house.clock.now()), madeBy: "desk" });
    await deliverDue({ store: house.store, transport: mailbox, clock: house.clock, from: house.mailFrom, keepLinks: false });
    const later = at("2029-05-20T12:00:00Z");
    const before = await everything();
    const dry = await keepPromises(later, { keep: KEEP, dryRun: true });
    expect(dry.bookings).toContain(old);
    expect(dry.bookings).not.toContain(young);
    expect(dry.mails).toBeGreaterThan(0);
    expect(await everything()).toBe(before);
    const swept = await keepPromises(later, { keep: KEEP, dryRun: false });
    expect(swept).toEqual(dry);
    const left = await everything();
    for (const word of [...NAMES, "zdzislawa@example.org", "hears badly"]) expect(left).not.toContain(word);
    expect(left).toContain("Ida");
    expect(await keepPromises(later, { keep: KEEP, dryRun: false })).toMatchObject({ bookings: [], mails: 0, links: 0, sessions: 0, arrangements: 0 });
  });

  it("takes the couple's links with it", async () => {
    const reference = await added(house, { names: "Kim & Lee", date: "2027-05-09" });
    const key = await mailedKey(house, reference);
    expect((await openLink(house, { key })).ok).toBe(true);
    await keepPromises(at("2029-06-20T12:00:00Z"), { keep: KEEP, dryRun: false });
    expect(await openLink(house, { key })).toMatchObject({ ok: false, error: { code: "link" } });
    expect((await getBooking(house, coupleOf(reference), { reference })).ok).toBe(true);
  });
});
