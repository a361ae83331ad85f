import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { STEP_SCHEMAS } from "../../../lib/brief/draft";
import { IN_THE_BROWSER } from "../../../components/words/in-the-browser";
import { catalogueOf, ENGLISH, LANGUAGES, languageOf, localeFor, mannerOf, PHRASES, sayIn, type Entry } from "../../../lib/words/pages";
import { CAUTIONS } from "../../../lib/words/cautions";
import { BRITISH } from "./left-over";
import { filesUnder } from "../../house/tree";

const texts = (entry: Entry | undefined): readonly string[] => (entry === undefined ? [] : typeof entry === "string" ? [entry] : [entry.one, entry.other]);
const slots = (text: string): readonly string[] => [...new Set(text.match(/\{\w+\}/g) ?? [])].sort();

describe("the words of the pages", () => {
  for (const language of LANGUAGES) {
    const catalogue = catalogueOf(language);
    it(`are there in ${language}, every one, with the slots of the British sentence and no others`, () => {
      expect(Object.keys(catalogue).sort()).toEqual([...PHRASES].sort());
      for (const phrase of PHRASES) {
        for (const text of texts(catalogue[phrase])) {
          expect(text.trim(), phrase).not.toBe("");
          // A sentence for one thing alone may leave out what is then plain.
          expect(slots(phrase), phrase).toEqual(expect.arrayContaining([...slots(text)]));
        }
        const several = texts(catalogue[phrase]).at(-1) ?? "";
        expect(slots(several), phrase).toEqual(slots(phrase));
      }
    });
  }

  it("do not stand in English in the Spanish catalogue", () => {
    const spanish = catalogueOf("es");
    const alike = PHRASES.filter((phrase) => texts(spanish[phrase]).includes(phrase) && /[a-z]{3}/.test(phrase));
    expect(alike.sort()).toEqual(["Error: ", "Total", "{part}: {rooms}"]);
  });

  it("say in America what is said there, the cautions too", () => {
    const american = catalogueOf("en-US");
    const left = PHRASES.flatMap((phrase) => texts(american[phrase])).filter((text) => BRITISH.test(text));
    expect(left).toEqual([]);
    expect(sayIn("en-US").given(CAUTIONS)).toContain("a qualified person must check exits");
  });

  it("that are said in the browser are all sent along", () => {
    const shared = ["components/plan/band.tsx", "components/desk/fees.tsx", "components/plan/caution.tsx"];
    // A layout under the hand has words of its own, which go with its code.
    const said = filesUnder("components").filter((path) => path.endsWith(".tsx") && !path.startsWith("components/plan/hand/") && (shared.includes(path) || readFileSync(path, "utf8").startsWith('"use client"')))
      .flatMap((path) => [...readFileSync(path, "utf8").matchAll(/\bsay\("((?:[^"\\]|\\.)*)"/g)].map((m) => m[1] ?? ""));
    expect(said.length).toBeGreaterThan(30);
    expect(said.filter((phrase) => !IN_THE_BROWSER.some((one) => one === phrase))).toEqual([]);
  });

  it("include every message of the steps' schemas", () => {
    const spanish = sayIn("es");
    const wrong = [
      STEP_SCHEMAS.guests.safeParse({ adults: "x", children: "-1", highChairs: "9" }), STEP_SCHEMAS.guests.safeParse({ adults: "0" }), STEP_SCHEMAS.guests.safeParse({ adults: "4999", children: "4999", wheelchairs: "9999999", quiet: "x" }),
      STEP_SCHEMAS.guests.safeParse({ adults: "2", children: "1", highChairs: "2", wheelchairs: "9", quiet: "9" }), STEP_SCHEMAS.ceremony.safeParse({ here: "x", seating: "x", aisle: "x", room: "X X" }),
      STEP_SCHEMAS.meal.safeParse({ service: "x", perTable: "x", turnover: "x" }), STEP_SCHEMAS.music.safeParse({ players: "x", dancing: "x" }), STEP_SCHEMAS.displays.safeParse({ displays: "x", wishes: "x" }), STEP_SCHEMAS.extras.safeParse({ notes: "x".repeat(10_001) }),
    ].flatMap((read) => read.error?.issues.map((issue) => issue.message) ?? []);
    expect(wrong.length).toBeGreaterThan(15);
    expect(wrong.filter((message) => spanish.given(message) === message)).toEqual([]);
  });

  it("tell one from several, and keep the figures of a sentence made elsewhere", () => {
    expect(sayIn("es")("{n} places", { n: 1 })).toBe("1 plaza");
    expect(sayIn("es")("{n} places", { n: 2 })).toBe("2 plazas");
    expect(ENGLISH("{n} places", { n: 1 })).toBe("1 place");
    expect(sayIn("en-US")("In metres")).toBe("In meters");
    expect(sayIn("es").given("Type a whole number from 0 to 5000, or leave it empty if you are not sure yet.")).toContain("de 0 a 5000");
    expect(sayIn("es").given("Something nobody translated.")).toBe("Something nobody translated.");
  });

  it("are chosen by the venue's locale, and its own habits of writing are kept while its language is read", () => {
    expect([languageOf("en-GB"), languageOf("en-US"), languageOf("en-IE"), languageOf("es-MX"), languageOf("de-DE")]).toEqual(["en-GB", "en-US", "en-GB", "es", "en-GB"]);
    expect([localeFor("es", "es-MX"), localeFor("es", "en-GB"), localeFor("en-GB", "en-IE"), localeFor("en-US", "en-GB"), localeFor("en-GB", "de-DE")]).toEqual(["es-MX", "es-ES", "en-IE", "en-US", "en-GB"]);
    expect(mannerOf({ locale: "en-US", lengths: "imperial" }, { lengths: "metric" })).toEqual({ language: "en-US", locale: "en-US", lengths: "metric" });
  });
});
