import type { Catalogue, Say } from "./index";

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** "a chair of Table 3", "Table 3". */
const body = (s: Say, key: "a" | "b"): string => {
  const name = s.piece(key);
  const is = s.text(`${key}Is`);
  if (is === "chair") return `a chair at ${name}`;
  return is === "wheelchair" ? `the wheelchair place at ${name}` : name;
};
/** Who does not allow it. */
const by = (s: Say): string => (s.text("by") === "package" ? "the package does" : "the answers do");
const KIND: Readonly<Record<string, string>> = { rows: "chairs in rows", tables: "tables", standing: "standing", "tables/standing": "tables or standing" };
const kind = (s: Say): string => KIND[s.text("kind")] ?? s.text("kind");
const USE: Readonly<Record<string, string>> = {
  ceremony: "the ceremony", dining: "dining", dancing: "dancing", buffet: "a buffet", plating: "plating", drinks: "drinks", lounge: "lounging",
};
const WHAT: Readonly<Record<string, string>> = {
  welcome: "a welcome table", cards: "a table for cards and gifts", "guest-book": "the guest book", photographs: "the photographs", cake: "the cake table",
  "seating-plan": "the seating plan", favours: "the favours", "photo-booth": "a photo booth", lounge: "lounge pieces", "cocktail-tables": "small high tables",
  appetisers: "a table for appetisers", "children-corner": "a children's corner", "second-bar": "a second bar", buffet: "the buffet", stations: "the food stations",
  dj: "the DJ", band: "the band", top: "a table for the couple",
};
const what = (s: Say): string => (s.text("what") === "brought" ? s.text("name") : (WHAT[s.text("what")] ?? s.text("what")));
const WHERE: Readonly<Record<string, string>> = {
  window: "a window", door: "a door", wall: "a wall", feature: "a feature of the walls", terrace: "the terrace", "dance-floor": "the dance floor", bar: "the bar",
};
const where = (s: Say): string => WHERE[s.text("where")] ?? WHAT[s.text("where")] ?? s.text("where");
const OBSTACLE: Readonly<Record<string, string>> = { column: "a column", fixed: "a fixture", stair: "a stair", hearth: "a hearth", other: "something built in" };

/** Findings in English, one sentence a code. */
export const en: Catalogue = {
  overlap: (s) => s.text("a") === s.text("b") ? `Two chairs at ${s.piece("a")} overlap by ${s.mm("depth")}.` : `${body(s, "a")} and ${body(s, "b")} overlap by ${s.mm("depth")}.`,
  "outside-room": (s) => `${body(s, "a")} stands ${s.mm("by")} outside the floor of ${s.room("room")}.`,
  "unknown-room": (s) => `There is no room "${s.text("room")}" at this venue${s.text("a") ? `, where ${s.piece("a")} should stand` : ""}.`,
  "on-obstacle": (s) => `${body(s, "a")} stands ${s.mm("by")} into ${OBSTACLE[s.text("what")] ?? s.text("what")} (${s.text("obstacle")}).`,
  "on-keep-clear": (s) => `${body(s, "a")} stands ${s.mm("by")} into floor that is kept clear: ${s.text("what")}.`,
  "door-clear": (s) => `${body(s, "a")} stands ${s.mm("by")} into the clear floor at ${s.door()}${s.has("exit") ? ", a way out" : ""}, in ${s.room("room")}.`,
  "seat-offset": (s) => `Place ${s.number("seat")} at ${s.piece("a")} is ${s.mm("off")} from the table's edge to the middle of the seat; ${s.mm("near")} to ${s.mm("far")} is asked.`,
  "seat-facing": (s) => `Place ${s.number("seat")} at ${s.piece("a")} looks past the table by ${s.number("past")}°.`,
  "table-places": (s) => `${s.piece("a")} is laid for ${s.number("places")} and seats ${s.number("most")} at most.`,
  "table-gap": (s) => `${s.piece("a")} and ${s.piece("b")} stand ${s.mm("gap")} apart where a place faces the other; ${s.mm("limit")} is the least.`,
  "wall-gap": (s) => `${s.piece("a")} stands ${s.mm("gap")} from ${s.text("kind") === "wall" ? "the wall" : s.text("kind") === "obstacle" ? "what is built in" : s.piece("b")} behind its places; ${s.mm("limit")} is the least.`,
  "table-comfort": (s) => `${count(s.number("count"), "gap")} between tables under the comfortable ${s.mm("limit")}; the tightest is ${s.mm("gap")}, at ${s.piece("a")}.`,
  "wall-comfort": (s) => `${count(s.number("count"), "table")} with less than the comfortable ${s.mm("limit")} behind a place; the tightest is ${s.mm("gap")}, at ${s.piece("a")}.`,
  "end-wall": (s) => `The end of ${s.piece("a")} is ${s.mm("gap")} from what it faces; ${s.mm("limit")} is the least.`,
  "end-end": (s) => `The ends of ${s.piece("a")} and ${s.piece("b")} are ${s.mm("gap")} apart: join them or leave ${s.mm("limit")}.`,
  "row-clear": (s) => `${s.piece("a")} has ${s.mm("clear")} clear ahead; ${s.mm("limit")} is the least.`,
  "row-long": (s) => `A row of ${s.number("chairs")} chairs without an aisle; ${s.number("limit")} is the most.`,
  "row-narrow": (s) => `A row of ${s.number("chairs")} chairs, open at ${s.number("ends") === 2 ? "both ends" : "one end"}, has ${s.mm("clear")} clear ahead; ${s.mm("limit")} is the least.`,
  accessway: (s) => `${count(s.number("places"), "place")} at and near ${s.piece("a")} lie up to ${s.mm("distance")} from an aisle; the path there must be ${s.mm("limit")} wide.`,
  "centre-aisle": (s) => `The centre aisle is ${s.mm("width")} wide, straight and clear; ${s.mm("limit")} is the least for this many seats.`,
  stock: (s) => `${s.number("used")} of "${s.text("name")}" are used; the venue owns ${s.number("owned")}.`,
  "stock-chairs": (s) => `${count(s.number("used"), "chair")} are wanted; the venue owns ${s.number("owned")}.`,
  "stock-size": (s) => `${s.piece("a")} is not of the size of "${s.text("name")}".`,
  "unknown-stock": (s) => `The venue has no stock "${s.text("stock")}".`,
  "unknown-standing": (s) => `The venue has no standing piece "${s.text("standing")}".`,
  "standing-twice": (s) => `${s.text("name")} stands in two places at once.`,
  "standing-size": (s) => `${s.text("name")} is drawn in another size than its own.`,
  "standing-fixed": (s) => `${s.text("name")} may not be moved.`,
  "standing-gone": (s) => `${s.text("name")} may not be moved, and ${s.room("room")} is drawn without it.`,
  "same-id": (s) => `Two pieces bear the name "${s.text("a")}".`,
  "way-out": (s) => `From ${s.number("places") === 1 ? "a place" : count(s.number("places"), "place")} at ${s.piece("a")} a path of ${s.mm("width")} reaches ${s.number("found") === 0 ? "no way out" : count(s.number("found"), "way out", "ways out")}; ${s.number("needed")} needed${s.has("narrow") ? `; the narrowest place on the way measures ${s.mm("narrow")}` : ""}.`,
  "exit-count": (s) => `${count(s.number("people"), "person", "people")} need ${count(s.number("needed"), "way out", "ways out")}; ${s.number("found")} can be reached.`,
  "exit-width": (s) => s.has("shut")
    ? `With the widest way out shut, ${s.mm("width")} of doors is left for ${count(s.number("people"), "person", "people")}; ${s.mm("limit")} is asked.`
    : `The ways out are ${s.mm("width")} wide in all for ${count(s.number("people"), "person", "people")}; ${s.mm("limit")} is asked.`,
  drain: (s) => `${count(s.number("people"), "person", "people")} at their places in ${s.room("room")} leave by ${count(s.number("doors"), "door")} of ${s.mm("width")} in all${s.has("shut") ? " when one way out is shut" : ""}; ${s.mm("limit")} is asked.`,
  "exits-apart": (s) => `The doors to choose between stand ${s.mm("apart")} apart at most; for ${count(s.number("people"), "person", "people")} in rooms ${s.mm("span")} across, ${s.mm("limit")} is asked.`,
  travel: (s) => `${count(s.number("places"), "place")} at and near ${s.piece("a")} are a walk of ${s.mm("distance")} or more from the nearest way out; ${s.mm("limit")} is the most.`,
  "common-path": (s) => `${count(s.number("places"), "place")} at and near ${s.piece("a")} are a walk of ${s.mm("distance")} or more from floor where two ways out may be chosen; ${s.mm("limit")} is the most.`,
  "crowd-managers": (s) => `${count(s.number("people"), "person", "people")} are expected: ${s.number("needed")} crowd managers are asked for.`,
  "route-turn": (s) => `A wheelchair must turn back round the end of ${s.piece("a")}: ${s.mm("gap")} at the turn, ${s.mm("side")} beside it; ${s.mm("turn")} and ${s.mm("beside")} are asked, or ${s.mm("wide")} at the turn.`,
  "route-passing": (s) => `No floor ${s.mm("wide")} square where two wheelchairs can pass lies within ${s.mm("every")} of the wheelchair place at ${s.piece("a")}.`,
  turning: (s) => `A wheelchair does not turn near its place at ${s.piece("a")}: floor for a circle of ${s.mm("wide")}, or for a T, lies ${s.has("distance") ? `${s.mm("distance")} or more off` : "nowhere on its route"}; ${s.mm("limit")} is the farthest that anyone should go backwards.`,
  "toilets-steps": () => "Every door to the toilets has steps, and a guest comes in a wheelchair.",
  "toilets-route": (s) => `No route ${s.mm("width")} wide (${s.mm("door")} at doors) leads from here to the toilets.`,
  "accessible-places": (s) => `${count(s.number("found"), "place")} of ${s.number("seats")} lie on a route wide enough for a wheelchair; ${s.number("needed")} are asked.`,
  "wheelchairs-together": (s) => `All ${s.number("places")} wheelchair places are at ${s.piece("a")}; spread among the tables they give a choice.`,
  "wheelchair-spaces": (s) => `${count(s.number("seats"), "seat")} in rows with ${count(s.number("spaces"), "wheelchair space")}; where seating is built in, ${s.number("needed")} would be asked.`,
  companion: (s) => `No chair stands beside ${s.piece("a")} for a companion.`,
  "rows-fastened": (s) => `${count(s.number("chairs"), "chair")} in rows, more than ${s.number("from")}: they are fastened together in ${s.has("most") ? `lengths of ${s.number("least")} to ${s.number("most")}` : `groups of ${s.number("least")} or more`}.`,
  "aisle-width": (s) => `An aisle between the rows is ${s.mm("width")} wide and serves ${count(s.number("served"), "place")}; ${s.mm("limit")} is the least.`,
  "stretch": (s) => `The shortest ways out of ${count(s.number("people"), "person", "people")} run ${s.has("b") ? `between ${s.piece("a")} and ${s.piece("b")}` : `between ${s.piece("a")} and the wall`}, where ${s.mm("width")} are free; so many ask for ${s.mm("limit")}.`,
  "front-strip": (s) => `Between the first row and the wall ahead lie ${s.mm("depth")}; ${s.mm("limit")} is asked for the couple and those who marry them.`,
  queue: (s) => `Before ${s.piece("a")} ${s.mm("gap")} are free ${s.has("b") ? `to ${s.piece("b")}` : "to the wall"}; those who wait take ${s.mm("limit")}.`,
  "circuit-load": (s) => `What is plugged in at circuit ${s.text("circuit")} draws about ${s.number("watts")} W; it carries ${s.number("limit")} W.`,
  "cable-door": (s) => `The cable to ${s.piece("a")}, ${s.mm("length")} along the walls, crosses ${s.door()}.`,
  "wish-near": (s) => `${s.piece("a")} stands ${s.mm("measured")} from ${where(s)}; near is taken as ${s.mm("limit")}.`,
  "wish-away": (s) => `${s.piece("a")} stands ${s.mm("measured")} from ${where(s)}; away is taken as ${s.mm("limit")}.`,
  "wish-sight": (s) => `${s.piece("a")} does not see ${where(s)}.`,
  route: (s) => `No route ${s.mm("width")} wide (${s.mm("door")} at doors) leads from a way out to ${s.has("seat") ? `the wheelchair place at ${s.piece("a")}` : s.piece("a")}${s.has("narrow") ? `; the narrowest place measures ${s.mm("narrow")}` : ""}.`,
  densest: (s) => `${count(s.number("people"), "person", "people")} on this floor is denser than one to 0.65 m²: ${s.number("limit")} at most, whatever is posted.`,
  posted: (s) => `${count(s.number("people"), "person", "people")} are in the rooms; the posted figure for ${kind(s)} is ${s.number("limit")}.`,
  "posted-room": (s) => `${s.room("room")} holds ${count(s.number("seats"), "place")}; ${s.has("posted") ? "its posted figure" : "its floor's figure"} for ${kind(s)} is ${s.number("limit")}.`,
  area: (s) => s.has("must") ? `${count(s.number("people"), "person", "people")} are in the rooms; by their floor ${s.number("limit")} fit with ${kind(s)}.`
    : `${count(s.number("people"), "person", "people")} are in the rooms; by the floor alone it would be ${s.number("limit")} with ${kind(s)}. The posted figure governs.`,
  "seats-count": (s) => `The layout says ${count(s.number("said"), "place")} and holds ${s.number("seats")}.`,
  "places-short": (s) => `The ${s.text("part")} has ${count(s.number("seats"), "place")} for ${count(s.number("guests"), "guest")}: ${s.number("short")} too few.`,
  "wheelchairs-short": (s) => `The ${s.text("part")} has ${count(s.number("places"), "place")} for a wheelchair; ${s.number("guests")} are needed.`,
  "suppliers-short": (s) => `${count(s.number("places"), "place")} beside the guests' for ${count(s.number("suppliers"), "supplier")}, who eat too.`,
  alone: (s) => `${s.piece("a")} is laid for one guest alone.`,
  "table-comfort-places": (s) => (s.number("tables") === 1 ? "" : `${s.number("tables")} tables are laid for more than was asked: `) + `${s.piece("a")} is laid for ${s.number("places")}; ${s.number("limit")} was asked.`,
  "scene-missing": (s) => `The ${s.text("scene")} is asked for, and the layout has none.`,
  "not-placed": (s) => `Asked for: ${what(s)}; nothing of the kind stands in ${s.has("part") ? `the ${s.text("part")}` : "any part of the day"}.`,
  "dance-floor": (s) => `The dance floor has ${s.area("has")}; ${count(s.number("dancers"), "dancer")} at once need ${s.area("need")}.`,
  "room-not-hired": (s) => `${s.room("room")} is not among the rooms of "${s.text("package")}".`,
  "room-use": (s) => `${s.room("room")} is not let for ${USE[s.text("use")] ?? s.text("use")}.`,
  "scene-room": (s) => `None of the rooms here is let for ${USE[s.text("use")] ?? s.text("use")}.`,
  "room-asked": (s) => `${s.room("room")} is asked for, and is not used here.`,
  "unknown-package": (s) => `The venue has no package "${s.text("package")}".`,
  "unknown-drape": (s) => `The venue has no drape "${s.text("drape")}".`,
  "drape-unwanted": (s) => `${s.text("name")} is drawn, and none is asked for.`,
  "turnover-missing": (s) => `${s.room("room")} changes between ${s.scene("from")} and ${s.scene("to")}, and no turnover is planned.`,
  "turnover-empty": (s) => `The turnover of ${s.room("room")} between ${s.scene("from")} and ${s.scene("to")} has no minutes or no crew.`,
  "turnover-not-allowed": (s) => `${s.room("room")} is turned over between ${s.scene("from")} and ${s.scene("to")}, which ${by(s)} not allow.`,
  "chairs-twice": (s) => `${count(s.number("used"), "chair")} are wanted at once, ${s.scene("from")} and ${s.room("room")} laid for ${s.scene("to")} together; the venue owns ${s.number("owned")}, and no turnover carries any over.`,
  "chairs-not-allowed": (s) => `${count(s.number("chairs"), "chair")} would be carried to ${s.room("room")} between ${s.scene("from")} and ${s.scene("to")}, which ${by(s)} not allow; the venue owns ${s.number("owned")}, and ${s.number("used")} are wanted.`,
  "turnover-room": (s) => `While ${s.room("room")} is turned over from ${s.scene("from")} to ${s.scene("to")}, ${s.number("holds") === 0 ? "there is no other room" : `the other rooms hold ${s.number("holds")}`} for ${count(s.number("people"), "guest")}${s.has("wet") ? " when it rains" : ""}${s.number("could") > 0 && s.number("could") < s.number("people") ? `; all the hired rooms${s.has("wet") ? " under a roof" : ""} that are free then hold ${s.number("could")}` : ""}.`,
  "turnover-time": (s) => `The turnover from ${s.scene("from")} to ${s.scene("to")} takes ${count(s.number("minutes"), "minute")}; the day leaves ${s.number("gap")}.`,
  "music-absent": (s) => `The ${s.text("by") === "dj" ? "DJ" : "band"} plays the ceremony but does not stand in its room: a second set-up is needed there.`,
  "music-sight": (s) => `${s.piece("a")} does not see the floor ${s.mm("before")} before the first row: a second set-up or a signal is needed.`,
};
