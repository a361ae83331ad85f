import { get, request, type IncomingMessage } from "node:http";
import { Writable } from "node:stream";
import { setTimeout as wait } from "node:timers/promises";
import pino from "pino";
import { afterEach, describe, expect, it } from "vitest";
import { RATES } from "../../lib/access";
import { openFront, type Front, type Handle } from "../../lib/server/front";
import { lineOf } from "../../lib/server/log";

const open: Front[] = [];
afterEach(async () => { for (const one of open.splice(0)) await one.stop(); });

const lines: string[] = [];
const log = pino(lineOf("info"), new Writable({ write: (chunk: Buffer, _encoding, done) => { lines.push(chunk.toString("utf8")); done(); } }));

async function front(handle: Handle, how: { readonly origin?: string; readonly graceMs?: number; readonly proxies?: readonly string[] } = {}): Promise<Front> {
  lines.length = 0;
  const made = await openFront({ config: { host: "127.0.0.1", port: 0, origin: how.origin ?? "http://localhost:3000", proxies: how.proxies ?? [] }, log, handle, graceMs: how.graceMs });
  open.push(made);
  return made;
}
const say: Handle = async (_request, response) => { response.end("hello"); };
const ask = (port: number, path = "/", headers: Readonly<Record<string, string>> = {}): Promise<IncomingMessage & { readonly body: string }> => new Promise((resolve, reject) => {
  get({ port, path, headers, host: "127.0.0.1" }, (answer) => {
    let body = "";
    answer.on("data", (chunk: Buffer) => { body += chunk.toString("utf8"); }).on("error", reject)
      .on("end", () => { resolve(Object.assign(answer, { body })); });
  }).on("error", reject);
});
const nonceOf = (policy: string | string[] | undefined): string => /'nonce-([A-Za-z0-9+/=]+)'/.exec(String(policy))?.[1] ?? "";

describe("every answer", () => {
  it("runs only scripts that carry its own nonce of 128 bits, fresh for each, and tells the pages which (CSP level 3)", async () => {
    const told: unknown[] = [];
    const { port } = await front(async (asked, response) => { told.push(asked.headers["content-security-policy"]); response.end(); });
    const answers = [await ask(port), await ask(port, "/", { "Content-Security-Policy": "script-src *" })];
    const nonces = answers.map((one) => nonceOf(one.headers["content-security-policy"]));
    expect(new Set(nonces).size).toBe(2);
    for (const nonce of nonces) expect(Buffer.from(nonce, "base64")).toHaveLength(16);
    expect(told.map((one) => nonceOf(String(one)))).toEqual(nonces);
    const policy = String(answers[0]?.headers["content-security-policy"]);
    for (const part of ["default-src 'none'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'", "form-action 'self'"]) expect(policy).toContain(part);
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
  });

  it("is kept by nobody, framed by nobody, and guessed at by nobody (ASVS 5.0, 3.4 and 14.3.2)", async () => {
    const { port } = await front(say);
    expect((await ask(port)).headers).toMatchObject({
      "cache-control": "no-store", "x-content-type-options": "nosniff", "x-frame-options": "DENY", "referrer-policy": "same-origin", "cross-origin-opener-policy": "same-origin",
    });
    expect((await ask(port)).headers["strict-transport-security"]).toBeUndefined();
    const secure = await front(say, { origin: "https://plans.example.org" });
    expect((await ask(secure.port)).headers["strict-transport-security"]).toBe("max-age=31536000");
  });

  it("has a number that stands in the log too, with the moment in UTC and without the secret of a mailed link", async () => {
    const { port } = await front(say);
    const key = "k".repeat(32);
    const answer = await ask(port, `/open/${key}?token=${key}`, { "X-Request-Id": "mine", Cookie: `marquetry-couple=${key}` });
    await wait(20);
    const line: unknown = JSON.parse(lines[0] ?? "");
    expect(line).toMatchObject({ id: answer.headers["x-request-id"], method: "GET", path: "/open/…", status: 200, msg: "answered", time: expect.stringMatching(/^\d{4}-\d\d-\d\dT.*Z$/) });
    expect(lines.join("")).not.toContain(key);
    expect(answer.headers["x-request-id"]).toMatch(/^[0-9a-f]{16}$/);
  });

  it("that broke says a number and no cause; the cause stands in the log under it, its secrets taken out", async () => {
    const key = "k".repeat(32);
    const { port } = await front(async () => { throw new Error(`secret cause: postgres://mill:hunter2@db/x at /open/${key}`); });
    const answer = await ask(port);
    expect(answer.statusCode).toBe(500);
    expect(answer.body).toContain(String(answer.headers["x-request-id"]));
    expect(answer.body).not.toContain("cause");
    await wait(20);
    expect(lines[0]).toContain("secret cause");
    expect(lines[0]).toContain(String(answer.headers["x-request-id"]));
    expect(lines.join("")).not.toContain("hunter2");
    expect(lines.join("")).not.toContain(key);
  });
});

describe("an address with a zero character", () => {
  it("is turned away before the pages see it", async () => {
    const { port } = await front(say);
    expect((await ask(port, "/desk/venue/%00/add")).statusCode).toBe(400);
    expect((await ask(port, "/open?key=%00")).statusCode).toBe(400);
  });
});

describe("a method that no page of ours uses", () => {
  it("is turned away before the pages see it, saying which are used", async () => {
    const { port } = await front(say);
    for (const method of ["PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"]) {
      const answer = await new Promise<IncomingMessage>((resolve, reject) => { request({ port, host: "127.0.0.1", method }, (got) => { got.resume(); resolve(got); }).on("error", reject).end(); });
      expect([answer.statusCode, answer.headers.allow]).toEqual([405, "GET, HEAD, POST"]);
    }
  });
});

describe("a form", () => {
  it("from a foreign page, larger than 6 MB, or of a length that it does not tell, is turned away before the pages see it (ASVS 5.0, 3.5.1 and 5.2.1)", async () => {
    let seen = 0;
    const { port } = await front(async (_request, response) => { seen += 1; response.end(); });
    const post = (headers: Readonly<Record<string, string>>): Promise<number | undefined> => new Promise((resolve, reject) => {
      request({ port, host: "127.0.0.1", method: "POST", headers }, (answer) => { answer.resume(); resolve(answer.statusCode); }).on("error", reject).end();
    });
    expect(await post({ Origin: "https://evil.example" })).toBe(403);
    const ours = { Origin: "http://localhost:3000" };
    expect(await post(ours)).toBe(200);
    expect(await post({ ...ours, "Content-Length": String(6 * 1024 * 1024 + 1) })).toBe(413);
    expect(await post({ ...ours, "Transfer-Encoding": "chunked" })).toBe(411);
    expect(seen).toBe(1);
  });
});

describe("too much from one address (ASVS 5.0, 2.4.1)", () => {
  const forwarded = (port: number, path: string, address: string): Promise<number | undefined> => ask(port, path, { "X-Forwarded-For": address }).then((answer) => answer.statusCode);

  it("is turned away, saying when to come again, while others go on; and only proxies that are named are believed", async () => {
    const { port } = await front(say, { proxies: ["loopback"] });
    const first = await Promise.all(Array.from({ length: RATES.links.points }, () => forwarded(port, "/open/ask", "203.0.113.7")));
    expect(new Set(first)).toEqual(new Set([200]));
    const refused = await ask(port, "/desk/open", { "X-Forwarded-For": "198.51.100.1, 203.0.113.7" });
    expect(refused.statusCode).toBe(429);
    expect(Number(refused.headers["retry-after"])).toBeGreaterThan(0);
    expect(Number(refused.headers["retry-after"])).toBeLessThanOrEqual(600);
    expect(refused.body).toContain("Nothing is lost");
    expect(await forwarded(port, "/open/ask", "203.0.113.8")).toBe(200);
    expect(await forwarded(port, "/", "203.0.113.7")).toBe(200);
  });

  it("is counted for papers and for forms as well, each for itself", async () => {
    const { port } = await front(say, { proxies: ["loopback"] });
    const send = (address: string): Promise<number | undefined> => new Promise((resolve, reject) => {
      request({ port, host: "127.0.0.1", method: "POST", path: "/request/guests/save", headers: { Origin: "http://localhost:3000", "X-Forwarded-For": address, "Content-Length": "0" } }, (answer) => { answer.resume(); resolve(answer.statusCode); }).on("error", reject).end();
    });
    for (let i = 0; i < RATES.papers.points; i += 1) expect(await forwarded(port, "/api/proposal.pdf?ref=x", "203.0.113.9")).toBe(200);
    expect(await forwarded(port, "/api/plan.svg", "203.0.113.9")).toBe(429);
    for (let i = 0; i < RATES.forms.points; i += 1) expect(await send("203.0.113.9")).toBe(200);
    expect([await send("203.0.113.9"), await send("203.0.113.10")]).toEqual([429, 200]);
  });

  it("is counted for a network of IPv6 together, and not at all on one's own machine", async () => {
    const { port } = await front(say, { proxies: ["loopback"] });
    for (let i = 0; i < RATES.links.points; i += 1) await forwarded(port, "/open", `2001:db8:1:2::${i.toString(16)}`);
    expect(await forwarded(port, "/open", "2001:db8:1:2:ffff::1")).toBe(429);
    expect(await forwarded(port, "/open", "2001:db8:1:3::1")).toBe(200);
    const own = await front(say);
    const all = await Promise.all(Array.from({ length: RATES.links.points + 20 }, () => forwarded(own.port, "/open", "203.0.113.7")));
    expect(new Set(all)).toEqual(new Set([200]));
  });
});

describe("a server that is told to stop", () => {
  it("lets the answer in hand end whole, and takes no new one", async () => {
    const made = await front(async (_request, response) => {
      response.write("first half, ");
      await wait(300);
      response.end("second half");
    });
    const answer = ask(made.port);
    await wait(100);
    const stopped = made.stop();
    await expect(ask(made.port)).rejects.toThrow(/ECONNREFUSED/);
    expect((await answer).body).toBe("first half, second half");
    await stopped;
  });

  it("waits for nobody who has gone quiet, and no longer than its grace", async () => {
    const made = await front(async (asked, response) => { if (asked.url === "/quick") response.end("done"); }, { graceMs: 200 });
    await ask(made.port, "/quick", { Connection: "keep-alive" });
    const hung = ask(made.port, "/never").then(() => "answered", () => "cut off");
    await wait(50);
    const began = performance.now();
    await made.stop();
    expect(await hung).toBe("cut off");
    expect(performance.now() - began).toBeLessThan(2_000);
  });
});
