import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { simpleParser } from "mailparser";
import { deliverDue } from "../../lib/jobs";
import { smtp } from "../../lib/mail";
import { formatDay } from "../../lib/measure";
import { getBooking, keepWords, mailLink } from "../../lib/service";
import { outbox } from "../../lib/store";
import { added, coupleOf, DESK, NOBODY, testHouse, type TestHouse } from "./support/house";
import { mailServer } from "./support/mail-server";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const subjects = async (reference: string): Promise<readonly string[]> => (await outbox.list(house.store.db, { booking: reference })).map((one) => one.subject);

describe("what a couple chose to read", () => {
  it("is kept with their booking, and the next letter follows it; no page of theirs grows stale by it", async () => {
    const reference = await added(house), us = coupleOf(reference);
    const before = await getBooking(house, us, { reference });
    expect(await keepWords(house, us, { reference, chosen: { language: "es" } })).toEqual({ ok: true, value: null });
    expect(await keepWords(house, us, { reference, chosen: { lengths: "imperial" } })).toEqual({ ok: true, value: null });
    const after = await getBooking(house, us, { reference });
    expect(after.ok && after.value.reads).toEqual({ language: "es", lengths: "imperial" });
    expect(after.ok && before.ok && after.value.revision === before.value.revision).toBe(true);
    await mailLink(house, DESK, { reference });
    const [second, first] = await subjects(reference);
    expect(first).toBe(`Your room layout for ${formatDay("2027-06-12", "en-GB")} at Tidewheel Mill`);
    expect(second).toBe("La distribución de su sala para el sábado, 12 de junio de 2027 en Tidewheel Mill");
  });

  it("can be told by the desk beforehand, so that the invitation is in it", async () => {
    expect(await subjects(await added(house, { language: "en-US" }))).toEqual(["Your room layout for Saturday, June 12, 2027 at Tidewheel Mill"]);
    // What is no language of ours is as the venue speaks.
    expect(await subjects(await added(house, { language: "tlh" }))).toEqual([`Your room layout for ${formatDay("2027-06-12", "en-GB")} at Tidewheel Mill`]);
  });

  it("is nobody else's to choose", async () => {
    const reference = await added(house), other = await added(house);
    for (const actor of [NOBODY, coupleOf(other), DESK]) expect(await keepWords(house, actor, { reference, chosen: { language: "es" } })).toEqual({ ok: false, error: { code: "not-allowed" } });
  });

  it("reaches the wire in Spanish, accents and all", async () => {
    const server = await mailServer();
    const post = { store: house.store, transport: smtp({ url: server.url }), clock: house.clock, from: house.mailFrom, keepLinks: false };
    await added(house, { language: "es" });
    await deliverDue(post);
    const mail = await simpleParser(server.got.at(-1) ?? "");
    expect(mail.subject).toBe("La distribución de su sala para el sábado, 12 de junio de 2027 en Tidewheel Mill");
    expect(mail.html).toContain('<html lang="es">');
    expect(mail.text).toContain("Hola, Zoë Ånd y 李 明:");
    post.transport.close();
    await server.close();
  });
});
