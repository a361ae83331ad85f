import { get } from "node:http";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readConfig } from "../../lib/config";
import { deliverDue } from "../../lib/jobs";
import { classOf, makeMetrics, openMetrics, type Metrics, type MetricsPort } from "../../lib/server/metrics";
import { makeWorks } from "../../lib/server/works";
import { added, testHouse, type TestHouse } from "./support/house";

let house: TestHouse, close: () => Promise<void>, metrics: Metrics, shown: MetricsPort;
beforeAll(async () => {
  ({ house, close } = await testHouse());
  metrics = makeMetrics(house.clock);
  shown = await openMetrics({ host: "127.0.0.1", port: 0 }, metrics, house.store);
});
afterAll(async () => { await shown.close(); await close(); });

const read = (path = "/metrics"): Promise<{ readonly status: number; readonly type: string; readonly text: string }> => new Promise((resolve, reject) => {
  get({ port: shown.port, host: "127.0.0.1", path }, (answer) => {
    let text = "";
    answer.on("data", (chunk: Buffer) => { text += chunk.toString("utf8"); }).on("end", () => { resolve({ status: answer.statusCode ?? 0, type: answer.headers["content-type"] ?? "", text }); });
  }).on("error", reject);
});
const figure = async (line: string): Promise<number> => Number((await read()).text.split("\n").find((one) => one.startsWith(`${line} `))?.slice(line.length + 1) ?? Number.NaN);

describe("the figures for monitoring", () => {
  it("are OpenMetrics text, which ends with its own mark (OpenMetrics 1.0), and nothing else answers at their address", async () => {
    const { status, type, text } = await read();
    expect([status, type.split(";").slice(0, 2)]).toEqual([200, ["application/openmetrics-text", " version=1.0.0"]]);
    expect(text.endsWith("# EOF\n")).toBe(true);
    for (const path of ["/", "/desk", "/metrics/x"]) expect((await read(path)).status).toBe(404);
  });

  it("count answers by kind and by how they ended, and never by address", async () => {
    metrics.answered({ method: "POST", path: "/request/guests/save", status: 303, seconds: 0.02 });
    metrics.answered({ method: "POST", path: "/request/meal/save", status: 303, seconds: 0.2 });
    metrics.answered({ method: "GET", path: `/open/${"k".repeat(32)}`, status: 500, seconds: 2 });
    expect(await figure('marquetry_answer_seconds_count{kind="form",status="3xx"}')).toBe(2);
    expect(await figure('marquetry_answer_seconds_bucket{le="0.1",kind="form",status="3xx"}')).toBe(1);
    expect(await figure('marquetry_answer_seconds_count{kind="link",status="5xx"}')).toBe(1);
    expect((await read()).text).not.toContain("kkk");
  });

  it("tell how many mails wait and for how long, and how each ended that was taken up", async () => {
    await added(house);
    await added(house);
    expect(await figure("marquetry_mails_waiting")).toBe(2);
    house.clock.time += 90_000;
    expect(await figure("marquetry_oldest_due_mail_seconds")).toBe(90);
    const answers = [{ ok: true }, { ok: false, lasting: true, why: "no such mailbox" }] as const;
    let at = 0;
    await deliverDue({ store: house.store, transport: { send: async () => answers[at++] ?? answers[0], close: () => undefined }, clock: house.clock, from: house.mailFrom, keepLinks: false, told: metrics.mailed });
    expect(await figure('marquetry_mails_total{ended="sent"}')).toBe(1);
    expect(await figure('marquetry_mails_total{ended="failed"}')).toBe(1);
    expect([await figure("marquetry_mails_waiting"), await figure("marquetry_mails_failed"), await figure("marquetry_oldest_due_mail_seconds")]).toEqual([0, 1, 0]);
  });

  it("tell of each job of the works that it was begun, and how it ended", async () => {
    const { works, close: end } = makeWorks(metrics.working);
    const asked = works.calendar(null as never);
    expect(await figure('marquetry_works_in_hand{verb="calendar"}')).toBe(1);
    await expect(asked).rejects.toThrow();
    expect(await figure('marquetry_works_in_hand{verb="calendar"}')).toBe(0);
    expect(await figure('marquetry_works_seconds_count{verb="calendar",ended="badly"}')).toBe(1);
    await end();
  });

  it("sort every request into a few kinds", () => {
    const kind = (method: string, path: string): string => classOf({ method, path });
    expect([
      kind("GET", "/_next/static/x.js"), kind("GET", "/api/health/ready"), kind("GET", "/open/abc"), kind("GET", "/api/proposal.pdf"), kind("POST", "/request/guests/save"), kind("GET", "/desk/venue"), kind("GET", "/request"),
    ]).toEqual(["asset", "health", "link", "paper", "form", "desk page", "page"]);
  });

  it("are shown where the settings say, and nowhere else", () => {
    expect(readConfig({})).toMatchObject({ ok: true, value: { metrics: undefined } });
    expect(readConfig({ MARQUETRY_METRICS: "9464" })).toMatchObject({ value: { metrics: { host: "127.0.0.1", port: 9464 } } });
    expect(readConfig({ MARQUETRY_METRICS: "10.0.0.5:9464" })).toMatchObject({ value: { metrics: { host: "10.0.0.5", port: 9464 } } });
    expect(readConfig({ MARQUETRY_METRICS: "[::1]:9464" })).toMatchObject({ value: { metrics: { host: "::1", port: 9464 } } });
    for (const wrong of ["x", "10.0.0.5", "99999", "http://a:1"]) expect(readConfig({ MARQUETRY_METRICS: wrong }).ok).toBe(false);
  });
});
