import { describe, expect, test } from "vitest";
import { briefSchema } from "@/lib/brief";
import { A4, answersOf, LETTER, sheetFor } from "@/lib/papers";
import { feeRows } from "@/lib/papers/fees";
import { shorten, wrap, wrapEvenly } from "@/lib/papers/lines";
import { flowThrough } from "@/lib/papers/flow";
import { numberRuns, placeRows } from "@/lib/papers/places";
import { stepsOf } from "@/lib/papers/turnover";
import { STYLES } from "@/lib/papers/type";
import { paperVoice } from "@/lib/words/papers";
import { briefFile, layout, quote, venue } from "./fixture";

const say = paperVoice("en-GB");
/** Every letter is one millimetre wide. */
const fit = (width: number) => ({ width, style: STYLES.body, measure: (text: string) => [...text].length });

describe("lines", () => {
  test("break at spaces, and inside a word only when it is wider than the line", () => {
    expect(wrap("one two threefour", fit(7))).toEqual(["one two ", "threefo", "ur"]);
  });
  test("keep the writer's own line ends", () => {
    expect(wrap("a\n\nb\r\nc", fit(9))).toEqual(["a ", "", "b ", "c"]);
  });
  test("of even length take as many lines as before", () => {
    expect(wrap("aa bb cc dd ee", fit(11))).toEqual(["aa bb cc dd ", "ee"]);
    expect(wrapEvenly("aa bb cc dd ee", fit(11))).toEqual(["aa bb cc ", "dd ee"]);
  });
  test("that are shortened say so", () => {
    expect(shorten("Theodora", fit(5))).toBe("Theo…");
    expect(shorten("Theo", fit(5))).toBe("Theo");
  });
});

describe("the flow", () => {
  test("goes on in the next region when a block does not fit, and drops the gap there", () => {
    const flow = flowThrough((n) => ({ page: n, x: 0, y: 10, width: 50, height: 20 }));
    expect(flow.take(15)).toMatchObject({ page: 0, y: 10 });
    flow.gap(4);
    expect(flow.take(5)).toMatchObject({ page: 1, y: 10 });
    flow.gap(4);
    expect(flow.take(5)).toMatchObject({ page: 1, y: 10 + 5 + 4 });
  });
});

describe("paper", () => {
  test.each([["en-GB", A4], ["en-US", LETTER], ["de", A4], ["fr-CA", LETTER], ["en", LETTER], ["ja-JP", A4]])("of %s", (locale, sheet) => {
    expect(sheetFor(locale)).toBe(sheet);
  });
});

describe("the fee summary", () => {
  test("shows what the package includes at nil and the tax that prices hold", () => {
    const rows = feeRows({ say, quote: quote(), venue: venue() }).map((r) => r.cells.map((c) => c.text));
    expect(rows[0]).toEqual(["Light piece moved", "3", "included", "£0.00"]);
    expect(rows.at(-2)).toEqual(["Extra to pay", "", "", "£138.00"]);
    expect(rows.at(-1)).toEqual(["of which VAT at 20 %", "", "", "£23.00"]);
  });
  test("adds the tax where prices leave it out", () => {
    const american = venue({ tax: { name: "Sales tax", basisPoints: 825, of: "total", included: false }, currency: "USD", locale: "en-US" });
    const rows = feeRows({ say, quote: quote({ currency: "USD", net: 8100, tax: 668, total: 8768 }), venue: american }).map((r) => r.cells.map((c) => c.text));
    expect(rows.slice(-3)).toEqual([["Before tax", "", "", "$81.00"], ["Sales tax at 8.25 %", "", "", "$6.68"], ["Extra to pay", "", "", "$87.68"]]);
  });
});

describe("tables and places", () => {
  test("tables alike share a row, and the places add up", () => {
    const meal = layout().scenes[1];
    const rows = meal ? placeRows({ say, layout: layout(), venue: venue() }, meal).map((r) => r.cells.map((c) => c.text)) : [];
    expect(rows.map((r) => [r[0], r[2]])).toEqual([["1 to 4", String(4 * 8)], ["5", "8"], ["Couple", "2"], ["All places", String(5 * 8 + 2)]]);
  });
  test("numbers in a run are written from and to", () => {
    expect(numberRuns([3, 1, 2, 5, 7, 8])).toBe("1 to 3, 5, 7, 8");
  });
});

describe("how the room turns over", () => {
  test("moves of one sort are one step", () => {
    const turnover = layout().turnovers[0];
    const steps = turnover ? stepsOf(turnover, { layout: layout(), venue: venue() }) : [];
    expect(steps.map((s) => [s.act, s.what, s.count])).toEqual([["shift", "Chair", 42], ["out", "Round table", 5], ["out", "Small table", 1]]);
  });
});

describe("the answers", () => {
  const file = briefFile();
  const all = answersOf({ brief: briefSchema.parse(file), file, venue: venue(), say }).flatMap((g) => g.answers);
  const said = (asked: string): string | undefined => all.find((a) => a.asked === asked)?.said;
  test("what was given stands as it was given", () => {
    expect(said("Adults")).toBe("40, the two of you among them");
    expect(said("Food")).toBe("Plated, brought to the tables");
    expect(said("A wish")).toBe("Cake near a window");
  });
  test("what was left out says what was taken", () => {
    expect(said("Suppliers who eat")).toBe("Not sure yet: we took none");
    expect(said("Aisle")).toBe("Not sure yet: we took down the centre");
    expect(said("The room may be turned over")).toBe("Not sure yet: we took as your package has it");
  });
});
