import { britishList } from "../lists";
import type { Saying, Sentences } from "./told";

const plural = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
const rooms = (s: Saying): string => britishList(s.rooms("rooms"));
/** "guest-book": what a word of the brief is called within a sentence. */
const word = (text: string): string => text.replaceAll("-", " ");
const found = (s: Saying): string => (s.rooms("rooms").length > 0 ? `: a layout was found in the ${rooms(s)}` : "");
/** A sentence as one of several. */
const clause = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1).replace(/\.$/, "")}`;
const WHERE: Readonly<Record<string, string>> = { window: "a window", door: "a door", wall: "a wall", feature: "a feature wall", terrace: "the terrace" };
const HOW: Readonly<Record<string, string>> = { near: "near", "away-from": "away from", "in-sight-of": "in sight of" };
const EASE: Readonly<Record<string, string>> = { most: ", at the most the room takes", close: ", closer than comfort asks", full: ", more to a table than comfort asks" };
const per = (s: Saying): string => `${s.number("share")} in a hundred`;

/** What the engine tells, in British English: one sentence a code, and the parts of which some are made. */
export const en = {
  // Why this layout.
  "some-placed": (s) => `${s.number("placed")} of ${s.number("guests")} have a place in the ${rooms(s)}.`,
  "all-in-comfort": (s) => `All ${s.number("guests")} sit in comfort in the ${rooms(s)}.`,
  "all-placed": (s) => `All ${s.number("guests")} find a place in the ${rooms(s)}${EASE[s.text("ease")] ?? ""}.`,
  "tables-laid": (s) => `${[...(s.number("rounds") > 0 ? [plural(s.number("rounds"), "round")] : []), ...(s.number("long") > 0 ? [plural(s.number("long"), "long table")] : [])].join(" and ")}.`,
  "facing-couple": (s) => `${s.number("see")} of ${s.number("of")} guests face the couple.`,
  "families-alike": (s) => `Tables ${s.number("first")} and ${s.number("second")} are alike in rank, one for each family: as near the couple, and with as many guests who face them.`,
  "families-unlike": (s) => `For the two families no two tables are alike in rank: table ${s.number("first")} ranks before table ${s.number("second")}, ${s.text("by") === "near" ? "being nearer the couple" : s.text("by") === "sight" ? "with more guests who face the couple" : "with more places"}.`,
  "drape-gives": (s) => `${s.text("name")} is drawn: the ${s.room("grows")} takes ${s.area("m2")} of the ${s.room("from")}.`,
  "no-turnover": () => "No room has to be turned over.",
  turnover: (s) => `Turning over takes ${plural(s.number("minutes"), "minute")} with a crew of ${s.number("crew")}.`,
  "chairs-over": (s) => `${plural(s.number("n"), "chair")} ${s.number("n") === 1 ? "is" : "are"} carried from the ${s.room("from")} to the ${s.room("to")}: the venue has too few for both.`,
  "dancing-apart": (s) => `Dancing is in the ${s.room("room")}, so the tables stay.`,
  "dancing-beside": () => "The dance floor lies among the tables all evening.",
  "dancing-struck": () => "Some tables are struck after the meal to make the dance floor.",
  "best-of-these": (s) => `Of these layouts it has the ${britishList(s.parts)}.`,
  "set-apart-by": (s) => `What sets it apart: ${s.parts.join(", ").replace(/^[A-Z](?=[a-z ])/, (first) => first.toLowerCase())}.`,
  "under-the-roof": (s) => `When it rains, all is held under the roof${s.parts.length > 0 ? `: ${s.parts.join(", ")}` : ""}.`,
  // What it is best at.
  "best-comfort": () => "most comfort", "best-dancing": () => "most room to dance", "best-moves": () => "fewest moves", "best-sight": () => "most guests facing the couple",
  // What it gives up.
  "one-kind": (s) => `${s.text("kind") === "long" ? "Long tables" : "Rounds"} alone seat everyone here: both kinds are asked for.`,
  "no-table-for-two": () => "The couple sit among their guests: a table for two alone would leave some without a place.",
  "gaps-least": () => "Gaps between tables are the least, not those of comfort.",
  "gaps-half-way": () => "Gaps between tables are half-way between the least and those of comfort.",
  "tables-full": () => "Tables are laid for as many as they take, not for comfort.",
  "carried-out": (s) => (s.number("n") === 1 ? `${s.text("name")} is carried out.` : `${s.text("name")}: ${s.number("n")} are carried out.`),
  "moves-for-drape": (s) => `${s.text("name")} moves to a wall of the ${s.room("room")}: the drape takes its place.`,
  "shares-table": (s) => `${capital(word(s.text("what")))} shares a table with ${s.text("with") || "another"}.`,
  "stands-elsewhere": (s) => `${capital(word(s.text("what")))}: its usual place is taken, so it stands in the ${s.text("with") || "next best"}.`,
  "no-place-for": (s) => `No place was found for: ${word(s.text("what"))}.`,
  "room-turned": () => "A room is turned over, which another layout here spares.",
  "slower-turn": (s) => `Turning over takes ${plural(s.number("by"), "minute")} more than in the quickest of these.`,
  "less-comfort": () => "Another layout here is more comfortable.",
  "no-spot-for-wish": (s) => `No spot was found for: ${s.parts.join("; ")}.`,
  // The first part is the wish that gives way.
  "wishes-conflict": (s) => `These wishes were not found to go together: ${s.parts.slice(1).join("; ")}. What comes last in your order gives way: ${s.parts[0] ?? ""}.`,
  wish: (s) => `${word(s.text("put"))} ${HOW[s.text("how")] ?? s.text("how")} ${WHERE[s.text("where")] ?? `the ${word(s.text("where"))}`}`,
  // A layout's name, and what tells layouts of one name apart.
  title: (s) => s.parts.join(", "),
  "by-hand": () => "adjusted by hand",
  "ceremony-and-reception": () => "Ceremony and reception", reception: () => "Reception", "round-tables": () => "Round tables", "rounds-and-long": () => "Rounds and long tables", "long-tables": () => "Long tables",
  "form-u": () => "A horseshoe", "form-e": () => "A comb of tables", "form-t": () => "A T of tables", "form-hollow-square": () => "A hollow square", "form-spine": () => "Rounds about a spine",
  "dance-in": (s) => `dancing in the ${s.room("room")}`, "floor-among": () => "dance floor among the tables", "floor-after": () => "dance floor after the meal",
  "ceremony-in": (s) => `ceremony in the ${s.room("room")}`, "meal-in": (s) => `meal in the ${rooms(s)}`, "buffet-in": (s) => `buffet in the ${s.room("room")}`, "bar-in": (s) => `bar in the ${s.room("room")}`, "no-bar": () => "no bar",
  "drape-drawn": () => "drape drawn", "no-drape": () => "no drape", "set-wide": () => "wide set", "set-closer": () => "closer set", "set-closest": () => "closest set", "full-tables": () => "full tables", "roomy-tables": () => "roomy tables",
  "set-grid": () => "in rows", "set-even": () => "in even rows", "set-staggered": () => "staggered", "set-diagonal": () => "on the slant", "set-balanced": () => "balanced about the middle", "set-halves": () => "in two halves", "set-free": () => "freely set", "set-fullest": () => "closely filled", "set-runs": () => "in long runs", "set-otherwise": () => "set otherwise",
  "couple-left": () => "couple on the left of the plan", "couple-right": () => "couple on the right of the plan", "couple-top": () => "couple at the top of the plan", "couple-foot": () => "couple at the foot of the plan",
  "so-many-tables": (s) => (s.number("rounds") > 0 && s.number("long") > 0 ? `${plural(s.number("rounds"), "round")} and ${s.number("long")} long` : `${s.number("rounds") + s.number("long")} tables`),
  // Under the roof.
  "wet-ceremony": (s) => `ceremony in the ${s.room("room")}`, "wet-drinks": (s) => `drinks in the ${s.rooms("rooms").join(" and the ")}`, "wet-meal": (s) => `meal in the ${s.rooms("rooms").join(" and the ")}`, "wet-dancing": (s) => `dancing in the ${s.room("room")}`,
  // What would do instead.
  "lay-most": () => "Lay each table for as many as it takes.", "floor-of-panels": (s) => `Take the largest dance floor that the venue's panels make, for ${per(s)} of the guests at once.`, "mix-long": () => "Mix long tables with the rounds.", "any-tables": () => "Let the tables be of any kind.",
  "any-form": () => "Let the tables stand in any form.", "meal-elsewhere": (s) => `Let the meal be in another room${found(s)}.`, "ceremony-elsewhere": (s) => `Let the ceremony be in another room${found(s)}.`, "draw-drape": (s) => `Let ${s.text("name").toLowerCase()} be drawn.`,
  "turn-over": () => "Have the room turned over between ceremony and meal.", "food-on-tables": () => "Have the food set down on the tables.", "smaller-floor": (s) => `Take a smaller dance floor, for ${per(s)} of the guests at once.`, "sit-as-pair": () => "Sit as a pair in place of a long top table.",
  "food-not-buffet": () => "Have the food set down on the tables, not on a buffet.", "ceremony-at-tables": () => "Hold the ceremony at the laid tables.", "ceremony-in-rows": () => "Hold the ceremony before rows of chairs.", "ceremony-standing": () => "Let guests stand for the ceremony.", "no-floor": () => "Do without a dance floor.", "shorter-top": (s) => `Have a shorter top table, with ${s.number("places")} places.`,
  "fewer-guests": (s) => `Invite ${s.number("less")} fewer: all ${s.number("seated")} then have a place.`,
  together: (s) => `Change these together: ${s.parts.map(clause).join("; ")}.`,
} satisfies Sentences;
