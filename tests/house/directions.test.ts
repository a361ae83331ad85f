import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { filesUnder, jsonOf, root } from "./tree";

const rooms = z.record(z.string(), z.array(z.string()));
const table = z.object({ core: rooms, shell: rooms, pages: rooms }).parse(jsonOf(".config/directions.json"));
const all = { ...table.core, ...table.shell, ...table.pages };

const made: string[] = [];
afterAll(() => { for (const folder of made) rmSync(folder, { recursive: true, force: true }); });

/** The rules that a small house breaks: its files are written to a folder of their own and looked at as ours are. */
function broken(files: Readonly<Record<string, string>>): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), "marquetry-house-"));
  made.push(folder);
  for (const [path, text] of Object.entries({ "tsconfig.json": '{ "compilerOptions": { "paths": { "@/*": ["./*"] } } }', "package.json": "{}", ...files })) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const cruise = join(root, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
  const run = spawnSync(process.execPath, [cruise, "--config", join(root, ".config/dependency-cruiser.mjs"), "--output-type", "json", "."], { cwd: folder, encoding: "utf8" });
  const said = z.object({ summary: z.object({ violations: z.array(z.object({ rule: z.object({ name: z.string() }) })) }) }).parse(JSON.parse(run.stdout));
  return said.summary.violations.map(({ rule }) => rule.name);
}

describe("the directions of the house", () => {
  it("lead one way: no room reaches itself through others", () => {
    const reach = (room: string, seen: readonly string[]): readonly string[] => (all[room] ?? []).flatMap((next) => (seen.includes(next) ? [...seen, next] : reach(next, [...seen, next])));
    expect(Object.keys(all).filter((room) => reach(room, [room]).length > 0)).toEqual([]);
  });

  it("let no room of the core into the shell", () => {
    expect(Object.values(table.core).flat().filter((room) => !(room in table.core))).toEqual([]);
  });

  it("keep the store and the engine from the pages", () => {
    expect(all["app"]).not.toEqual(expect.arrayContaining(["store"]));
    expect(all["app"]).not.toEqual(expect.arrayContaining(["engine"]));
    expect((table.pages["components"] ?? []).filter((room) => !(room in table.core))).toEqual([]);
  });

  it("have a line for every folder of lib", () => {
    const folders = [...new Set(filesUnder("lib").map((path) => path.split("/")[1] ?? ""))].sort();
    expect([...Object.keys(table.core), ...Object.keys(table.shell)].sort()).toEqual(folders);
  });

  it("catch a core file that reaches for the store, for Node and for an unnamed package", () => {
    expect(broken({
      "lib/rules/one.ts": 'import { a } from "../store/a";\nimport { readFileSync } from "node:fs";\nexport const b = [a, readFileSync];\n',
      "lib/store/a.ts": "export const a = 1;\n",
    })).toEqual(expect.arrayContaining(["rules-imports", "core-is-pure"]));
  });

  it("catch a page and a component that go past the service", () => {
    expect(broken({
      "app/page.tsx": 'import { a } from "@/lib/store/a";\nexport const b = a;\n',
      "components/ui/b.ts": 'import { a } from "@/lib/store/a";\nexport const b = a;\n',
      "lib/store/a.ts": "export const a = 1;\n",
    })).toEqual(expect.arrayContaining(["app-imports", "components-imports"]));
  });

  it("catch two files that need one another", () => {
    expect(broken({
      "lib/base/a.ts": 'import { b } from "./b";\nexport const a = (): number => b();\n',
      "lib/base/b.ts": 'import { a } from "./a";\nexport const b = (): number => a();\n',
    })).toContain("no-cycles");
  });

  it("find nothing in a house that keeps them", () => {
    expect(broken({ "lib/venue/a.ts": 'import { b } from "../base/b";\nexport const a = b;\n', "lib/base/b.ts": "export const b = 1;\n" })).toEqual([]);
  });
});

describe("the core's own type check", () => {
  const config = z.object({ compilerOptions: z.object({ lib: z.array(z.string()), types: z.array(z.string()) }), include: z.array(z.string()) }).parse(jsonOf(".config/tsconfig.core.json"));

  it("covers every room of the core", () => {
    expect([...config.include].sort()).toEqual(Object.keys(table.core).map((room) => `../lib/${room}`).sort());
  });

  it("knows neither the browser nor Node", () => {
    expect(config.compilerOptions.lib.filter((lib) => /dom|worker/i.test(lib))).toEqual([]);
    expect(config.compilerOptions.types).toEqual([]);
  });
});
