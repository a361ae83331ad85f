import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect } from "@playwright/test";
import { build } from "esbuild";
import { briefSchema, type BriefFile } from "../../lib/brief";
import { tidewheel } from "../../lib/demo";
import { arrange } from "../../lib/engine";
import { venueSchema } from "../../lib/venue";
import { test } from "./world";

const SEED = 11;
const fixture = (kind: "venues" | "briefs", name: string): unknown => JSON.parse(readFileSync(resolve("tests/fixtures", kind, `${name}.json`), "utf8"));
const mill = (adults: number, more: Partial<BriefFile> = {}): unknown => ({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults, wheelchairs: 1 },
  ceremony: { seating: "curve" }, meal: { service: "plated", tables: "mixed" }, music: { by: "dj", dancing: 0.4 }, displays: ["welcome", "cake", "cards"], ...more,
});
const DAYS: readonly (readonly [string, unknown, unknown])[] = [
  ["the mill, 92 guests", tidewheel, mill(92)],
  ["the mill, 60 guests at long tables", tidewheel, mill(60, { meal: { service: "buffet", tables: "long" } })],
  ...["slanted-wall", "octagon", "turned-frame", "two-rooms", "tiny-room"].map((name) => [name, fixture("venues", name), fixture("briefs", name)] as const),
];

/** The engine in one text, as a worker of the browser runs it. */
async function bundled(): Promise<string> {
  const { outputFiles } = await build({
    bundle: true, write: false, format: "iife", target: "es2022",
    stdin: {
      resolveDir: resolve("."), loader: "ts", sourcefile: "same-bytes.worker.ts",
      contents: `import { arrange } from "./lib/engine"; import { venueSchema } from "./lib/venue"; import { briefSchema } from "./lib/brief";
        self.onmessage = ({ data }) => self.postMessage(JSON.stringify({ ...arrange(venueSchema.parse(data.venue), briefSchema.parse(data.brief), { seed: ${SEED}, layouts: 3 }), timing: null }));`,
    },
  });
  return outputFiles[0]?.text ?? "";
}

/** Runs in the page: one day arranged on a worker's thread. */
const inWorker = ({ script, venue, brief }: { readonly script: string; readonly venue: unknown; readonly brief: unknown }): Promise<string> => new Promise((done, fail) => {
  const worker = new Worker(URL.createObjectURL(new Blob([script], { type: "text/javascript" })));
  worker.onmessage = ({ data }: MessageEvent<string>) => { worker.terminate(); done(data); };
  worker.onerror = ({ message }) => { worker.terminate(); fail(new Error(message)); };
  worker.postMessage({ venue, brief });
});

test("the same seed gives the same bytes on Node and in a worker of the browser", async ({ page }) => {
  const script = await bundled();
  await page.goto("about:blank");
  let layouts = 0;
  for (const [name, venue, brief] of DAYS) {
    const here = arrange(venueSchema.parse(venue), briefSchema.parse(brief), { seed: SEED, layouts: 3 });
    expect(await page.evaluate(inWorker, { script, venue, brief }), name).toBe(JSON.stringify({ ...here, timing: null }));
    layouts += here.layouts.length;
  }
  expect(layouts).toBeGreaterThan(DAYS.length);
});
