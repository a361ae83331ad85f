import { ones, us } from "./english";
import { es } from "./es";
import type { Language } from "./language";
import { ENGLISH, type Entries, type Phrase, type Say } from "./say";
import { entriesOf, voicesOf } from "./voices";

const isPhrase = (text: string): text is Phrase => text in es;
export const PHRASES: readonly Phrase[] = Object.keys(es).filter(isPhrase);

/** A language's catalogue, or of it what is asked for. */
export const catalogueOf = (language: Language, phrases: readonly Phrase[] = PHRASES): Entries => entriesOf({ es, us, ones }, language, phrases);

const voice = voicesOf({ es, us, ones }, PHRASES);
/** The voice of a language. */
export const sayIn = (language: Language): Say => (language === "en-GB" ? ENGLISH : voice(language));
