/** The Spanish "y" is "e" before what sounds as an i (RAE, Diccionario panhispánico de dudas: "y"); ICU leaves accented ones and names out. */
const E_BEFORE = / y (?=(?:[iíIÍ]|[hH][iíIÍ])(?![aeouáéóú]))(?!.* y )/u;

/** "a, b and c", as a locale has it. */
export function listText(words: readonly string[], locale: string): string {
  const said = new Intl.ListFormat(locale, { type: "conjunction" }).format(words);
  return locale.startsWith("es") && words.length > 1 ? said.replace(E_BEFORE, " e ") : said;
}
