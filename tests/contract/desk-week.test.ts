import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  addPasted, agreeRevision, arrangeFor, changeAddress, closeBooking, countGuests, dropChange, getBooking, giveNumbers, lateChangeOf, listQueue, mailLink, offerDraft, remindNow, returnRequest, sendRequest, sheetsPdfFor, takeChange, workOutChange,
  type BookingView, type Outcome
} from "../../lib/service";
import { workOutWaiting } from "../../lib/service/late-works";
import { outbox } from "../../lib/store";
import { LAYOUT } from "./support/works";
import { added, coupleOf, DESK, testHouse, type TestHouse } from "./support/house";
import { sendFirst, value } from "./support/line";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const see = async (reference: string): Promise<BookingView> => value(await getBooking(house, DESK, { reference }));
const kinds = async (reference: string): Promise<readonly string[]> => (await outbox.list(house.store.db, { booking: reference })).map((m) => m.kind);
let day = 0;
async function sent(): Promise<string> {
  day += 1;
  const reference = await added(house, { date: `2027-07-${String(day).padStart(2, "0")}`, package: "hosted-day" });
  await sendFirst(house, reference);
  return reference;
}
async function agreed(): Promise<string> {
  const reference = await sent(), last = (await see(reference)).revisions.at(-1);
  value(await agreeRevision(house, DESK, { reference, number: 1, fingerprint: last?.fingerprint ?? "" }));
  return reference;
}

describe("a draft for them", () => {
  it("needs no more than a number of guests, is mailed, and leaves answers and sending to the couple", async () => {
    const reference = await added(house);
    expect(await countGuests(house, DESK, { reference, revision: 0, values: { adults: "" } })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "adults" }] } });
    value(await countGuests(house, DESK, { reference, revision: 0, values: { adults: "60", children: "4" } }));
    expect(await offerDraft(house, DESK, { reference, revision: 1, layout: "a", words: "" })).toMatchObject({ ok: false, error: { code: "incomplete" } });
    value(await arrangeFor(house, DESK, { reference }));
    value(await offerDraft(house, DESK, { reference, revision: 1, layout: "b", words: "A first thought." }));
    expect(await see(reference)).toMatchObject({ state: "invited", draft: { guests: { adults: 60, children: 4 } }, chosen: { outdated: false, layout: { title: "Long tables" } }, revisions: [] });
    const mail = (await outbox.list(house.store.db, { booking: reference })).find((m) => m.kind === "draft");
    expect(mail?.bodyText).toContain("A first thought.");
    value(await sendRequest(house, coupleOf(reference), { reference, revision: (await see(reference)).revision }));
    expect(await offerDraft(house, DESK, { reference, revision: 0, layout: "a", words: "" })).toEqual({ ok: false, error: { code: "wrong-state", state: "sent" } });
  });
});

describe("a late change", () => {
  it("is worked out beside what is agreed, then taken as a revision that waits to be agreed in its place", async () => {
    const reference = await agreed();
    value(await workOutChange(house, DESK, { reference, values: { adults: "47", children: "2" } }));
    await workOutWaiting(house);
    const change = value(await lateChangeOf(house, DESK, { reference }));
    expect(change).toMatchObject({ from: 1, guestsWere: 40, guests: 49, layout: { title: "One table more" }, result: { moved: ["t9"] } });
    expect((await see(reference)).state).toBe("agreed");
    expect(await takeChange(house, DESK, { reference, seen: "2020-01-01T00:00:00.000Z" })).toMatchObject({ ok: false, error: { code: "stale" } });
    value(await takeChange(house, DESK, { reference, seen: change?.madeAt ?? "" }));
    const now = await see(reference);
    expect(now).toMatchObject({ state: "sent", draft: { guests: { adults: 47, children: 2 } }, revisions: [{ number: 1, agreedAt: expect.any(String) as string }, { number: 2, layout: { title: "One table more" } }] });
    expect(await kinds(reference)).toContain("changed");
    value(await agreeRevision(house, DESK, { reference, number: 2, fingerprint: now.revisions[1]?.fingerprint ?? "" }));
    expect((await see(reference)).state).toBe("agreed");
  });

  it("can be let go, and is refused before anything is agreed, naming the state", async () => {
    const reference = await agreed();
    value(await workOutChange(house, DESK, { reference, values: { adults: "41" } }));
    await workOutWaiting(house);
    value(await dropChange(house, DESK, { reference }));
    expect(value(await lateChangeOf(house, DESK, { reference }))).toBeNull();
    const open = await sent();
    expect(await workOutChange(house, DESK, { reference: open, values: { adults: "41" } })).toEqual({ ok: false, error: { code: "wrong-state", state: "sent" } });
  });
});

describe("final numbers", () => {
  it("have a due date of their own, are told by couple or desk, and change no layout", async () => {
    const reference = await agreed();
    const seen = await see(reference);
    expect(seen.finalNumbers?.dueDate).toBeDefined();
    expect((seen.finalNumbers?.dueDate ?? "") > seen.dueDate).toBe(true);
    expect(await giveNumbers(house, coupleOf(reference), { reference, values: { adults: "many" } })).toMatchObject({ ok: false, error: { code: "invalid" } });
    value(await giveNumbers(house, coupleOf(reference), { reference, values: { adults: "43", children: "1", suppliers: "3" } }));
    const told = await see(reference);
    expect(told.finalNumbers?.told).toEqual({ adults: 43, children: 1, suppliers: 3 });
    expect(told.revisions).toEqual(seen.revisions);
  });
});

describe("a return", () => {
  it("names the pieces that it speaks of, to the couple as well", async () => {
    const reference = await sent();
    const id = (await see(reference)).revisions[0]?.layout.scenes[0]?.items[0]?.id;
    value(await returnRequest(house, DESK, { reference, number: 1, reason: "Too near the bar.", pieces: [id ?? "none", "no-such-piece"] }));
    const last = (await see(reference)).revisions[0];
    expect(last?.pieces ?? []).toHaveLength(LAYOUT.scenes[0]?.items.length === 0 ? 0 : 1);
  });
});

describe("reaching a couple", () => {
  it("mends a wrong address and mails there; the link before opens nothing", async () => {
    const reference = await added(house);
    expect(await changeAddress(house, DESK, { reference, values: { email: "no" } })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "email" }] } });
    value(await changeAddress(house, DESK, { reference, values: { email: "right@example.org" } }));
    const now = await see(reference);
    expect(now.email).toBe("right@example.org");
    expect(now.mails[0]).toMatchObject({ to: "right@example.org", kind: "invitation" });
    expect(JSON.stringify(now.history)).not.toContain("right@example.org");
  });

  it("reminds by hand while it waits for them, and never after; no more than six letters with a link an hour", async () => {
    const reference = await added(house);
    value(await remindNow(house, DESK, { reference }));
    expect(await kinds(reference)).toContain("reminder");
    let last: Outcome<null> = { ok: true, value: null };
    for (let i = 0; i < 6 && last.ok; i += 1) last = await mailLink(house, DESK, { reference });
    expect(last).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "mail" }] } });
    house.clock.time += 3_600_001;
    value(await mailLink(house, DESK, { reference }));
    const done = await sent();
    expect(await remindNow(house, DESK, { reference: done })).toEqual({ ok: false, error: { code: "wrong-state", state: "sent" } });
    value(await closeBooking(house, DESK, { reference, reason: "" }));
    expect(await remindNow(house, DESK, { reference })).toEqual({ ok: false, error: { code: "wrong-state", state: "closed" } });
  });
});

describe("a week at the desk", () => {
  it("takes fifty pasted bookings, drafts, three returns, ten agreements, a late change and the sheets of a day", async () => {
    const rows = Array.from({ length: 50 }, (_, i) => `Ana ${i} & Bo ${i};week${i}@example.org;2028-${String(1 + Math.floor(i / 5)).padStart(2, "0")}-${String(1 + (i % 5)).padStart(2, "0")};Hosted day;${40 + i}`);
    const text = ["names;mail;date;package;guests", ...rows].join("\n");
    expect(value(await addPasted(house, DESK, { text, good: 50, mail: true })).references).toHaveLength(50);
    const week: string[] = [];
    for (let i = 0; i < 10; i += 1) week.push(value(await listQueue(house, DESK, { search: `week${i}@example.org` })).rows[0]?.reference ?? "");
    for (const reference of week) {
      value(await arrangeFor(house, DESK, { reference }));
      value(await offerDraft(house, DESK, { reference, revision: (await see(reference)).revision, layout: "a", words: "" }));
      value(await sendRequest(house, coupleOf(reference), { reference, revision: (await see(reference)).revision }));
    }
    for (const reference of week.slice(0, 3)) {
      value(await returnRequest(house, DESK, { reference, number: 1, reason: "Nearer the wall, please." }));
      expect((await see(reference)).state).toBe("returned");
      value(await sendRequest(house, coupleOf(reference), { reference, revision: (await see(reference)).revision }));
    }
    for (const reference of week) {
      const last = (await see(reference)).revisions.at(-1);
      value(await agreeRevision(house, DESK, { reference, number: last?.number ?? 0, fingerprint: last?.fingerprint ?? "" }));
    }
    const seen = value(await listQueue(house, DESK, { search: "week", filter: "agreed" }));
    expect([seen.counts.agreed, seen.counts.invited, seen.rows.length]).toEqual([10, 40, 10]);
    const [first = ""] = week;
    value(await workOutChange(house, DESK, { reference: first, values: { adults: "47" } }));
    await workOutWaiting(house);
    const change = value(await lateChangeOf(house, DESK, { reference: first }));
    value(await takeChange(house, DESK, { reference: first, seen: change?.madeAt ?? "" }));
    const last = (await see(first)).revisions.at(-1);
    value(await agreeRevision(house, DESK, { reference: first, number: last?.number ?? 0, fingerprint: last?.fingerprint ?? "" }));
    expect(await see(first)).toMatchObject({ state: "agreed", revisions: [{ number: 1 }, { number: 2 }, { number: 3 }] });
    for (const reference of week) expect(await sheetsPdfFor(house, DESK, { reference })).toMatchObject({ ok: true });
  });
});
