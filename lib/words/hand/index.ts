import { languageOf, type Language } from "../pages/language";
import type { Voice } from "../pages/say";
import { voicesOf } from "../pages/voices";
import { es } from "./es";

/** A phrase about a layout under the hand; the British one is the key. */
export type HandPhrase = keyof typeof es;
type Some<T> = Readonly<Partial<Record<HandPhrase, T>>>;

/** British phrases for one thing alone. */
const ones: Some<string> = {
  "Put right: {n} pieces moved": "Put right: {n} piece moved", "{n} places": "{n} place", "{n} chairs in rows": "{n} chair in rows", "{n} changes": "{n} change",
};

const isPhrase = (text: string): text is HandPhrase => text in es;
export const HAND_PHRASES: readonly HandPhrase[] = Object.keys(es).filter(isPhrase);

export type HandVoice = Voice<HandPhrase>;
const voice = voicesOf({ es, ones }, HAND_PHRASES);
/** The voice that speaks of a layout under the hand, in a language; and by a locale. */
export const handVoice = (language: Language): HandVoice => voice(language);
export const handVoiceOf = (locale: string): HandVoice => voice(languageOf(locale));
