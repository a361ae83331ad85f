import { mkdirSync, rmSync } from "node:fs";
import { join, resolve } from "node:path";
import { Worker } from "node:worker_threads";
import { afterAll, describe, expect, it } from "vitest";
import { bundleThread } from "../../lib/server/build";
import type { Answer, Job, Progress } from "../../lib/server/works-thread";
import { day, mill } from "../bench/weddings";

const ROOT = resolve("."), FOLDER = join(ROOT, ".out", `thread-${process.pid}`), FILE = join(FOLDER, "works-thread.mjs");
afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

/** What a thread begun from a file answers to one job. */
async function answerOf(file: string, job: Job): Promise<Answer> {
  const thread = new Worker(file, { execArgv: [] });
  try {
    return await new Promise<Answer>((done, fail) => {
      thread.on("message", (m: Answer | Progress) => { if (!("progress" in m)) done(m); });
      thread.on("error", fail);
      thread.postMessage(job);
    });
  } finally {
    await thread.terminate();
  }
}

describe("the works' thread in one file", () => {
  it("gives the same answers as from the sources, and finds its packages", async () => {
    mkdirSync(FOLDER, { recursive: true });
    expect(bundleThread(ROOT, FILE)).toBe(true);
    const job: Job = { id: 1, verb: "arrange", args: [mill, day("hosted-day", 40), { layouts: 1 }] };
    const [built, source] = [await answerOf(FILE, job), await answerOf(join(ROOT, "lib/server/works-thread.mjs"), job)];
    const told = (a: Answer): unknown => (a.ok ? { ...(a.value as Record<string, unknown>), timing: null } : a);
    expect(JSON.stringify(told(built))).toBe(JSON.stringify(told(source)));
    const layout = built.ok ? (built.value as { readonly layouts: readonly unknown[] }).layouts[0] : undefined;
    const drawn = await answerOf(FILE, { id: 2, verb: "planSvg", args: [{ venue: mill, layout, scene: "meal", sheet: true }] });
    expect(drawn).toMatchObject({ ok: true, value: expect.stringContaining("<svg") as unknown });
  });
});
