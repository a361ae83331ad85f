import type { Finding, Layout } from "../../layout";
import type { Venue } from "../../venue";
import { american } from "../american";
import { areaText, exactAreaText, lengthText } from "../lengths";
import { languageOf } from "../pages/language";
import { en } from "./en";
import { es } from "./es";
import { refusals as enRefusals } from "./refusals-en";
import { refusals as esRefusals } from "./refusals-es";

export type Data = Readonly<Record<string, string | number | boolean | readonly string[]>>;

/** What a sentence may ask for: data of the finding, and names of things. */
export type Say = {
  readonly text: (key: string) => string;
  readonly number: (key: string) => number;
  readonly has: (key: string) => boolean;
  /** The label of the piece whose id stands under a key. */
  readonly piece: (key: string) => string;
  readonly room: (key: string) => string;
  /** The names of the rooms whose ids stand under a key, and the words that do. */
  readonly rooms: (key: string) => readonly string[];
  readonly words: (key: string) => readonly string[];
  readonly scene: (key: string) => string;
  readonly door: () => string;
  /** The package whose id stands under "package". */
  readonly pack: () => string;
  /** The part of the day, what was measured and what it was held against. */
  readonly part: string; readonly measured: number; readonly limit: number;
  readonly mm: (key: string) => string;
  readonly area: (key: string) => string;
  /** An area to the hundredth of a square metre, or the tenth of a square foot: where it is told beside one that is nearly as large. */
  readonly exactArea: (key: string) => string;
};
export type Catalogue = Readonly<Record<string, (s: Say) => string>>;

/** Catalogues by the first part of a language tag; English where there is none. */
const ENGLISH: Catalogue = { ...en, ...enRefusals };
const CATALOGUES: Readonly<Record<string, Catalogue>> = { en: ENGLISH, es: { ...es, ...esRefusals } };

export const FINDING_CODES: readonly string[] = Object.keys(en);
/** What the engine gives beside what the rules find. */
export const REFUSAL_CODES: readonly string[] = Object.keys(enRefusals);

/** Whether the sentence of a code is made from no data at all. */
export const saidWithoutData = (code: string): boolean => ENGLISH[code]?.length === 0;

type Known = { readonly venue: Venue; readonly layout: Pick<Layout, "scenes"> };

/** The sentence of a finding, made from its code and data. Language and lengths are the venue's. */
export function findingText(f: Omit<Finding, "text">, known: Known): string {
  const catalogue = CATALOGUES[known.venue.locale.split("-")[0] ?? "en"] ?? ENGLISH;
  const sentence = catalogue[f.code] ?? ENGLISH[f.code];
  if (!sentence) return f.code;
  const said = capital(sentence(sayOf(f, known)));
  return languageOf(known.venue.locale) === "en-US" ? american(said) : said;
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

function sayOf(f: Omit<Finding, "text">, { venue, layout }: Known): Say {
  const data: Data = f.data ?? {};
  const text = (key: string): string => String(data[key] ?? "");
  const words = (key: string): readonly string[] => { const found = data[key]; return typeof found === "object" ? found : found === undefined ? [] : [String(found)]; };
  const name = (id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
  const number = (key: string): number => Number(data[key] ?? 0);
  const items = layout.scenes.filter((s) => f.scene === undefined || s.id === f.scene).flatMap((s) => s.items);
  return {
    text, number, has: (key) => data[key] !== undefined && data[key] !== false,
    piece: (key) => items.find((i) => i.id === text(key))?.label || text(key),
    room: (key) => name(text(key)), rooms: (key) => words(key).map(name), words,
    scene: (key) => text(key), part: f.scene ?? "", measured: f.measured ?? 0, limit: f.limit ?? 0,
    pack: () => venue.packages.find((p) => p.id === text("package"))?.name ?? text("package"),
    door: () => {
      const room = venue.rooms.find((r) => r.id === text("room"));
      const leads = room?.doors.find((d) => d.id === text("door"))?.leads;
      const to = venue.rooms.find((r) => r.id === leads)?.name;
      if (to) return `the door to ${to}`;
      return leads === "outside" ? "the door outside" : leads === "back-of-house" ? "the door to the back of house" : leads === "toilets" ? "the door to the toilets" : "the door";
    },
    mm: (key) => lengthText(number(key), venue.lengths, venue.locale),
    area: (key) => areaText(number(key), venue.lengths, venue.locale),
    exactArea: (key) => exactAreaText(number(key), venue.lengths, venue.locale),
  };
}
