import type { Brief } from "../brief";
import type { Level, SceneId } from "../layout";

/** The papers' own words, in British English. */
export const SECTIONS = {
  fees: "Fee summary", places: "Tables and places", turnover: "How the room turns over", findings: "Findings and cautions", answers: "Your answers",
} as const;

export const SCENE_NAMES: Record<SceneId, string> = { ceremony: "Ceremony", drinks: "Drinks", meal: "Meal", dancing: "Dancing" };

export const LEVEL_NAMES: Record<Level, { readonly title: string; readonly says: string }> = {
  must: { title: "Must", says: "to be put right before the day" },
  should: { title: "Should", says: "better otherwise; yours and the venue's to weigh" },
  note: { title: "Note", says: "worth knowing" },
};

export const SERVICE: Record<Brief["meal"]["service"], string> = {
  plated: "Plated, brought to the tables", buffet: "A buffet", sharing: "Sharing boards on the tables", stations: "Food stations", none: "No seated meal",
};
export const TABLES: Record<Brief["meal"]["tables"], string> = {
  rounds: "Round tables", long: "Long tables", mixed: "Round and long tables mixed", any: "Whatever seats you best",
};
export const FORM: Record<Brief["meal"]["form"], string> = {
  grid: "In even rows", u: "A horseshoe", e: "A comb, as an E", t: "A T", "hollow-square": "A hollow square",
  spine: "A spine of long tables with the rest about it", any: "Whatever suits the room",
};
export const TOP: Record<Brief["meal"]["top"], string> = {
  pair: "The two of you at a table alone", "one-sided": "A top table with places on one side", round: "One of the round tables", none: "No table of your own",
};
export const SEATING: Record<Brief["ceremony"]["seating"], string> = {
  rows: "Chairs in rows", curve: "Chairs in curved rows", standing: "Guests stand", "at-tables": "At the tables, laid already",
};
export const AISLE: Record<Brief["ceremony"]["aisle"], string> = { centre: "Down the centre", sides: "Down both sides", none: "None" };
export const MUSIC: Record<Brief["music"]["by"], string> = { dj: "A DJ", band: "A band", playlist: "A playlist", none: "None" };

const THINGS: Record<string, string> = {
  welcome: "welcome table", cards: "cards and gifts", "guest-book": "guest book", photographs: "photographs", cake: "cake",
  "seating-plan": "seating plan", favours: "favours", "photo-booth": "photo booth", lounge: "lounge pieces", "cocktail-tables": "high tables",
  appetisers: "appetiser tables", "children-corner": "children's corner", "second-bar": "second bar", top: "your table", "dance-floor": "dance floor",
  dj: "DJ", band: "band", bar: "bar", buffet: "buffet", window: "a window", door: "a door", wall: "a wall", feature: "a feature wall", terrace: "the terrace",
};
/** A display, extra or place in words; an unknown one as it is written. */
export const thing = (word: string): string => THINGS[word] ?? word.replace(/-/g, " ");

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a, b and c". */
export function list(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? "";
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1) ?? ""}`;
}

/** A name within a sentence of ours keeps its own direction, and turns nothing about it (UAX 9, FSI and PDI). */
const isolated = (name: string): string => (/[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/.test(name) ? `\u2068${name.replace(/[\u2066-\u2069]/g, "")}\u2069` : name);

/** "Ines Calloway and Theo Brandt", for a line of print. */
export const nameList = (names: readonly string[]): string => list(names.map(isolated));

/** Each name begins a line: "Ines Calloway / and Theo Brandt". */
export const namesOver = (names: readonly string[]): string =>
  names.map(isolated).map((name, i) => (i > 0 && i === names.length - 1 ? `and ${name}` : i < names.length - 2 ? `${name},` : name)).join("\n");

/** Whether a text of the writer's own begins in a script that runs from right to left (UAX 9, P2). */
export const runsLeftward = (text: string): boolean => /^[^\p{L}]*[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/u.test(text);

export const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
