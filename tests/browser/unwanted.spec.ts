import { readdirSync } from "node:fs";
import { resolve } from "node:path";
import { expect, type APIRequestContext } from "@playwright/test";
import { seeded } from "../../lib/base";
import { atTheDesk, base, invite, person, test } from "./world";

const REQUESTS = 1_000;
const random = seeded(20_271_125);
const pick = <T>(from: readonly [T, ...T[]]): T => from[Math.floor(random() * from.length)] ?? from[0];

/** Every address that the house answers to, from the folders that make them; what a page left out would be left out here too. */
const ROUTES: readonly { readonly path: string; readonly form: boolean }[] = readdirSync(resolve("app"), { recursive: true, encoding: "utf8" }).filter((file) => /(^|\/)(page\.tsx|route\.ts)$/.test(file)).sort().map((file) => ({
  path: `/${file.split("/").slice(0, -1).filter((part) => !part.startsWith("(")).join("/")}`, form: file.endsWith("route.ts"),
}));

const WORDS = [
  "", " ", "0", "-1", "1e309", "NaN", "99999999999999999999", "null", "undefined", "true", "[object Object]", "__proto__", "constructor", "../../../etc/passwd",
  "'; drop table bookings; --", "\" or 1=1", "<script>alert(1)</script>", "{{7*7}}", "%00", "\u0000", "\ud800", "\u202egnp.exe", "😀".repeat(40), "a".repeat(20_000), "{\"a\":", "a\r\nBcc: all@example.org",
  "2027-02-30", "0000-00-00", "9999-12-31", "12:61", "guests", "meal", "layout", "a", "1", "2", "marquetry.venue/1",
] as const satisfies readonly [string, ...string[]];
const FIELDS = [
  "adults", "children", "wheelchairs", "names", "email", "date", "package", "reason", "revision", "layout", "number", "fingerprint", "key", "ref", "scene", "part", "since", "file", "step", "id", "__proto__",
  "constructor", "toString", "label", "piece", "x", "y", "turn", "venue", "version", "role", "csv", "lines", "notes", "tables", "service", "filter", "search", "page", "room", "name", "guests",
] as const satisfies readonly [string, ...string[]];

const nonsense = (): Readonly<Record<string, string>> => Object.fromEntries(Array.from({ length: Math.floor(random() * 6) }, () => [pick(FIELDS), pick(WORDS)]));
const bodies: readonly [() => { readonly headers: Readonly<Record<string, string>>; readonly data: string | Buffer }, ...(() => { readonly headers: Readonly<Record<string, string>>; readonly data: string | Buffer })[]] = [
  () => ({ headers: { "Content-Type": "application/x-www-form-urlencoded" }, data: new URLSearchParams(nonsense()).toString() }),
  () => ({ headers: { "Content-Type": "application/x-www-form-urlencoded", Accept: "application/json" }, data: `${new URLSearchParams(nonsense()).toString()}&a&&=%ZZ&names=1&names=2` }),
  () => ({ headers: { "Content-Type": "application/json" }, data: JSON.stringify({ ...nonsense(), deep: JSON.parse("[".repeat(400) + "]".repeat(400)) as unknown }) }),
  () => ({ headers: { "Content-Type": "multipart/form-data; boundary=x" }, data: `--x\r\nContent-Disposition: form-data; name="file"; filename="../x.json"\r\n\r\n${pick(WORDS)}\r\n--x--\r\n` }),
  () => ({ headers: { "Content-Type": "multipart/form-data" }, data: "--x\r\nno boundary" }),
  () => ({ headers: { "Content-Type": "text/x-unknown; charset=utf-7" }, data: Buffer.from(Array.from({ length: 200 }, () => Math.floor(random() * 256))) }),
];

test(`${REQUESTS} hostile and broken requests, by nobody, a couple and the desk, are answered without one failure of the server`, async ({ browser }) => {
  const desk = await atTheDesk(browser, { width: 1280, scripts: false });
  const { reference, link } = await invite(desk, { names: "Un & Wanted", email: "unwanted@example.org", date: "2028-05-06" });
  const couple = await person(browser, { width: 1280, scripts: false });
  await couple.go(link);
  await couple.press("Open our day");
  const nobody = await person(browser, { width: 1280, scripts: false });
  const callers: readonly [APIRequestContext, ...APIRequestContext[]] = [nobody.page.request, couple.page.request, desk.page.request];

  const failures: string[] = [];
  const counts = new Map<number, number>();
  for (let i = 0; i < REQUESTS; i += 1) {
    const route = ROUTES[i % ROUTES.length];
    if (!route) continue;
    // One's own booking, more often than not: what is behind the gate is to be reached too.
    const path = route.path.replace(/\[([^\]]+)\]/g, (_, name: string) => encodeURIComponent(name === "ref" && random() < 0.7 ? reference : name === "step" && random() < 0.7 ? pick(["guests", "meal", "music", "extras"]) : pick(WORDS).slice(0, 200).replace(/\p{Surrogate}/gu, "?")));
    const query = random() < 0.5 ? `?${new URLSearchParams({ ...nonsense(), ...(random() < 0.5 ? { ref: reference } : {}) }).toString().slice(0, 4_000)}` : "";
    // Leaving would end the visit that the rest of the requests are made in.
    const method = path.endsWith("/leave") ? "GET" : route.form ? pick(["POST", "POST", "POST", "GET", "PUT", "DELETE"]) : pick(["GET", "GET", "GET", "POST", "HEAD"]);
    const body = method === "GET" || method === "HEAD" ? {} : pick(bodies)();
    const answer = await pick(callers).fetch(`${base()}${path}${query}`, { method, maxRedirects: 0, failOnStatusCode: false, timeout: 120_000, ...body });
    counts.set(answer.status(), (counts.get(answer.status()) ?? 0) + 1);
    if (answer.status() >= 500) failures.push(`${method} ${path.slice(0, 200)}${query.slice(0, 200)} ${JSON.stringify(body).slice(0, 300)}: ${answer.status()} ${(await answer.text()).slice(0, 200)}`);
  }
  expect(failures).toEqual([]);
  expect(ROUTES.length).toBeGreaterThan(40);
  // Not all of it bounced off one wall.
  expect([...counts.keys()].filter((status) => status < 500).length).toBeGreaterThanOrEqual(4);
  expect((await desk.page.request.get(`${base()}/api/health/ready`)).status()).toBe(200);
});
