import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, test } from "vitest";
import { briefFile, layout, venue } from "../unit/papers/fixture";
import { open, textOf } from "../unit/print/read";

const folder = mkdtempSync(path.join(tmpdir(), "sheets-"));
const file = (name: string, value: unknown): string => {
  const at = path.join(folder, name);
  writeFileSync(at, JSON.stringify(value));
  return at;
};
const run = (...args: string[]) => spawnSync(process.execPath, ["--import", "tsx", "lib/cli/main.ts", "sheets", ...args], { encoding: "utf8" });

const VENUE = file("venue.json", venue());
const BRIEF = file("brief.json", briefFile({ times: { ceremony: "13:30", drinks: "14:15", meal: "16:00" } }));
const LAYOUT = file("layout.json", layout());

test("the command prints the day's sheets, the same bytes each time", async () => {
  const [one, two] = [path.join(folder, "1.pdf"), path.join(folder, "2.pdf")];
  const done = run(VENUE, BRIEF, LAYOUT, "--out", one);
  expect([done.status, done.stdout]).toEqual([0, ""]);
  expect(run(VENUE, BRIEF, LAYOUT, "--out", two).status).toBe(0);
  const bytes = readFileSync(one);
  expect(Buffer.compare(bytes, readFileSync(two))).toBe(0);
  const titles = (await (await open(bytes)).getOutline()).map((o) => o.title);
  expect(titles).toEqual(["Cover", "Crew: ceremony", "Turnover: ceremony to meal", "Crew: meal", "Caterer"]);
  const text = await textOf(bytes);
  for (const words of ["Planning aid.", "Bring out", "Build in this order", "Tables, from the far end to the door", "14:15 to 14:", "No chair at 1 place", "All 42"]) expect(text).toContain(words);
}, 120_000);

test("without --out, or with a layout that is wrong, nothing is printed", () => {
  expect(run(VENUE, BRIEF, LAYOUT).status).toBe(2);
  const out = path.join(folder, "none.pdf");
  const done = run(VENUE, BRIEF, file("bad.json", { ...layout(), scenes: [] }), "--out", out);
  expect([done.status, done.stdout, existsSync(out)]).toEqual([2, "", false]);
  expect(done.stderr).toMatch(/bad\.json: scenes: /);
}, 120_000);
