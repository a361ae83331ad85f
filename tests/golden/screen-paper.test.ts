import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { findTool, TOOLS } from "../../lib/cli/system";
import { composePlan, PALETTES, toSvg, type Drawing, type Mark } from "../../lib/drawing";
import { printPaper } from "../../lib/print/print";
import { mill, millCeremony, millMeal } from "../unit/drawing/mill";
import { readPng, readPpm, shrunk, unlike } from "./png";

const chromium = findTool(TOOLS.chromium, process.env["CHROMIUM_PATH"]);
const pdftoppm = (process.env["PATH"] ?? "").split(":").map((p) => join(p, "pdftoppm")).find((p) => existsSync(p));
const folder = mkdtempSync(join(tmpdir(), "marquetry-raster-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Four pixels to the millimetre of paper on both. */
const WIDE = 297 * 4, HIGH = 210 * 4;
/** The PDF is drawn so many times larger and then shrunk: its painter draws no line thinner than a pixel. */
const FINE = 4;
const a4 = { width: 297, height: 210, legend: true, frame: true, titleBlock: { couple: "Ines Calloway and Theo Brandt" } };

/** Line work alone: letters are set by each painter's own machine, and read back from the PDF's text elsewhere. */
const withoutWords = (marks: readonly Mark[]): readonly Mark[] =>
  marks.flatMap((m): readonly Mark[] => (m.kind === "text" ? [] : m.kind === "group" || m.kind === "clip" ? [{ ...m, marks: withoutWords(m.marks) }] : [m]));

function onScreen(drawing: Drawing, name: string) {
  const file = join(folder, `${name}.html`), png = join(folder, `${name}.png`);
  writeFileSync(file, `<!doctype html><meta charset="utf-8"><title>plan</title><body style="margin:0">${toSvg(drawing, { theme: "print", pixelWidth: WIDE })}`);
  const root = process.getuid?.() === 0 ? ["--no-sandbox"] : [];
  execFileSync(chromium ?? "", ["--headless", ...root, "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--hide-scrollbars", "--force-color-profile=srgb", `--window-size=${WIDE},${HIGH}`, `--screenshot=${png}`, `file://${file}`], { stdio: "ignore", timeout: 60_000 });
  return readPng(readFileSync(png));
}

async function onPaper(drawing: Drawing, name: string) {
  const content = { kind: "content", page: 0, marks: drawing.marks } as const;
  const { bytes } = await printPaper({
    title: "Plan", author: "Tidewheel Mill", language: "en-GB", size: { width: 297, height: 210 }, pages: [{ artifacts: [] }], bookmarks: [],
    elements: [{ kind: "element", tag: "Figure", alt: "The plan", box: { page: 0, at: [0, 0], width: 297, height: 210 }, children: [content] }],
  }, { colours: (ink) => PALETTES.print[ink], now: new Date("2027-05-09T12:00:00Z") });
  const pdf = join(folder, `${name}.pdf`);
  writeFileSync(pdf, bytes);
  execFileSync(pdftoppm ?? "", ["-scale-to-x", String(WIDE * FINE), "-scale-to-y", String(HIGH * FINE), "-singlefile", pdf, join(folder, name)], { timeout: 60_000 });
  return shrunk(readPpm(readFileSync(join(folder, `${name}.ppm`))), FINE);
}

describe.skipIf(!chromium || !pdftoppm)("a plan on a screen and the same plan in a PDF", () => {
  it.each([
    ["meal", composePlan(mill, millMeal(), "meal", { sheet: a4, layers: ["ways"] })], ["ceremony", composePlan(mill, millCeremony(), "ceremony", { sheet: a4 })],
  ] as const)("look alike, line for line: %s", async (name, whole) => {
    const drawing: Drawing = { ...whole, marks: withoutWords(whole.marks) };
    const [screen, paper] = [onScreen(drawing, name), await onPaper(drawing, name)];
    expect([screen.width, screen.height]).toEqual([paper.width, paper.height]);
    expect(unlike(screen, paper)).toBeLessThan(0.0005);
    expect(unlike(paper, screen)).toBeLessThan(0.0005);
    // The yardstick itself: a plan moved by three pixels is found out.
    const moved = { ...paper, rgb: new Uint8Array(paper.rgb.length) };
    moved.rgb.set(paper.rgb.subarray(0, paper.rgb.length - 9), 9);
    expect(unlike(screen, moved)).toBeGreaterThan(0.005);
  }, 120_000);
});
