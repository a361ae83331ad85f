import { existsSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { jsonOf, root, textOf } from "./tree";

const PAGES = ["README.md", "DEVELOPERS.md"] as const;
/** UPDATE_GOLDEN=1 writes the lines anew. */
const UPDATE = process.env["UPDATE_GOLDEN"] === "1";
/** A reader who lands this near still sees what was meant. */
const NEAR = 25;

const LINK = /\[`?([^\]`]+)`?\]\(((?:[^()\s#]|\([^()\s]*\))+)(?:#L(\d+))?\)/g;
type Link = { readonly whole: string; readonly label: string; readonly path: string; readonly line?: number };
const linksOf = (text: string): readonly Link[] => [...text.matchAll(LINK)].map(([whole, label = "", path = "", line]) => ({ whole, label, path, ...(line === undefined ? {} : { line: Number(line) }) }));
const ours = (links: readonly Link[]): readonly Link[] => links.filter(({ path }) => !/^[a-z]+:/.test(path));

/** The line on which a file makes a name, counted from 1; 0 where it does not. */
const madeAt = (path: string, name: string): number =>
  textOf(path).split("\n").findIndex((line) => new RegExp(`\\b(?:function|const|type) ${name}\\b`).test(line)) + 1;

describe.each(PAGES)("the links of %s", (page) => {
  const text = textOf(page);

  it("lead to files that are there", () => {
    expect(ours(linksOf(text)).filter(({ path }) => !existsSync(`${root}${path}`)).map(({ whole }) => whole)).toEqual([]);
  });

  it("lead near the line where the name is made", () => {
    if (UPDATE) {
      writeFileSync(`${root}${page}`, ours(linksOf(text)).filter(({ line }) => line !== undefined).reduce((done, { whole, label, path }) =>
        done.replace(whole, whole.replace(/#L\d+/, `#L${madeAt(path, label)}`)), text));
    }
    const off = ours(linksOf(textOf(page))).filter(({ label, path, line }) => line !== undefined && (madeAt(path, label) === 0 || Math.abs(madeAt(path, label) - line) > NEAR));
    expect(off.map(({ whole, label, path }) => `${whole}: line ${madeAt(path, label)}`)).toEqual([]);
  });
});

describe("what the pages say of packages and settings", () => {
  it("gives each library of package.json its line, and its version", () => {
    const { dependencies, devDependencies } = jsonOf("package.json") as Record<string, Record<string, string>>;
    const table = textOf("DEVELOPERS.md").split("\n").filter((line) => line.startsWith("| "));
    const covers = (name: string, version: string) => table.some((row) => row.includes(version) && (row.includes(name) || (name.startsWith("@fontsource") && row.includes("@fontsource/*"))));
    expect(Object.entries({ ...dependencies, ...devDependencies }).filter(([name, version]) => !name.startsWith("@types/") && !covers(name, version))).toEqual([]);
  });

  it("explains every variable of .env.example", () => {
    const names = [...textOf(".env.example").matchAll(/^(?:# )?([A-Z_]+)=/gm)].map(([, name]) => name);
    expect(names.filter((name) => !textOf("README.md").includes(`| \`${name}\` |`))).toEqual([]);
  });
});
