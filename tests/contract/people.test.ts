import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { askDeskLink, currentActor, getBooking, invitePerson, listPeople, openByCode, openLink, revokePerson } from "../../lib/service";
import { outbox } from "../../lib/store";
import { noticed } from "../../lib/service/desk-people";
import { added, cookieOf, DESK, mailedKey, testHouse, type TestHouse } from "./support/house";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const invite = (email: string, role: string) => invitePerson(house, DESK, { values: { email, role } });

describe("people of the desk", () => {
  it("are let in by mail, sign in by a mailed link with their own role, and are out at once when let go", async () => {
    expect(await invite(" Iris@Tidewheel.example ", "desk-look")).toMatchObject({ ok: true, value: { email: "iris@tidewheel.example" } });
    const mail = (await outbox.list(house.store.db)).find((one) => one.kind === "desk-invitation");
    expect(mail?.recipient).toBe("iris@tidewheel.example");
    // The letter signs nobody in: whoever reads it over a shoulder gains nothing.
    expect(mail?.bodyText).not.toMatch(/\/open\/[A-Za-z0-9_-]{32}/);
    await askDeskLink(house, { email: "iris@tidewheel.example" });
    const key = await mailedKey(house, undefined, "desk-sign-in"), cookie = await cookieOf(house, key);
    expect(await currentActor(house, { cookie, side: "desk" })).toEqual({ kind: "desk", person: "iris@tidewheel.example", role: "desk-look" });
    await invite("iris@tidewheel.example", "desk");
    expect(await currentActor(house, { cookie, side: "desk" })).toMatchObject({ role: "desk" });
    await askDeskLink(house, { email: "iris@tidewheel.example" });
    const left = await mailedKey(house, undefined, "desk-sign-in");
    expect(await revokePerson(house, DESK, { email: "iris@tidewheel.example" })).toMatchObject({ ok: true });
    expect(await currentActor(house, { cookie, side: "desk" })).toEqual({ kind: "nobody" });
    expect(await openLink(house, { key: left })).toMatchObject({ ok: false, error: { code: "link", why: "revoked" } });
  });

  it("sign in by the code of the mail as well, for their own address, once, within ten minutes", async () => {
    await invite("ruth@tidewheel.example", "desk");
    const codeNow = async (): Promise<string> => {
      await askDeskLink(house, { email: "ruth@tidewheel.example" });
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
});
