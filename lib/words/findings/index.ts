import type { Finding, Layout } from "../../layout";
import type { Venue } from "../../venue";
import { areaText, lengthText } from "../lengths";
import { en } from "./en";
import { es } from "./es";

export type Data = Readonly<Record<string, string | number | boolean>>;

/** What a sentence may ask for: data of the finding, and names of things. */
export type Say = {
  readonly text: (key: string) => string;
  readonly number: (key: string) => number;
  readonly has: (key: string) => boolean;
  /** The label of the piece whose id stands under a key. */
  readonly piece: (key: string) => string;
  readonly room: (key: string) => string;
  readonly scene: (key: string) => string;
  readonly door: () => string;
  readonly mm: (key: string) => string;
  readonly area: (key: string) => string;
};
export type Catalogue = Readonly<Record<string, (s: Say) => string>>;

/** Catalogues by the first part of a language tag; English where there is none. */
const CATALOGUES: Readonly<Record<string, Catalogue>> = { en, es };

export const FINDING_CODES: readonly string[] = Object.keys(en);

type Known = { readonly venue: Venue; readonly layout: Pick<Layout, "scenes"> };

/** The sentence of a finding, made from its code and data. Language and lengths are the venue's. */
export function findingText(f: Omit<Finding, "text">, known: Known): string {
  const catalogue = CATALOGUES[known.venue.locale.split("-")[0] ?? "en"] ?? en;
  const sentence = catalogue[f.code] ?? en[f.code];
  return sentence ? capital(sentence(sayOf(f, known))) : f.code;
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

function sayOf(f: Omit<Finding, "text">, { venue, layout }: Known): Say {
  const data: Data = f.data ?? {};
  const text = (key: string): string => String(data[key] ?? "");
  const number = (key: string): number => Number(data[key] ?? 0);
  const items = layout.scenes.filter((s) => f.scene === undefined || s.id === f.scene).flatMap((s) => s.items);
  return {
    text, number, has: (key) => data[key] !== undefined && data[key] !== false,
    piece: (key) => items.find((i) => i.id === text(key))?.label || text(key),
    room: (key) => venue.rooms.find((r) => r.id === text(key))?.name ?? text(key),
    scene: (key) => text(key),
    door: () => {
      const room = venue.rooms.find((r) => r.id === text("room"));
      const leads = room?.doors.find((d) => d.id === text("door"))?.leads;
      const to = venue.rooms.find((r) => r.id === leads)?.name;
      if (to) return `the door to ${to}`;
      return leads === "outside" ? "the door outside" : leads === "back-of-house" ? "the door to the back of house" : leads === "toilets" ? "the door to the toilets" : "the door";
    },
    mm: (key) => lengthText(number(key), venue.lengths, venue.locale),
    area: (key) => areaText(number(key), venue.lengths, venue.locale),
  };
}
