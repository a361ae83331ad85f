import { fail, type Result } from "../../base";
import type { Venue } from "../schema";
import { faultsLeft, formOf, idFrom, type Amiss, type Field, type Part, type Typed } from "./form";
import { LENGTHS } from "./house";
import { rectangleFrom } from "./outline";
import { factsAt } from "./sections";
import { reachesPast, stretchOn } from "./walls";
import { saidLength } from "./lengths";

const SIDES: Field["options"] = [{ value: "A", text: "above" }, { value: "B", text: "right" }, { value: "C", text: "below" }, { value: "D", text: "left" }];
const length = (name: string, label: string): Field => ({ name, label, kind: "length" });
const whole = (name: string, label: string): Field => ({ name, label, kind: "whole" });

/** A venue from nothing: what one room, its doors and its first tables need. Everything else has its own page afterwards. */
export const BEGINNING: readonly Part[] = [
  { id: "house", title: "The house", key: "name", at: "", fields: [
    { name: "name", label: "Name of the venue", kind: "text" }, { name: "lengths", label: "Lengths in", kind: "one", options: LENGTHS }, { name: "locale", label: "Language of dates and figures", kind: "text", hint: "A language tag: en-GB, en-US, de-DE." },
    { name: "currency", label: "Currency", kind: "text", hint: "Three letters: GBP, USD, EUR." }, { name: "timeZone", label: "Time zone", kind: "text", hint: "Such as Europe/London." },
  ], shown: [{ lengths: "metric", locale: "en-GB", currency: "GBP", timeZone: "Europe/London" }] },
  { id: "room", title: "Its first room", key: "name", at: "rooms[0]", fields: [{ name: "name", label: "Name", kind: "text" }, length("width", "Width"), length("depth", "Depth")], shown: [{}] },
  { id: "doors", title: "Doors to outside", one: "door", key: "width", at: "rooms[0].doors", about: "Two ways out are asked of every room for fifty people or more.", words: { from: "start", to: "width" }, fields: [{ name: "wall", label: "On the wall", kind: "one", options: SIDES }, length("start", "From the wall’s left or upper end"), length("width", "Clear width")],
    shown: [{ wall: "C", start: "", width: "" }, { wall: "A", start: "", width: "" }] },
  { id: "tables", title: "Tables and chairs", key: "chairs", at: "stock", fields: [whole("rounds", "Round tables"), length("across", "Across a round one"), whole("longs", "Long tables"), length("width", "Length of a long one"), length("depth", "Its depth"), whole("chairs", "Chairs")], shown: [{}] },
  { id: "package", title: "A package", key: "name", at: "packages[0]", fields: [{ name: "name", label: "Name", kind: "text" }, { ...whole("due", "Layout due, days before the day") }, { name: "coordinator", label: "With a coordinator", kind: "yes" }], shown: [{ name: "Hire of the house", due: "42" }] },
];

/** Places round a table: 600 mm of edge in comfort and 500 at the most for a round, along both sides of a long one; common practice, no source. */
const roundSeats = (across: number): { readonly comfort: number; readonly most: number } => ({ comfort: Math.max(1, Math.floor((Math.PI * across) / 640)), most: Math.max(1, Math.floor((Math.PI * across) / 520)) });
const longSeats = (width: number): { readonly comfort: number; readonly most: number } => ({ comfort: Math.max(1, 2 * Math.floor(width / 600)), most: Math.max(2, 2 * Math.floor(width / 600) + 2) });

/** What a draft has where nothing was typed yet: its name and one room it must have. */
const MEANWHILE: Readonly<Record<string, string>> = { "package.name": "Hire of the house", "package.due": "42" };
const withMeanwhile = (typed: Typed): Typed => ({ ...typed, ...Object.fromEntries(Object.entries(MEANWHILE).filter(([name]) => String(typed[name] ?? "").trim() === "")) });

/** The venue of a first form. `taken`: identifiers of venues that are there. As a draft, doors, tables and chairs may come later. */
export function venueBegun(sent: Typed, taken: readonly string[], asDraft = false): Result<Venue, readonly Amiss[]> {
  const typed = asDraft ? withMeanwhile(sent) : sent;
  const lengths = typed["house.lengths"] === "imperial" ? "imperial" : "metric", faults: Amiss[] = [];
  const currency = String(typed["house.currency"] ?? "").trim().toUpperCase();
  const form = formOf(BEGINNING, typed, { venue: { lengths, currency }, faults });
  const house = form.one("house"), room = form.one("room"), tables = form.one("tables"), pack = form.one("package");
  const outline = rectangleFrom([0, 0], room.length("width", 1000), room.length("depth", 1000)), roomName = room.text("name"), roomId = idFrom(roomName, ["outside", "toilets", "any", "back-of-house"], "room");
  const doors = form.rows("doors").map((row, i) => {
    const width = row.length("width", 300), start = row.raw("start") === "" ? 0 : row.length("start", 0), wall = row.raw("wall");
    // Walls below and left run against reading; people measure from the left and from above.
    const long = wall === "A" || wall === "C" ? room.length("width") : room.length("depth");
    const place = { wall, width, start: wall === "C" || wall === "D" ? long - start - width : start };
    if (Number.isFinite(long) && Number.isFinite(place.start) && reachesPast(outline, place)) row.amiss("start", `this is not on a wall: the wall is ${saidLength(long, { lengths, locale: "en-GB" })} long.`, true);
    return { id: i === 0 ? "front-door" : `door-${i + 1}`, ...(stretchOn(outline, place) ?? { from: [0, 0] as const, to: [0, 0] as const }), leads: "outside", exit: true, for: ["guests" as const, "service" as const], swing: "out" as const };
  });
  if (doors.length === 0) faults.push({ field: "doors.0.width", message: "Door 1, clear width: a room has a door.", fact: true });
  const rounds = tables.maybe.whole("rounds") ?? 0, longs = tables.maybe.whole("longs") ?? 0;
  const stock: Venue["stock"] = [
    ...(rounds > 0 ? [{ id: "round", name: "Round table", kind: "table" as const, shape: { diameter: tables.length("across", 500) }, count: rounds, seats: roundSeats(tables.length("across")), ends: false, joins: false }] : []),
    ...(longs > 0 ? [{ id: "long", name: "Long table", kind: "table" as const, shape: { width: tables.length("width", 500), depth: tables.length("depth", 300) }, count: longs, seats: longSeats(tables.length("width")), ends: true, joins: true }] : []),
    ...(asDraft && tables.raw("chairs") === "" ? [] : [{ id: "chair", name: "Chair", kind: "chair" as const, shape: { width: 450, depth: 500 }, count: tables.whole("chairs", 1, 10_000), ends: false, joins: false }]),
  ];
  if (rounds + longs === 0) tables.amiss("rounds", "type how many, of rounds or of long tables.", true);
  const venue: Venue = {
    format: "marquetry.venue/1", id: idFrom(house.text("name"), taken, "venue"), name: house.text("name"), locale: house.text("locale"), currency, timeZone: house.text("timeZone"), lengths,
    rooms: [{ id: roomId, name: roomName, level: 0, outline, obstacles: [], keepClear: [], doors, windows: [], sockets: [], walls: [], standing: [], uses: ["ceremony", "dining", "dancing", "buffet", "plating", "drinks", "lounge"] }],
    drapes: [], stock, charges: [], packages: [{ id: idFrom(pack.raw("name"), [], "hire"), name: pack.text("name"), coordinator: pack.yes("coordinator"), rooms: [roomId], turnover: true, dueDays: pack.whole("due", 0, 3650), included: [] }],
    tax: { name: "Tax", basisPoints: 0, of: "line", included: true },
  };
  const left = faultsLeft(faults, asDraft);
  return left.length > 0 ? fail(dedupe(left)) : factsAt(venue, { parts: BEGINNING, form, asDraft });
}

const dedupe = (faults: readonly Amiss[]): readonly Amiss[] => faults.filter((f, i) => faults.findIndex((g) => g.field === f.field) === i);

/** A room more, a rectangle to the right of all that stand on its level. */
export function withRoom(venue: Venue, { name, width, depth }: { readonly name: string; readonly width: number; readonly depth: number }): { readonly venue: Venue; readonly id: string } {
  const id = idFrom(name, [...venue.rooms.map((r) => r.id), "outside", "toilets", "any", "back-of-house"], "room");
  const right = Math.max(...venue.rooms.filter((r) => r.level === 0).flatMap((r) => r.outline.map((p) => p[0])), 0);
  const left = right === 0 ? 0 : right + 300;
  const room: Venue["rooms"][number] = { id, name, level: 0, outline: rectangleFrom([left, 0], width, depth), obstacles: [], keepClear: [], doors: [], windows: [], sockets: [], walls: [], standing: [], uses: [] };
  return { id, venue: { ...venue, rooms: [...venue.rooms, room] } };
}
