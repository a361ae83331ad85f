import type { es } from "./es";
import { ones } from "./english";
import type { Language } from "./language";

/** What the pages say. The British sentence is the key, so that pages read as they are read; `{name}` stands for a value. */
export type Phrase = keyof typeof es;
/** A sentence, or one for a single thing and one for several: which it is goes by the value `n`. */
export type Entry = string | { readonly one: string; readonly other: string };
export type Entries = Readonly<Record<string, Entry>>;
export type Values = Readonly<Record<string, string | number>>;
/** A voice: says a phrase of its catalogue in its language. */
export type Voice<P extends string> = {
  (phrase: P, values?: Values): string;
  readonly language: Language;
  /** A sentence that was made elsewhere, in British English: said in this language if the catalogue has it, figures taken over; else left. */
  readonly given: (text: string) => string;
};
/** The voice of the couple's pages. */
export type Say = Voice<Phrase>;

const LETTERS = "abcdef";

/** Makes a voice of a catalogue; a phrase that it lacks is said in British English. */
export function sayFrom<P extends string = Phrase>(entries: Entries, language: Language): Voice<P> {
  const plural = new Intl.PluralRules(language);
  const fill = (text: string, values: Values): string => {
    const found = entries[text] ?? text;
    const single = typeof found !== "string" && values["n"] !== undefined && plural.select(Number(values["n"])) === "one";
    const said = typeof found === "string" ? found : single ? found.one : found.other;
    return said.replace(/\{(\w+)\}/g, (whole, name: string) => (values[name] === undefined ? whole : String(values[name])));
  };
  const given = (text: string): string => {
    if (entries[text] !== undefined) return fill(text, {});
    const figures: string[] = [];
    const bare = text.replace(/\d[\d,.]*\d|\d/g, (figure) => { figures.push(figure); return `{${LETTERS[figures.length - 1] ?? "z"}}`; });
    if (entries[bare] === undefined) return text;
    return fill(bare, Object.fromEntries(figures.map((figure, i) => [LETTERS[i] ?? "z", figure])));
  };
  return Object.assign((phrase: P, values: Values = {}) => fill(phrase, values), { language, given });
}

/** British English needs no catalogue but the sentences for one thing alone. */
export const ENGLISH: Say = sayFrom(Object.fromEntries(Object.entries(ones).map(([other, one]) => [other, { one, other }])), "en-GB");
