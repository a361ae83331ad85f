import { ones, us } from "./english";
import { es } from "./es";
import type { Language } from "./language";
import { ENGLISH, sayFrom, type Entries, type Entry, type Phrase, type Say } from "./say";

const isPhrase = (text: string): text is Phrase => text in es;
export const PHRASES: readonly Phrase[] = Object.keys(es).filter(isPhrase);

function entry(language: Language, phrase: Phrase): Entry {
  if (language === "es") return es[phrase];
  const american = language === "en-US" ? us[phrase] : undefined;
  if (american !== undefined) return american;
  const one = ones[phrase];
  return one === undefined ? phrase : { one, other: phrase };
}

/** A language's catalogue, or of it what is asked for. */
export const catalogueOf = (language: Language, phrases: readonly Phrase[] = PHRASES): Entries =>
  Object.fromEntries(phrases.map((phrase) => [phrase, entry(language, phrase)]));

const made = new Map<Language, Say>();
/** The voice of a language. */
export function sayIn(language: Language): Say {
  if (language === "en-GB") return ENGLISH;
  const known = made.get(language);
  if (known) return known;
  const say = sayFrom(catalogueOf(language), language);
  made.set(language, say);
  return say;
}
