import type { Catalogue, Say } from "./index";

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
const people = (n: number): string => count(n, "persona");
const places = (n: number): string => count(n, "sitio");

const body = (s: Say, key: "a" | "b"): string => {
  const name = s.piece(key), is = s.text(`${key}Is`);
  if (is === "chair") return `una silla de ${name}`;
  return is === "wheelchair" ? `el sitio de silla de ruedas de ${name}` : name;
};
const KIND: Readonly<Record<string, string>> = { rows: "sillas en filas", tables: "mesas", standing: "de pie", "tables/standing": "mesas o de pie" };
const kind = (s: Say): string => KIND[s.text("kind")] ?? s.text("kind");
const USE: Readonly<Record<string, string>> = {
  ceremony: "la ceremonia", dining: "comer", dancing: "bailar", buffet: "un bufé", plating: "emplatar", drinks: "el aperitivo", lounge: "estar",
};
const use = (s: Say): string => USE[s.text("use")] ?? s.text("use");
const SCENE: Readonly<Record<string, string>> = { ceremony: "la ceremonia", drinks: "el aperitivo", meal: "la comida", dancing: "el baile" };
const part = (s: Say, key: string): string => SCENE[s.text(key)] ?? s.text(key);
/** "de" before what begins with "el" becomes "del". */
const of = (words: string): string => (words.startsWith("el ") ? `del ${words.slice(3)}` : `de ${words}`);
const to = (words: string): string => (words.startsWith("el ") ? `al ${words.slice(3)}` : `a ${words}`);
const WHAT: Readonly<Record<string, string>> = {
  welcome: "una mesa de bienvenida", cards: "una mesa para tarjetas y regalos", "guest-book": "el libro de firmas", photographs: "las fotografías", cake: "la mesa de la tarta",
  "seating-plan": "el plano de asientos", favours: "los detalles", "photo-booth": "un fotomatón", lounge: "muebles de estar", "cocktail-tables": "mesas altas",
  appetisers: "una mesa de aperitivos", "children-corner": "un rincón infantil", "second-bar": "una segunda barra", buffet: "el bufé", stations: "los puestos de comida",
  dj: "el DJ", band: "la banda", top: "una mesa para los novios", bar: "la barra", "dance-floor": "la pista de baile",
  window: "una ventana", door: "una puerta", wall: "una pared", feature: "una pared vistosa", terrace: "la terraza",
};
const what = (s: Say): string => (s.text("what") === "brought" ? s.text("name") : (WHAT[s.text("what")] ?? s.text("what")));
const where = (s: Say): string => WHAT[s.text("where")] ?? s.text("where");
const OBSTACLE: Readonly<Record<string, string>> = { column: "una columna", fixed: "un elemento fijo", stair: "una escalera", hearth: "una chimenea", other: "algo construido" };

/** Findings in Spanish, one sentence a code. */
export const es: Catalogue = {
  overlap: (s) => s.text("a") === s.text("b") ? `Dos sillas de ${s.piece("a")} se solapan ${s.mm("depth")}.` : `${body(s, "a")} y ${body(s, "b")} se solapan ${s.mm("depth")}.`,
  "outside-room": (s) => `${body(s, "a")} sobresale ${s.mm("by")} del suelo de ${s.room("room")}.`,
  "unknown-room": (s) => `No hay ninguna sala «${s.text("room")}» en este lugar${s.text("a") ? `, donde debería estar ${s.piece("a")}` : ""}.`,
  "on-obstacle": (s) => `${body(s, "a")} entra ${s.mm("by")} en ${OBSTACLE[s.text("what")] ?? s.text("what")} (${s.text("obstacle")}).`,
  "on-keep-clear": (s) => `${body(s, "a")} entra ${s.mm("by")} en suelo que se mantiene libre: ${s.text("what")}.`,
  "door-clear": (s) => `${body(s, "a")} entra ${s.mm("by")} en el suelo libre de una puerta${s.has("exit") ? " de salida" : ""}, en ${s.room("room")}.`,
  "seat-offset": (s) => `El sitio ${s.number("seat")} de ${s.piece("a")} está a ${s.mm("off")} del borde de la mesa al centro del asiento; se pide de ${s.mm("near")} a ${s.mm("far")}.`,
  "seat-facing": (s) => `El sitio ${s.number("seat")} de ${s.piece("a")} mira ${s.number("past")}° fuera de la mesa.`,
  "table-places": (s) => `${s.piece("a")} está puesta para ${s.number("places")} y admite ${s.number("most")} como máximo.`,
  "table-gap": (s) => `${s.piece("a")} y ${s.piece("b")} están a ${s.mm("gap")} donde un sitio da a la otra; ${s.mm("limit")} es lo mínimo.`,
  "wall-gap": (s) => `${s.piece("a")} está a ${s.mm("gap")} de ${s.text("kind") === "wall" ? "la pared" : s.text("kind") === "obstacle" ? "lo construido" : s.piece("b")} detrás de sus sitios; ${s.mm("limit")} es lo mínimo.`,
  "table-comfort": (s) => `${count(s.number("count"), "hueco")} entre mesas por debajo de ${s.mm("limit")}, que es lo cómodo; el más estrecho es de ${s.mm("gap")}, en ${s.piece("a")}.`,
  "wall-comfort": (s) => `${count(s.number("count"), "mesa")} con menos de ${s.mm("limit")} detrás de un sitio, que es lo cómodo; lo más estrecho es ${s.mm("gap")}, en ${s.piece("a")}.`,
  "end-wall": (s) => `El extremo de ${s.piece("a")} está a ${s.mm("gap")} de lo que tiene enfrente; ${s.mm("limit")} es lo mínimo.`,
  "end-end": (s) => `Los extremos de ${s.piece("a")} y ${s.piece("b")} están a ${s.mm("gap")}: únalos o deje ${s.mm("limit")}.`,
  "row-clear": (s) => `${s.piece("a")} tiene ${s.mm("clear")} libres delante; ${s.mm("limit")} es lo mínimo.`,
  "row-long": (s) => `Una fila de ${s.number("chairs")} sillas sin pasillo; ${s.number("limit")} es lo máximo.`,
  "row-narrow": (s) => `Una fila de ${s.number("chairs")} sillas, abierta por ${s.number("ends") === 2 ? "ambos extremos" : "un extremo"}, tiene ${s.mm("clear")} libres delante; ${s.mm("limit")} es lo mínimo.`,
  accessway: (s) => `${places(s.number("places"))} en ${s.piece("a")} y cerca están hasta a ${s.mm("distance")} de un pasillo; el paso hasta allí debe medir ${s.mm("limit")}.`,
  "centre-aisle": (s) => `El pasillo central mide ${s.mm("width")}, recto y libre; ${s.mm("limit")} es lo mínimo para tantos asientos.`,
  stock: (s) => `Se usan ${s.number("used")} de «${s.text("name")}»; el lugar tiene ${s.number("owned")}.`,
  "stock-chairs": (s) => `Hacen falta ${count(s.number("used"), "silla")}; el lugar tiene ${s.number("owned")}.`,
  "stock-size": (s) => `${s.piece("a")} no tiene el tamaño de «${s.text("name")}».`,
  "unknown-stock": (s) => `El lugar no tiene «${s.text("stock")}».`,
  "unknown-standing": (s) => `El lugar no tiene ningún mueble fijo «${s.text("standing")}».`,
  "standing-twice": (s) => `${s.text("name")} está en dos sitios a la vez.`,
  "standing-size": (s) => `${s.text("name")} está dibujado con un tamaño que no es el suyo.`,
  "standing-fixed": (s) => `${s.text("name")} no se puede mover.`,
  "standing-gone": (s) => `${s.text("name")} no se puede mover, y ${s.room("room")} está dibujada sin ello.`,
  "same-id": (s) => `Dos piezas llevan el nombre «${s.text("a")}».`,
  "way-out": (s) => `Desde ${s.number("places") === 1 ? "un sitio" : places(s.number("places"))} de ${s.piece("a")} un paso de ${s.mm("width")} llega a ${s.number("found") === 0 ? "ninguna salida" : count(s.number("found"), "salida")}; hacen falta ${s.number("needed")}${s.has("narrow") ? `; el punto más estrecho mide ${s.mm("narrow")}` : ""}.`,
  "exit-count": (s) => `${people(s.number("people"))} necesitan ${count(s.number("needed"), "salida")}; se llega a ${s.number("found")}.`,
  "exit-width": (s) => s.has("shut")
    ? `Con la salida más ancha cerrada quedan ${s.mm("width")} de puertas para ${people(s.number("people"))}; se piden ${s.mm("limit")}.`
    : `Las salidas suman ${s.mm("width")} para ${people(s.number("people"))}; se piden ${s.mm("limit")}.`,
  drain: (s) => `${people(s.number("people"))} sentadas en ${s.room("room")} salen por ${count(s.number("doors"), "puerta")} de ${s.mm("width")} en total${s.has("shut") ? " con una salida cerrada" : ""}; se piden ${s.mm("limit")}.`,
  "exits-apart": (s) => `Las puertas entre las que elegir distan ${s.mm("apart")} como máximo; para ${people(s.number("people"))} en salas de ${s.mm("span")} de punta a punta se piden ${s.mm("limit")}.`,
  travel: (s) => `${places(s.number("places"))} en ${s.piece("a")} y cerca están a ${s.mm("distance")} o más, andando, de la salida más próxima; ${s.mm("limit")} es lo máximo.`,
  "common-path": (s) => `${places(s.number("places"))} en ${s.piece("a")} y cerca están a ${s.mm("distance")} o más, andando, de un suelo donde elegir entre dos salidas; ${s.mm("limit")} es lo máximo.`,
  "crowd-managers": (s) => `Se esperan ${people(s.number("people"))}: se piden ${s.number("needed")} responsables de sala.`,
  "route-turn": (s) => `Una silla de ruedas tiene que dar la vuelta alrededor del extremo de ${s.piece("a")}: ${s.mm("gap")} en la vuelta y ${s.mm("side")} al lado; se piden ${s.mm("turn")} y ${s.mm("beside")}, o ${s.mm("wide")} en la vuelta.`,
  "route-passing": (s) => `A menos de ${s.mm("every")} del sitio de silla de ruedas de ${s.piece("a")} no hay un suelo de ${s.mm("wide")} en cuadro donde se crucen dos sillas.`,
  turning: (s) => `Una silla de ruedas no puede girar cerca de su sitio en ${s.piece("a")}: el suelo para un círculo de ${s.mm("wide")}, o para una T, ${s.has("distance") ? `queda a ${s.mm("distance")} o más` : "no está en ninguna parte de su camino"}; ${s.mm("limit")} es lo más que se debería ir marcha atrás.`,
  "toilets-steps": () => "Todas las puertas a los aseos tienen escalones, y viene alguien en silla de ruedas.",
  "toilets-route": (s) => `Ningún camino de ${s.mm("width")} (${s.mm("door")} en las puertas) lleva de aquí a los aseos.`,
  "accessible-places": (s) => `${places(s.number("found"))} de ${s.number("seats")} dan a un camino bastante ancho para una silla de ruedas; se piden ${s.number("needed")}.`,
  "wheelchairs-together": (s) => `Los ${s.number("places")} sitios de silla de ruedas están en ${s.piece("a")}; repartidos entre las mesas dan a elegir.`,
  "wheelchair-spaces": (s) => `${count(s.number("seats"), "asiento")} en filas con ${count(s.number("spaces"), "espacio")} para silla de ruedas; con asientos fijos se pedirían ${s.number("needed")}.`,
  companion: (s) => `No hay silla para un acompañante junto a ${s.piece("a")}.`,
  "rows-fastened": (s) => `${count(s.number("chairs"), "silla")} en filas, más de ${s.number("from")}: se unen entre sí en ${s.has("most") ? `tramos de ${s.number("least")} a ${s.number("most")}` : `grupos de ${s.number("least")} o más`}.`,
  "aisle-width": (s) => `Un pasillo entre las filas mide ${s.mm("width")} y sirve a ${places(s.number("served"))}; ${s.mm("limit")} es lo mínimo.`,
  "stretch": (s) => `Los caminos más cortos de salida de ${count(s.number("people"), "persona")} pasan ${s.has("b") ? `entre ${s.piece("a")} y ${s.piece("b")}` : `entre ${s.piece("a")} y la pared`}, donde quedan libres ${s.mm("width")}; para tantas se piden ${s.mm("limit")}.`,
  "front-strip": (s) => `Entre la primera fila y la pared de enfrente hay ${s.mm("depth")}; se piden ${s.mm("limit")} para los novios y quien los casa.`,
  queue: (s) => `Delante de ${s.piece("a")} quedan libres ${s.mm("gap")} ${s.has("b") ? `hasta ${s.piece("b")}` : "hasta la pared"}; quienes esperan ocupan ${s.mm("limit")}.`,
  "circuit-load": (s) => `Lo enchufado en el circuito ${s.text("circuit")} consume unos ${s.number("watts")} W; admite ${s.number("limit")} W.`,
  "cable-door": (s) => `El cable hasta ${s.piece("a")}, ${s.mm("length")} a lo largo de las paredes, cruza una puerta de ${s.room("room")}.`,
  "wish-near": (s) => `${s.piece("a")} está a ${s.mm("measured")} ${of(where(s))}; cerca se toma como ${s.mm("limit")}.`,
  "wish-away": (s) => `${s.piece("a")} está a ${s.mm("measured")} ${of(where(s))}; lejos se toma como ${s.mm("limit")}.`,
  "wish-sight": (s) => `Desde ${s.piece("a")} no se ve ${where(s)}.`,
  route: (s) => `Ningún camino de ${s.mm("width")} (${s.mm("door")} en las puertas) lleva de una salida ${to(s.has("seat") ? `el sitio de silla de ruedas de ${s.piece("a")}` : s.piece("a"))}${s.has("narrow") ? `; el punto más estrecho mide ${s.mm("narrow")}` : ""}.`,
  densest: (s) => `${people(s.number("people"))} en este suelo es más denso que una por 0,65 m²: ${s.number("limit")} como máximo, diga lo que diga el aforo.`,
  posted: (s) => `Hay ${people(s.number("people"))} en las salas; el aforo con ${kind(s)} es ${s.number("limit")}.`,
  "posted-room": (s) => `${s.room("room")} tiene ${places(s.number("seats"))}; ${s.has("posted") ? "su aforo" : "la cifra por su suelo"} con ${kind(s)} es ${s.number("limit")}.`,
  area: (s) => s.has("must") ? `Hay ${people(s.number("people"))} en las salas; por su suelo caben ${s.number("limit")} con ${kind(s)}.`
    : `Hay ${people(s.number("people"))} en las salas; solo por el suelo serían ${s.number("limit")} con ${kind(s)}. Manda el aforo fijado.`,
  "seats-count": (s) => `La disposición dice ${places(s.number("said"))} y tiene ${s.number("seats")}.`,
  "places-short": (s) => `${part(s, "part")} tiene ${places(s.number("seats"))} para ${count(s.number("guests"), "invitado")}: ${count(s.number("short"), "sitio")} de menos.`,
  "wheelchairs-short": (s) => `${part(s, "part")} tiene ${places(s.number("places"))} de silla de ruedas; hacen falta ${s.number("guests")}.`,
  "suppliers-short": (s) => `${places(s.number("places"))} además de los de los invitados para ${count(s.number("suppliers"), "proveedor", "proveedores")}, que también comen.`,
  alone: (s) => `${s.piece("a")} está puesta para un solo invitado.`,
  "table-comfort-places": (s) => (s.number("tables") === 1 ? "" : `${s.number("tables")} mesas están puestas para más de lo pedido: `) + `${s.piece("a")} está puesta para ${s.number("places")}; se pidieron ${s.number("limit")}.`,
  "scene-missing": (s) => `Se pide ${part(s, "scene")}, y la disposición no la tiene.`,
  "not-placed": (s) => `Se pide ${what(s)}; no hay nada así en ${s.has("part") ? part(s, "part") : "ninguna parte del día"}.`,
  "dance-floor": (s) => `La pista tiene ${s.area("has")}; ${people(s.number("dancers"))} bailando a la vez necesitan ${s.area("need")}.`,
  "room-not-hired": (s) => `${s.room("room")} no está entre las salas de «${s.text("package")}».`,
  "room-use": (s) => `${s.room("room")} no se alquila para ${use(s)}.`,
  "scene-room": (s) => `Ninguna de estas salas se alquila para ${use(s)}.`,
  "room-asked": (s) => `Se pide ${s.room("room")}, que aquí no se usa.`,
  "unknown-package": (s) => `El lugar no tiene el paquete «${s.text("package")}».`,
  "unknown-drape": (s) => `El lugar no tiene la cortina «${s.text("drape")}».`,
  "drape-unwanted": (s) => `${s.text("name")} está corrida, y se pide sin cortina.`,
  "turnover-missing": (s) => `${s.room("room")} cambia entre ${part(s, "from")} y ${part(s, "to")}, y no hay cambio de sala previsto.`,
  "turnover-empty": (s) => `El cambio de ${s.room("room")} entre ${part(s, "from")} y ${part(s, "to")} no tiene minutos o no tiene equipo.`,
  "turnover-not-allowed": (s) => `${s.room("room")} se cambia entre ${part(s, "from")} y ${part(s, "to")}, lo que ${s.text("by") === "package" ? "el paquete" : "la solicitud"} no permite.`,
  "chairs-twice": (s) => `Con ${part(s, "from")} montada y ${s.room("room")} puesta para ${part(s, "to")} hacen falta ${count(s.number("used"), "silla")} a la vez; el lugar tiene ${s.number("owned")}, y ningún cambio de sala lleva sillas de una a otra.`,
  "chairs-not-allowed": (s) => `Habría que llevar ${count(s.number("chairs"), "silla")} a ${s.room("room")} entre ${part(s, "from")} y ${part(s, "to")}, lo que ${s.text("by") === "package" ? "el paquete" : "la solicitud"} no permite; el lugar tiene ${s.number("owned")}, y hacen falta ${s.number("used")}.`,
  "turnover-room": (s) => `Mientras ${s.room("room")} se cambia de ${part(s, "from")} ${to(part(s, "to"))}, ${s.number("holds") === 0 ? "no hay otra sala" : `las otras salas admiten ${s.number("holds")}`} para ${count(s.number("people"), "invitado")}${s.has("wet") ? " cuando llueve" : ""}${s.number("could") > 0 && s.number("could") < s.number("people") ? `; todas las salas contratadas${s.has("wet") ? " bajo techo" : ""} que quedan libres entonces admiten ${s.number("could")}` : ""}.`,
  "turnover-time": (s) => `El cambio de ${part(s, "from")} ${to(part(s, "to"))} lleva ${count(s.number("minutes"), "minuto")}; el día deja ${s.number("gap")}.`,
  "music-absent": (s) => `${s.text("by") === "dj" ? "El DJ" : "La banda"} toca en la ceremonia pero no está en su sala: hace falta un segundo equipo allí.`,
  "music-sight": (s) => `Desde ${s.piece("a")} no se ve el suelo ${s.mm("before")} delante de la primera fila: hace falta un segundo equipo o una señal.`,
};
