import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  addBooking, agreeRevision, arrangeFor, chooseLayout, closeBooking, currentActor, getBooking, importVenue, listMailbox, listQueue, lookAtLink, planSvg, planSvgs,
  proposalPdfFor, returnRequest, saveStep, sendRequest, setsAside, type Actor, type BookingView,
} from "../../lib/service";
import { tidewheel } from "../../lib/demo";
import { history, outbox } from "../../lib/store";
import { sql } from "kysely";
import { added, cookieOf, coupleOf, DESK, mailedKey, testHouse, type TestHouse } from "./support/house";
import { sendFirst, value } from "./support/line";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const see = async (reference: string, actor: Actor = coupleOf(reference)): Promise<BookingView> => value(await getBooking(house, actor, { reference }));
const save = async (reference: string, values: Record<string, string>, step: "guests" | "meal" | "extras" = "guests") =>
  saveStep(house, coupleOf(reference), { reference, step, values, revision: (await see(reference)).revision });

let day = 0;
/** From the desk's form to a sent first revision, each on a day of its own: two that are agreed cannot hold one room at once. */
async function sent(): Promise<string> {
  day += 1;
  const reference = await added(house, { date: `2027-07-${String(day).padStart(2, "0")}` });
  await sendFirst(house, reference);
  return reference;
}
const last = async (reference: string) => { const one = (await see(reference)).revisions.at(-1); if (!one) throw new Error("nothing was sent"); return one; };

describe("the main line", () => {
  it("goes from the mailed link through a return to the agreed revision, each step told by mail and history", async () => {
    const reference = await added(house);
    const key = await mailedKey(house, reference);
    expect(value(await lookAtLink(house, { key }))).toMatchObject({ purpose: "couple", dueDate: "2027-05-01", reference });
    expect((await see(reference, DESK)).state).toBe("invited");
    const actor = await currentActor(house, { cookie: await cookieOf(house, key), side: "couple" });
    expect(actor).toEqual({ kind: "couple", reference });
    expect((await see(reference)).state).toBe("started");

    value(await save(reference, { adults: "40", children: "2" }));
    value(await save(reference, { tables: "unsure", service: "buffet" }, "meal"));
    const brief = value(await arrangeFor(house, actor, { reference })).brief;
    expect(brief).toMatchObject({ guests: { adults: 40, children: 2 }, meal: { service: "buffet", tables: "any" }, package: "dry-hire", reference });
    value(await chooseLayout(house, actor, { reference, layout: "b", revision: (await see(reference)).revision }));
    expect(value(await sendRequest(house, actor, { reference, revision: (await see(reference)).revision }))).toMatchObject({ number: 1 });

    value(await returnRequest(house, DESK, { reference, number: 1, reason: "May the cake stand by the mill gear?" }));
    expect(await see(reference)).toMatchObject({ state: "returned", revisions: [{ number: 1, reason: "May the cake stand by the mill gear?" }] });

    value(await save(reference, { extras: "", notes: "By the gear, gladly." }, "extras"));
    value(await sendRequest(house, actor, { reference, revision: (await see(reference)).revision }));
    const two = await last(reference);
    expect(value(await agreeRevision(house, DESK, { reference, number: 2, fingerprint: two.fingerprint }))).toEqual({ fingerprint: two.fingerprint });

    const seen = await see(reference, DESK);
    expect(seen.state).toBe("agreed");
    expect(two.fingerprint).toMatch(/^[0-9a-f]{64}$/);
    expect(seen.mails.map((one) => one.kind).reverse()).toEqual([
      "invitation", "sent", "desk-notice", "desk-notice", "returned", "sent", "desk-notice", "desk-notice", "agreed",
    ]);
    expect(seen.history.map((one) => one.what)).toEqual(["added", "link-mailed", "opened", "saved", "saved", "chosen", "sent", "returned", "saved", "sent", "agreed"]);
  });
});

describe("saving", () => {
  it("refuses who saves over newer answers, and says which revision stands", async () => {
    const reference = await added(house);
    const before = (await see(reference)).revision;
    value(await save(reference, { adults: "40" }));
    const late = await saveStep(house, coupleOf(reference), { reference, step: "guests", values: { adults: "50" }, revision: before });
    expect(late).toEqual({ ok: false, error: { code: "stale", revision: before + 1 } });
    expect((await see(reference)).draft.guests?.adults).toBe(40);
  });

  it("lets one of two simultaneous saves through", async () => {
    const reference = await added(house);
    const { revision } = await see(reference);
    const both = await Promise.all(["40", "50"].map((adults) => saveStep(house, coupleOf(reference), { reference, step: "guests", values: { adults }, revision })));
    expect(both.map((one) => one.ok).sort()).toEqual([false, true]);
  });

  it("names the field that is wrong and saves nothing of the step", async () => {
    const reference = await added(house);
    expect(await save(reference, { adults: "forty", children: "2" })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "adults" }] } });
    expect(await save(reference, { room: "ball-room" }, "meal")).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "room" }] } });
    expect((await see(reference)).answered).toEqual([]);
  });

  it("takes 'not sure yet' for an answer: the step counts as answered, the brief leaves it out", async () => {
    const reference = await added(house);
    value(await save(reference, { adults: "", children: "unsure" }));
    expect(await see(reference)).toMatchObject({ answered: ["guests"] });
    expect(await arrangeFor(house, coupleOf(reference), { reference })).toEqual({ ok: false, error: { code: "incomplete", missing: ["guests"] } });
  });
});

describe("layouts", () => {
  it("asks the engine once for the same answers, and again for others; a note alone asks nothing", async () => {
    const reference = await added(house, { date: "2027-07-03" });
    value(await save(reference, { adults: "61" }));
    const before = house.asked.times.arrange;
    await Promise.all([1, 2, 3].map(() => arrangeFor(house, coupleOf(reference), { reference })));
    value(await save(reference, { notes: "Hello" }, "extras"));
    value(await arrangeFor(house, coupleOf(reference), { reference }));
    expect(house.asked.times.arrange - before).toBe(1);
    value(await save(reference, { adults: "62" }));
    value(await arrangeFor(house, coupleOf(reference), { reference }));
    expect(house.asked.times.arrange - before).toBe(2);
  });

  it("are outdated when the answers change after the choice, and are then not sent", async () => {
    const reference = await added(house);
    value(await save(reference, { adults: "40" }));
    value(await arrangeFor(house, coupleOf(reference), { reference }));
    value(await chooseLayout(house, coupleOf(reference), { reference, layout: "a", revision: (await see(reference)).revision }));
    value(await save(reference, { adults: "45" }));
    expect((await see(reference)).chosen?.outdated).toBe(true);
    expect(await sendRequest(house, coupleOf(reference), { reference, revision: (await see(reference)).revision }))
      .toEqual({ ok: false, error: { code: "incomplete", missing: ["layout-outdated"] } });
    expect(await chooseLayout(house, coupleOf(reference), { reference, layout: "a", revision: (await see(reference)).revision }))
      .toEqual({ ok: false, error: { code: "incomplete", missing: ["layout-outdated"] } });
  });

  it("are told before the save whether it would set them aside, and nothing is saved by asking", async () => {
    const reference = await added(house);
    const ask = (adults: string) => setsAside(house, coupleOf(reference), { reference, step: "guests", values: { adults } });
    value(await save(reference, { adults: "40" }));
    value(await arrangeFor(house, coupleOf(reference), { reference }));
    expect(value(await ask("45"))).toBe(false);
    value(await chooseLayout(house, coupleOf(reference), { reference, layout: "a", revision: (await see(reference)).revision }));
    const { revision } = await see(reference);
    expect([value(await ask("45")), value(await ask("40")), value(await ask("many"))]).toEqual([true, false, false]);
    expect((await see(reference)).revision).toBe(revision);
    value(await save(reference, { adults: "45" }));
    expect(value(await ask("46"))).toBe(false);
  });

  it("that were not offered cannot be chosen", async () => {
    const reference = await added(house);
    value(await save(reference, { adults: "40" }));
    value(await arrangeFor(house, coupleOf(reference), { reference }));
    expect(await chooseLayout(house, coupleOf(reference), { reference, layout: "z", revision: (await see(reference)).revision })).toEqual({ ok: false, error: { code: "not-found" } });
  });
});

describe("what was sent", () => {
  it("cannot be changed or sent again while the desk has it", async () => {
    const reference = await sent();
    expect(await save(reference, { adults: "50" })).toEqual({ ok: false, error: { code: "wrong-state", state: "sent" } });
    expect(await sendRequest(house, coupleOf(reference), { reference, revision: (await see(reference)).revision })).toEqual({ ok: false, error: { code: "wrong-state", state: "sent" } });
  });

  it("is agreed only by the fingerprint that the coordinator saw", async () => {
    const reference = await sent();
    expect(await agreeRevision(house, DESK, { reference, number: 1, fingerprint: "0".repeat(64) })).toMatchObject({ ok: false, error: { code: "stale" } });
    expect((await see(reference)).state).toBe("sent");
  });

  it("is agreed once when two coordinators press at the same time", async () => {
    const reference = await sent();
    const { fingerprint } = await last(reference);
    const both = await Promise.all([1, 2].map(() => agreeRevision(house, DESK, { reference, number: 1, fingerprint })));
    expect(both.filter((one) => one.ok)).toHaveLength(1);
    expect((await outbox.list(house.store.db, { booking: reference })).filter((one) => one.kind === "agreed")).toHaveLength(1);
  });

  it("is returned with a reason only", async () => {
    const reference = await sent();
    expect(await returnRequest(house, DESK, { reference, number: 1, reason: "  " })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "reason" }] } });
  });

  it("keeps its venue when the venue changes, and the agreed row can not be changed even in the database", async () => {
    const reference = await sent();
    const { fingerprint, venueVersion } = await last(reference);
    value(await agreeRevision(house, DESK, { reference, number: 1, fingerprint }));
    const next = value(await importVenue(house, DESK, { json: JSON.stringify({ ...tidewheel, name: "Tidewheel Mill, renewed" }) }));
    expect(next.version).toBeGreaterThan(venueVersion);
    expect((await see(reference)).venue.name).toBe(tidewheel.name);
    await expect(sql`update revisions set reason = 'x' where booking = ${reference}`.execute(house.store.db)).rejects.toThrow("refused");
    expect(value(await importVenue(house, DESK, { json: JSON.stringify(tidewheel) })).version).toBeGreaterThan(next.version);
  });

  it("prints and draws for the couple and for the desk", async () => {
    const reference = await sent();
    expect(value(await proposalPdfFor(house, DESK, { reference, number: 1 })).fileName).toBe(`${reference}-revision-1.pdf`);
    expect(value(await planSvg(house, coupleOf(reference), { reference, scene: "meal", number: 1 }))).toBe("<svg/>");
    expect(await planSvg(house, coupleOf(reference), { reference, scene: "dancing", number: 1 })).toEqual({ ok: false, error: { code: "not-found" } });
  });

  it("draws what stays the same once, for however many looks and pages", async () => {
    const reference = await sent(), before = house.asked.times.planSvg;
    const looks = [{ scene: "meal", pixelWidth: 641 }, { scene: "meal", pixelWidth: 341 }, { scene: "dancing", pixelWidth: 641 }];
    const all = value(await planSvgs(house, coupleOf(reference), { reference, number: 1, looks }));
    expect(all.map((one) => one.ok)).toEqual([true, true, false]);
    await planSvgs(house, DESK, { reference, number: 1, looks });
    expect(house.asked.times.planSvg - before).toBe(2);
    value(await planSvg(house, DESK, { reference, number: 1, scene: "meal", sheet: true }));
    value(await planSvg(house, DESK, { reference, number: 1, scene: "meal", sheet: true }));
    expect(house.asked.times.planSvg - before).toBe(4);
  });
});

describe("the desk", () => {
  it("adds no booking with a wrong field, and names every one", async () => {
    const refused = await addBooking(house, DESK, { values: { names: "", email: "a@b\r\nBcc: c@d.example", package: "none", date: "2027-02-30" } });
    expect(refused).toMatchObject({ ok: false, error: { code: "invalid" } });
    if (!refused.ok && refused.error.code === "invalid") expect(refused.error.errors.map((one) => one.field)).toEqual(["names", "email", "date", "package"]);
  });

  it("sees its queue by due date, counts every state, and finds names without their accents", async () => {
    await added(house, { names: "Żaneta Ćwik", date: "2027-02-20" });
    const all = value(await listQueue(house, DESK, {}));
    // What waits for someone comes first, by due date; what is agreed and what is closed follow.
    const due = all.rows.filter((row) => row.state !== "agreed" && row.state !== "closed").map((row) => row.dueDate);
    expect(all.rows.map((row) => ["agreed", "closed"].indexOf(row.state))).toEqual(all.rows.map((row) => ["agreed", "closed"].indexOf(row.state)).sort());
    expect(due).toEqual([...due].sort());
    const { counts } = all;
    expect(counts.invited + counts.started + counts.sent + counts.returned + counts.agreed + counts.closed).toBe(counts.all);
    const found = value(await listQueue(house, DESK, { search: "zaneta cwik" }));
    // 20 February less 42 days is 9 January: yesterday.
    expect(found.rows).toMatchObject([{ dueDate: "2027-01-09", daysLeft: -1, overdue: true, last: "Their link was mailed." }]);
  });

  it("closes a booking: link and session end with it", async () => {
    const reference = await added(house);
    const key = await mailedKey(house, reference);
    const cookie = await cookieOf(house, key);
    value(await closeBooking(house, DESK, { reference, reason: "Called off." }));
    expect(await lookAtLink(house, { key })).toEqual({ ok: false, error: { code: "link", why: "revoked" } });
    expect(await currentActor(house, { cookie, side: "couple" })).toEqual({ kind: "nobody" });
  });

  it("shows the mailbox only while the demo is on", async () => {
    expect(value(await listMailbox(house, DESK, {})).length).toBeGreaterThan(0);
    expect(await listMailbox({ ...house, demo: false }, DESK, {})).toEqual({ ok: false, error: { code: "not-found" } });
  });

  it("is told where a venue's file is wrong, and saves none of it", async () => {
    const refused = await importVenue(house, DESK, { json: JSON.stringify({ ...tidewheel, currency: "pounds" }) });
    expect(refused).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "currency" }] } });
  });

  it("leaves a history that names who did what", async () => {
    const reference = await sent();
    const lines = await history.listOf(house.store.db, reference);
    expect(lines.map((one) => one.person ?? one.who)).toEqual(["desk@tidewheel.example", "desk@tidewheel.example", "couple", "couple", "couple"]);
  });
});
