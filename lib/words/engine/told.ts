import type { Told } from "../../layout";
import type { Venue } from "../../venue";
import { american } from "../american";
import { areaText } from "../lengths";
import type { Language } from "../pages/language";
import { en } from "./en";
import { es } from "./es";

/** What a sentence of the engine's may ask for: its data, and the names of what it speaks of. */
export type Saying = {
  readonly text: (key: string) => string;
  readonly number: (key: string) => number;
  /** The name of the room whose id stands under a key; of several, their names. */
  readonly room: (key: string) => string;
  readonly rooms: (key: string) => readonly string[];
  /** Square metres under a key, as the reader measures. */
  readonly area: (key: string) => string;
  /** The parts that it is made of, said. */
  readonly parts: readonly string[];
};
export type Sentences = Readonly<Record<string, (s: Saying) => string>>;
/** Every sentence and part of one that the engine can tell. */
export type ToldCode = keyof typeof en;
export const TOLD_CODES: readonly string[] = Object.keys(en);

/** A thing told by the engine, in a language; undefined where a newer engine told it, and this one has no words for it. */
export function toldText(told: Told, { venue, language }: { readonly venue: Venue; readonly language: Language }): string | undefined {
  const sentences: Sentences = language === "es" ? es : en;
  const sentence = sentences[told.code];
  if (!sentence) return undefined;
  const parts = (told.parts ?? []).map((part) => toldText(part, { venue, language }));
  if (!parts.every((part) => part !== undefined)) return undefined;
  const data = told.data ?? {};
  const text = (key: string): string => String(data[key] ?? "");
  const name = (id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
  const rooms = (key: string): readonly string[] => { const ids = data[key]; return typeof ids === "object" ? ids.map(name) : []; };
  const said = sentence({
    text, number: (key) => Number(data[key] ?? 0), room: (key) => name(text(key)), rooms,
    area: (key) => areaText(Number(data[key] ?? 0), venue.lengths, language === "es" ? venue.locale : "en"), parts,
  });
  return language === "en-US" ? american(said) : said;
}
