import { describe, expect, it } from "vitest";
import { briefSchema, type BriefFile } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import type { Mark } from "../../../lib/drawing/display";
import { arrange } from "../../../lib/engine";
import { quote } from "../../../lib/fees";
import type { Element, PaperDocument } from "../../../lib/papers/document";
import { proposalDocument } from "../../../lib/print";
import { venueSchema, type Venue } from "../../../lib/venue";
import { LANGUAGES } from "../../../lib/words/pages";
import { PAPER_PHRASES, paperVoice } from "../../../lib/words/papers";
import { PLAN_PHRASES, planVoice } from "../../../lib/words/plan";
import { listText } from "../../../lib/words/lists";
import { BRITISH, englishIn } from "./left-over";

const mill: Venue = venueSchema.parse(tidewheel);
const file: BriefFile = {
  format: "marquetry.brief/1", package: mill.packages.find((one) => one.coordinator)?.id ?? "", date: "2029-06-16", couple: ["Ana Nogueira", "Íñigo Soler"],
  guests: { adults: 60, children: 4, wheelchairs: 1, suppliers: 3 }, displays: ["welcome", "cards", "guest-book", "photographs", "cake", "favours", "seating-plan"],
  extras: ["photo-booth", "lounge", "cocktail-tables", "appetisers", "children-corner", "second-bar"], music: { by: "dj", dancing: 0.3, atCeremony: true }, ceremony: { here: true },
  wishes: [{ put: "cake", near: "window" }, { put: "dj", "away-from": "top" }], times: { access: "10:00", ceremony: "13:30", meal: "16:00", clear: "23:30" },
};
const brief = briefSchema.parse(file);
const layout = arrange(mill, brief, { seed: 1, layouts: 1 }).layouts[0];

function proposal(locale: string, lengths: Venue["lengths"]): PaperDocument {
  if (!layout) throw new Error("the mill takes 64 guests");
  return proposalDocument({
    venue: { ...mill, locale, lengths }, paperLocale: mill.locale, brief: file, layout, quote: quote(mill, brief, layout),
    meta: { reference: "QK7M-31", revision: 3, fingerprint: "9f3c71a05be2c418".repeat(4), sentOn: "2029-05-09", agreedOn: "2029-05-10", drawnOn: "2029-05-09", url: "https://mill.example/request", now: new Date("2029-05-09T12:00:00Z") },
  });
}

const textsOf = (marks: readonly Mark[]): readonly string[] => marks.flatMap((m) => (m.kind === "text" ? [m.text] : m.kind === "group" || m.kind === "clip" ? textsOf(m.marks) : []));
/** Each element's own words as they are read, lines joined; what it says to who does not see it; and what stands on the pages besides. */
const wordsOf = (paper: PaperDocument): readonly string[] => {
  const within = (e: Element): readonly string[] => {
    const own = e.children.flatMap((c) => (c.kind === "content" ? textsOf(c.marks) : []));
    return [...(e.tag === "Figure" ? own : [own.join("").replace(/\s+/g, " ")]), e.alt ?? "", e.leads?.says ?? "", ...e.children.flatMap((c) => (c.kind === "element" ? within(c) : []))];
  };
  return [paper.title, ...paper.bookmarks.map((b) => b.title), ...paper.elements.flatMap(within), ...paper.pages.flatMap((p) => p.artifacts.flatMap((a) => textsOf(a.marks)))].filter((text) => text.trim() !== "");
};
/** The slots of a phrase; a count may be left out where there is one alone. */
const slots = (text: string): string => [...new Set(text.match(/\{\w+\}/g) ?? [])].filter((slot) => slot !== "{n}").sort().join();

describe("the proposal in its reader's language", () => {
  it.each(LANGUAGES)("has every phrase in %s, with the slots of the British one and no others", (language) => {
    for (const n of [1, 2]) {
      for (const phrase of PAPER_PHRASES) expect(slots(paperVoice(language)(phrase, { n })), phrase).toBe(slots(phrase));
      for (const phrase of PLAN_PHRASES) expect(slots(planVoice(language)(phrase, { n })), phrase).toBe(slots(phrase));
    }
  });

  it("leaves no English to who reads Spanish but the venue's own names and published standards, and says so to a reading voice", () => {
    const paper = proposal("es-ES", "metric");
    expect(paper.language).toBe("es");
    const words = wordsOf(paper);
    expect(words.length).toBeGreaterThan(200);
    expect([...new Set(words.map((text) => englishIn(text, mill)).filter((left) => left !== undefined))]).toEqual([]);
    expect(paper.title).toBe("Ana Nogueira e Íñigo Soler, sábado, 16 de junio de 2029: propuesta de Tidewheel Mill");
  });

  it("keeps every sum of money whole, wide as its currency is written", () => {
    const money = wordsOf(proposal("es-ES", "metric")).filter((text) => /GBP|^\s*(G|B|BP|P)\s*$/.test(text));
    expect(money.length).toBeGreaterThan(4);
    for (const sum of money) expect(sum).toMatch(/^[\d.]+,\d\d\sGBP$/);
  });

  it("says nothing in British alone to who reads American English, and measures in feet and inches", () => {
    const words = wordsOf(proposal("en-US", "imperial"));
    expect([...new Set(words.flatMap((text) => BRITISH.exec(text)?.[0] ?? []))]).toEqual([]);
    expect(words.filter((text) => /\d\s?(m|mm|m²)\b/.test(text))).toEqual([]);
    expect(words.some((text) => text.includes("Saturday, June 16, 2029"))).toBe(true);
  });

  it("is cut from the venue's own paper, whoever reads it", () => {
    expect(proposal("en-US", "imperial").size).toEqual(proposal("en-GB", "metric").size);
  });
});

describe("names in a row", () => {
  it("are joined as a language joins them (RAE: “y” is “e” before the sound of i)", () => {
    expect([listText(["Ana", "Íñigo"], "es-ES"), listText(["Ana", "Hielo"], "es-ES"), listText(["A", "B", "Inés"], "es-MX")]).toEqual(["Ana e Íñigo", "Ana y Hielo", "A, B e Inés"]);
    expect([listText(["a", "b", "c"], "en-GB"), listText(["a", "b", "c"], "en-US")]).toEqual(["a, b and c", "a, b, and c"]);
  });
});
