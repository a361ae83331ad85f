import { languageOf } from "../pages";
import type { Entry, Voice } from "../pages/say";
import { voicesOf } from "../pages/voices";
import { es } from "./es";

/** A phrase of the proposal; the British one is the key. */
export type PaperPhrase = keyof typeof es;
type Some<T> = Readonly<Partial<Record<PaperPhrase, T>>>;

/** British phrases for one thing alone. */
const ones: Some<string> = {
  "{title}; {n} places": "{title}; {n} place", "{n} places for wheelchairs": "{n} place for a wheelchair", "{n} places each": "{n} place each", "{name} ({n} places, not the guests')": "{name} ({n} place, not the guests')",
  "{n} minutes with a crew of {crew}, by the venue's handling rates; {moves}.": "{n} minute with a crew of {crew}, by the venue's handling rates; {moves}.", "{n} moves": "{n} move", "Stack {n} chairs": "Stack {n} chair", "Put aside {n} pieces": "Put aside {n} piece",
  "{n} findings, to be put right before the day.": "{n} finding, to be put right before the day.", "{n} findings, better otherwise; yours and the venue's to weigh.": "{n} finding, better otherwise; yours and the venue's to weigh.", "{n} findings, worth knowing.": "{n} finding, worth knowing.", "{n} players": "{n} player",
};

/** Where American English says it otherwise. */
const us: Some<Entry> = {
  "To sit away from the loudspeakers": "To sit away from the speakers", "A comb, as an E": "A comb, like an E", "A top table with places on one side": "A head table with places on one side", "Down the centre": "Down the center",
  "favours": "favors", "appetiser tables": "appetizer tables", "Plays the ceremony too": "Plays at the ceremony too",
};

const isPhrase = (text: string): text is PaperPhrase => text in es;
export const PAPER_PHRASES: readonly PaperPhrase[] = Object.keys(es).filter(isPhrase);

export type PaperVoice = Voice<PaperPhrase>;
/** The voice that writes a proposal in a language. */
export const paperVoice = voicesOf({ es, us, ones }, PAPER_PHRASES);
/** The same, for the language of a locale. */
export const paperVoiceOf = (locale: string): PaperVoice => paperVoice(languageOf(locale));
