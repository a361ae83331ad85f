import type { Brief } from "../brief";
import type { Level, SceneId } from "../layout";
import { listText } from "../words/lists";
import { PAPER_PHRASES, type PaperPhrase, type PaperVoice } from "../words/papers";

/** The papers' own words: British phrases, which the sheets print as they are and the proposal says in its reader's language. */
export const SECTIONS = {
  fees: "Fee summary", places: "Tables and places", turnover: "How the room turns over", findings: "Findings and cautions", answers: "Your answers",
} as const satisfies Record<string, PaperPhrase>;

export const SCENE_NAMES: Record<SceneId, PaperPhrase> = { ceremony: "Ceremony", drinks: "Drinks", meal: "Meal", dancing: "Dancing" };

export const LEVEL_NAMES: Record<Level, { readonly title: PaperPhrase; readonly says: PaperPhrase }> = {
  must: { title: "Must", says: "{n} findings, to be put right before the day." },
  should: { title: "Should", says: "{n} findings, better otherwise; yours and the venue's to weigh." },
  note: { title: "Note", says: "{n} findings, worth knowing." },
};

export const SERVICE: Record<Brief["meal"]["service"], PaperPhrase> = {
  plated: "Plated, brought to the tables", buffet: "A buffet", sharing: "Sharing boards on the tables", stations: "Food stations", none: "No seated meal",
};
export const TABLES: Record<Brief["meal"]["tables"], PaperPhrase> = {
  rounds: "Round tables", long: "Long tables", mixed: "Round and long tables mixed", any: "Whatever seats you best",
};
export const FORM: Record<Brief["meal"]["form"], PaperPhrase> = {
  grid: "In even rows", u: "A horseshoe", e: "A comb, as an E", t: "A T", "hollow-square": "A hollow square",
  spine: "A spine of long tables with the rest about it", diagonal: "Tables on the slant", any: "Whatever suits the room",
};
export const TOP: Record<Brief["meal"]["top"], PaperPhrase> = {
  pair: "The two of you at a table alone", "one-sided": "A top table with places on one side", round: "One of the round tables", none: "No table of your own",
};
export const SEATING: Record<Brief["ceremony"]["seating"], PaperPhrase> = {
  rows: "Chairs in rows", curve: "Chairs in curved rows", standing: "Guests stand", "at-tables": "At the tables, laid already",
};
export const AISLE: Record<Brief["ceremony"]["aisle"], PaperPhrase> = { centre: "Down the centre", sides: "Down both sides", none: "None" };
export const MUSIC: Record<Brief["music"]["by"], PaperPhrase> = { dj: "A DJ", band: "A band", playlist: "A playlist", none: "None" };

const THINGS: Record<string, PaperPhrase> = {
  welcome: "welcome table", cards: "cards and gifts", "guest-book": "guest book", photographs: "photographs", cake: "cake",
  "seating-plan": "seating plan", favours: "favours", "photo-booth": "photo booth", lounge: "lounge pieces", "cocktail-tables": "high tables",
  appetisers: "appetiser tables", "children-corner": "children's corner", "second-bar": "second bar", top: "your table", "dance-floor": "dance floor",
  dj: "DJ", band: "band", bar: "bar", buffet: "buffet", window: "a window", door: "a door", wall: "a wall", feature: "a feature wall", terrace: "the terrace",
};
/** A display, extra or place in words; an unknown one as it is written. */
export function thing(word: string, say: PaperVoice): string {
  const phrase = THINGS[word];
  return phrase === undefined ? word.replace(/-/g, " ") : say(phrase);
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a, b and c", as a locale has it. */
export const list = (words: readonly string[], locale = "en-GB"): string => listText(words, locale);

/** A word that may have a phrase of its own, such as a unit; else left. */
export function sayIfKnown(word: string, say: PaperVoice): string {
  const phrase = PAPER_PHRASES.find((one) => one === word);
  return phrase === undefined ? word : say(phrase);
}

/** A name within a sentence of ours keeps its own direction, and turns nothing about it (UAX 9, FSI and PDI). */
const isolated = (name: string): string => (/[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/.test(name) ? `\u2068${name.replace(/[\u2066-\u2069]/g, "")}\u2069` : name);

/** "Ines Calloway and Theo Brandt", for a line of print. */
export const nameList = (names: readonly string[], locale?: string): string => list(names.map(isolated), locale);

/** Each name begins a line: "Ines Calloway / and Theo Brandt". */
export const namesOver = (names: readonly string[], locale?: string): string =>
  names.map(isolated).map((name, i, all) => (i > 0 && i === all.length - 1 ? `${joiner(all[i - 1] ?? "", name, locale)} ${name}` : i < all.length - 2 ? `${name},` : name)).join("\n");

/** The word between two names: "and", "y", or "e" before what sounds so. */
const joiner = (a: string, b: string, locale = "en-GB"): string => listText([a, b], locale).slice(a.length, -b.length).trim();

/** Whether a text of the writer's own begins in a script that runs from right to left (UAX 9, P2). */
export const runsLeftward = (text: string): boolean => /^[^\p{L}]*[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/u.test(text);

export const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
