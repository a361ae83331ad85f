import { describe, expect, it } from "vitest";
import { z } from "zod";
import { filesUnder, jsonOf, sources, textOf } from "./tree";

const names = z.record(z.string(), z.string());
const own = z.object({ scripts: names, dependencies: names, devDependencies: names }).parse(jsonOf("package.json"));
const lock = z.object({ packages: z.record(z.string(), z.object({ resolved: z.string().optional(), integrity: z.string().optional(), inBundle: z.boolean().optional() })) }).parse(jsonOf("package-lock.json"));

describe("what is installed", () => {
  it("pins every package to one exact version", () => {
    const loose = Object.entries({ ...own.dependencies, ...own.devDependencies }).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version));
    expect(loose).toEqual([]);
  });

  it("takes packages from the registry alone, each with its hash", () => {
    const strange = Object.entries(lock.packages).filter(([path, { resolved, integrity, inBundle }]) =>
      path !== "" && ((resolved !== undefined && !resolved.startsWith("https://registry.npmjs.org/")) || !(integrity ?? inBundle)));
    expect(strange.map(([path]) => path)).toEqual([]);
  });

  it("lets no package run code of its own, and has no script that runs at install", () => {
    expect(textOf(".npmrc")).toMatch(/^ignore-scripts=true$/m);
    expect(Object.keys(own.scripts).filter((name) => /^(pre|post)?install$|^prepare$/.test(name))).toEqual([]);
  });

  it("runs on a clean checkout what the README says, and nothing else", () => {
    const command = "npm ci && npm run verify";
    expect(textOf("README.md")).toContain(`\n${command}\n`);
    expect(textOf(".ci/run").trim().split("\n").at(-1)).toBe(command);
  });
});

describe("what is fetched at run time", () => {
  /** Names of formats, the machine itself, and examples that no one owns (RFC 2606). */
  const NAMES = /^https?:\/\/(?:www\.w3\.org\/|localhost\b|127\.0\.0\.1|[\w.-]+\.example\b|(?:[\w-]+\.)*example\.(?:org|com)\b|json-schema\.org\/)/;

  it("is nothing: no address of another machine stands in what runs", () => {
    const styles = [...filesUnder("app"), ...filesUnder("components"), ...filesUnder("public")].filter((path) => /\.(css|svg|html)$/.test(path));
    const addresses = [...sources("app", "components", "lib"), ...styles].flatMap((path) =>
      [...textOf(path).matchAll(/https?:\/\/[^\s"'`)<>]+/g)].map(([address]) => `${path}: ${address}`).filter((line) => !NAMES.test(line.slice(line.indexOf(": ") + 2))));
    expect(addresses).toEqual([]);
  });

  it("is no face of letters either", () => {
    expect(sources("app", "components").filter((path) => textOf(path).includes("next/font/google"))).toEqual([]);
  });
});
