import { listText } from "../lists";
import type { en } from "./en";
import type { Saying } from "./told";

const list = (words: readonly string[]): string => listText(words, "es");
const rooms = (s: Saying): string => list(s.rooms("rooms"));
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** What a word of the brief is called, without its article and with it. */
const THING: Readonly<Record<string, readonly [bare: string, whole: string]>> = {
  welcome: ["mesa de bienvenida", "la mesa de bienvenida"], cards: ["tarjetas y regalos", "las tarjetas y los regalos"], "guest-book": ["libro de firmas", "el libro de firmas"], photographs: ["fotografías", "las fotografías"], cake: ["tarta", "la tarta"],
  "seating-plan": ["plano de asientos", "el plano de asientos"], favours: ["recuerdos", "los recuerdos"], "photo-booth": ["fotomatón", "el fotomatón"], lounge: ["rincón de descanso", "el rincón de descanso"], "cocktail-tables": ["mesas altas", "las mesas altas"],
  appetisers: ["bocados", "los bocados"], "children-corner": ["rincón de los niños", "el rincón de los niños"], "second-bar": ["segunda barra", "la segunda barra"], bar: ["barra", "la barra"], buffet: ["bufé", "el bufé"], top: ["su mesa", "su mesa"],
  "dance-floor": ["pista de baile", "la pista de baile"], dj: ["DJ", "el DJ"], band: ["grupo", "el grupo"], music: ["música", "la música"],
  window: ["ventana", "una ventana"], door: ["puerta", "una puerta"], wall: ["pared", "una pared"], feature: ["pared vistosa", "una pared vistosa"], terrace: ["terraza", "la terraza"],
};
const bare = (word: string): string => THING[word]?.[0] ?? word.replaceAll("-", " ");
const whole = (word: string): string => THING[word]?.[1] ?? word.replaceAll("-", " ");
const found = (s: Saying): string => (s.rooms("rooms").length > 0 ? `: se halló una distribución en ${rooms(s)}` : "");
const clause = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1).replace(/\.$/, "")}`;
const HOW: Readonly<Record<string, string>> = { near: "cerca de", "away-from": "lejos de", "in-sight-of": "a la vista de" };
const EASE: Readonly<Record<string, string>> = { most: ", lo más que admite la sala", close: ", más juntos de lo cómodo", full: ", más a cada mesa de lo cómodo" };
/** "de" and "a" before "el" are one word with it. */
const joined = (text: string): string => text.replace(/\b(de|a) el (?=[a-zñáéíóú]|DJ)/g, (_, word: string) => `${word}l `);
const laid = (s: Saying): string => list([
  ...(s.number("rounds") > 0 ? [count(s.number("rounds"), "mesa redonda", "mesas redondas")] : []),
  ...(s.number("long") > 0 ? [s.number("rounds") > 0 ? count(s.number("long"), "larga", "largas") : count(s.number("long"), "mesa larga", "mesas largas")] : []),
]);

/** What the engine tells, in Spanish: every code of the English. */
export const es: Readonly<Record<keyof typeof en, (s: Saying) => string>> = {
  "some-placed": (s) => `${s.number("placed")} de ${s.number("guests")} tienen sitio en ${rooms(s)}.`,
  "all-in-comfort": (s) => `Los ${s.number("guests")} se sientan con holgura en ${rooms(s)}.`,
  "all-placed": (s) => `Los ${s.number("guests")} tienen sitio en ${rooms(s)}${EASE[s.text("ease")] ?? ""}.`,
  "tables-laid": (s) => `${laid(s)}.`,
  "facing-couple": (s) => `${s.number("see")} de ${s.number("of")} invitados están de cara a los novios.`,
  "families-alike": (s) => `Las mesas ${s.number("first")} y ${s.number("second")} son de igual rango, una para cada familia: igual de cerca de los novios y con tantos invitados de cara a ellos.`,
  "families-unlike": (s) => `Para las dos familias no hay dos mesas de igual rango: la mesa ${s.number("first")} va antes que la ${s.number("second")}, ${s.text("by") === "near" ? "por estar más cerca de los novios" : s.text("by") === "sight" ? "por tener más invitados de cara a los novios" : "por tener más plazas"}.`,
  "drape-gives": (s) => `${s.text("name")}, corrida: ${s.room("grows")} gana ${s.area("m2")} de ${s.room("from")}.`,
  "no-turnover": () => "No hay que cambiar el montaje de ninguna sala.",
  turnover: (s) => `El cambio de montaje lleva ${count(s.number("minutes"), "minuto", "minutos")} con un equipo de ${s.number("crew")}.`,
  "chairs-over": (s) => `${count(s.number("n"), "silla se lleva", "sillas se llevan")} de ${s.room("from")} a ${s.room("to")}: no hay bastantes para las dos.`,
  "dancing-apart": (s) => `Se baila en ${s.room("room")}, así que las mesas se quedan.`,
  "dancing-beside": () => "La pista está entre las mesas toda la noche.",
  "dancing-struck": () => "Tras la comida se retiran algunas mesas para hacer la pista.",
  "best-of-these": (s) => `De estas distribuciones es la que tiene ${list(s.parts)}.`,
  "set-apart-by": (s) => `Lo que la distingue: ${s.parts.join(", ").replace(/^[A-ZÁÉÍÓÚ](?=[a-zñáéíóú ])/, (first) => first.toLowerCase())}.`,
  "under-the-roof": (s) => `Si llueve, todo se celebra bajo techo${s.parts.length > 0 ? `: ${s.parts.join(", ")}` : ""}.`,
  "best-comfort": () => "más holgura", "best-dancing": () => "más sitio para bailar", "best-moves": () => "menos movimientos", "best-sight": () => "más invitados de cara a los novios",
  "one-kind": (s) => `Con solo mesas ${s.text("kind") === "long" ? "largas" : "redondas"} se sientan todos aquí: se pidieron de las dos clases.`,
  "no-table-for-two": () => "Los novios se sientan entre sus invitados: una mesa para dos dejaría a algunos sin sitio.",
  "gaps-least": () => "La separación entre mesas es la mínima, no la cómoda.",
  "gaps-half-way": () => "La separación entre mesas está a medio camino entre la mínima y la cómoda.",
  "tables-full": () => "Las mesas se ponen para tantos como admiten, con menos holgura.",
  "carried-out": (s) => (s.number("n") === 1 ? `Se retira de la sala: ${s.text("name")}.` : `Se retiran de la sala: ${s.number("n")} × ${s.text("name")}.`),
  "moves-for-drape": (s) => `${s.text("name")} pasa a una pared de ${s.room("room")}: la cortina ocupa su lugar.`,
  "shares-table": (s) => `${capital(bare(s.text("what")))}: comparte mesa${s.text("with") ? ` (${s.text("with")})` : " con otra cosa"}.`,
  "stands-elsewhere": (s) => `${capital(bare(s.text("what")))}: su lugar habitual está ocupado, así que va en ${s.text("with") || "el siguiente mejor"}.`,
  "no-place-for": (s) => `No se encontró lugar para: ${bare(s.text("what"))}.`,
  "room-turned": () => "Se cambia el montaje de una sala, que otra distribución de aquí ahorra.",
  "slower-turn": (s) => `El cambio de montaje lleva ${count(s.number("by"), "minuto", "minutos")} más que en la más rápida de estas.`,
  "less-comfort": () => "Otra distribución de aquí es más cómoda.",
  "no-spot-for-wish": (s) => `No se encontró sitio para: ${s.parts.join("; ")}.`,
  "wishes-conflict": (s) => `Estos deseos no se pudieron cumplir juntos: ${s.parts.slice(1).join("; ")}. Cede el último en su orden: ${s.parts[0] ?? ""}.`,
  wish: (s) => joined(`${bare(s.text("put"))} ${HOW[s.text("how")] ?? s.text("how")} ${whole(s.text("where"))}`),
  title: (s) => s.parts.join(", "),
  "by-hand": () => "ajustada a mano",
  "ceremony-and-reception": () => "Ceremonia y convite", reception: () => "Convite", "round-tables": () => "Mesas redondas", "rounds-and-long": () => "Mesas redondas y largas", "long-tables": () => "Mesas largas",
  "form-u": () => "Una herradura", "form-e": () => "Un peine de mesas", "form-t": () => "Una T de mesas", "form-hollow-square": () => "Un cuadrado abierto", "form-spine": () => "Mesas redondas en torno a una espina",
  "dance-in": (s) => `baile en ${s.room("room")}`, "floor-among": () => "pista entre las mesas", "floor-after": () => "pista después de la comida",
  "ceremony-in": (s) => `ceremonia en ${s.room("room")}`, "meal-in": (s) => `comida en ${rooms(s)}`, "buffet-in": (s) => `bufé en ${s.room("room")}`, "bar-in": (s) => `barra en ${s.room("room")}`, "no-bar": () => "sin barra",
  "drape-drawn": () => "cortina corrida", "no-drape": () => "sin cortina", "set-wide": () => "muy separadas", "set-closer": () => "más juntas", "set-closest": () => "lo más juntas", "full-tables": () => "mesas llenas", "roomy-tables": () => "mesas holgadas",
  "set-grid": () => "en filas", "set-even": () => "en filas parejas", "set-staggered": () => "al tresbolillo", "set-diagonal": () => "en diagonal", "set-balanced": () => "en equilibrio sobre el centro", "set-halves": () => "en dos mitades", "set-free": () => "puestas con libertad", "set-fullest": () => "muy llenas", "set-runs": () => "en largas hileras", "set-otherwise": () => "puestas de otro modo",
  "couple-left": () => "novios a la izquierda del plano", "couple-right": () => "novios a la derecha del plano", "couple-top": () => "novios arriba en el plano", "couple-foot": () => "novios abajo en el plano",
  "so-many-tables": (s) => (s.number("rounds") > 0 && s.number("long") > 0 ? laid(s) : count(s.number("rounds") + s.number("long"), "mesa", "mesas")),
  "wet-ceremony": (s) => `ceremonia en ${s.room("room")}`, "wet-drinks": (s) => `cóctel en ${rooms(s)}`, "wet-meal": (s) => `comida en ${rooms(s)}`, "wet-dancing": (s) => `baile en ${s.room("room")}`,
  "lay-most": () => "Poner cada mesa para tantos como admita.", "floor-of-panels": (s) => `Tomar la mayor pista que dan los paneles de la casa, para ${s.number("share")} de cada cien invitados a la vez.`, "mix-long": () => "Mezclar mesas largas con las redondas.", "any-tables": () => "Dejar que las mesas sean de cualquier clase.",
  "any-form": () => "Dejar que las mesas tengan cualquier forma.", "meal-elsewhere": (s) => `Dejar que la comida sea en otra sala${found(s)}.`, "ceremony-elsewhere": (s) => `Dejar que la ceremonia sea en otra sala${found(s)}.`, "draw-drape": (s) => `Dejar que se corra: ${s.text("name")}.`,
  "turn-over": () => "Cambiar el montaje de la sala entre ceremonia y comida.", "food-on-tables": () => "Servir la comida en las mesas.", "smaller-floor": (s) => `Tomar una pista menor, para ${s.number("share")} de cada cien invitados a la vez.`, "sit-as-pair": () => "Sentarse los dos solos en lugar de una mesa presidencial larga.",
  "food-not-buffet": () => "Servir la comida en las mesas, no en un bufé.", "ceremony-at-tables": () => "Celebrar la ceremonia en las mesas puestas.", "ceremony-in-rows": () => "Celebrar la ceremonia ante filas de sillas.", "ceremony-standing": () => "Que los invitados estén de pie en la ceremonia.", "no-floor": () => "Prescindir de la pista de baile.", "shorter-top": (s) => `Poner una mesa presidencial más corta, de ${s.number("places")} plazas.`,
  "fewer-guests": (s) => `Invitar a ${s.number("less")} menos: los ${s.number("seated")} tienen entonces sitio.`,
  together: (s) => `Cambiar a la vez: ${s.parts.map(clause).join("; ")}.`,
};
