import type { Language } from "../pages/language";

/** What the engine calls the pieces that it lays, and what they are called in Spanish. What the venue or a hand named is none of these and stays as it is. */
const LABELS: Readonly<Record<string, string>> = {
  couple: "Novios", "couple’s table": "Mesa de los novios", "top table": "Mesa presidencial", suppliers: "Proveedores", bar: "Barra", "second bar": "Segunda barra", dj: "DJ", band: "Grupo", "dance floor": "Pista de baile", buffet: "Bufé",
  "high table": "Mesa alta", chair: "Silla", "wheelchair space": "Sitio para silla de ruedas", cake: "Tarta", welcome: "Bienvenida", "welcome table": "Mesa de bienvenida", cards: "Tarjetas", "cards and gifts": "Tarjetas y regalos",
  "guest book": "Libro de firmas", photographs: "Fotografías", favours: "Recuerdos", "seating plan": "Plano de asientos", "photo booth": "Fotomatón", appetisers: "Bocados", "children's corner": "Rincón de los niños", lounge: "Rincón de descanso",
  ceremony: "Ceremonia", drinks: "Cóctel", meal: "Comida", dancing: "Baile",
};
const AMERICAN: Readonly<Record<string, string>> = { favours: "Favors", appetisers: "Appetizers", "top table": "Head table" };
const NUMBERED: readonly (readonly [RegExp, string])[] = [[/^Table (\d+[a-z]?)$/, "Mesa $1"], [/^Row (\d+), chair (\d+)$/, "Fila $1, silla $2"]];

/** Small where the piece is told within a list. */
const like = (text: string, said: string): string => (/^\p{Ll}/u.test(text) && !/^[A-Z]{2}/.test(said) ? `${said.charAt(0).toLowerCase()}${said.slice(1)}` : said);

/** A piece's label, or the title of a part of the day, in a language. */
export function labelIn(label: string, language: Language): string {
  if (language === "en-GB") return label;
  if (language === "es") for (const [form, said] of NUMBERED) if (form.test(label)) return label.replace(form, said);
  const words = language === "es" ? LABELS : AMERICAN;
  return label.split(", ").map((part) => { const said = words[part.toLowerCase()]; return said === undefined ? part : like(part, said); }).join(", ");
}
