import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { sql } from "kysely";
import { addBooking, askDeskLink, currentActor, getBooking, invitePerson, listPeople, openByCode, openLink, returnRequest, revokePerson } from "../../lib/service";
import { answerAsks } from "../../lib/service/answer-asks";
import { tidewheel } from "../../lib/demo";
import { outbox, people, type Store } from "../../lib/store";
import { migrate } from "../../lib/store/migrate";
import { openAsItIs, storeErrorText } from "../../lib/store/open";
import { noticed } from "../../lib/service/desk-people";
import { keepPromises } from "../../lib/service/keep-promises";
import { saveVenue } from "../../lib/service/venues";
import { added, cookieOf, coupleOf, DESK, mailedKey, testHouse, type TestHouse } from "./support/house";
import { sendFirst } from "./support/line";
import { blankPlace } from "./support/place";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

/** Every row of every table, as text. */
async function everythingOf({ db }: Store): Promise<string> {
  const { rows } = await sql<{ readonly name: string }>`select table_name as name from information_schema.tables where table_schema = current_schema()`.execute(db);
  const texts: string[] = [];
  for (const { name } of rows) texts.push(JSON.stringify((await sql`select * from ${sql.table(name)}`.execute(db)).rows));
  return texts.join("\n");
}
const everything = (): Promise<string> => everythingOf(house.store);

const invite = (email: string, role: string) => invitePerson(house, DESK, { values: { email, role } });

describe("people of the desk", () => {
  it("are let in by mail, sign in by a mailed link with their own role, and are out at once when let go", async () => {
    expect(await invite(" Iris@Tidewheel.example ", "desk-look")).toMatchObject({ ok: true, value: { email: "iris@tidewheel.example" } });
    const mail = (await outbox.list(house.store.db)).find((one) => one.kind === "desk-invitation");
    expect(mail?.recipient).toBe("iris@tidewheel.example");
    // The letter signs nobody in: whoever reads it over a shoulder gains nothing.
    expect(mail?.bodyText).not.toMatch(/\/open\/[A-Za-z0-9_-]{32}/);
    await askDeskLink(house, { email: "iris@tidewheel.example" });
    await answerAsks(house);
    const key = await mailedKey(house, undefined, "desk-sign-in"), cookie = await cookieOf(house, key);
    expect(await currentActor(house, { cookie, side: "desk" })).toEqual({ kind: "desk", person: "iris@tidewheel.example", role: "desk-look" });
    await invite("iris@tidewheel.example", "desk");
    expect(await currentActor(house, { cookie, side: "desk" })).toMatchObject({ role: "desk" });
    await askDeskLink(house, { email: "iris@tidewheel.example" });
    await answerAsks(house);
    const left = await mailedKey(house, undefined, "desk-sign-in");
    expect(await revokePerson(house, DESK, { email: "iris@tidewheel.example" })).toMatchObject({ ok: true });
    expect(await currentActor(house, { cookie, side: "desk" })).toEqual({ kind: "nobody" });
    expect(await openLink(house, { key: left })).toMatchObject({ ok: false, error: { code: "link", why: "revoked" } });
  });

  it("sign in by the code of the mail as well, for their own address, once, within ten minutes", async () => {
    await invite("ruth@tidewheel.example", "desk");
    const codeNow = async (): Promise<string> => {
      await askDeskLink(house, { email: "ruth@tidewheel.example" });
      await answerAsks(house);
      const mail = (await outbox.list(house.store.db)).find((one) => one.kind === "desk-sign-in");
      return /\b[A-Z0-9]{4}-[A-Z0-9]{4}\b/.exec(mail?.bodyText ?? "")?.[0] ?? "";
    };
    const code = await codeNow();
    expect(await openByCode(house, { email: "desk@tidewheel.example", code })).toMatchObject({ ok: false });
    // As people type it: small letters, no hyphen, spaces about it.
    expect(await openByCode(house, { email: " Ruth@tidewheel.example", code: ` ${code.toLowerCase().replace("-", " ")} ` })).toMatchObject({ ok: true, value: { purpose: "desk" } });
    expect(await openByCode(house, { email: "ruth@tidewheel.example", code })).toMatchObject({ ok: false, error: { code: "link", why: "used" } });
    const late = await codeNow();
    house.clock.time += 10 * 60_000;
    expect(await openByCode(house, { email: "ruth@tidewheel.example", code: late })).toMatchObject({ ok: false, error: { code: "link", why: "expired" } });
  });

  it("are listed with those whom the settings name, who are managers and are taken off there alone", async () => {
    await invite("otto@tidewheel.example", "manager");
    const all = await listPeople(house, DESK);
    expect(all.ok && all.value.map((one) => [one.email, one.role, one.fixed])).toEqual([
      ["desk@tidewheel.example", "manager", true], ["second@tidewheel.example", "manager", true], ["otto@tidewheel.example", "manager", false], ["ruth@tidewheel.example", "desk", false],
    ]);
    expect(await revokePerson(house, DESK, { email: "desk@tidewheel.example" })).toMatchObject({ ok: false, error: { code: "not-found" } });
    expect(await invite("second@tidewheel.example", "desk-look")).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "email" }] } });
    expect(await invite("not an address", "king")).toMatchObject({ ok: false, error: { code: "invalid", errors: [{ field: "email" }, { field: "role" }] } });
  });

  it("who only look get no notices, and see no letters, since those hold links", async () => {
    await invite("eye@tidewheel.example", "desk-look");
    expect(await noticed(house, house.store.db)).toEqual(["desk@tidewheel.example", "second@tidewheel.example", "otto@tidewheel.example", "ruth@tidewheel.example"]);
    const reference = await added(house);
    const seen = await getBooking(house, { kind: "desk", person: "eye@tidewheel.example", role: "desk-look" }, { reference });
    expect(seen.ok && seen.value.mails).toEqual([]);
  });

  it("who are let go leave no address in any table, and what they did stays under their number", async () => {
    const leaver = "leaver@tidewheel.example", actor = { kind: "desk", person: leaver, role: "desk" } as const;
    await invite(leaver, "manager");
    await askDeskLink(house, { email: leaver });
    await answerAsks(house);
    await cookieOf(house, await mailedKey(house, undefined, "desk-sign-in"));
    const made = await addBooking(house, actor, { values: { names: "Ida & Per", email: "ida@example.org", package: "dry-hire", date: "2027-08-14", mail: "yes" } });
    const reference = made.ok ? made.value.reference : "";
    await sendFirst(house, reference);
    await returnRequest(house, actor, { reference, number: 1, reason: "Ida, the other wall, please." });
    await saveVenue(house, { ...actor, role: "manager" }, { ...tidewheel, texts: { arrival: "By the yard." } });
    await invitePerson(house, { ...actor, role: "manager" }, { values: { email: "guest@tidewheel.example", role: "desk-look" } });
    expect(await everything()).toContain(leaver);
    const before = await getBooking(house, DESK, { reference });
    expect(before.ok && before.value.history.find((one) => one.what === "returned")).toMatchObject({ who: "desk", by: leaver });
    expect((await getBooking(house, coupleOf(reference), { reference }))).not.toMatchObject({ value: { history: expect.arrayContaining([expect.objectContaining({ by: leaver })]) as unknown } });
    await revokePerson(house, DESK, { email: leaver });
    expect(await everything()).not.toContain(leaver);
    const after = await getBooking(house, DESK, { reference });
    expect(after.ok && after.value.history.find((one) => one.what === "returned")).toMatchObject({ who: "desk", by: undefined });
    // Of the words of a return the history keeps none: those of the revision can be erased.
    expect(after.ok && JSON.stringify(after.value.history)).not.toContain("the other wall");
  });

  it("who were taken out of the settings are forgotten by the sweep, and a dry run only counts them", async () => {
    const gone = { kind: "desk", person: "former@tidewheel.example", role: "manager" } as const;
    await addBooking({ ...house, deskPeople: [...house.deskPeople, gone.person] }, gone, { values: { names: "Jo & Lu", email: "jo@example.org", package: "dry-hire", date: "2027-08-21" } });
    const keep = { bookings: 730, mails: 180 };
    expect(await keepPromises(house, { keep, dryRun: true })).toMatchObject({ staff: 1 });
    expect(await everything()).toContain(gone.person);
    expect(await keepPromises(house, { keep, dryRun: false })).toMatchObject({ staff: 1 });
    expect(await everything()).not.toContain(gone.person);
    expect(await keepPromises(house, { keep, dryRun: false })).toMatchObject({ staff: 0 });
  });
});

describe("addresses of an older store", () => {
  it("go into one table when it is brought up to date, and those who were let go leave none", async () => {
    const place = await blankPlace(), opened = await openAsItIs(place);
    if (!opened.ok) throw new Error(storeErrorText(opened.error));
    const store = opened.value;
    expect(await migrate(store.db, "0011-words")).toMatchObject({ ok: true });
    await sql`insert into people (email, role, invited_at, invited_by, revoked_at) values ('here@mill.example', 'desk', now(), 'Boss@Mill.example', null), ('gone@mill.example', 'desk', now(), 'boss@mill.example', now())`.execute(store.db);
    await sql`insert into history (booking, at, who, what, data) values (null, now(), 'desk: gone@mill.example', 'returned', '{"number": 1, "reason": "Zdzisława, the other wall"}'), (null, now(), 'desk: here@mill.example', 'agreed', '{}'), (null, now(), 'clock', 'overdue', '{}')`.execute(store.db);
    await sql`insert into mails (kind, recipient, from_name, subject, body_text, body_html, message_id, state, due_at, queued_at) values ('desk-notice', 'gone@mill.example', 'Mill', 's', 't', 'h', 'm', 'sent', now(), now())`.execute(store.db);
    expect(await migrate(store.db)).toMatchObject({ ok: true });
    const left = await everythingOf(store);
    expect(left).not.toContain("gone@mill.example");
    expect(left).not.toContain("Zdzisława");
    const { rows } = await sql<{ readonly who: string; readonly email: string | null }>`select who, email from history left join staff on staff.id = history.staff order by history.id`.execute(store.db);
    expect(rows).toEqual([{ who: "desk", email: null }, { who: "desk", email: "here@mill.example" }, { who: "clock", email: null }]);
    expect((await people.list(store.db)).map((one) => [one.email, one.invitedBy])).toEqual([["here@mill.example", "boss@mill.example"]]);
    await expect(sql`update history set who = 'x'`.execute(store.db)).rejects.toThrow("rows are only added");
    await store.close();
    await place.remove();
  });
});
