import type { Language } from "./language";
import { sayFrom, type Entries, type Entry, type Voice } from "./say";

/** What is said in all languages: Spanish has every phrase, the others what differs from the British sentence, which is the key. */
export type Catalogues<P extends string> = {
  readonly es: Readonly<Record<P, Entry>>; readonly us?: Readonly<Partial<Record<P, Entry>>>;
  /** British sentences for one thing alone. */
  readonly ones?: Readonly<Partial<Record<P, string>>>;
};

function entry<P extends string>({ es, us, ones }: Catalogues<P>, language: Language, phrase: P): Entry {
  if (language === "es") return es[phrase];
  const american = language === "en-US" ? us?.[phrase] : undefined;
  if (american !== undefined) return american;
  const one = ones?.[phrase];
  return one === undefined ? phrase : { one, other: phrase };
}

/** Of a language's catalogue what is asked for. */
export const entriesOf = <P extends string>(all: Catalogues<P>, language: Language, phrases: readonly P[]): Entries =>
  Object.fromEntries(phrases.map((phrase) => [phrase, entry(all, language, phrase)]));

/** The voices that speak from catalogues, each made once. */
export function voicesOf<P extends string>(all: Catalogues<P>, phrases: readonly P[]): (language: Language) => Voice<P> {
  const made = new Map<Language, Voice<P>>();
  return (language) => {
    const voice = made.get(language) ?? sayFrom<P>(entriesOf(all, language, phrases), language);
    made.set(language, voice);
    return voice;
  };
}
