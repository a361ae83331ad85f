import { beforeAll, describe, expect, test } from "vitest";
import { briefSchema } from "@/lib/brief";
import { printProposal, printSheets } from "@/lib/print";
import { briefFile, layout, quote, venue } from "../papers/fixture";
import { open } from "./read";

const now = new Date("2027-05-09T12:00:00Z");
const plan = layout();
const meal = plan.scenes.find((s) => s.id === "meal");
const hall = venue().rooms[0]?.outline[0] ?? [0, 0];

/** Every page as lines of words: stretches of text at one height, from left to right. */
async function linesOf(bytes: Uint8Array): Promise<readonly (readonly string[])[]> {
  const doc = await open(bytes);
  const out: string[][] = [];
  for (let i = 1; i <= doc.numPages; i += 1) {
    const { items } = await (await doc.getPage(i)).getTextContent();
    const rows: { readonly y: number; readonly words: { readonly x: number; readonly str: string }[] }[] = [];
    for (const item of items) {
      if (!("str" in item) || item.str.trim() === "" || Math.abs(item.transform[1]) > 1e-6) continue;
      // A figure of another size in a row has a baseline a little lower.
      const row = rows.find((r) => Math.abs(r.y - item.transform[5]) < 2);
      const word = { x: item.transform[4], str: item.str.trim() };
      if (row) row.words.push(word); else rows.push({ y: item.transform[5], words: [word] });
    }
    for (const { words } of rows) out.push(words.sort((a, b) => a.x - b.x).map((w) => w.str));
  }
  return out;
}

/** "1 to 4, 6" as its numbers. */
const numbersOf = (said: string): readonly number[] => said.split(", ").flatMap((part) => {
  const [a = 0, b = a] = part.split(" to ").map(Number);
  return Array.from({ length: b - a + 1 }, (_, i) => a + i);
});

describe("a paper read back by another program says what the layout holds", () => {
  let proposal: readonly (readonly string[])[] = [], sheets: readonly (readonly string[])[] = [];
  beforeAll(async () => {
    const brief = briefFile();
    proposal = await linesOf((await printProposal({ venue: venue(), brief, layout: plan, quote: quote(), meta: { reference: "R", revision: 3, now } })).bytes);
    sheets = await linesOf((await printSheets({ venue: venue(), brief: briefSchema.parse(brief), layout: plan, meta: { reference: "R", revision: 3, now } })).bytes);
  }, 120_000);
  const seats = (label: string): number => meal?.items.find((i) => i.label === label)?.seats.length ?? 0;

  test("every table's places, and all of them together", () => {
    const rows = proposal.flatMap((line) => {
      const at = line.findIndex((w) => /^\d+( to \d+)?(, \d+( to \d+)?)*$/.test(w) && /^(Round|Small) table, /.test(line[line.indexOf(w) + 1] ?? ""));
      return at < 0 ? [] : [{ numbers: numbersOf(line[at] ?? ""), places: Number(line.at(-1)) }];
    });
    expect(rows.flatMap((r) => r.numbers).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5]);
    for (const row of rows) expect(row.places).toBe(row.numbers.reduce((n, k) => n + seats(`Table ${k}`), 0));
    const all = proposal.find((line) => line.includes("All places"));
    expect(Number(all?.at(-1))).toBe(meal?.seats);
    expect(meal?.seats).toBe(5 * 8 + 2);
  });
  test("where the crew set each piece, in metres from the room's corner", () => {
    for (const item of meal?.items ?? []) {
      const line = sheets.find((l) => l.some((w, i) => w === item.label && /^\d+\.\d\d$/.test(l[i + 1] ?? "")));
      const at = line?.indexOf(item.label) ?? -1;
      expect([Number(line?.[at + 1]), Number(line?.[at + 2])], item.label).toEqual([(item.at[0] - hall[0]) / 1000, (item.at[1] - hall[1]) / 1000]);
    }
  });
  test("how many chairs are brought out for the rows", () => {
    const chairs = plan.scenes.find((s) => s.id === "ceremony")?.items.filter((i) => i.kind === "chair").length;
    const line = sheets.find((l) => l.includes("Chairs")) ?? [];
    expect(line[line.indexOf("Chairs") - 1]).toBe(String(chairs));
  });
});
