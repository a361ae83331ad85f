import { simpleParser, type ParsedMail } from "mailparser";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { deliverDue, type Post } from "../../lib/jobs";
import { asHtml, asText, messages, singleAddress, smtp, type About } from "../../lib/mail";
import { askDeskLink, getBooking, listQueue, mailLink, health } from "../../lib/service";
import { answerAsks } from "../../lib/service/answer-asks";
import { tidewheel } from "../../lib/demo";
import { queueMail } from "../../lib/service/post";
import { outbox } from "../../lib/store";
import { added, DESK, mailedKey, testHouse, type TestHouse } from "./support/house";
import { mailServer, type MailServer } from "./support/mail-server";

let server: MailServer;
let house: TestHouse;
let close: () => Promise<void>;
let post: Post;
beforeAll(async () => {
  ({ house, close } = await testHouse());
  server = await mailServer();
  post = { store: house.store, transport: smtp({ url: server.url }), clock: house.clock, from: house.mailFrom, keepLinks: false };
});
afterAll(async () => {
  post.transport.close();
  await server.close();
  await close();
});

async function delivered(): Promise<{ readonly raw: string; readonly mail: ParsedMail }> {
  server.got.length = 0;
  await deliverDue(post);
  const raw = server.got.at(-1) ?? "";
  return { raw, mail: await simpleParser(raw) };
}

describe("a mail on the wire", () => {
  it("carries names in any script, one link, the same words twice, and the fields that RFC 5322 and RFC 3834 ask for", async () => {
    const reference = await added(house);
    const key = await mailedKey(house, reference);
    const { raw, mail } = await delivered();
    expect(mail.from?.value).toEqual([{ name: "Tidewheel Mill", address: "desk@tidewheel.example" }]);
    expect(mail.headers.get("auto-submitted")).toBe("auto-generated");
    expect(mail.messageId).toMatch(/^<[0-9a-f]{32}@tidewheel\.example>$/);
    expect(mail.date?.toISOString()).toBe(new Date(house.clock.now()).toISOString());
    expect(mail.subject).toContain("Tidewheel Mill");
    expect(mail.replyTo?.value).toMatchObject([{ address: tidewheel.contact?.email }]);
    expect(mail.text).toContain("Zoë Ånd and 李 明");
    expect(mail.text).toContain(`http://localhost:4101/open/${key}`);
    expect(mail.html).toContain(`href="http://localhost:4101/open/${key}"`);
    for (const line of raw.split("\r\n")) expect(line.length, line).toBeLessThanOrEqual(998);
    expect(raw.split("\n").every((line) => line === "" || line.endsWith("\r") || raw.endsWith(line))).toBe(true);
  });

  it("hangs together with the others of its booking, and with no other booking's (RFC 5322, 3.6.4)", async () => {
    const references = async (reference: string): Promise<unknown> => {
      await mailLink(house, DESK, { reference });
      return (await delivered()).mail.references;
    };
    const [one, other] = [await added(house), await added(house)];
    const thread = await references(one);
    expect(thread).toBe(`<booking.${one.toLowerCase()}@tidewheel.example>`);
    expect(await references(one)).toBe(thread);
    expect(await references(other)).not.toBe(thread);
  });

  it("is queued once for a key, however often it is thought of", async () => {
    const reference = await added(house);
    const once = () => house.store.transaction((tx) => queueMail(tx, house, { message: messages.trial("http://localhost:4101"), to: "a@example.org", fromName: "Mill", booking: reference, onceKey: `try ${reference}` }));
    const queued = await Promise.all([once(), once(), once()]);
    expect(queued.filter((one) => one)).toHaveLength(1);
    expect((await outbox.list(house.store.db, { booking: reference })).filter((one) => one.kind === "trial")).toHaveLength(1);
  });

  it("is kept without its secret once it was delivered", async () => {
    const reference = await added(house);
    expect(await mailedKey(house, reference)).not.toBe("");
    await delivered();
    const kept = (await outbox.list(house.store.db, { booking: reference }))[0];
    expect(kept?.state).toBe("sent");
    expect(kept?.bodyText).toContain("/open/…");
    expect(kept?.bodyText).not.toMatch(/\/open\/[A-Za-z0-9_-]{16}/);
    expect(kept?.bodyHtml).not.toMatch(/\/open\/[A-Za-z0-9_-]{16}/);
  });

  it("is tried again later when the server says so for now (4yz), and given up when it says so for good (5yz; RFC 5321, 4.2.1)", async () => {
    const reference = await added(house);
    server.verdict = { at: "RCPT", code: 451, words: "try again" };
    await deliverDue(post);
    expect((await outbox.list(house.store.db, { booking: reference }))[0]).toMatchObject({ state: "queued", attempts: 1 });
    await deliverDue(post);
    expect((await outbox.list(house.store.db, { booking: reference }))[0]).toMatchObject({ attempts: 1 });
    server.verdict = { at: "RCPT", code: 550, words: "no such mailbox" };
    house.clock.time += 61_000;
    await deliverDue(post);
    const given = (await outbox.list(house.store.db, { booking: reference }))[0];
    expect(given).toMatchObject({ state: "failed", attempts: 2 });
    expect(given?.why).toContain("no such mailbox");
    // The desk sees it in the queue and at the booking.
    const queue = await listQueue(house, DESK, {});
    expect(queue.ok && queue.value.rows.find((one) => one.reference === reference)?.mail).toMatchObject({ state: "failed", why: expect.stringContaining("no such mailbox") });
    expect(await getBooking(house, DESK, { reference })).toMatchObject({ ok: true, value: { mails: [{ state: "failed", why: expect.stringContaining("no such mailbox") }] } });
    server.verdict = undefined;
    house.clock.time += 3_600_000;
    await deliverDue(post);
    expect((await outbox.list(house.store.db, { booking: reference }))[0]?.state).toBe("failed");
    // Mailed anew by the desk it is another mail, and arrives.
    await mailLink(house, DESK, { reference });
    await deliverDue(post);
    expect((await outbox.list(house.store.db, { booking: reference }))[0]?.state).toBe("sent");
  });

  it("that is due and does not leave is told by the house's state, which lets people in all the same", async () => {
    await delivered();
    await added(house);
    expect(await health(house)).toMatchObject({ ok: true, mails: "leave" });
    house.clock.time += 11 * 60_000;
    expect(await health(house)).toMatchObject({ ok: true, mails: "wait" });
    await delivered();
    expect(await health(house)).toMatchObject({ ok: true, mails: "leave" });
  });

  it("to the desk signs one person in, and is not sent to strangers or without end", async () => {
    await askDeskLink(house, { email: "stranger@example.org" });
    await answerAsks(house);
    expect((await outbox.list(house.store.db)).filter((one) => one.recipient === "stranger@example.org")).toEqual([]);
    for (let i = 0; i < 9; i += 1) await askDeskLink(house, { email: " Second@Tidewheel.example " });
    await answerAsks(house);
    expect((await outbox.list(house.store.db)).filter((one) => one.recipient === "second@tidewheel.example" && one.kind === "desk-sign-in")).toHaveLength(6);
  });
});

describe("headers", () => {
  const letter = { from: { name: "Mill", address: "desk@tidewheel.example" }, to: "a@example.org", subject: "s", text: "t", html: "h", messageId: "<m@tidewheel.example>", date: "2027-01-02T03:04:05.678Z" };
  it.each([
    ["subject", { ...letter, subject: "s\r\nBcc: b@example.org" }],
    ["to", { ...letter, to: "a@example.org, b@example.org" }],
    ["to", { ...letter, to: "a@example.org\nBcc: b@example.org" }],
    ["from", { ...letter, from: { ...letter.from, name: "Mill\r\nBcc: b@example.org" } }],
  ])("refuse what would add a field of its own: %s", async (field, bad) => {
    server.got.length = 0;
    expect(await post.transport.send(bad)).toMatchObject({ ok: false, lasting: true, why: expect.stringContaining(`"${field}"`) });
    expect(server.got).toEqual([]);
  });

  it("take an address of 254 characters and refuse one of 255, or of 65 before the @ (RFC 5321, 4.5.3.1.1 and 4.5.3.1.3: a path of 256 with its brackets)", () => {
    // 64 + "@" + 185 + ".org" = 254
    const domain = `${"d".repeat(62)}.${"d".repeat(61)}.${"d".repeat(60)}`;
    const fits = `${"a".repeat(64)}@${domain}.org`;
    expect(fits.length).toBe(254);
    expect(singleAddress(fits)).toEqual({ ok: true, value: fits });
    expect(singleAddress(`${"a".repeat(64)}@${domain}d.org`)).toMatchObject({ ok: false });
    expect(singleAddress(`${"a".repeat(65)}@example.org`)).toMatchObject({ ok: false });
  });
});

describe("the words of every mail", () => {
  const about: About = {
    reference: "QK7M-34", names: ["Zoë <b>Ånd</b>", "يسرى"], venueName: "Tidewheel Mill & Co", packageName: "Dry hire", coordinator: false,
    date: "2027-06-12", dueDate: "2027-05-01", locale: "en-GB", reader: { language: "en-GB", locale: "en-GB" },
  };
  const all = [
    messages.invitation(about, "http://localhost/open/x"), messages.sentToCouple(about, { number: 1, href: "http://localhost/open/x" }),
    messages.sentToDesk(about, { number: 1, href: "http://localhost/desk", guests: 92, musts: 0, shoulds: 2 }),
    messages.returned(about, { number: 1, reason: "First.\nThen <script>.", href: "http://localhost/open/x" }),
    messages.agreed(about, { number: 2, fingerprint: "ab".repeat(32), href: "http://localhost/open/x" }), messages.deskSignIn("Tidewheel Mill", { href: "http://localhost/desk/open/x", code: "KMRT-WX4D", minutes: 10 }), messages.trial("http://localhost"),
  ];

  it.each(all.map((one) => [one.kind, one] as const))("stand in the text and in the page alike: %s", (_kind, message) => {
    const plain = (html: string): string => html.replace(/<title>.*?<\/title>/, "").replace(/<br>/g, "\n").replace(/<[^>]+>/g, " ")
      .replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&quot;", '"').replaceAll("&#39;", "'").replaceAll("&amp;", "&");
    const words = (text: string): string[] => text.split(/[\s:>]+/).filter((one) => one !== "");
    expect(words(plain(asHtml(message)))).toEqual(words(asText(message)));
    expect(asHtml(message)).not.toContain("<script");
    expect(asHtml(message)).not.toContain("<b>");
  });
});
