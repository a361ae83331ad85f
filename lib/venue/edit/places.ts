import type { Point } from "../../geometry";
import type { Venue } from "../schema";
import type { Field, Form, Option, Part, Row } from "./form";
import { shownLength } from "./lengths";
import { cornerOf } from "./outline";

/** Pieces that a venue may have usual places for, by the engine's word for each. */
const PIECES: readonly Option[] = [
  ["cake", "cake"], ["welcome", "welcome table"], ["cards", "cards"], ["gifts", "gifts"], ["guest-book", "guest book"], ["photographs", "photographs"], ["seating-plan", "seating plan"], ["favours", "favours"],
  ["bar", "bar"], ["second-bar", "second bar"], ["buffet", "buffet"], ["dj", "DJ"], ["band", "band"], ["dance-floor", "dance floor"], ["photo-booth", "photo booth"], ["appetisers", "appetisers"], ["lounge", "lounge"], ["cocktail-tables", "high tables"], ["children-corner", "children’s corner"],
].map(([value = "", text = ""]) => ({ value, text }));
const WALLS: readonly Option[] = [["", "at a spot, typed beside"], ["feature", "a feature wall"], ["plain", "a plain wall"], ["mirror", "a mirror"]].map(([value = "", text = ""]) => ({ value, text }));

type Spot = NonNullable<Venue["places"]>[string][number];
const spotsOf = (venue: Venue): readonly (readonly [string, Spot, number])[] =>
  Object.entries(venue.places ?? {}).flatMap(([piece, spots]) => spots.map((spot, i) => [piece, spot, i + 1] as const));
const cornerIn = (venue: Venue, id: string | undefined): Point => { const room = venue.rooms.find((r) => r.id === id); return room ? cornerOf(room.outline) : [0, 0]; };

/** Each piece's order of places: where it goes first, and where it goes when that is taken. */
export function placeParts(venue: Venue): readonly Part[] {
  const spots = spotsOf(venue), len = (mm: number): string => shownLength(mm, venue);
  const known = new Set(PIECES.map((o) => o.value));
  const others = [...new Set(spots.map(([piece]) => piece))].filter((p) => !known.has(p)).map((value): Option => ({ value, text: value.replaceAll("-", " ") }));
  const walls = [...WALLS, ...new Set(spots.flatMap(([, s]) => ("wall" in s && !WALLS.some((w) => w.value === s.wall) ? [s.wall] : [])))].map((w) => (typeof w === "string" ? { value: w, text: w } : w));
  const fields: readonly Field[] = [
    { name: "piece", label: "Piece", kind: "one", options: [{ value: "", text: "" }, ...PIECES, ...others] }, { name: "turn", label: "Place number", kind: "whole" },
    { name: "room", label: "Room", kind: "one", options: [{ value: "", text: "any room" }, ...venue.rooms.map((r) => ({ value: r.id, text: r.name }))] }, { name: "wall", label: "Where", kind: "one", options: walls },
    { name: "left", label: "Middle from the left", kind: "length" }, { name: "top", label: "From the top", kind: "length" },
  ];
  return [{
    id: "places", title: "Places", one: "place", key: "piece", at: "places", fields,
    about: "Where a piece stands by custom. It goes to its place number 1 where it can, else to the next; what moved and why is told with each layout. A spot is counted from the upper left of its room, and the piece stands with its back to the nearest wall.",
    shown: spots.map(([piece, spot, turn]) => ({ piece, turn: String(turn), room: spot.room ?? "", ...("at" in spot ? atShown(spot.at, cornerIn(venue, spot.room), len) : { wall: spot.wall, left: "", top: "" }) })),
  }];
}

const atShown = (at: Point, from: Point, len: (mm: number) => string): Readonly<Record<"wall" | "left" | "top", string>> => ({ wall: "", left: len(at[0] - from[0]), top: len(at[1] - from[1]) });

/** The order as typed: by place number within each piece; a row without one comes after those that have one. */
export function readPlaces(form: Form, venue: Venue): Pick<Venue, "places"> {
  const read = form.rows("places").map((row) => ({ piece: row.raw("piece"), turn: row.maybe.whole("turn") ?? Infinity, spot: spotOf(row, venue) }));
  const pieces = [...new Set(read.map((one) => one.piece))];
  const ordered = (piece: string): readonly Spot[] => read.filter((one) => one.piece === piece).sort((a, b) => (a.turn === b.turn ? 0 : a.turn - b.turn)).map((one) => one.spot);
  return { places: pieces.length > 0 ? Object.fromEntries(pieces.map((piece) => [piece, ordered(piece)])) : undefined };
}

function spotOf(row: Row, venue: Venue): Spot {
  const room = row.maybe.text("room"), wall = row.raw("wall"), from = cornerIn(venue, room);
  if (wall !== "") return { wall, room };
  return { at: [row.length("left") + from[0], row.length("top") + from[1]], room };
}
