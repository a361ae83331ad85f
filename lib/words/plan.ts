import { languageOf } from "./pages/language";
import type { Voice } from "./pages/say";
import { voicesOf } from "./pages/voices";

/** The words that stand on a plan and name its pieces, by language. */
export type PlanWords = {
  readonly table: (number: string) => string;
  readonly round: (size: string) => string;
  readonly places: (n: number, wheelchairs: number) => string;
  readonly part: (k: number, of: number) => string;
  readonly chairsInRows: (n: number) => string;
  readonly wayOut: string;
  readonly wheelchairPlace: string;
  readonly level: (which: "lower" | "upper" | number) => string;
  readonly waysDrawn: (told: { readonly from: number; readonly of: number; readonly far: string; readonly about: string }) => string;
};

const en: PlanWords = {
  table: (number) => `Table ${number}`,
  round: (size) => `round ${size}`,
  places: (n, wheelchairs) => `${n} ${n === 1 ? "place" : "places"}${wheelchairs > 0 ? `, ${wheelchairs} for a wheelchair` : ""}`,
  part: (k, of) => `part ${k} of ${of}`,
  chairsInRows: (n) => `${n} ${n === 1 ? "chair" : "chairs"} in rows`,
  wayOut: "Way out",
  wheelchairPlace: "wheelchair place",
  level: (which) => (which === "lower" ? "Lower level" : which === "upper" ? "Upper level" : `Level ${which}`),
  waysDrawn: ({ from, of, far, about }) => `Ways out are drawn from ${from} of ${of} tables and rows; the longest, from ${far}, is about ${about}.`,
};

const es: PlanWords = {
  table: (number) => `Mesa ${number}`,
  round: (size) => `redonda ${size}`,
  places: (n, wheelchairs) => `${n} ${n === 1 ? "plaza" : "plazas"}${wheelchairs > 0 ? `, ${wheelchairs} para silla de ruedas` : ""}`,
  part: (k, of) => `parte ${k} de ${of}`,
  chairsInRows: (n) => `${n} ${n === 1 ? "silla" : "sillas"} en filas`,
  wayOut: "Salida",
  wheelchairPlace: "silla de ruedas",
  level: (which) => (which === "lower" ? "Nivel inferior" : which === "upper" ? "Nivel superior" : `Nivel ${which}`),
  waysDrawn: ({ from, of, far, about }) => `Las salidas se dibujan desde ${from} de ${of} mesas y filas; la más larga, desde ${far}, mide unos ${about}.`,
};

/** The words of a locale; English where there are none of its language. */
export const planWords = (locale: string): PlanWords => (locale.split("-")[0] === "es" ? es : en);

/** What else is written on a plan and in the words beside it; the British phrase is the key. */
const spanish = {
  "Round tables": "Mesas redondas", "Long tables": "Mesas largas", "Oak tables": "Mesas de roble", "Chairs": "Sillas", "Dance floor": "Pista de baile", "Music": "Música", "Bar": "Barra", "Buffet": "Bufé", "Lounge": "Descanso", "Displays": "Detalles", "High tables": "Mesas altas",
  "Was": "Antes", "before": "lo anterior", "Is now": "Ahora", "changed": "cambiado", "Ways out": "Salidas", "on foot": "a pie", "Lines of sight": "Visuales", "a bar: hidden": "barra: no se ve", "Keep clear": "Dejar libre", "nothing here": "sin nada", "Socket": "Enchufe", "on its wall": "en su pared",
  "{n} panels of {side}": "{n} de {side}", "{n}, of {places} places": "{n}, de {places} plazas", "{n}, and {high} high": "{n}, y {high} altas", "{n} units": { one: "{n} unidad", other: "{n} unidades" }, "{n}, as they stand": { one: "{n}, donde está", other: "{n}, donde están" }, "{n} pieces": { one: "{n} pieza", other: "{n} piezas" },
  "Legend": "Leyenda", "Title block": "Cajetín", "For": "Para", "Reference": "Referencia", "Day": "Día", "Package": "Paquete", "Part of the day": "Parte del día", "Layout": "Distribución", "Places": "Plazas", "Revision": "Revisión", "Fingerprint": "Huella", "Sheet": "Hoja",
  "drawn by Marquetry": "dibujado por Marquetry", "drawn by Marquetry, {day}": "dibujado por Marquetry, {day}", "agreed by {whom}": "acordado por {whom}", "{n} panels, {size}": { one: "{n} panel, {size}", other: "{n} paneles, {size}" },
  "Scale 1\u2009:\u2009{ratio} on {paper}. Lengths in metres.": "Escala 1\u2009:\u2009{ratio} en {paper}. Medidas en metros.", "Scale 1\u2009:\u2009{ratio} on {paper}. Lengths in feet and inches.": "Escala 1\u2009:\u2009{ratio} en {paper}. Medidas en pies y pulgadas.", "this sheet": "esta hoja",
  "{venue}: {part}. Plan at 1:{ratio}.": "{venue}: {part}. Plano a 1:{ratio}.", "{what}; its middle {where}.": "{what}; su centro, a {where}.", "{length} from the left wall": "{length} de la pared izquierda", "{length} from the right wall": "{length} de la pared derecha", "{length} from the upper wall": "{length} de la pared de arriba", "{length} from the lower wall": "{length} de la pared de abajo",
  "outdoors": "al aire libre", "not in use": "sin usar", "feature wall": "pared vistosa", "mirror": "espejo", "stair": "escalera", "hearth": "chimenea", "drape": "cortina", "drape track": "riel de cortina", "a row of chairs": "una fila de sillas",
  "the couple's table": "la mesa de los novios", "the front of the rows": "el frente de las filas", "the {piece}": "{piece}", "A straight line runs from {from} to {n} of {all} chairs.": "Una línea recta va desde {from} hasta {n} de {all} sillas.", "A straight line runs from {from} to {n} of {all} tables.": "Una línea recta va desde {from} hasta {n} de {all} mesas.",
  "Something stands before tables {tables}.": { one: "Hay algo delante de la mesa {tables}.", other: "Hay algo delante de las mesas {tables}." }, "Finding {letter}, {level}: {text}": "Hallazgo {letter}, {level}: {text}", "must": "obligado", "should": "debería", "note": "nota", "Change {n}: {text}": "Cambio {n}: {text}",
} as const;
type PlanPhrase = keyof typeof spanish;
const isPlanPhrase = (text: string): text is PlanPhrase => text in spanish;
export const PLAN_PHRASES: readonly PlanPhrase[] = Object.keys(spanish).filter(isPlanPhrase);
const voice = voicesOf<PlanPhrase>({
  es: spanish, us: { "Scale 1\u2009:\u2009{ratio} on {paper}. Lengths in metres.": "Scale 1\u2009:\u2009{ratio} on {paper}. Lengths in meters." },
  ones: { "Something stands before tables {tables}.": "Something stands before table {tables}.", "{n} panels of {side}": "{n} panel of {side}", "{n} units": "{n} unit", "{n} panels, {size}": "{n} panel, {size}", "{n}, as they stand": "{n}, as it stands", "{n} pieces": "{n} piece" },
}, PLAN_PHRASES);
export type PlanVoice = Voice<PlanPhrase>;
/** The voice of a plan, by the locale of who reads it. */
export const planVoice = (locale: string): PlanVoice => voice(languageOf(locale));
