import { describe, expect, test } from "vitest";
import { printProposal } from "@/lib/print";
import { formsOf } from "@/lib/print/han";
import { shape } from "@/lib/print/runs";
import { briefFile, input, venue } from "../papers/fixture";
import { textOf } from "./read";

const font = { face: "serif", weight: "regular", italic: false } as const;
const forms = (names: readonly string[], more: { readonly words?: string; readonly locale?: string } = {}) => formsOf({ names, words: [more.words ?? ""], locale: more.locale ?? "en-GB" });
const now = new Date("2027-05-09T12:00:00Z");
const print = (couple: string[], more: object = {}) => { const base = input({ brief: briefFile({ couple, ...more }) }); return printProposal({ ...base, meta: { ...base.meta, now } }); };

describe("the country's forms of Chinese characters on a paper (Unicode, Han unification)", () => {
  test.each([
    ["kana in one of the couple's names", ["佐藤 美咲", "たかし"], {}, "japanese"],
    ["a letter that only Japanese writes", ["辻 直子", "Theo Brandt"], {}, "japanese"],
    ["kana in their words", ["山本 直子"], { words: "おばあさんの席は静かな所に" }, "japanese"],
    ["hangul in a name", ["金 書延", "김서연"], {}, "korean"],
    ["the venue's language", ["山本 直子"], { locale: "ja-JP" }, "japanese"],
    ["the venue's language", ["王 玥"], { locale: "zh-Hant-TW" }, "chinese"],
  ] as const)("are told by %s", (_, names, more, han) => {
    expect(forms(names, more)).toEqual({ han, known: true });
  });
  test("cannot be known from characters alone: the Chinese ones stand in, and it is said", () => {
    expect(forms(["山本 直子"])).toEqual({ han: "chinese", known: false });
    expect(forms(["Ines Calloway"])).toEqual({ han: "chinese", known: true });
  });
  test("decide the face of every line of the paper", () => {
    const face = (han: "chinese" | "japanese"): string => shape("直", font, han).runs[0]?.face.key ?? "";
    expect(face("japanese")).toMatch(/^biz/);
    expect(face("chinese")).not.toBe(face("japanese"));
  });
  test("are told on the proposal where they cannot be known, and only there", async () => {
    const said = "nothing written with them says whether they are Japanese or Korean";
    expect((await textOf((await print(["山本 直子", "Theo Brandt"])).bytes)).replace(/\s+/g, " ")).toContain(said);
    expect((await textOf((await print(["山本 直子", "たかし"])).bytes)).replace(/\s+/g, " ")).not.toContain(said);
    expect(venue().locale).toBe("en-GB");
  }, 60_000);
});
