import { execFileSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { briefSchema } from "@/lib/brief";
import { printProposal, printSheets } from "@/lib/print";
import type { Printed } from "@/lib/print";
import { briefFile, input, layout, venue } from "../unit/papers/fixture";
import { flat, open, rolesOf, textOf, type Node } from "../unit/print/read";

const now = new Date("2027-05-09T12:00:00Z");
const couple = ["Ines Calloway", "ליאור בן־דוד"];
const PAPERS: readonly (readonly [string, () => Promise<Printed>])[] = [
  ["the proposal", () => printProposal({ ...input({ brief: briefFile({ couple }) }), meta: { ...input().meta, now } })],
  ["the sheets", () => printSheets({ venue: venue(), brief: briefSchema.parse(briefFile({ couple })), layout: layout(), meta: { reference: "QK7M-31", revision: 3, now } })],
];

const program = (name: string, ...args: readonly string[]): string => execFileSync(name, args, { encoding: "utf8" });

describe.each(PAPERS)("%s, read back by other programs (ISO 14289-1, PDF/UA-1)", (_, print) => {
  let printed: Printed;
  let nodes: readonly Node[];
  let file = "";
  let plain = "";
  beforeAll(async () => {
    printed = await print();
    nodes = flat(await rolesOf(printed.bytes));
    const folder = mkdtempSync(path.join(tmpdir(), "ua-"));
    file = path.join(folder, "paper.pdf");
    writeFileSync(file, printed.bytes);
    // The same file with its streams and objects laid open, to be read as text.
    plain = program("qpdf", "--qdf", "--object-streams=disable", file, "-").toString();
  });

  test("says that it is tagged and which part of the standard it follows (clause 5; 7.1)", async () => {
    const doc = await open(printed.bytes);
    expect((await doc.getMetadata()).metadata?.getRaw()).toContain("<pdfuaid:part>1</pdfuaid:part>");
    expect(await doc.getMarkInfo()).toMatchObject({ Marked: true });
    expect(plain).not.toMatch(/\/Suspects true/);
  });
  test("names its language, and shows its title (7.1, 7.2)", async () => {
    const doc = await open(printed.bytes);
    const { info } = await doc.getMetadata();
    expect(info).toMatchObject({ Language: "en-GB" });
    expect(await doc.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true });
    expect("Title" in info && String(info.Title)).toContain("Ines Calloway");
  });
  test("uses the standard's own types of structure alone (7.1; ISO 32000-1, 14.8.4)", () => {
    const known = new Set(["Root", "Document", "Sect", "H1", "H2", "H3", "P", "Note", "Figure", "Caption", "Link", "L", "LI", "Lbl", "LBody", "Table", "THead", "TBody", "TR", "TH", "TD"]);
    expect([...new Set(nodes.map((n) => n.role).filter((r) => r !== undefined && !known.has(r)))]).toEqual([]);
  });
  test("begins with one first heading and skips none (7.4.2)", () => {
    const levels = nodes.filter((n) => /^H\d$/.test(n.role)).map((n) => Number(n.role.slice(1)));
    expect(levels[0]).toBe(1);
    expect(levels.filter((l) => l === 1)).toHaveLength(1);
    levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
  });
  test("says of each figure in words what it shows, and where it lies (7.3)", () => {
    const figures = nodes.filter((n) => n.role === "Figure");
    expect(figures.length).toBeGreaterThan(2);
    figures.forEach((f) => expect(f.alt?.length ?? 0).toBeGreaterThan(20));
    expect([...plain.matchAll(/\/BBox \[/g)].length).toBeGreaterThanOrEqual(figures.length);
  });
  test("heads each table's rows or columns, with their scope (7.5)", () => {
    const tables = nodes.filter((n) => n.role === "Table");
    expect(tables.length).toBeGreaterThan(3);
    tables.forEach((t) => expect(flat([t]).some((n) => n.role === "TH")).toBe(true));
    const heads = nodes.filter((n) => n.role === "TH").length;
    expect([...plain.matchAll(/\/Scope \/(Column|Row|Both)/g)].length).toBeGreaterThanOrEqual(heads / 2);
  });
  test("keeps lists to items with a body (7.6)", () => {
    nodes.filter((n) => n.role === "L").forEach((l) => l.children.forEach((c) => expect(c.role).toBe("LI")));
    nodes.filter((n) => n.role === "LI").forEach((l) => expect(l.children.some((c) => c.role === "LBody")).toBe(true));
  });
  test("marks all that is painted, as content or as ornament (7.1)", () => {
    const streams = [...plain.matchAll(/stream\n([\s\S]*?)\nendstream/g)].map((m) => m[1] ?? "").filter((s) => /\bBDC\b/.test(s));
    expect(streams.length).toBe(printed.pages);
    for (const stream of streams) {
      let depth = 0;
      for (const line of stream.split("\n")) {
        if (/ (BDC|BMC)$/.test(line)) depth += 1;
        else if (/^EMC$/.test(line)) depth -= 1;
        // Words, strokes and fills outside of any mark would be read by nobody and skipped by nobody.
        else if (/(\bTJ|\bTj|^S|^f\*?|^B\*?)$/.test(line)) expect(depth).toBeGreaterThan(0);
      }
      expect(depth).toBe(0);
    }
  });
  test("embeds each face, only the letters it uses, and says what they are (7.21.4, 7.21.7)", () => {
    const objects = plain.split(/^endobj$/m);
    const descriptors = objects.filter((o) => /\/Type \/FontDescriptor/.test(o));
    expect(descriptors.length).toBeGreaterThan(2);
    descriptors.forEach((o) => { expect(o).toMatch(/\/FontFile[23] \d+ 0 R/); expect(o).toMatch(/\/FontName \/[A-Z]{6}\+/); });
    const fonts = objects.filter((o) => /\/Subtype \/Type0/.test(o));
    expect(fonts).toHaveLength(descriptors.length);
    fonts.forEach((o) => expect(o).toMatch(/\/ToUnicode \d+ 0 R/));
    // Whatever names a font names one of these: none is left to the reader's own.
    expect(objects.filter((o) => /\/Type \/Font$/m.test(o) && /\/Subtype \/(Type1|TrueType|Type3)$/m.test(o))).toEqual([]);
  });
  test("has a bookmark for each part, and a name in Hebrew reads from right to left", async () => {
    const doc = await open(printed.bytes);
    expect((await doc.getOutline()).length).toBeGreaterThan(4);
    expect(await textOf(printed.bytes)).toContain("בן־דוד");
    expect(printed.missing).toEqual([]);
  });
  test("is sound to another program's check, and holds no raster (ISO 32000-1)", () => {
    expect(program("qpdf", "--check", file)).toContain("No syntax or stream encoding errors");
    expect(plain).not.toMatch(/\/Subtype \/Image/);
  });
});
