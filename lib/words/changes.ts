import { languageOf } from "./pages/language";
import type { Voice } from "./pages/say";
import { voicesOf } from "./pages/voices";

/** What is said of how one layout differs from another, in Spanish; the British phrase is the key. */
const es = {
  "{piece} {differences}.": "{piece} {differences}.",
  "goes from the {from} to the {to}": "pasa de {from} a {to}", "stands {steps} on the plan": "está {steps} en el plano",
  "{length} further right": "{length} más a la derecha", "{length} further left": "{length} más a la izquierda", "{length} further down": "{length} más abajo", "{length} further up": "{length} más arriba",
  "is turned by {angle}": "gira {angle}", "is {n} tables, no longer {was}": { one: "es {n} mesa, ya no {was}", other: "son {n} mesas, ya no {was}" }, "is {size}, no longer {was}": "mide {size}, ya no {was}",
  "has {n} places, no longer {was}": { one: "tiene {n} plaza, ya no {was}", other: "tiene {n} plazas, ya no {was}" }, "has no wheelchair place any more": "ya no tiene plaza para silla de ruedas",
  "has {n} wheelchair places": { one: "tiene {n} plaza para silla de ruedas", other: "tiene {n} plazas para silla de ruedas" }, "was called {name}": "se llamaba {name}",
  "{piece}, is new in the {room}.": "{piece}: se añade en {room}.", "{piece}, is taken out of the {room}.": "{piece}: se quita de {room}.",
  "{n} chairs of the rows in the {room} are taken out.": { one: "Se quita {n} silla de las filas de {room}.", other: "Se quitan {n} sillas de las filas de {room}." },
  "{n} chairs of the rows in the {room} are new.": { one: "Se añade {n} silla a las filas de {room}.", other: "Se añaden {n} sillas a las filas de {room}." },
  "{n} chairs of the rows in the {room} stand elsewhere.": { one: "{n} silla de las filas de {room} cambia de sitio.", other: "{n} sillas de las filas de {room} cambian de sitio." },
  "{n} chairs of the rows in the {room} stand elsewhere; {more} more.": { one: "{n} silla de las filas de {room} cambia de sitio; hay {more} más.", other: "{n} sillas de las filas de {room} cambian de sitio; hay {more} más." },
  "{n} chairs of the rows in the {room} stand elsewhere; {fewer} fewer.": { one: "{n} silla de las filas de {room} cambia de sitio; hay {fewer} menos.", other: "{n} sillas de las filas de {room} cambian de sitio; hay {fewer} menos." },
} as const;
type ChangePhrase = keyof typeof es;
const isPhrase = (text: string): text is ChangePhrase => text in es;
export const CHANGE_PHRASES: readonly ChangePhrase[] = Object.keys(es).filter(isPhrase);

/** British phrases for one thing alone. */
const ones = {
  "is {n} tables, no longer {was}": "is {n} table, no longer {was}", "has {n} places, no longer {was}": "has {n} place, no longer {was}", "has {n} wheelchair places": "has {n} wheelchair place",
  "{n} chairs of the rows in the {room} are taken out.": "{n} chair of the rows in the {room} is taken out.", "{n} chairs of the rows in the {room} are new.": "{n} chair of the rows in the {room} is new.",
  "{n} chairs of the rows in the {room} stand elsewhere.": "{n} chair of the rows in the {room} stands elsewhere.",
  "{n} chairs of the rows in the {room} stand elsewhere; {more} more.": "{n} chair of the rows in the {room} stands elsewhere; {more} more.",
  "{n} chairs of the rows in the {room} stand elsewhere; {fewer} fewer.": "{n} chair of the rows in the {room} stands elsewhere; {fewer} fewer.",
};

const voice = voicesOf<ChangePhrase>({ es, ones }, CHANGE_PHRASES);
export type ChangeVoice = Voice<ChangePhrase>;
/** The voice that tells changes, by the locale of who reads them. */
export const changeVoice = (locale: string): ChangeVoice => voice(languageOf(locale));
