import { describe, expect, it } from "vitest";
import { readArgs, wholeOption, type Usage } from "../../../lib/cli/args";
import { BadInput, lines } from "../../../lib/cli/problem";

const usage: Usage = { name: "arrange", files: ["VENUE", "BRIEF"], options: ["--seed", "--out"], switches: ["--bare"] };
const faults = (...argv: readonly string[]): readonly string[] => {
  try { readArgs(usage, argv); return []; } catch (e) { if (e instanceof BadInput) return e.faults.map((f) => f.problem.path); throw e; }
};

describe("a command line", () => {
  it("takes files and options in any order, a value apart or after =", () => {
    const args = readArgs(usage, ["a.json", "--seed", "7", "b.json", "--out=c.json", "--bare"]);
    expect(args.files).toEqual(["a.json", "b.json"]);
    expect([args.option("--seed"), args.option("--out"), args.has("--bare")]).toEqual(["7", "c.json", true]);
  });
  it("tells everything that is wrong at once", () => {
    expect(faults("a.json", "--fast", "--bare=1", "--seed", "1", "--seed", "2")).toEqual(["--fast", "--bare", "--seed", "BRIEF"]);
  });
  it("does not take the next option for a value", () => expect(faults("a", "b", "--seed", "--bare")).toContain("--seed"));
  it("reads whole numbers within their bounds alone", () => {
    const at = (text: string) => () => wholeOption(readArgs(usage, ["a", "b", `--seed=${text}`]), "--seed", { least: 1, most: 9, otherwise: 1 });
    expect([at("1")(), at("9")()]).toEqual([1, 9]);
    for (const bad of ["0", "10", "1.5", "-1", "1e0", "x"]) expect(at(bad)).toThrow(BadInput);
  });
});

describe("lines of bad input", () => {
  it("are cut at two hundred, and say how many more there are", () => {
    const many = Array.from({ length: 250 }, (_, i) => ({ file: "v.json", problem: { path: `a[${i}]`, message: "missing; allowed: 1" } }));
    expect(lines(many)).toHaveLength(200 + 1);
    expect(lines(many).at(-1)).toBe("v.json: file: 50 more problems; allowed: none");
  });
});
