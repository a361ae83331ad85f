import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { findingSchema, quoteSchema } from "../../lib/layout";
import { larkspur, tidewheel } from "../../lib/demo";
import { call, folder } from "./kit/call";
import { meal, round } from "./kit/day";

const files = folder();
const brief = { format: "marquetry.brief/1", package: "dry-hire", date: "2027-06-12", guests: { adults: 16 }, ceremony: { here: false }, meal: { top: "none" } };
let venue = "", answers = "", layout = "";
beforeAll(() => {
  venue = files.write("mill.json", tidewheel);
  answers = files.write("brief.json", brief);
  layout = files.write("layout.json", meal());
});
afterAll(() => { files.clear(); });

const npm = (...args: readonly string[]) => spawnSync("npm", ["run", "--silent", ...args], { encoding: "utf8" });

describe("quote", () => {
  it("prints the fee summary as JSON, words apart", async () => {
    const { code, out, err } = await call("quote", venue, answers, layout);
    expect(code).toBe(0);
    expect(quoteSchema.parse(JSON.parse(out))).toEqual({ currency: "GBP", lines: [], net: 0, tax: 0, total: 0 });
    expect(err).toContain("£0.00");
  });
  it("charges a piece that was carried out", async () => {
    const day = meal();
    const [scene] = day.scenes;
    const out = files.write("out.json", { ...day, scenes: [{ ...scene, items: scene?.items.filter((i) => i.id !== "oak-settle") }] });
    const fees = quoteSchema.parse(JSON.parse((await call("quote", venue, answers, out)).out));
    expect(fees.lines.map((l) => [l.charge, l.count, l.amount])).toEqual([["heavy-piece", 1, 4500]]);
    // 20 % held by the price: 4500 x 2000 / 12000
    expect(fees).toMatchObject({ tax: 4500 / 6, net: 4500 - 4500 / 6, total: 4500 });
  });
});

describe("check", () => {
  it("prints findings, and ends with 0 where none is a must", async () => {
    const { code, out } = await call("check", venue, layout);
    const findings = z.array(findingSchema).parse(JSON.parse(out));
    expect(findings.filter((f) => f.level === "must")).toEqual([]);
    expect(code).toBe(0);
  });
  it("ends with 1 where two tables stand in one another", async () => {
    const { code, out } = await call("check", venue, files.write("bad.json", meal([round("t1", [6500, 2200]), round("t2", [7000, 2200])])), "--brief", answers);
    expect(code).toBe(1);
    expect(z.array(findingSchema).parse(JSON.parse(out)).some((f) => f.level === "must" && f.items.includes("t1"))).toBe(true);
  });
});

describe("draw", () => {
  it("prints the plan as SVG with its cautions, the same every time", async () => {
    const first = await call("draw", venue, layout);
    expect(first.code).toBe(0);
    expect(first.out).toMatch(/^<(\?xml|svg)/);
    expect(first.out).toContain("Planning aid");
    expect((await call("draw", venue, layout, "--scene", "meal")).out).toBe(first.out);
  });
  it("refuses a part of the day that the layout lacks", async () => {
    const { code, out, lines } = await call("draw", venue, layout, "--scene", "dancing");
    expect([code, out]).toEqual([2, ""]);
    expect(lines[0]).toBe('command line: --scene: "dancing" is not in the layout; allowed: one of "meal"');
  });
  it("draws Larkspur Barn on Letter in feet", async () => {
    const barn = files.write("barn.json", larkspur);
    const hall = files.write("hall.json", { id: "a", title: "Bare", scenes: [{ id: "meal", title: "Meal", rooms: ["threshing-hall"], items: [], seats: 0 }] });
    const { out } = await call("draw", barn, hall);
    expect(out).toContain('width="279.4mm"');
    expect(out).toMatch(/64 ft|64′/);
  });
});

describe("proposal", () => {
  it("writes a PDF, the same bytes every time", async () => {
    for (const name of ["a.pdf", "b.pdf"]) expect((await call("proposal", venue, answers, "--layout", layout, "--out", `${files.at}/${name}`)).code).toBe(0);
    const [a, b] = ["a.pdf", "b.pdf"].map((n) => readFileSync(`${files.at}/${n}`));
    expect(a?.subarray(0, 5).toString()).toBe("%PDF-");
    expect(b?.equals(a ?? Buffer.alloc(0))).toBe(true);
  });
  it("wants a file to write to", async () => {
    const { code, lines } = await call("proposal", venue, answers, "--layout", layout);
    expect(code).toBe(2);
    expect(lines).toEqual(["command line: --out: missing; allowed: --out FILE, since a PDF is not text"]);
  });
});

describe("schema", () => {
  it.each(["venue", "brief", "result", "capacity", "layout"])("%s is JSON Schema 2020-12 that refuses strangers", async (name) => {
    const { code, out } = await call("schema", name);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ $schema: "https://json-schema.org/draft/2020-12/schema", type: "object", additionalProperties: false });
  });
  it("venue's tells the default of every rule value in every profile", async () => {
    const defaults = JSON.parse((await call("schema", "venue")).out)["x-rule-defaults"];
    expect(Object.keys(defaults.profiles)).toEqual(["model-code", "uk-guide", "house"]);
    for (const set of ["comfort", "most"]) expect(Object.keys(defaults.profiles["model-code"][set])).toEqual(["tableGap", "wallGap", "rowPitch"]);
  });
  it("what may be left out is not required", async () => {
    expect(JSON.parse((await call("schema", "brief")).out).required).toEqual(["format", "package", "date", "guests"]);
  });
  it("refuses another name", async () => expect((await call("schema", "house")).code).toBe(2));
});

describe("arrange", () => {
  it("a room that the package lacks is impossible: 1, with its reason", async () => {
    const asked = files.write("asked.json", { ...brief, meal: { room: "millers-parlour", service: "plated" } });
    const { code, out } = await call("arrange", venue, asked, "--layouts", "1");
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ format: "marquetry.result/1", status: "impossible", layouts: [] });
  });
});

describe("bad input that no schema sees", () => {
  const refused = async (file: string | Uint8Array, says: RegExp) => {
    const at = files.write("odd.json", file);
    const { code, out, lines } = await call("quote", at, answers, layout);
    expect([code, out]).toEqual([2, ""]);
    expect(lines[0]).toMatch(says);
    expect(lines[0]?.startsWith(`${at}: `)).toBe(true);
  };
  it("a file that is not UTF-8", () => refused(new Uint8Array([0x7b, 0x22, 0xff, 0x22, 0x7d]), /: file: not valid UTF-8; allowed: /));
  it("a file over 5 MB", () => refused(`${" ".repeat(5 * 1024 * 1024)}{}`, /: file: larger than 5 MB; allowed: /));
  it("21 levels of nesting", () => refused("[".repeat(21) + "]".repeat(21), /: file: nested more than 20 levels deep; allowed: /));
  it("no JSON", () => refused("{\n  \"a\": ]\n}", /: file: not valid JSON.*; allowed: /));
  it("an empty file", () => refused("", /: file: empty; allowed: /));
  it("a list", () => refused("[]", /: file: \[\] is not allowed; allowed: /));
  it("half a character in a name", () => refused(JSON.stringify({ ...tidewheel, name: "x" }).replace('"name":"x"', '"name":"\\ud800"'), /: name: holds .*; allowed: /));
  it("a stranger called __proto__", () => refused(JSON.stringify(tidewheel).replace(/^\{/, '{"__proto__":{"id":"x"},'), /: __proto__: unknown field; allowed: /));
  it("a byte order mark is no fault", async () => {
    const at = files.write("bom.json", `\ufeff${JSON.stringify(tidewheel)}`);
    expect((await call("quote", at, answers, layout)).code).toBe(0);
  });
  it("a message stays on one line whatever a file's fields are called", async () => {
    const at = files.write("odd.json", { ...tidewheel, "a\nb": 1 });
    expect((await call("quote", at, answers, layout)).lines).toHaveLength(1);
  });
  it("every file that is wrong is told of at once", async () => {
    const bad = files.write("odd.json", { ...tidewheel, lengths: "feet" });
    const worse = files.write("worse.json", { ...brief, date: "soon" });
    const { lines } = await call("quote", bad, worse, layout);
    expect(lines.map((l) => l.split(": ").slice(0, 2).join(": "))).toEqual([`${bad}: lengths`, `${worse}: date`]);
  });
});

describe("a command line that is wrong", () => {
  it.each([
    [["quote", "VENUE", "BRIEF"], "command line: LAYOUT: missing; allowed: "],
    [["quote", "VENUE", "BRIEF", "LAYOUT", "LAYOUT"], "command line: "],
    [["quote", "VENUE", "BRIEF", "LAYOUT", "--fast"], "command line: --fast: unknown option; allowed: --out"],
    [["arrange", "VENUE", "BRIEF", "--seed", "x"], "command line: --seed: \"x\" is not allowed; allowed: a whole number from 0 to 4294967295"],
    [["arrange", "VENUE", "BRIEF", "--seed"], "command line: --seed: has no value; allowed: "],
    [["arrange", "VENUE", "BRIEF", "--layouts", "0"], "command line: --layouts: \"0\" is not allowed; allowed: a whole number from 1 to 8"],
    [["arrange", "VENUE", "BRIEF", "--out", "/nowhere/at/all.json"], "command line: --out: "],
    [["arrange", "VENUE", "BRIEF", "--out", "VENUE"], "command line: --out: "],
    [["capacity", "VENUE", "--room", "attic"], "command line: --room: \"attic\" is not a room of this venue; allowed: "],
    [["capacity", "VENUE", "--style", "oval"], "command line: --style: \"oval\" is not allowed; allowed: "],
    [["capacity", "VENUE", "--bare=yes"], "command line: --bare: takes no value; allowed: "],
    [["fold", "VENUE"], "command line: COMMAND: \"fold\" is not a command; allowed: "],
  ])("%s", async (argv, says) => {
    const named: Readonly<Record<string, string>> = { VENUE: venue, BRIEF: answers, LAYOUT: layout };
    const { code, out, lines } = await call(...argv.map((w) => named[w] ?? w));
    expect([code, out]).toEqual([2, ""]);
    expect(lines[0]?.startsWith(says) ? says : lines[0]).toBe(says);
  });
  it("a file that is not there", async () => {
    const { code, lines } = await call("quote", `${files.at}/none.json`, answers, layout);
    expect([code, lines]).toEqual([2, [`${files.at}/none.json: file: cannot be read (no such file); allowed: a readable file of JSON`]]);
  });
  it("a folder for a file", async () => expect((await call("quote", files.at, answers, layout)).lines[0]).toContain("(a folder)"));
});

describe("--out", () => {
  it("holds what would have been printed, and leaves no part beside it", async () => {
    const at = `${files.at}/fees.json`;
    const printed = (await call("quote", venue, answers, layout)).out;
    const written = await call("quote", venue, answers, layout, "--out", at);
    expect(written.out).toBe("");
    expect(readFileSync(at, "utf8")).toBe(printed);
    expect(readdirSync(files.at).filter((f) => f.endsWith(".part"))).toEqual([]);
  });
  it("writes nothing when the input is bad", async () => {
    const at = `${files.at}/never.json`;
    expect((await call("quote", layout, answers, layout, "--out", at)).code).toBe(2);
    expect(existsSync(at)).toBe(false);
  });
});

describe("as npm runs them", () => {
  it("0 and JSON alone on standard output", () => {
    const { status, stdout } = npm("quote", "--", venue, answers, layout);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ currency: "GBP" });
  });
  it("1 where the answer is no", () => {
    expect(npm("check", "--", venue, files.write("bad.json", meal([round("t1", [6500, 2200]), round("t2", [7000, 2200])]))).status).toBe(1);
  });
  it("2 and nothing on standard output where the input is bad", () => {
    const { status, stdout, stderr } = npm("arrange", "--", venue, files.write("worse.json", { ...brief, guests: { adults: 0 } }));
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toBe(`${files.at}/worse.json: guests.adults: 0 is not allowed; allowed: a whole number from 1 to 5000\n`);
  });
});
