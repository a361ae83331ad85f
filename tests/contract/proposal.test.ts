import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, test } from "vitest";
import { briefFile, layout, venue } from "../unit/papers/fixture";
import { flat, open, rolesOf, textOf } from "../unit/print/read";

const folder = mkdtempSync(path.join(tmpdir(), "proposal-"));
const file = (name: string, value: unknown): string => {
  const at = path.join(folder, name);
  writeFileSync(at, JSON.stringify(value));
  return at;
};
const run = (...args: string[]) => spawnSync(process.execPath, ["--import", "tsx", "lib/cli/main.ts", "proposal", ...args], { encoding: "utf8" });

const VENUE = file("venue.json", venue());
const BRIEF = file("brief.json", briefFile());
const LAYOUT = file("layout.json", layout());

test("the command prints a tagged PDF with a sheet for each part of the day, the same bytes each time", async () => {
  const [one, two] = [path.join(folder, "1.pdf"), path.join(folder, "2.pdf")];
  const done = run(VENUE, BRIEF, "--layout", LAYOUT, "--out", one);
  expect([done.status, done.stdout]).toEqual([0, ""]);
  expect(run(VENUE, BRIEF, "--layout", LAYOUT, "--out", two).status).toBe(0);
  const bytes = readFileSync(one);
  expect(bytes.subarray(0, 8).toString()).toBe("%PDF-1.7");
  expect(Buffer.compare(bytes, readFileSync(two))).toBe(0);
  const doc = await open(bytes);
  const outline = await doc.getOutline();
  expect(outline.map((o) => o.title)).toContain("Ceremony");
  const nodes = flat(await rolesOf(bytes));
  // The small plan of the cover and one sheet a scene.
  expect(nodes.filter((n) => n.role === "Figure").map((n) => n.alt?.slice(0, 14))).toEqual(Array.from({ length: 3 }, () => "Saltings Hall:"));
  const levels = nodes.filter((n) => /^H\d$/.test(n.role)).map((n) => Number(n.role.slice(1)));
  levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
  const text = await textOf(bytes);
  for (const words of ["Planning aid.", "Scale 1", "Way out", "Not sure yet: we took", "All places"]) expect(text).toContain(words);
}, 240_000);

test("a brief that is wrong prints nothing and is told with its path", () => {
  const out = path.join(folder, "none.pdf");
  const done = run(VENUE, file("bad.json", { ...briefFile(), date: "2027-02-30" }), "--layout", LAYOUT, "--out", out);
  expect([done.status, done.stdout]).toEqual([2, ""]);
  expect(done.stderr).toMatch(/bad\.json: date: /);
  expect(existsSync(out)).toBe(false);
}, 120_000);
