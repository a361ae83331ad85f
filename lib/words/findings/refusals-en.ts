import type { Catalogue, Say } from "./index";

const PART: Readonly<Record<string, string>> = { ceremony: "the ceremony", drinks: "the drinks", meal: "the meal", dancing: "dancing" };
const part = (s: Say): string => PART[s.part] ?? s.part;
const use = (s: Say): string => (s.text("use") === "dining" ? "dining" : part(s));
const KIND: Readonly<Record<string, string>> = { rows: "chairs in rows", tables: "tables", standing: "standing" };
const kinds = (s: Say): string => s.text("kind").split("/").map((one) => KIND[one] ?? one).join(" or ");
const TABLES: Readonly<Record<string, string>> = { rounds: "round tables", long: "long tables" };

/** Why nothing can be, and what a search did not find, in English: one sentence a code. */
export const refusals: Catalogue = {
  "bound-room": (s) => `The brief asks for ${s.room("room")} for ${part(s)}, and ${s.pack()} does not include it.`,
  "bound-use": (s) => (s.has("room") ? `${s.room("room")} is not let for ${use(s)}.` : `No room of ${s.pack()} is let for ${use(s)}.`),
  "bound-exits": (s) => `${s.number("people")} guests need ${s.limit} ways out; at most ${s.measured} can be reached from any room for ${part(s)}.`,
  "bound-route": (s) => `No way out from a room for ${part(s)} has doors of ${s.mm("door")} without steps, so a wheelchair cannot come in.`,
  "bound-posted": (s) => `${s.measured} guests at ${part(s)}; the posted figure lets ${s.limit} into ${s.room("room")} with ${kinds(s)}.`,
  "bound-densest": (s) => `${s.measured} guests at ${part(s)}; the ${s.area("area")} of ${s.room("room")} hold ${s.limit} at the densest that may be posted.`,
  "bound-area": (s) => `${s.measured} guests at ${part(s)}; ${s.room("room")} has no posted figure, and its ${s.area("area")} hold ${s.limit} at ${s.exactArea("each")} each.`,
  "bound-rooms": (s) => `${s.measured} guests at ${part(s)}; all ${s.number("rooms")} rooms for it together hold ${s.limit}.`,
  "bound-floor": (s) => `${s.number("dancers")} dancers need ${s.area("need")} of floor; the largest room for dancing has ${s.area("area")}.`,
  "bound-tables": (s) => `${s.measured} guests at ${part(s)}; the venue's ${s.number("count")} ${TABLES[s.text("tables")] ?? "tables"} seat ${s.number("places")} at most${s.number("extra") > 0 ? `, and the couple's table ${s.number("extra")} more` : ""}.`,
  "bound-chairs": (s) => `${s.measured} chairs are needed at ${part(s)}; the venue owns ${s.limit === 0 ? "none" : s.limit}.`,
  "bound-dance-panels": (s) => `The dance floor asked for takes ${s.exactArea("needed")}; all the venue's panels laid together make a floor of at most ${s.exactArea("owned")}.`,
  "bound-drape": (s) => `The brief asks for a drape to be drawn; ${s.pack()} has no two rooms with a drape between them.`,
  "bound-buffet": (s) => `The brief asks for a buffet or food stations; ${s.pack()} includes no room that is let for them.`,
  "places-not-found": (s) => (s.measured > 0 ? `Not everyone was seated: the fullest arrangement found in the ${s.text("rooms")} has ${s.measured} of ${s.limit} places.`
    : s.has("topPlaces") ? `No spot was found in the ${s.text("rooms")} for a top table of ${s.number("topPlaces")} side by side.` : `No table with its places was found a spot in the ${s.text("rooms")}.`),
  "rows-not-found": (s) => `No way was found to set rows for the ${s.limit} guests of the ceremony in the ${s.text("room")}.`,
  "pieces-not-found": (s) => `Dance floor, music, bar and buffet together were found no place in the ${s.text("room")}.`,
  "no-plan-found": (s) => (s.has("meal") ? "Without turning a room over, no way was found to give ceremony, meal and dancing a room each." : "No way of giving the rooms to the parts of the day was found."),
  "wet-twin": (s) => `No layout was found for the same day with ${s.text("rooms").replaceAll(", ", " and ")} shut by rain.`,
};
