import { describe, expect, it } from "vitest";
import { filesUnder, sources, textOf, topLevel } from "./tree";

const MOST_LINES = 400;
const MANY_LINES = 250;
/** Tables of data: one row a line, read and never reasoned about. */
const DATA = ["lib/drawing/metrics-data.ts"];

const FOLDERS = ["app", "components", "lib", "tests"] as const;
const lines = (path: string): number => textOf(path).replace(/\n$/, "").split("\n").length;

describe("the files of the house", () => {
  it("has on its top level what a newcomer looks for, and dot-files", () => {
    expect(topLevel().filter((name) => !name.startsWith("."))).toEqual([
      "DEVELOPERS.md", "README.md", "app", "components", "lib", "next.config.mjs", "package-lock.json", "package.json", "public", "tests", "tsconfig.json",
    ]);
  });

  it(`keeps every file that is no table of data within ${MOST_LINES} lines`, () => {
    const long = sources(...FOLDERS).filter((path) => !DATA.includes(path)).map((path) => ({ path, lines: lines(path) })).filter((file) => file.lines > MANY_LINES);
    for (const file of long) process.stderr.write(`long: ${file.path} has ${file.lines} lines; ${MANY_LINES} are many\n`);
    expect(long.filter((file) => file.lines > MOST_LINES)).toEqual([]);
  });

  it("names no folder of one machine", () => {
    const machine = /["'`(](?:\/(?:work|home|root|Users|tmp)\/|[A-Z]:\\)/;
    expect([...sources(...FOLDERS), ...filesUnder(".config")].filter((path) => path !== "tests/house/files.test.ts" && machine.test(textOf(path)))).toEqual([]);
  });

  it("has no folder for what has no home", () => {
    expect(FOLDERS.flatMap(filesUnder).filter((path) => /\/(utils?|helpers?|misc|common)\//.test(path))).toEqual([]);
  });
});
