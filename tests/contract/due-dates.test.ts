import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { isMailHour, reminderFor } from "../../lib/booking";
import { tidewheel } from "../../lib/demo";
import { deliverDue } from "../../lib/jobs";
import { mailbox } from "../../lib/mail";
import { endReminders, getBooking, lookAtQuiet, openLink, planSvg, remindNow, setStandard } from "../../lib/service";
import { keepDates } from "../../lib/service/keep-dates";
import { saveVenue } from "../../lib/service/venues";
import { bookings, outbox } from "../../lib/store";
import { added, coupleOf, DESK, mailedKey, testHouse, type TestHouse } from "./support/house";
import { sendFirst } from "./support/line";
import { LAYOUT } from "./support/works";

const DAY = 24 * 3_600_000;
let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());
/** 10 January 2027, noon in London, where winter is UTC. Due: 1 May, 42 days before 12 June. */
beforeEach(() => { house.clock.time = Date.UTC(2027, 0, 10, 12); });

const kinds = async (reference: string): Promise<readonly string[]> => (await outbox.list(house.store.db, { booking: reference })).map((one) => one.kind).reverse();
const at = (...when: readonly [number, number, number, number]): void => { house.clock.time = Date.UTC(...when); };

describe("reminders", () => {
  it("come 14, 7 and 2 days before the due date, each once however often it is looked, and only by day at the venue", async () => {
    const reference = await added(house);
    at(2027, 3, 16, 12);
    await keepDates(house);
    expect(await kinds(reference)).toEqual(["invitation"]);
    // 17 April, 14 days before: at 8 in the morning in London it is 7 UTC, summer time.
    at(2027, 3, 17, 7);
    await keepDates(house);
    expect(await kinds(reference)).toEqual(["invitation"]);
    at(2027, 3, 17, 8);
    await Promise.all([keepDates(house), keepDates(house), keepDates(house)]);
    await keepDates(house);
    expect(await kinds(reference)).toEqual(["invitation", "reminder"]);
    at(2027, 3, 24, 12);
    await keepDates(house);
    at(2027, 3, 29, 12);
    await keepDates(house);
    at(2027, 3, 30, 12);
    await keepDates(house);
    expect(await kinds(reference)).toEqual(["invitation", "reminder", "reminder", "reminder"]);
    const subjects = (await outbox.list(house.store.db, { booking: reference })).map((one) => one.subject).reverse().slice(1);
    expect(subjects.map((one) => /in (\d+) days/.exec(one)?.[1])).toEqual(["14", "7", "2"]);
    const seen = await getBooking(house, DESK, { reference });
    expect(seen.ok && seen.value.history.map((one) => one.what)).toEqual(["added", "link-mailed", "reminded", "reminded", "reminded"]);
  });

  it("end by a link of their own, which a look leaves alone, and which opens nothing else (RFC 8058)", async () => {
    const [reference, other] = [await added(house), await added(house)];
    at(2027, 3, 17, 12);
    await keepDates(house);
    const mail = (await outbox.list(house.store.db, { booking: reference })).find((one) => one.kind === "reminder");
    const key = mail?.unsubscribe?.split("/quiet/")[1] ?? "";
    expect(mail?.bodyText).toContain(`${house.origin}/quiet/${key}`);
    expect(await lookAtQuiet(house, { key })).toEqual({ ok: true, value: { reference, already: false } });
    expect(await openLink(house, { key })).toEqual({ ok: false, error: { code: "link", why: "unknown" } });
    expect(await lookAtQuiet(house, { key })).toMatchObject({ value: { already: false } });
    expect(await endReminders(house, { key })).toEqual({ ok: true, value: { reference, already: false } });
    expect(await endReminders(house, { key })).toEqual({ ok: true, value: { reference, already: true } });
    expect(await endReminders(house, { key: await mailedKey(house, reference) })).toMatchObject({ ok: false, error: { code: "link" } });
    expect(await remindNow(house, DESK, { reference })).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "mail" }] } });
    at(2027, 3, 24, 12);
    await keepDates(house);
    expect((await kinds(reference)).filter((one) => one === "reminder")).toHaveLength(1);
    expect((await kinds(other)).filter((one) => one === "reminder")).toHaveLength(2);
    // The one that still waited for the mail server is taken back; once delivered, a letter keeps no key.
    await deliverDue({ store: house.store, transport: mailbox, clock: house.clock, from: house.mailFrom, keepLinks: false });
    expect((await kinds(reference)).includes("reminder")).toBe(false);
    const kept = (await outbox.list(house.store.db, { booking: other })).filter((one) => one.kind === "reminder");
    expect(kept.map((one) => one.unsubscribe)).toEqual([null, null]);
    expect(kept[0]?.bodyText).toContain("/quiet/…");
  });

  it("stop when the layout is sent, and one that still waits for the mail server is taken back", async () => {
    const reference = await added(house);
    at(2027, 3, 17, 12);
    await keepDates(house);
    await sendFirst(house, reference);
    await deliverDue({ store: house.store, transport: mailbox, clock: house.clock, from: house.mailFrom, keepLinks: false });
    expect(await kinds(reference)).toEqual(["invitation", "sent", "desk-notice", "desk-notice"]);
    at(2027, 3, 24, 12);
    await keepDates(house);
    expect(await kinds(reference)).not.toContain("reminder");
  });

  it("do not tell anew what an invitation of the last three days has told, nor anything after the due date", () => {
    expect(reminderFor({ state: "invited", daysLeft: 5, addedDaysAgo: 2 })).toBeUndefined();
    expect(reminderFor({ state: "invited", daysLeft: 5, addedDaysAgo: 3 })).toBe(7);
    expect(reminderFor({ state: "started", daysLeft: 0, addedDaysAgo: 30 })).toBe(2);
    expect(reminderFor({ state: "started", daysLeft: -1, addedDaysAgo: 30 })).toBeUndefined();
    for (const state of ["sent", "agreed", "closed"] as const) expect(reminderFor({ state, daysLeft: 5, addedDaysAgo: 30 })).toBeUndefined();
  });

  it("know the venue's hour on both days on which clocks change (London, 28 March and 31 October 2027, 01:00 UTC)", () => {
    // Winter: 9:00 there is 9:00 UTC. Summer: 8:00 UTC.
    expect([isMailHour("Europe/London", Date.UTC(2027, 2, 27, 8, 59)), isMailHour("Europe/London", Date.UTC(2027, 2, 27, 9))]).toEqual([false, true]);
    expect([isMailHour("Europe/London", Date.UTC(2027, 2, 28, 7, 59)), isMailHour("Europe/London", Date.UTC(2027, 2, 28, 8))]).toEqual([false, true]);
    expect([isMailHour("Europe/London", Date.UTC(2027, 9, 31, 8, 59)), isMailHour("Europe/London", Date.UTC(2027, 9, 31, 9))]).toEqual([false, true]);
    expect(isMailHour("America/Chicago", Date.UTC(2027, 2, 27, 9))).toBe(false);
  });
});

describe("a due date that passes with nothing sent", () => {
  it("brings the venue's standard layout, set by the venue and not agreed, told to couple and desk once", async () => {
    expect(await saveVenue(house, DESK, { ...tidewheel, standardLayout: { ...LAYOUT, title: "The mill's own rounds" } })).toMatchObject({ ok: true });
    const reference = await added(house);
    // The last moment of 1 May in London is 22:59:59 UTC; mails leave from nine in the morning.
    at(2027, 4, 1, 18);
    await keepDates(house);
    expect((await kinds(reference)).includes("overdue")).toBe(false);
    at(2027, 4, 2, 8);
    await Promise.all([keepDates(house), keepDates(house)]);
    house.clock.time += DAY;
    await keepDates(house);
    expect((await kinds(reference)).filter((one) => one === "overdue" || one === "desk-notice")).toEqual(["overdue", "desk-notice", "desk-notice"]);
    const row = await bookings.find(house.store.db, reference);
    expect(row).toMatchObject({ state: "invited", setLayout: { title: "The mill's own rounds" }, setAt: "2027-05-02T08:00:00.000Z" });
    const mail = (await outbox.list(house.store.db, { booking: reference })).find((one) => one.kind === "overdue");
    expect(mail?.bodyText).toContain("set by the venue and not agreed");
    for (const who of [DESK, coupleOf(reference)]) {
      expect(await getBooking(house, who, { reference })).toMatchObject({ ok: true, value: { setByVenue: { layout: { title: "The mill's own rounds" }, at: "2027-05-02T08:00:00.000Z" } } });
      expect(await planSvg(house, who, { reference, set: true })).toEqual({ ok: true, value: "<svg/>" });
    }
    expect(await planSvg(house, coupleOf(reference), { reference })).toEqual({ ok: false, error: { code: "incomplete", missing: ["guests"] } });
    await sendFirst(house, reference);
    expect(await getBooking(house, DESK, { reference })).toMatchObject({ ok: true, value: { state: "sent", setByVenue: undefined } });
  });

  it("is told where the venue has no standard layout, and nothing is set", async () => {
    expect(await saveVenue(house, DESK, { ...tidewheel, standardLayout: undefined })).toMatchObject({ ok: true });
    const reference = await added(house);
    at(2027, 4, 2, 8);
    await keepDates(house);
    expect((await kinds(reference)).filter((one) => one === "overdue" || one === "desk-notice")).toEqual(["overdue", "desk-notice", "desk-notice"]);
    expect(await bookings.find(house.store.db, reference)).toMatchObject({ setLayout: null, setAt: null });
  });

  it("is set by hand once there is one, past the due date alone, and by nobody's agreement", async () => {
    expect(await saveVenue(house, DESK, { ...tidewheel, standardLayout: undefined })).toMatchObject({ ok: true });
    const reference = await added(house);
    const amiss = (words: string) => ({ ok: false, error: { code: "invalid", errors: [{ field: "standard", message: expect.stringContaining(words) as string }] } });
    at(2027, 4, 1, 18);
    expect(await setStandard(house, DESK, { reference })).toMatchObject(amiss("not before"));
    at(2027, 4, 2, 8);
    await keepDates(house);
    expect(await setStandard(house, DESK, { reference })).toMatchObject(amiss("none yet"));
    expect(await saveVenue(house, DESK, { ...tidewheel, standardLayout: { ...LAYOUT, title: "Made too late" } })).toMatchObject({ ok: true });
    expect(await setStandard(house, coupleOf(reference), { reference })).toEqual({ ok: false, error: { code: "not-allowed" } });
    expect(await setStandard(house, DESK, { reference })).toEqual({ ok: true, value: null });
    expect(await setStandard(house, DESK, { reference })).toMatchObject(amiss("already"));
    expect(await getBooking(house, DESK, { reference })).toMatchObject({ ok: true, value: { state: "invited", revisions: [], setByVenue: { layout: { title: "Made too late" } } } });
    expect((await outbox.list(house.store.db, { booking: reference })).find((one) => one.kind === "overdue")?.bodyText).toContain("set by the venue and not agreed");
    // A newer one takes its place; once something was sent, that is talked about.
    expect(await saveVenue(house, DESK, { ...tidewheel, standardLayout: { ...LAYOUT, title: "The newer" } })).toMatchObject({ ok: true });
    expect(await setStandard(house, DESK, { reference })).toMatchObject({ ok: true });
    await sendFirst(house, reference);
    expect(await setStandard(house, DESK, { reference })).toEqual({ ok: false, error: { code: "wrong-state", state: "sent" } });
  });

  it("leaves alone who has sent, and whose revision was returned", async () => {
    const reference = await added(house);
    await sendFirst(house, reference);
    at(2027, 4, 2, 8);
    await keepDates(house);
    expect(await kinds(reference)).not.toContain("overdue");
  });
});
