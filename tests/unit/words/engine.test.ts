import { describe, expect, it } from "vitest";
import { briefSchema, type Brief } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import type { ArrangeResult, Layout, Told } from "../../../lib/layout";
import { venueSchema, type Venue } from "../../../lib/venue";
import { TOLD_CODES, labelIn, toldText } from "../../../lib/words/engine";
import { FINDING_CODES, REFUSAL_CODES } from "../../../lib/words/findings";
import { layoutIn, resultIn } from "../../../lib/words/layout";
import { LANGUAGES, sayIn } from "../../../lib/words/pages";
import { BRITISH, englishIn } from "./left-over";

const mill: Venue = venueSchema.parse(tidewheel);
const asked = (changes: Readonly<Record<string, unknown>>): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: mill.packages.find((one) => one.coordinator)?.id, date: "2029-06-16", guests: { adults: 60, children: 4, wheelchairs: 1, suppliers: 3 }, ...changes,
});
const BRIEFS: readonly Brief[] = [
  asked({ displays: ["welcome", "cards", "guest-book", "photographs", "cake", "favours", "seating-plan"], extras: ["photo-booth", "lounge", "cocktail-tables", "appetisers", "children-corner", "second-bar"], music: { by: "dj", dancing: 0.3 }, ceremony: { here: true } }),
  asked({ guests: { adults: 4_000 } }),
  asked({ guests: { adults: 92 }, meal: { tables: "rounds", service: "buffet", top: "one-sided" }, music: { by: "band", dancing: 0.4 }, wishes: [{ put: "cake", near: "window" }, { put: "dj", "away-from": "top" }] }),
];

/** Each brief is laid once; what is said of it is read several ways. */
const laid = new Map<Brief, ArrangeResult>();
function resultOf(brief: Brief): ArrangeResult {
  const result = laid.get(brief) ?? arrange(mill, brief, { seed: 1, layouts: 3, instead: brief.guests.adults > 1_000 });
  laid.set(brief, result);
  return result;
}

/** The words of ours that a result shows. */
const wordsOf = (r: ArrangeResult): readonly string[] => [
  ...r.reasons.map((one) => one.text), ...r.instead.map((one) => one.text),
  ...r.layouts.flatMap((l) => [l.title, ...l.why, ...(l.givesUp ?? []), ...l.findings.map((f) => f.text), ...[...l.scenes, ...(l.wet?.scenes ?? [])].flatMap((s) => [s.title, ...s.items.map((i) => i.label)])]),
];

describe("what the engine says, in Spanish", () => {
  it("leaves no English but the venue's own names", { timeout: 240_000 }, () => {
    const left = new Set<string>();
    const venue: Venue = { ...mill, locale: "es-ES" };
    for (const brief of BRIEFS) {
      for (const text of wordsOf(resultIn(resultOf(brief), { venue, say: sayIn("es") }))) {
        const word = englishIn(text, mill);
        if (word !== undefined) left.add(word);
      }
    }
    expect([...left]).toEqual([]);
  });

  it("says nothing in British alone to who reads American English", { timeout: 240_000 }, () => {
    const brief = BRIEFS[0];
    if (!brief) throw new Error("there is a first brief");
    const result = resultIn(resultOf(brief), { venue: { ...mill, locale: "en-US", lengths: "imperial" }, say: sayIn("en-US") });
    expect(wordsOf(result).flatMap((text) => BRITISH.exec(text)?.[0] ?? [])).toEqual([]);
    expect(wordsOf(result).some((text) => text.includes("Favors"))).toBe(true);
  });

  it("gives each sentence as code and data, in the order of the British ones beside it", { timeout: 240_000 }, () => {
    for (const brief of BRIEFS) {
      const result = resultOf(brief);
      const british = (told: Told): string | undefined => toldText(told, { venue: mill, language: "en-GB" });
      for (const { title, why, givesUp = [], told } of result.layouts) {
        expect(told?.title && british(told.title)).toBe(title);
        expect(told?.why.map(british)).toEqual(why);
        expect(told?.givesUp.map(british)).toEqual(givesUp);
      }
      for (const { text, told } of result.instead) expect(told && british(told)).toBe(text);
      for (const reason of result.reasons) expect([...FINDING_CODES, ...REFUSAL_CODES]).toContain(reason.code);
    }
  });

  it.each(LANGUAGES)("has words for every code in %s, and none for one that it does not know", (language) => {
    const data = { rooms: ["grain-floor"], room: "grain-floor", name: "x", what: "cake", put: "cake", where: "window", how: "near", n: 2, rounds: 2, long: 3, ease: "most" };
    for (const code of TOLD_CODES) expect(toldText({ code, data, parts: [{ code: "no-bar" }, { code: "reception" }] }, { venue: mill, language }), code).toMatch(/^[^{}]+$/);
    expect(toldText({ code: "of-a-newer-engine" }, { venue: mill, language })).toBeUndefined();
    expect(toldText({ code: "title", parts: [{ code: "of-a-newer-engine" }] }, { venue: mill, language })).toBeUndefined();
  });

  it("writes areas and the names of rooms as they are read", () => {
    // 9.3 sq m are 9.3 / 0.09290304 = 100.1 sq ft.
    const drape: Told = { code: "drape-gives", data: { name: "Oak drape", grows: "grain-floor", from: "wheel-room", m2: 9.3 } };
    expect(toldText(drape, { venue: { ...mill, lengths: "imperial" }, language: "en-GB" })).toBe("Oak drape is drawn: the Grain Floor takes 100 sq ft of the Wheel Room.");
    expect(toldText(drape, { venue: { ...mill, locale: "es-ES" }, language: "es" })).toBe("Oak drape, corrida: Grain Floor gana 9,3 m² de Wheel Room.");
    expect(toldText({ code: "wish", data: { put: "cake", how: "near", where: "dj" } }, { venue: mill, language: "es" })).toBe("tarta cerca del DJ");
  });

  it("calls its own pieces in the reader's words, and leaves what the venue or a hand has named", () => {
    expect(["Table 12", "Row 3, chair 7", "Cards, guest book", "Favours, oak settle", "Grandmother’s harp"].map((label) => labelIn(label, "es"))).toEqual(["Mesa 12", "Fila 3, silla 7", "Tarjetas, libro de firmas", "Recuerdos, oak settle", "Grandmother’s harp"]);
    expect(["Cake, favours", "Top table", "Table 12"].map((label) => labelIn(label, "en-US"))).toEqual(["Cake, favors", "Head table", "Table 12"]);
  });

  it("leaves as they were written the reasons of a layout that tells none", () => {
    const layout: Layout = { id: "a", title: "By hand", why: ["The couple drew it."], scenes: [], turnovers: [], findings: [] };
    expect(layoutIn(layout, { venue: { ...mill, locale: "es-ES" }, say: sayIn("es") })).toMatchObject({ title: "By hand", why: ["The couple drew it."] });
  });
});
