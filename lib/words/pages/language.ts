/** The languages that the couple's pages speak. */
export const LANGUAGES = ["en-GB", "en-US", "es"] as const;
export type Language = (typeof LANGUAGES)[number];
export const isLanguage = (text: string | undefined): text is Language => LANGUAGES.some((one) => one === text);

export type LengthSystem = "metric" | "imperial";
export const isLengthSystem = (text: string | undefined): text is LengthSystem => text === "metric" || text === "imperial";

const known = new Map<string, Language>();
/** The language of a locale (BCP 47): its own where there is a catalogue, else British English. Asked for every sentence, so it is remembered. */
export function languageOf(locale: string): Language {
  const language = known.get(locale) ?? readLanguage(locale);
  known.set(locale, language);
  return language;
}
function readLanguage(locale: string): Language {
  const { language, region } = new Intl.Locale(locale);
  if (language === "es") return "es";
  return language === "en" && region === "US" ? "en-US" : "en-GB";
}

/**
 * The locale by which figures, money and days are written: the venue's own as long as its language is the one read, so that
 * Irish or Mexican habits are kept; else the language's commonest.
 */
export function localeFor(language: Language, venueLocale: string): string {
  if (languageOf(venueLocale) === language && new Intl.Locale(venueLocale).language === language.slice(0, 2)) return venueLocale;
  return language === "es" ? "es-ES" : language;
}

/** What a reader chose; what was left open goes by the venue. */
export type Chosen = { readonly language?: Language; readonly lengths?: LengthSystem };
export type Manner = { readonly language: Language; readonly locale: string; readonly lengths: LengthSystem };

/** How a reader of a venue's pages is spoken to. */
export function mannerOf(venue: { readonly locale: string; readonly lengths: LengthSystem }, chosen: Chosen): Manner {
  const language = chosen.language ?? languageOf(venue.locale);
  return { language, locale: localeFor(language, venue.locale), lengths: chosen.lengths ?? venue.lengths };
}
