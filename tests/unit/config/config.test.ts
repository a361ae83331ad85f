import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readConfig, SETTINGS } from "../../../lib/config";

describe("the settings", () => {
  it("have defaults for everything", () => {
    expect(readConfig({})).toMatchObject({ ok: true, value: { port: 3000, host: "127.0.0.1", origin: "http://localhost:3000", dataDir: ".data", demo: false } });
  });

  it("take an empty variable for one that is left out", () => {
    expect(readConfig({ PORT: "", DATABASE_URL: " ", MARQUETRY_ORIGIN: "" })).toMatchObject({ ok: true, value: { port: 3000, databaseUrl: undefined } });
  });

  it("are all told at once when they are wrong, without the secrets among them", () => {
    const read = readConfig({ PORT: "70000", MARQUETRY_ORIGIN: "plans.example.org", DATABASE_URL: "mysql://root:hunter2@db", MARQUETRY_DESK: "desk", MARQUETRY_DEMO: "yes" });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.error.map((one) => one.split(":")[0])).toEqual(["PORT", "MARQUETRY_ORIGIN", "DATABASE_URL", "MARQUETRY_DESK", "MARQUETRY_DEMO"]);
    expect(read.error.join()).not.toContain("hunter2");
    expect(read.error[0]).toBe('PORT: a number from 0 to 65535 (found "70000")');
  });

  it("make links from the public address alone: no path, no user", () => {
    expect(readConfig({ MARQUETRY_ORIGIN: "https://plans.example.org/" })).toMatchObject({ ok: true, value: { origin: "https://plans.example.org" } });
    for (const bad of ["https://plans.example.org/x", "https://a:b@plans.example.org", "ftp://plans.example.org"]) expect(readConfig({ MARQUETRY_ORIGIN: bad }).ok).toBe(false);
  });

  it("stand in .env.example, every one, with its words and its example", () => {
    const wanted = Object.entries(SETTINGS).map(([name, { about, example }]) => `# ${about}\n${example === "" ? "# " : ""}${name}=${example}\n`).join("\n");
    expect(readFileSync(".env.example", "utf8")).toBe(wanted);
  });

  it("stand in the README's table, every one, and no other", () => {
    const table = readFileSync("README.md", "utf8").split("| variable | what it is | left out |")[1]?.split("\n\n")[0] ?? "";
    expect([...table.matchAll(/^\| `([A-Z_]+)` \| \S/gm)].map(([, name]) => name).sort()).toEqual(Object.keys(SETTINGS).sort());
  });
});
