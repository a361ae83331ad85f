export { isLanguage, isLengthSystem, LANGUAGES, languageOf, localeFor, mannerOf, type Chosen, type Language, type LengthSystem, type Manner } from "./language";
export { ENGLISH, type Entries, type Entry, type Phrase, type Say, type Values } from "./say";
export { catalogueOf, PHRASES, sayIn } from "./catalogues";
