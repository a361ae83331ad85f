/** The Spanish "y" is "e" before what sounds as an i (RAE, Diccionario panhispánico de dudas: "y"); ICU leaves accented ones and names out. */
const E_BEFORE = / y (?=(?:[iíIÍ]|[hH][iíIÍ])(?![aeouáéóú]))(?!.* y )/u;

/** "a, b and c" in British English, written out: such words are in the engine's bytes, which no table of the machine's may change. */
export const britishList = (words: readonly string[]): string => (words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1) ?? ""}`);

/** "a, b and c", as a locale has it. */
export function listText(words: readonly string[], locale: string): string {
  const said = new Intl.ListFormat(locale, { type: "conjunction" }).format(words);
  return locale.startsWith("es") && words.length > 1 ? said.replace(E_BEFORE, " e ") : said;
}
