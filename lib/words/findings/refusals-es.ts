import { listText } from "../lists";
import type { Catalogue, Say } from "./index";

const PART: Readonly<Record<string, string>> = { ceremony: "la ceremonia", drinks: "el cóctel", meal: "la comida", dancing: "el baile" };
const part = (s: Say): string => PART[s.part] ?? s.part;
const use = (s: Say): string => (s.text("use") === "dining" ? "comer" : part(s));
const KIND: Readonly<Record<string, string>> = { rows: "sillas en filas", tables: "mesas", standing: "todos de pie" };
const kinds = (s: Say): string => s.text("kind").split("/").map((one) => KIND[one] ?? one).join(" o ");
const TABLES: Readonly<Record<string, string>> = { rounds: "mesas redondas", long: "mesas largas" };
const PIECE: Readonly<Record<string, string>> = { "dance-floor": "pista de baile", dj: "DJ", band: "grupo", buffet: "bufé", bar: "barra", "second-bar": "segunda barra" };
const pieces = (s: Say): string => listText(s.words("pieces").map((one) => PIECE[one] ?? one), "es");
const rooms = (s: Say): string => listText(s.rooms("rooms"), "es");

const guests = (n: number): string => (n === 1 ? "1 invitado" : `${n} invitados`);
const ways = (n: number): string => (n === 1 ? "1 salida" : `${n} salidas`);
const tooMany = (n: number): string => (n === 1 ? "sobra 1" : `sobran ${n}`);
const tooFew = (n: number): string => (n === 1 ? "falta 1" : `faltan ${n}`);
const over = (s: Say): string => tooMany(s.measured - s.limit);
const under = (s: Say): string => tooFew(s.limit - s.measured);
const FORMS: Readonly<Record<string, string>> = { u: "Una herradura", e: "Un peine de mesas", t: "Una T de mesas", "hollow-square": "Un cuadrado abierto" };
const largest = (s: Say): string => `${part(s)} es para ${guests(s.measured)}; ${s.room("room")}${s.has("largest") ? ", la mayor sala para ello," : ""}`;
const drawn = (s: Say): string => (s.has("drape") ? " con la cortina corrida" : "");

/** Why nothing can be, and what a search did not find, in Spanish. */
export const refusals: Catalogue = {
  "bound-room": (s) => `Se pidió ${s.room("room")} para ${part(s)}, y no está entre las salas de ${s.pack()}.`,
  "bound-use": (s) => (s.has("room") ? `${s.room("room")} no se alquila para ${use(s)}.` : `Ninguna sala de ${s.pack()} se alquila para ${use(s)}.`),
  "bound-exits": (s) => {
    const where = s.has("room") ? `desde ${s.room("room")} se llega a ${s.measured}` : `desde ninguna sala para ello se llega a más de ${s.measured}`;
    return s.number("people") === 0 ? `Desde ninguna sala para ${part(s)} se llega a una salida.` : `${part(s)} es para ${guests(s.number("people"))}, que necesitan ${ways(s.limit)}; ${where}.`;
  },
  "bound-route": (s) => `Viene alguien en silla de ruedas, y a ${s.has("room") ? `${s.room("room")} no` : `ninguna sala para ${part(s)}`} llega un camino desde la calle sin escalones y con puertas de ${s.mm("door")}.`,
  "bound-posted": (s) => `${largest(s)} admite ${s.limit} con ${kinds(s)}${drawn(s)}, según su aforo autorizado: ${over(s)}.`,
  "bound-densest": (s) => `${largest(s)} tiene ${s.area("area")}${drawn(s)}, donde caben ${s.limit} por juntos que estén: ${over(s)}.`,
  "bound-area": (s) => `${largest(s)} no tiene aforo autorizado, y sus ${s.area("area")}${drawn(s)} cuentan para ${s.limit} a ${s.exactArea("each")} por invitado: ${over(s)}.`,
  "bound-rooms": (s) => `${part(s)} es para ${guests(s.measured)}; ${rooms(s)} juntas admiten ${s.limit}: ${over(s)}.`,
  "bound-floor": (s) => `${s.number("dancers")} bailando a la vez necesitan ${s.area("need")} de pista; la mayor sala de baile tiene ${s.area("area")} en total.`,
  "bound-tables": (s) => {
    const couple = s.number("extra") > 0 ? `, y la mesa de los novios a ${s.number("extra")} más` : "";
    return `${part(s)} es para ${guests(s.measured)}; las ${s.number("count")} ${TABLES[s.text("tables")] ?? "mesas"} de la casa sientan como mucho a ${s.number("places")}${couple}: ${over(s)}.`;
  },
  "bound-chairs": (s) => `${part(s)} necesita ${s.measured} sillas; la casa ${s.limit === 0 ? "no tiene ninguna" : `tiene ${s.limit}: ${tooFew(s.measured - s.limit)}`}.`,
  "bound-dance-panels": (s) => `La pista pedida ocupa ${s.exactArea("needed")}; todos los paneles de la casa juntos hacen ${s.exactArea("owned")}: faltan ${s.exactArea("short")}.`,
  "bound-form": (s) => `${FORMS[s.text("form")] ?? "La forma pedida"} se hace con ${s.limit} mesas largas unidas por los extremos, como mínimo; ${s.has("rounds") ? "se pidieron mesas redondas" : `la casa ${s.measured === 0 ? "no tiene ninguna que se una" : `tiene ${s.measured} que se unen`}`}.`,
  "bound-at-tables": () => "La ceremonia sería en las mesas puestas, y no se pidió ninguna comida para la que ponerlas.",
  "bound-drape": (s) => `Se pidió correr una cortina, y entre las salas de ${s.pack()} no hay ninguna.`,
  "bound-buffet": (s) => `Se pidió un bufé o puestos de comida, y ninguna sala de ${s.pack()} se alquila para ello.`,
  "places-not-found": (s) => {
    if (s.measured > 0) return `La disposición más llena que se halló, en ${rooms(s)}, tiene sitio para ${s.measured} de los ${s.limit} invitados: ${under(s)}.`;
    if (s.has("topPlaces")) return `No se halló sitio en ${rooms(s)} para una mesa presidencial de ${s.number("topPlaces")} en fila${s.has("run") ? `, que mide ${s.mm("run")}` : ""}.`;
    return s.has("pieces") ? `No se halló manera de poner mesas en ${rooms(s)} junto con lo demás que se pidió allí: ${pieces(s)}.` : `No se halló sitio en ${rooms(s)} para ninguna mesa con sus plazas.`;
  },
  "rows-not-found": (s) => s.has("chairs") ? `La ceremonia es para ${guests(s.limit)}; puesta la comida en otra sala, quedan ${s.number("chairs")} de las ${s.number("owned")} sillas de la casa para filas en ${s.room("room")}: ${under(s)}.` : `No se halló manera de poner filas para los ${guests(s.limit)} de la ceremonia en ${s.room("room")}${s.measured > 0 ? `; como mucho tuvieron sitio ${s.measured}: ${under(s)}` : ""}.`,
  "pieces-not-found": (s) => `No se halló lugar en ${s.room("room")} para lo que se pidió allí: ${pieces(s)}.`,
  "no-plan-found": (s) => {
    if (!s.has("meal")) return "No se halló manera de repartir las salas entre las partes del día.";
    const must = s.has("by") ? `y ${s.text("by") === "package" ? `${s.pack()} no incluye cambiar el montaje de una sala` : "se pidió no cambiar el montaje de ninguna sala"}` : "";
    return s.has("room") ? `Solo en ${s.room("room")} caben la ceremonia y la comida, ${must}.` : `No se halló manera de dar una sala a la ceremonia, otra a la comida y otra al baile${must ? `, ${must}` : ""}.`;
  },
  "wet-twin": (s) => `No se encontró distribución para el mismo día sin ${s.rooms("rooms").join(" ni ")}, por la lluvia.`,
};
