import type { Han } from "./faces";

/** Letters that only Japanese writes so: signs of its own making and forms that neither Chinese writing has (from memory, unconfirmed). */
const JAPANESE_ONLY = /[々〆ヶ辻込畑峠働匂榊凪凧笹枠栃雫麿籾沢辺斎桜竜黒渋広恵徳関塩豊鉄歳]/u;
const KANA = /[\p{Script=Hiragana}\p{Script=Katakana}]/u, HANGUL = /\p{Script=Hangul}/u, LETTER = /\p{Script=Han}/u;

const LANGUAGES: Readonly<Record<string, Han>> = { ja: "japanese", ko: "korean", zh: "chinese" };

/** Which forms Chinese characters take on a paper: `known` is false where nothing written on it tells, and the Chinese forms stand in. */
export type Forms = { readonly han: Han; readonly known: boolean };

/**
 * One code stands for a character in all its national forms (Unicode 16.0, chapter 18.1, Han unification), so that it must be told by what
 * is written beside it: kana, hangul or letters of one country alone in the couple's own names, then in their words, then the venue's language.
 */
export function formsOf(written: { readonly names: readonly string[]; readonly words: readonly string[]; readonly locale: string }): Forms {
  const told = (texts: readonly string[]): Han | undefined => {
    const all = texts.join(" ");
    return KANA.test(all) || JAPANESE_ONLY.test(all) ? "japanese" : HANGUL.test(all) && LETTER.test(all) ? "korean" : undefined;
  };
  const han = told(written.names) ?? told(written.words) ?? LANGUAGES[written.locale.split("-")[0]?.toLowerCase() ?? ""];
  const asked = LETTER.test([...written.names, ...written.words].join(" "));
  return { han: han ?? "chinese", known: han !== undefined || !asked };
}
