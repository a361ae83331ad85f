import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { isFromOurPages, readCookie, sessionCookie } from "../../lib/access";
import { addBooking, askCoupleLink, askDeskLink, changeAddress, closeBooking, currentActor, getBooking, invitePerson, lookAtLink, markedBrowser, openByCode, openLink, renewLink, signOut } from "../../lib/service";
import { answerAsks } from "../../lib/service/answer-asks";
import { outbox } from "../../lib/store";
import { added, cookieOf, DESK, mailedKey, testHouse, type TestHouse } from "./support/house";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const deskKey = async (): Promise<string> => {
  await askDeskLink(house, { email: "desk@tidewheel.example" });
  await answerAsks(house);
  return mailedKey(house, undefined, "desk-sign-in");
};

describe("a mailed link", () => {
  it("changes nothing when it is looked at, however often, as mail scanners do", async () => {
    const reference = await added(house);
    const key = await mailedKey(house, reference);
    const before = await getBooking(house, DESK, { reference });
    for (let i = 0; i < 3; i += 1) expect(await lookAtLink(house, { key })).toMatchObject({ ok: true });
    expect(await getBooking(house, DESK, { reference })).toEqual(before);
    const sessions = await sql`select 1 from sessions where booking = ${reference}`.execute(house.store.db);
    expect(sessions.rows).toEqual([]);
  });

  it("is kept as a hash alone: the secret stands nowhere in its row, nor in the session's", async () => {
    const key = await mailedKey(house, await added(house));
    const cookie = await cookieOf(house, key);
    const rows = await sql`select row_to_json(links)::text as text from links union all select row_to_json(sessions)::text from sessions`.execute(house.store.db);
    expect(JSON.stringify(rows.rows)).not.toContain(key);
    expect(JSON.stringify(rows.rows)).not.toContain(cookie.split("=")[1]);
  });

  it("holds at least 128 random bits", async () => {
    const key = await mailedKey(house, await added(house));
    // 32 signs of base64url, 6 bits each
    expect(key.length * 6).toBe(192);
  });

  it("opens for the couple on every device, and for the desk once", async () => {
    const reference = await added(house);
    const key = await mailedKey(house, reference);
    expect(await cookieOf(house, key)).not.toBe(await cookieOf(house, key));
    const desk = await deskKey();
    const opened = await Promise.all([openLink(house, { key: desk }), openLink(house, { key: desk })]);
    expect(opened.filter((one) => one.ok)).toHaveLength(1);
    expect(await openLink(house, { key: desk })).toEqual({ ok: false, error: { code: "link", why: "used" } });
  });

  it("to the desk opens in the browser that asked for it alone, and so does its code (ASVS 5.0, 6.6.2)", async () => {
    const mark = (cookies: string | null) => markedBrowser(house, cookies);
    const here = mark(null), cookies = `${here.cookie.name}=${here.cookie.value}`;
    // The same browser is known again; a made-up mark is none.
    expect(mark(cookies).browser).toBe(here.browser);
    expect(mark(`${here.cookie.name}=mine`).browser).not.toBe("mine");
    await askDeskLink(house, { email: "desk@tidewheel.example", browser: here.browser });
    await answerAsks(house);
    const key = await mailedKey(house, undefined, "desk-sign-in"), other = mark(null).browser;
    const code = /\b[A-Z0-9]{4}-[A-Z0-9]{4}\b/.exec((await outbox.list(house.store.db)).find((one) => one.kind === "desk-sign-in")?.bodyText ?? "")?.[0] ?? "";
    const refused = { ok: false, error: { code: "link", why: "elsewhere" } };
    for (const browser of [other, undefined]) {
      expect(await lookAtLink(house, { key, browser })).toEqual(refused);
      expect(await openLink(house, { key, browser })).toEqual(refused);
      expect(await openByCode(house, { email: "desk@tidewheel.example", code, browser })).toEqual(refused);
    }
    // Refusing it elsewhere used nothing up.
    expect(await openByCode(house, { email: "desk@tidewheel.example", code, browser: here.browser })).toMatchObject({ ok: true });
    expect(await openLink(house, { key, browser: here.browser })).toMatchObject({ ok: true });
    const kept = await sql`select row_to_json(links)::text as text from links union all select row_to_json(link_asks)::text from link_asks`.execute(house.store.db);
    expect(JSON.stringify(kept.rows)).not.toContain(here.browser);
  });

  it("to the desk runs out after ten minutes, to the millisecond", async () => {
    const key = await deskKey();
    house.clock.time += 10 * 60_000 - 1;
    expect(await lookAtLink(house, { key })).toMatchObject({ ok: true });
    house.clock.time += 1;
    expect(await openLink(house, { key })).toEqual({ ok: false, error: { code: "link", why: "expired" } });
  });

  it("of a couple ends when a fresh one takes its place and when their address changes, and says so", async () => {
    const reference = await added(house), ended = { ok: false, error: { code: "link", why: "revoked" } };
    const first = await mailedKey(house, reference);
    await renewLink(house, { key: first });
    await answerAsks(house);
    const second = await mailedKey(house, reference);
    expect(await lookAtLink(house, { key: first })).toEqual(ended);
    expect(await lookAtLink(house, { key: second })).toMatchObject({ ok: true });
    expect(await changeAddress(house, DESK, { reference, values: { email: "moved@example.org" } })).toEqual({ ok: true, value: null });
    const third = await mailedKey(house, reference);
    expect(await lookAtLink(house, { key: second })).toEqual(ended);
    expect(await lookAtLink(house, { key: third })).toMatchObject({ ok: true });
  });

  it("is not told apart from one that never was, when renewed: the answer is the same, the mail goes to the booking's address", async () => {
    const key = await mailedKey(house, await added(house));
    expect(await renewLink(house, { key: "A".repeat(32) })).toEqual(await renewLink(house, { key }));
  });

  it("that is nonsense is unknown", async () => {
    for (const key of ["", "x", "A".repeat(32), "../../etc/passwd", "é".repeat(32)]) expect(await openLink(house, { key })).toEqual({ ok: false, error: { code: "link", why: "unknown" } });
  });
});

describe("a link asked for at the door", () => {
  /** The house, and what is asked of its database until the answer is there: the kind of each question. */
  function watched(): { readonly house: TestHouse; readonly questions: string[] } {
    const questions: string[] = [];
    const db = house.store.db.withPlugin({ transformQuery: ({ node }) => { questions.push(node.kind); return node; }, transformResult: async ({ result }) => result });
    return { questions, house: { ...house, store: { ...house.store, db, transaction: (work) => { questions.push("transaction"); return house.store.transaction(work); } } } };
  }
  const lettersTo = async (address: string): Promise<number> => (await outbox.list(house.store.db)).filter((one) => one.recipient === address).length;

  it("is one and the same row of work before the answer, so that neither words nor time tell who is known (ASVS 5.0, 6.3.8)", async () => {
    const asks = [
      ...["desk@tidewheel.example", "iris@tidewheel.example", "stranger@example.org"].map((email) => ({ email, ask: askDeskLink })),
      ...["one@example.org", "two@example.org", "over@example.org", "stranger@example.org", `${"long".repeat(100)}@example.org`].map((email) => ({ email, ask: askCoupleLink })),
    ];
    // What was asked above is answered first.
    await answerAsks(house);
    await invitePerson(house, DESK, { values: { email: "iris@tidewheel.example", role: "desk" } });
    for (const [email, day] of [["one@example.org", "2030-06-01"], ["two@example.org", "2030-06-08"], ["two@example.org", "2030-06-15"], ["over@example.org", "2030-06-22"]] as const) {
      const made = await addBooking(house, DESK, { values: { names: "Ada & Abe", email, package: "dry-hire", date: day, mail: "no" } });
      if (made.ok && email === "over@example.org") await closeBooking(house, DESK, { reference: made.value.reference, reason: "" });
    }
    const letters = async (): Promise<readonly number[]> => Promise.all(asks.map(({ email }) => lettersTo(email)));
    const before = await letters();
    for (const { email, ask } of asks) {
      const seen = watched();
      expect(await ask(seen.house, { email }), email).toEqual({ ok: true, value: null });
      expect(seen.questions, email).toEqual(["InsertQueryNode"]);
    }
    expect(await letters()).toEqual(before);
    expect(await answerAsks(house)).toBe(asks.length);
    // Manager, let in, stranger; one booking, two, one that is closed, none, no address.
    expect((await letters()).map((n, i) => n - (before[i] ?? 0))).toEqual([1, 1, 0, 1, 2, 0, 0, 0]);
    expect(await answerAsks(house)).toBe(0);
  });

  it("comes with links to the address that the settings name, and no other (ASVS 5.0, 14.2.1)", async () => {
    const away = { ...house, origin: "https://plans.example.org" };
    await askDeskLink(away, { email: "second@tidewheel.example" });
    await askCoupleLink(away, { email: "one@example.org" });
    await answerAsks(away);
    const letters = (await outbox.list(house.store.db)).slice(0, 2);
    expect(letters.map((one) => one.recipient).sort()).toEqual(["one@example.org", "second@tidewheel.example"]);
    for (const { bodyText, bodyHtml } of letters) {
      const links = [...`${bodyText} ${bodyHtml}`.matchAll(/https?:\/\/[^\s"<>]+/g)].map(([href]) => new URL(href));
      expect(links.some((href) => href.pathname.includes("/open/"))).toBe(true);
      expect(new Set(links.map((href) => href.origin))).toEqual(new Set(["https://plans.example.org"]));
      // No secret stands where a server's log, or the page that is left, would keep it.
      for (const href of links) expect(href.search).toBe("");
    }
  });

  it("is let go when nobody answered it for an hour", async () => {
    const before = await lettersTo("desk@tidewheel.example");
    await askDeskLink(house, { email: "desk@tidewheel.example" });
    house.clock.time += HOUR + 1;
    expect(await answerAsks(house)).toBe(0);
    expect(await lettersTo("desk@tidewheel.example")).toBe(before);
  });
});

describe("a session", () => {
  it("ends when it idles and at its absolute age", async () => {
    const reference = await added(house);
    const cookie = await cookieOf(house, await mailedKey(house, reference));
    const who = async () => (await currentActor(house, { cookie, side: "couple" })).kind;
    for (let i = 0; i < 6; i += 1) { house.clock.time += 13 * DAY; expect(await who()).toBe("couple"); }
    // 6 × 13 = 78 days; at 90 it is over, though it never idled for 14.
    house.clock.time += 12 * DAY;
    expect(await who()).toBe("nobody");
    const other = await cookieOf(house, await mailedKey(house, await added(house, { date: "2028-06-10" })));
    house.clock.time += 14 * DAY;
    expect((await currentActor(house, { cookie: other, side: "couple" })).kind).toBe("nobody");
  });

  it("of the desk ends for whoever is taken off the list", async () => {
    const cookie = await cookieOf(house, await deskKey());
    expect(await currentActor(house, { cookie, side: "desk" })).toEqual(DESK);
    expect(await currentActor({ ...house, deskPeople: ["second@tidewheel.example"] }, { cookie, side: "desk" })).toEqual({ kind: "nobody" });
  });

  it("of a couple is none of the desk's, and the other way about", async () => {
    const reference = await added(house, { date: "2028-06-17" });
    const cookie = (await cookieOf(house, await mailedKey(house, reference))).replace("marquetry-couple", "marquetry-desk");
    expect(await currentActor(house, { cookie, side: "desk" })).toEqual({ kind: "nobody" });
  });

  it("is over after signing out", async () => {
    const cookie = await cookieOf(house, await deskKey());
    expect(await signOut(house, { cookie, side: "desk" })).toMatchObject({ value: "", options: { maxAge: 0 } });
    expect(await currentActor(house, { cookie, side: "desk" })).toEqual({ kind: "nobody" });
  });
});

describe("the cookie", () => {
  it("is bound to the host over https, and plain on one's own machine", () => {
    expect(sessionCookie("desk", "https://plans.example.org", { secret: "s", seconds: 9 })).toEqual({
      name: "__Host-marquetry-desk", value: "s", options: { httpOnly: true, sameSite: "lax", secure: true, path: "/", maxAge: 9 },
    });
    expect(sessionCookie("desk", "http://localhost:3000", { secret: "s", seconds: 9 })).toMatchObject({ name: "marquetry-desk", options: { secure: false } });
  });

  it("is read out of the header by its whole name", () => {
    expect(readCookie("a=1; marquetry-desk=x=y; b=2", "marquetry-desk")).toBe("x=y");
    expect(readCookie("xmarquetry-desk=1", "marquetry-desk")).toBeUndefined();
    expect(readCookie(undefined, "a")).toBeUndefined();
  });
});

describe("a request that changes something", () => {
  const ours = "https://plans.example.org";
  const ask = (more: { readonly origin?: string; readonly fetchSite?: string; readonly host?: string; readonly method?: string; readonly ours?: string }) =>
    isFromOurPages({ method: "POST", origin: undefined, fetchSite: undefined, host: "plans.example.org", ours, ...more });

  it("comes from our own pages, or from no browser", () => {
    expect(ask({ origin: ours })).toBe(true);
    expect(ask({ origin: "null", fetchSite: "same-origin" })).toBe(true);
    expect(ask({ fetchSite: "same-origin" })).toBe(true);
    expect(ask({})).toBe(true);
  });

  it("is refused from anywhere else", () => {
    expect(ask({ origin: "https://evil.example" })).toBe(false);
    expect(ask({ origin: "http://plans.example.org" })).toBe(false);
    expect(ask({ origin: "https://plans.example.org.evil.example" })).toBe(false);
    expect(ask({ origin: "null" })).toBe(false);
    expect(ask({ origin: "null", fetchSite: "cross-site" })).toBe(false);
    expect(ask({ fetchSite: "same-site" })).toBe(false);
    expect(ask({ origin: "not an origin" })).toBe(false);
  });

  it("may name one's own machine either way, at the port that was asked", () => {
    const local = "http://localhost:3000";
    expect(ask({ ours: local, origin: "http://127.0.0.1:3000", host: "127.0.0.1:3000" })).toBe(true);
    expect(ask({ ours: local, origin: "http://127.0.0.1:4000", host: "127.0.0.1:3000" })).toBe(false);
    expect(ask({ ours: local, origin: "http://evil.example:3000", host: "evil.example:3000" })).toBe(false);
  });

  it("is any but one that only looks", () => {
    for (const method of ["GET", "HEAD", "OPTIONS"]) expect(ask({ method, origin: "https://evil.example" })).toBe(true);
    for (const method of ["POST", "PUT", "PATCH", "DELETE"]) expect(ask({ method, origin: "https://evil.example" })).toBe(false);
  });
});
