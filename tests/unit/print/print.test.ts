import { execFileSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { proposalPaper, type ProposalInput } from "@/lib/papers";
import { printProposal } from "@/lib/print";
import { printPaper, type Printed } from "@/lib/print/print";
import { qrModules } from "@/lib/print/qr";
import { lacks, widthOf } from "@/lib/print/runs";
import { briefFile, input, layout, plan } from "../papers/fixture";
import { flat, itemsOf, open, rolesOf, textOf, type Node } from "./read";

const now = new Date("2027-05-09T12:00:00Z");
const print = (more: Partial<ProposalInput> = {}): Promise<Printed> =>
  printPaper(proposalPaper(input(more), { measure: widthOf, sheet: () => plan(), small: () => plan(), qr: qrModules, lacks }), { colours: () => "#000000", now });
/** The file with its objects laid open, by another program. */
function unpacked(bytes: Uint8Array): string {
  const file = path.join(mkdtempSync(path.join(tmpdir(), "paper-")), "p.pdf");
  writeFileSync(file, bytes);
  return execFileSync("qpdf", ["--qdf", "--object-streams=disable", file, "-"], { encoding: "latin1", maxBuffer: 1 << 26 });
}
const couple = (...names: string[]) => print({ brief: briefFile({ couple: names }) });

describe("the printed proposal", () => {
  let printed: Printed;
  let nodes: readonly Node[];
  beforeAll(async () => {
    printed = await print({ meta: { reference: "QK7M-31", revision: 3, fingerprint: "9f3c 71a0", url: "https://saltings.example/p/QK7M-31" } });
    nodes = flat(await rolesOf(printed.bytes));
  });

  test("names its language and shows its title (ISO 14289-1, 7.1 and 7.2)", async () => {
    const doc = await open(printed.bytes);
    const { info, metadata } = await doc.getMetadata();
    expect(info).toMatchObject({ Language: "en-GB", Title: "Ines Calloway and Theo Brandt, Saturday 12 June 2027: proposal for Saltings Hall" });
    expect(metadata?.getRaw()).toContain("<pdfuaid:part>1</pdfuaid:part>");
    expect(await doc.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true });
    expect(await doc.getMarkInfo()).toMatchObject({ Marked: true });
  });
  test("skips no level of heading and starts with the first (ISO 14289-1, 7.4.2)", () => {
    const levels = nodes.filter((n) => /^H\d$/.test(n.role)).map((n) => Number(n.role.slice(1)));
    expect(levels[0]).toBe(1);
    levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
  });
  test("says in words what each figure shows (ISO 14289-1, 7.3)", () => {
    const figures = nodes.filter((n) => n.role === "Figure");
    expect(figures.length).toBe(1 + 1 + 2);
    figures.forEach((f) => expect(f.alt?.length ?? 0).toBeGreaterThan(10));
    expect(figures.some((f) => f.alt?.includes("1:100") && f.alt.includes("42 places"))).toBe(true);
  });
  test("has header cells in every table", () => {
    const tables = nodes.filter((n) => n.role === "Table");
    expect(tables.length).toBeGreaterThan(3);
    tables.forEach((t) => expect(flat([t]).some((n) => n.role === "TH")).toBe(true));
  });
  test("has a bookmark for each part", async () => {
    const outline = await (await open(printed.bytes)).getOutline();
    expect(outline.map((o) => o.title)).toEqual(["Cover", "Fee summary", "Tables and places", "Ceremony", "Meal", "Why this layout", "How the room turns over", "Findings and cautions", "Your answers"]);
  });
  test("holds the cautions, the fees and the answers as real text", async () => {
    const text = await textOf(printed.bytes);
    expect(text).toContain("Planning aid.");
    expect(text).toContain("£138.00");
    expect(text).toContain("Not sure yet: we took");
  });
  test("gives the same bytes for the same paper and moment", async () => {
    const again = await print({ meta: { reference: "QK7M-31", revision: 3, fingerprint: "9f3c 71a0", url: "https://saltings.example/p/QK7M-31" } });
    expect(Buffer.compare(Buffer.from(again.bytes), Buffer.from(printed.bytes))).toBe(0);
  });
  test("writes what looks the same once, and its tags packed: less than half of what it holds laid open and packed page by page", () => {
    const open = unpacked(printed.bytes);
    expect(open.match(/\/Subtype \/Form/g)?.length ?? 0).toBeGreaterThan(0);
    expect(Buffer.from(printed.bytes).toString("latin1")).toContain("/Type/ObjStm");
    expect(printed.bytes.length).toBeLessThan(open.length / 2);
  });
  test("is sound to another program's check", () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), "paper-")), "p.pdf");
    writeFileSync(file, printed.bytes);
    expect(execFileSync("qpdf", ["--check", file], { encoding: "utf8" })).toContain("No syntax or stream encoding errors");
  });
});

describe("names", () => {
  test.each([["Łucja Dąbrowska-Żak", "Þórður Ægisson"], ["Ελένη Παπαδοπούλου", "Γιώργος"], ["Оксана Ґалаґан", "Юрій Їжак"], ["Nguyễn Thị Ánh", "Đặng Văn Hậu"]])(
    "of %s and %s are printed in full", async (a, b) => {
      const printed = await couple(a, b);
      expect(printed.missing).toEqual([]);
      const text = (await textOf(printed.bytes)).normalize("NFC").replace(/\s/g, "");
      expect(text).toContain(a.replace(/\s/g, ""));
      expect(text).toContain(b.replace(/\s/g, ""));
    });
  test.each([["Ines Calloway", "ליאור בן־דוד"], ["ليلى حداد", "Theo Brandt"], ["佐藤 美咲", "김서연"], ["王玥", "陳怡君"], ["Ἀνδρέας", "Žofie Nováková"]])(
    "of %s and %s are printed in their own script and read back in the order of reading", async (a, b) => {
      const printed = await couple(a, b);
      expect(printed.missing).toEqual([]);
      const words = (await itemsOf(printed.bytes)).join("").normalize("NFC").replace(/\s/g, "");
      for (const word of [...a.split(" "), ...b.split(" ")]) expect(words).toContain(word.normalize("NFC"));
    });
  test("in Devanagari, whose syllables print in another order, are kept as they are read", async () => {
    const printed = await couple("अनन्या राव", "शिवकुमारी");
    expect(printed.missing).toEqual([]);
    expect(unpacked(printed.bytes)).toContain("/ActualText");
  });
  test("in a script that no face holds are reported, and no empty box is printed", async () => {
    const printed = await couple("ნინო", "Ann");
    expect([...printed.missing].sort()).toEqual([...new Set("ნინო")].sort());
    expect(await textOf(printed.bytes)).toContain("[Georgian]");
  });
  test("of great length are printed without running over an edge", async () => {
    const long = "Maximiliane".repeat(18).slice(0, 200);
    const printed = await couple(long, `${"Wolfeschlegelsteinhausen ".repeat(7).trim()}`, "W".repeat(200), "i".repeat(200));
    const doc = await open(printed.bytes);
    for (let i = 1; i <= doc.numPages; i += 1) {
      const page = await doc.getPage(i);
      const [, , width = 0, height = 0] = page.view;
      for (const item of (await page.getTextContent()).items) {
        if (!("transform" in item) || item.str.trim() === "") continue;
        expect(item.transform[4]).toBeGreaterThan(20);
        expect(item.transform[4] + item.width).toBeLessThan(width - 20);
        expect(item.transform[5]).toBeGreaterThan(20);
        expect(item.transform[5]).toBeLessThan(height - 20);
      }
    }
  });
  test("with controls and marks of direction lose them", async () => {
    const printed = await couple("Ann\u202Eevil\u0000 Lee", "Bo\tSay\nre");
    expect(printed.missing).toEqual([]);
    expect(await textOf(printed.bytes)).toContain("Annevil Lee and Bo Say re");
  });
});

describe("long matter", () => {
  test("flows to further pages and repeats nothing in the tree", async () => {
    const findings = Array.from({ length: 120 }, (_, i) => ({
      code: "gap", level: "should" as const, source: "common practice, no source", items: [], text: `Finding ${i + 1}: ${"the way between the tables is narrower than it might be, ".repeat(3)}.`,
    }));
    const printed = await print({ layout: layout({ findings }) });
    const text = await textOf(printed.bytes);
    findings.forEach((_, i) => expect(text).toContain(`Finding ${i + 1}:`));
    expect(printed.pages).toBeGreaterThan(8);
  });
});

describe("sizes", () => {
  test("no words are under 2.0 mm, and the cautions are never the smallest", async () => {
    const { bytes } = await printProposal({ ...input(), meta: { ...input().meta, now } });
    const doc = await open(bytes);
    for (let i = 1; i <= doc.numPages; i += 1) {
      const { items } = await (await doc.getPage(i)).getTextContent();
      const sized = items.flatMap((item) => ("transform" in item && item.str.trim() !== ""
        ? [{ text: item.str, mm: (Math.hypot(item.transform[2], item.transform[3]) * 25.4) / 72 }] : []));
      const least = Math.min(...sized.map((s) => s.mm));
      expect(least).toBeGreaterThan(1.999);
      for (const s of sized.filter((w) => /building control|licensing and/.test(w.text))) expect(s.mm).toBeGreaterThan(least);
    }
  });
});
