import type { Catalogue, Say } from "./index";

const PART: Readonly<Record<string, string>> = { ceremony: "la ceremonia", drinks: "el cóctel", meal: "la comida", dancing: "el baile" };
const part = (s: Say): string => PART[s.part] ?? s.part;
const use = (s: Say): string => (s.text("use") === "dining" ? "comer" : part(s));
const KIND: Readonly<Record<string, string>> = { rows: "sillas en filas", tables: "mesas", standing: "gente de pie" };
const kinds = (s: Say): string => s.text("kind").split("/").map((one) => KIND[one] ?? one).join(" o ");
const TABLES: Readonly<Record<string, string>> = { rounds: "mesas redondas", long: "mesas largas" };
/** Rooms as the engine joins them. */
const rooms = (s: Say): string => s.text("rooms").replaceAll(" and ", " y ");

/** Why nothing can be, and what a search did not find, in Spanish. */
export const refusals: Catalogue = {
  "bound-room": (s) => `Se pidió ${s.room("room")} para ${part(s)}, y ${s.pack()} no la incluye.`,
  "bound-use": (s) => (s.has("room") ? `${s.room("room")} no se alquila para ${use(s)}.` : `Ninguna sala de ${s.pack()} se alquila para ${use(s)}.`),
  "bound-exits": (s) => `${s.number("people")} invitados necesitan ${s.limit} salidas; desde cualquier sala para ${part(s)} se llega como mucho a ${s.measured}.`,
  "bound-route": (s) => `Ninguna salida de una sala para ${part(s)} tiene puertas de ${s.mm("door")} sin escalones, así que no puede entrar una silla de ruedas.`,
  "bound-posted": (s) => `${s.measured} invitados en ${part(s)}; el aforo autorizado admite ${s.limit} en ${s.room("room")} con ${kinds(s)}.`,
  "bound-densest": (s) => `${s.measured} invitados en ${part(s)}; los ${s.area("area")} de ${s.room("room")} admiten ${s.limit} en lo más denso que se autoriza.`,
  "bound-area": (s) => `${s.measured} invitados en ${part(s)}; ${s.room("room")} no tiene aforo autorizado, y sus ${s.area("area")} admiten ${s.limit} a ${s.exactArea("each")} cada uno.`,
  "bound-rooms": (s) => `${s.measured} invitados en ${part(s)}; las ${s.number("rooms")} salas juntas admiten ${s.limit}.`,
  "bound-floor": (s) => `${s.number("dancers")} bailarines necesitan ${s.area("need")} de pista; la mayor sala de baile tiene ${s.area("area")}.`,
  "bound-tables": (s) => `${s.measured} invitados en ${part(s)}; las ${s.number("count")} ${TABLES[s.text("tables")] ?? "mesas"} de la casa sientan como mucho a ${s.number("places")}${s.number("extra") > 0 ? `, y la mesa de los novios a ${s.number("extra")} más` : ""}.`,
  "bound-chairs": (s) => `En ${part(s)} hacen falta ${s.measured} sillas; la casa ${s.limit === 0 ? "no tiene ninguna" : `tiene ${s.limit}`}.`,
  "bound-dance-panels": (s) => `La pista pedida ocupa ${s.exactArea("needed")}; todos los paneles de la casa juntos hacen como mucho ${s.exactArea("owned")}.`,
  "bound-drape": (s) => `Se pidió correr una cortina; ${s.pack()} no tiene dos salas con una cortina entre ellas.`,
  "bound-buffet": (s) => `Se pidió un bufé o puestos de comida; ${s.pack()} no incluye ninguna sala que se alquile para ello.`,
  "places-not-found": (s) => (s.measured > 0 ? `No se sentó a todos: la disposición más llena hallada en ${rooms(s)} tiene ${s.measured} de ${s.limit} plazas.`
    : s.has("topPlaces") ? `No se halló sitio en ${rooms(s)} para una mesa presidencial de ${s.number("topPlaces")} en fila.` : `No se halló sitio en ${rooms(s)} para ninguna mesa con sus plazas.`),
  "rows-not-found": (s) => `No se halló manera de poner filas para los ${s.limit} invitados de la ceremonia en ${s.text("room")}.`,
  "pieces-not-found": (s) => `No se halló sitio en ${s.text("room")} para la pista, la música, la barra y el bufé juntos.`,
  "no-plan-found": (s) => (s.has("meal") ? "Sin cambiar el montaje de una sala no se halló manera de dar sala a la ceremonia, la comida y el baile." : "No se halló manera de repartir las salas entre las partes del día."),
  "wet-twin": (s) => `No se encontró distribución para el mismo día sin ${s.text("rooms").replaceAll(", ", " ni ")}, por la lluvia.`,
};
