import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { askCoupleLink, currentActor, glance, listLookLinks, lookAtLink, makeLookLink, openLink, planSvg, saveStep, withdrawLookLink, type Actor } from "../../lib/service";
import { answerAsks } from "../../lib/service/answer-asks";
import { bookings, outbox } from "../../lib/store";
import { added, coupleOf, testHouse, type TestHouse } from "./support/house";

let house: TestHouse;
let close: () => Promise<void>;
let reference = "";
let couple: Actor;
beforeAll(async () => {
  ({ house, close } = await testHouse());
  reference = await added(house, { email: "both@example.org" });
  couple = coupleOf(reference);
});
afterAll(() => close());

const keyIn = (text: string): string => /\/open\/([A-Za-z0-9_-]+)/.exec(text)?.[1] ?? "";

/** Makes a link and opens it, as its holder would. */
async function holder(label: string, email = ""): Promise<{ readonly actor: () => Promise<Actor>; readonly key: string }> {
  const made = await makeLookLink(house, couple, { reference, label, email });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  const key = keyIn(made.value.href);
  const opened = await openLink(house, { key });
  if (!opened.ok) throw new Error("it does not open");
  const cookie = `${opened.value.cookie.name}=${opened.value.cookie.value}`;
  return { key, actor: () => currentActor(house, { cookie, side: "look" }) };
}

describe("a link to look", () => {
  it("shows plan and answers, without words, fees and addresses, and leaves the booking as it was", async () => {
    const before = await bookings.find(house.store.db, reference);
    const saved = await saveStep(house, couple, { reference, step: "extras", values: { extras: "lounge", notes: "for the desk alone" }, revision: before?.revision ?? 0 });
    expect(saved.ok).toBe(true);
    const now = await bookings.find(house.store.db, reference);
    const { actor, key } = await holder("Aunt Odile");
    const seen = await glance(house, await actor(), { reference });
    expect(seen.ok && seen.value.draft.extras).toEqual({ extras: ["lounge"], notes: "" });
    expect(JSON.stringify(seen)).not.toContain("both@example.org");
    expect((await lookAtLink(house, { key })).ok).toBe(true);
    expect((await bookings.find(house.store.db, reference))?.revision).toBe(now?.revision);
    expect((await bookings.find(house.store.db, reference))?.state).toBe(now?.state);
  });

  it("speaks for one side alone: its cookie is no couple's and no desk's", async () => {
    const made = await makeLookLink(house, couple, { reference, label: "A witness", email: "" });
    if (!made.ok) throw new Error("not made");
    const opened = await openLink(house, { key: keyIn(made.value.href) });
    if (!opened.ok) throw new Error("not opened");
    const { name, value } = opened.value.cookie;
    for (const side of ["couple", "desk"] as const) {
      expect(await currentActor(house, { cookie: `${name.replace("look", side)}=${value}`, side })).toEqual({ kind: "nobody" });
      expect(await currentActor(house, { cookie: `${name}=${value}`, side })).toEqual({ kind: "nobody" });
    }
  });

  it("may be asked for a plan, and for none but the one that speaks for the booking", async () => {
    const { actor } = await holder("A friend");
    expect(await planSvg(house, await actor(), { reference, layout: "a" })).toEqual(await planSvg(house, await actor(), { reference }));
    expect((await planSvg(house, await actor(), { reference: "AAAA-99" })).ok).toBe(false);
  });

  it("is mailed to the one named, ends with its withdrawal, and those in by it are out at once", async () => {
    const { actor, key } = await holder("Mother", "mother@example.org");
    const mail = (await outbox.list(house.store.db, { booking: reference })).find((one) => one.recipient === "mother@example.org");
    expect(keyIn(mail?.bodyText ?? "")).toBe(key);
    expect((await actor()).kind).toBe("look");
    const all = await listLookLinks(house, couple, { reference });
    const id = all.ok ? all.value.find((one) => one.label === "Mother")?.id ?? "" : "";
    expect(await withdrawLookLink(house, couple, { reference, id })).toEqual({ ok: true, value: null });
    expect((await actor()).kind).toBe("nobody");
    expect(await openLink(house, { key })).toEqual({ ok: false, error: { code: "link", why: "revoked" } });
  });

  it("outlives a fresh link of the couple's own", async () => {
    const { actor } = await holder("Grandfather");
    await askCoupleLink(house, { email: "both@example.org" });
    await answerAsks(house);
    expect((await actor()).kind).toBe("look");
  });

  it("is refused without a name, and with an address that is none", async () => {
    const made = await makeLookLink(house, couple, { reference, label: " ", email: "nobody" });
    expect(!made.ok && made.error.code === "invalid" && made.error.errors.map((one) => one.field)).toEqual(["label", "email"]);
  });
});
