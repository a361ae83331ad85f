import { britishList } from "../lists";
import type { Catalogue, Say } from "./index";

const PART: Readonly<Record<string, string>> = { ceremony: "the ceremony", drinks: "the drinks", meal: "the meal", dancing: "dancing" };
const part = (s: Say): string => PART[s.part] ?? s.part;
const use = (s: Say): string => (s.text("use") === "dining" ? "dining" : part(s));
const KIND: Readonly<Record<string, string>> = { rows: "chairs in rows", tables: "tables", standing: "everyone standing" };
const kinds = (s: Say): string => s.text("kind").split("/").map((one) => KIND[one] ?? one).join(" or ");
const TABLES: Readonly<Record<string, string>> = { rounds: "round tables", long: "long tables" };
const PIECE: Readonly<Record<string, string>> = { "dance-floor": "dance floor", dj: "DJ", "second-bar": "second bar" };
const pieces = (s: Say): string => britishList(s.words("pieces").map((one) => PIECE[one] ?? one));
const rooms = (s: Say): string => britishList(s.rooms("rooms").map((one) => `the ${one}`));

const guests = (n: number): string => (n === 1 ? "1 guest" : `${n} guests`);
const ways = (n: number): string => (n === 0 ? "no way out" : n === 1 ? "1 way out" : `${n} ways out`);
/** By how much it falls short: what a reader would else work out. */
const tooMany = (s: Say): string => `${s.measured - s.limit} too many`;
const tooFew = (s: Say): string => `${s.limit - s.measured} too few`;
/** Whom a part of the day is for, and the room that could take most of them. */
const FORMS: Readonly<Record<string, string>> = { u: "A horseshoe", e: "A comb of tables", t: "A T of tables", "hollow-square": "A hollow square" };
const largest = (s: Say): string => `${part(s)} is for ${guests(s.measured)}; the ${s.room("room")}${s.has("largest") ? ", the largest room for it," : ""}`;
const drawn = (s: Say): string => (s.has("drape") ? " with the drape drawn" : "");

/** Why nothing can be, and what a search did not find, in English: one sentence a code. */
export const refusals: Catalogue = {
  "bound-room": (s) => `${part(s)} is asked for in the ${s.room("room")}, which is not among the rooms of ${s.pack()}.`,
  "bound-use": (s) => (s.has("room") ? `The ${s.room("room")} is not let for ${use(s)}.` : `No room of ${s.pack()} is let for ${use(s)}.`),
  "bound-exits": (s) => {
    const where = s.has("room") ? `the ${s.room("room")} has ${ways(s.measured)} within reach` : `no room for it has more than ${s.measured} within reach`;
    return s.number("people") === 0 ? `No way out can be reached from any room for ${part(s)}.` : `${part(s)} is for ${guests(s.number("people"))}, who need ${ways(s.limit)}; ${where}.`;
  },
  "bound-route": (s) => `A guest comes in a wheelchair, and ${s.has("room") ? `the ${s.room("room")} has no way in` : `no room for ${part(s)} has a way in`} from outside without steps and with doors of ${s.mm("door")}.`,
  "bound-posted": (s) => `${largest(s)} may hold ${s.limit} with ${kinds(s)}${drawn(s)}, by its posted figure: ${tooMany(s)}.`,
  "bound-densest": (s) => `${largest(s)} has ${s.area("area")}${drawn(s)}, which may hold ${s.limit} however close they are: ${tooMany(s)}.`,
  "bound-area": (s) => `${largest(s)} has no posted figure, and its ${s.area("area")}${drawn(s)} count for ${s.limit} at ${s.exactArea("each")} a guest: ${tooMany(s)}.`,
  "bound-rooms": (s) => `${part(s)} is for ${guests(s.measured)}; ${rooms(s)} may hold ${s.limit} between them: ${tooMany(s)}.`,
  "bound-floor": (s) => `${s.number("dancers")} dancing at once need ${s.area("need")} of floor; the largest room for dancing has ${s.area("area")} in all.`,
  "bound-tables": (s) => {
    const couple = s.number("extra") > 0 ? ` and the couple’s own table ${s.number("extra")} more` : "";
    return `${part(s)} is for ${guests(s.measured)}; the venue’s ${s.number("count")} ${TABLES[s.text("tables")] ?? "tables"} seat ${s.number("places")} at most${couple}: ${tooMany(s)}.`;
  },
  "bound-chairs": (s) => `${part(s)} needs ${s.measured} chairs; the venue owns ${s.limit === 0 ? "none" : `${s.limit}: ${s.measured - s.limit} too few`}.`,
  "bound-dance-panels": (s) => `The dance floor asked for takes ${s.exactArea("needed")}; all the venue’s panels laid together make ${s.exactArea("owned")}: ${s.exactArea("short")} too little.`,
  "bound-form": (s) => `${FORMS[s.text("form")] ?? "The form asked for"} is made of at least ${s.limit} long tables joined end to end; ${s.has("rounds") ? "rounds are asked for" : `the venue owns ${s.measured === 0 ? "none that join" : `${s.measured} that join`}`}.`,
  "bound-at-tables": () => "The ceremony is to be held at the laid tables, and no meal is asked for that they would be laid for.",
  "bound-drape": (s) => `A drape is asked for, and between no two rooms of ${s.pack()} is there one.`,
  "bound-buffet": (s) => `A buffet or food stations are asked for, and no room of ${s.pack()} is let for them.`,
  "places-not-found": (s) => {
    if (s.measured > 0) return `The fullest arrangement found, in ${rooms(s)}, has places for ${s.measured} of the ${s.limit} guests: ${tooFew(s)}.`;
    if (s.has("topPlaces")) return `No spot was found in ${rooms(s)} for a top table of ${s.number("topPlaces")} side by side${s.has("run") ? `, which is ${s.mm("run")} long` : ""}.`;
    return s.has("pieces") ? `No way was found to stand tables in ${rooms(s)} together with what else is asked for there: ${pieces(s)}.` : `No spot was found in ${rooms(s)} for any table with its places.`;
  },
  "rows-not-found": (s) => s.has("chairs") ? `The ceremony is for ${guests(s.limit)}; once the meal is laid in another room, ${s.number("chairs")} of the venue’s ${s.number("owned")} chairs are left for rows in the ${s.room("room")}: ${tooFew(s)}.` : `No way was found to set rows for all ${guests(s.limit)} of the ceremony in the ${s.room("room")}${s.measured > 0 ? `; at most ${s.measured} were given a place: ${tooFew(s)}` : ""}.`,
  "pieces-not-found": (s) => `No place was found in the ${s.room("room")} for what is asked for there: ${pieces(s)}.`,
  "no-plan-found": (s) => {
    if (!s.has("meal")) return "No way of giving the rooms to the parts of the day was found.";
    const must = s.has("by") ? `and ${s.text("by") === "package" ? `${s.pack()} does not include turning a room over` : "the answers say that no room is turned over"}` : "";
    return s.has("room") ? `Only the ${s.room("room")} can hold both the ceremony and the meal, ${must}.` : `No way was found to give ceremony, meal and dancing a room each${must ? `, ${must}` : ""}.`;
  },
  "wet-twin": (s) => `No layout was found for the same day with ${rooms(s)} shut by rain.`,
};
