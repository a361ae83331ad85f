import type { Point, Polygon } from "../../geometry";
import { OBSTACLE_KINDS, USES, type Room, type Venue } from "../schema";
import { socketAt } from "../site";
import type { Field, Form, Option, Part, Row, Shown } from "./form";
import { idFrom } from "./form";
import { saidLength, shownLength } from "./lengths";
import { cornerOf, isRectangle, readCorners, readFloor, rectangleFrom, shownCorners, shownFloor } from "./outline";
import { onWall, reachesPast, stretchOn, wallIndex, wallLength, wallName, type Stretch } from "./walls";

const words = (list: readonly string[]): readonly Option[] => list.map((value) => ({ value, text: value }));
const blank: Option = { value: "", text: "" };
const LEFT: Field = { name: "left", label: "From the left", kind: "length" }, TOP: Field = { name: "top", label: "From the top", kind: "length" };
const WIDTH: Field = { name: "width", label: "Width", kind: "length" }, DEPTH: Field = { name: "depth", label: "Depth", kind: "length" };
const CORNERS: Field = { name: "corners", label: "Or its corners, with bars between", kind: "text" };
const START: Field = { name: "start", label: "From the wall’s start", kind: "length" };

/** The parts of the form of one room. `n` is its place among the venue's rooms. */
export function roomParts(venue: Venue, room: Room, n: number): readonly Part[] {
  const { outline } = room, corner = cornerOf(outline);
  const len = (mm: number): string => shownLength(mm, venue);
  const walls: Field = { name: "wall", label: "Wall", kind: "one", options: outline.map((_, i) => ({ value: wallName(i), text: wallName(i) })) };
  const free: Field = { ...walls, label: "Where", options: [blank, ...walls.options ?? [], { value: "floor", text: "in the floor" }] };
  const at = `rooms[${n}]`;
  const stretch = (s: Stretch): Shown => { const on = onWall(outline, s); return on ? { wall: on.wall, start: len(on.start), width: len(on.width) } : {}; };
  const part = (p: Omit<Part, "at"> & { readonly at?: string }): Part => ({ at: p.at ?? `${at}.${p.id}`, ...p });
  return [
    part({ id: "room", title: "The room", key: "name", at, words: { outline: "corners", level: "level", posted: "rows" }, fields: [
      { name: "name", label: "Name", kind: "text" }, { name: "level", label: "Level", kind: "whole", hint: "0 is the entrance’s." },
      { name: "uses", label: "Used for", kind: "many", options: words(USES) },
      { name: "rows", label: "Posted for rows", kind: "whole", hint: "The authority’s figures, where there are any." }, { name: "tables", label: "Posted for tables", kind: "whole" }, { name: "standing", label: "Posted for standing", kind: "whole" },
      { name: "outdoor", label: "Out of doors: a wet-weather plan is made without it", kind: "yes" },
    ], shown: [{ name: room.name, level: String(room.level), uses: room.uses, rows: show(room.posted?.rows), tables: show(room.posted?.tables), standing: show(room.posted?.standing), outdoor: room.outdoor ? "yes" : "" }] }),
    part({ id: "floor", title: "Its outline", key: "form", at: `${at}.outline`, about: "Lengths inside the room count from the upper left of its outline. Walls are lettered from the first corner on.", fields: [
      { name: "form", label: "Outline", kind: "one", options: [{ value: "rectangle", text: "a rectangle" }, { value: "corners", text: "corners, one a line" }] },
      { ...WIDTH, label: "Width of the rectangle" }, { ...DEPTH, label: "Depth of the rectangle" },
      { name: "corners", label: "Corners", kind: "area", hint: "How far to the right and how far down, one corner a line: 6.20, 0.00" },
      { ...LEFT, label: "Place on the venue’s plan, from the left", hint: "Rooms of one level lie side by side on one plan; a wall of up to 0.80 m may stand between." }, { ...TOP, label: "Place on the venue’s plan, from the top" },
    ], words: { outline: "corners" }, shown: [{ form: isRectangle(outline) && isFirstCorner(outline, corner) ? "rectangle" : "corners", ...sides(outline, len), corners: shownCorners(outline, corner, venue), left: len(corner[0]), top: len(corner[1]) }] }),
    part({ id: "doors", title: "Doors and openings", one: "door", key: "width", about: "A door to another room is put on that room’s wall as well.", words: { from: "start", to: "width", leads: "leads", for: "for", id: "name" }, fields: [
      { name: "name", label: "Name", kind: "text" }, walls, START, { ...WIDTH, label: "Clear width" },
      { name: "leads", label: "Leads to", kind: "one", options: [{ value: "outside", text: "outside" }, { value: "back-of-house", text: "back of house" }, { value: "toilets", text: "toilets" }, ...venue.rooms.filter((r) => r !== room).map((r) => ({ value: r.id, text: r.name }))] },
      { name: "swing", label: "Swings", kind: "one", options: [{ value: "out", text: "out" }, { value: "in", text: "in" }, { value: "both", text: "both ways" }, { value: "none", text: "not: an opening" }] },
      { name: "for", label: "For", kind: "many", options: words(["guests", "service"]) }, { name: "exit", label: "A way out", kind: "yes" }, { name: "steps", label: "Steps", kind: "whole" },
    ], shown: room.doors.map((d) => ({ id: d.id, name: d.id.replaceAll("-", " "), ...stretch(d), leads: d.leads, swing: d.swing, for: d.for, exit: d.exit ? "yes" : "", steps: show(d.steps) })) }),
    part({ id: "windows", title: "Windows", one: "window", key: "width", words: { from: "start", to: "width", sill: "sill" }, fields: [walls, START, WIDTH, { name: "sill", label: "Sill above the floor", kind: "length" }],
      shown: room.windows.map((w) => ({ ...stretch(w), sill: len(w.sill) })) }),
    part({ id: "walls", title: "Walls good for a backdrop", one: "stretch", key: "width", words: { from: "start", to: "width", is: "is" }, fields: [walls, START, WIDTH, { name: "is", label: "It is", kind: "one", options: words(["feature", "plain", "mirror"]) }],
      shown: room.walls.map((w) => ({ ...stretch(w), is: w.is })) }),
    part({ id: "obstacles", title: "Columns and what is built in", one: "thing", key: "kind", words: { outline: "left", height: "height" }, fields: [
      { name: "kind", label: "What", kind: "one", options: [blank, ...words(OBSTACLE_KINDS)] }, LEFT, TOP, WIDTH, DEPTH, { name: "height", label: "Height", kind: "length", hint: "Empty: to the ceiling." }, CORNERS,
    ], shown: room.obstacles.map((o) => ({ id: o.id, kind: o.kind, ...shownFloor(o.outline, corner, venue), height: o.height === undefined ? "" : len(o.height) })) }),
    part({ id: "keepClear", title: "Floor to keep clear", one: "place", key: "why", words: { outline: "left", why: "why" }, fields: [{ name: "why", label: "Why", kind: "text" }, LEFT, TOP, WIDTH, DEPTH, CORNERS],
      shown: room.keepClear.map((k) => ({ id: k.id, why: k.why, ...shownFloor(k.outline, corner, venue) })) }),
    part({ id: "sockets", title: "Sockets", one: "socket", key: "wall", words: { at: "start" }, fields: [free, START, LEFT, TOP, { name: "circuit", label: "Circuit", kind: "text" }, { name: "amps", label: "Amperes", kind: "figure" }],
      shown: room.sockets.map((s) => socketShown(room, s, venue)) }),
    part({ id: "standing", title: "Standing furniture", one: "piece", key: "name", words: { at: "left", shape: "width", move: "move", angle: "angle" }, fields: [
      { name: "name", label: "Name", kind: "text" }, { name: "kind", label: "Kind", kind: "one", options: words(STANDING) }, { name: "diameter", label: "Across, if round", kind: "length" }, WIDTH, DEPTH, { ...LEFT, label: "Middle from the left" }, { ...TOP, label: "Middle from the top" },
      { name: "angle", label: "Turned by, degrees", kind: "figure" }, { name: "move", label: "Moving it", kind: "one", options: [{ value: "", text: "is not done" }, ...venue.charges.map((c) => ({ value: c.id, text: `costs “${c.name}”` }))] },
    ], shown: room.standing.map((s) => ({ id: s.id, name: s.name, kind: s.kind, ...("diameter" in s.shape ? { diameter: len(s.shape.diameter), width: "", depth: "" } : { diameter: "", width: len(s.shape.width), depth: len(s.shape.depth) }), left: len(s.at[0] - corner[0]), top: len(s.at[1] - corner[1]), angle: String(s.angle), move: s.move ?? "" })) }),
  ];
}

const STANDING = ["table", "chair", "bar", "lounge", "screen", "arch", "cocktail-table", "stage", "other"] as const;
const show = (n: number | undefined): string => (n === undefined ? "" : String(n));
const isFirstCorner = (p: Polygon, [x, y]: Point): boolean => p[0]?.[0] === x && p[0][1] === y && p[1]?.[1] === y;
function sides(p: Polygon, len: (mm: number) => string): Shown {
  const [x, y] = cornerOf(p);
  return { width: len(Math.max(...p.map((q) => q[0])) - x), depth: len(Math.max(...p.map((q) => q[1])) - y) };
}

function socketShown(room: Room, socket: Room["sockets"][number], venue: Venue): Shown {
  const at = socketAt(socket), more: Shown = "length" in socket ? {} : { circuit: socket.circuit ?? "", amps: show(socket.amps) };
  const on = onWall(room.outline, { from: at, to: at }), [x, y] = cornerOf(room.outline);
  return on ? { wall: on.wall, start: shownLength(on.start, venue), left: "", top: "", ...more } : { wall: "floor", start: "", left: shownLength(at[0] - x, venue), top: shownLength(at[1] - y, venue), ...more };
}

/** A room as typed. What is kept of the room as it was: identifiers, and whatever the form does not ask. */
export function readRoom(form: Form, venue: Venue, room: Room): Room {
  const head = form.one("room"), outline = readOutline(form.one("floor"), venue), corner = outline.length > 0 ? cornerOf(outline) : ([0, 0] as const);
  const shift: Point = [corner[0] - cornerOf(room.outline)[0], corner[1] - cornerOf(room.outline)[1]];
  const same = sameShape(outline, room.outline, shift);
  const stretch = (row: Row, was: Stretch | undefined): Stretch => readStretch(row, { outline, venue, was: same && was ? { from: moved(was.from, shift), to: moved(was.to, shift) } : undefined });
  const ids = (list: readonly { readonly id: string }[]): string[] => list.map((one) => one.id);
  const taken = { obstacles: ids(room.obstacles), keepClear: ids(room.keepClear), standing: ids(venue.rooms.flatMap((r) => r.standing)) };
  const fresh = (list: string[], name: string, otherwise: string): string => { const id = idFrom(name, list, otherwise); list.push(id); return id; };
  const posted = { rows: head.maybe.whole("rows"), tables: head.maybe.whole("tables"), standing: head.maybe.whole("standing") };
  const at = (row: Row): Point => [Math.round(row.length("left") + corner[0]), Math.round(row.length("top") + corner[1])];
  const doorIds: string[] = [];
  return {
    ...room, name: head.text("name"), level: head.raw("level") === "" ? 0 : head.whole("level", -20, 200), outline,
    uses: oneOf(USES, head.many("uses")), outdoor: head.yes("outdoor") ? true : undefined,
    posted: Object.values(posted).some((n) => n !== undefined) ? posted : undefined,
    doors: form.rows("doors").map((row) => {
      const was = room.doors[row.index], people = oneOf(["guests", "service"] as const, row.many("for"));
      const named = row.raw("name") === "" || row.raw("name") === was?.id.replaceAll("-", " ");
      const id = named && was && !doorIds.includes(was.id) ? was.id : idFrom(row.raw("name"), [...doorIds, ...(named ? ids(room.doors) : [])], "door");
      doorIds.push(id);
      return { ...was, id, ...stretch(row, was), leads: row.raw("leads"), swing: oneOf(["in", "out", "both", "none"] as const, [row.raw("swing")])[0] ?? "out", for: people.length > 0 ? people : ["guests" as const], exit: row.yes("exit"), steps: row.maybe.whole("steps") };
    }),
    windows: form.rows("windows").map((row) => ({ ...room.windows[row.index], ...stretch(row, room.windows[row.index]), sill: row.raw("sill") === "" ? 900 : row.length("sill", 0) })),
    walls: form.rows("walls").map((row) => ({ ...room.walls[row.index], ...stretch(row, room.walls[row.index]), is: oneOf(["feature", "plain", "mirror"] as const, [row.raw("is")])[0] ?? "plain" })),
    obstacles: form.rows("obstacles").map((row) => {
      const was = room.obstacles[row.index], kind = oneOf(OBSTACLE_KINDS, [row.raw("kind")])[0] ?? "other";
      return { ...was, id: was?.id ?? fresh(taken.obstacles, `${kind}-${row.index + 1}`, "thing"), kind, outline: readFloor(row, corner, venue), height: row.maybe.length("height") };
    }),
    keepClear: form.rows("keepClear").map((row) => {
      const was = room.keepClear[row.index];
      return { ...was, id: was?.id ?? fresh(taken.keepClear, row.raw("why"), "clear"), why: row.text("why"), outline: readFloor(row, corner, venue) };
    }),
    sockets: form.rows("sockets").map((row) => readSocket(row, { outline, corner, was: room.sockets[row.index] })),
    standing: form.rows("standing").map((row) => {
      const was = room.standing[row.index], round = row.raw("diameter") !== "";
      return { ...was, id: was?.id ?? fresh(taken.standing, row.raw("name"), "piece"), name: row.text("name"), kind: oneOf(STANDING, [row.raw("kind")])[0] ?? "other", at: at(row), angle: row.raw("angle") === "" ? 0 : row.figure("angle"), move: row.raw("move") || null,
        shape: round ? { diameter: row.length("diameter", 100) } : { width: row.length("width", 50), depth: row.length("depth", 50) } };
    }),
  };
}

const oneOf = <T extends string>(list: readonly T[], typed: readonly string[]): readonly T[] => list.filter((one) => typed.includes(one));
const moved = (p: Point, by: Point): Point => [p[0] + by[0], p[1] + by[1]];
const sameShape = (a: Polygon, b: Polygon, shift: Point): boolean => a.length === b.length && a.every((p, i) => { const q = b[i]; return q !== undefined && p[0] === q[0] + shift[0] && p[1] === q[1] + shift[1]; });

function readOutline(row: Row, venue: Venue): Polygon {
  const place: Point = [row.raw("left") === "" ? 0 : row.length("left"), row.raw("top") === "" ? 0 : row.length("top")];
  if (row.raw("form") !== "corners") return rectangleFrom(place, row.length("width", 1000), row.length("depth", 1000));
  const typed = readCorners(row, "corners", venue);
  if (typed.length < 3) return [];
  const [x, y] = cornerOf(typed);
  return typed.map((p): Point => [p[0] - x + place[0], p[1] - y + place[1]]);
}

/** A stretch of a wall from its row; exactly as it was where nothing about it was changed. */
function readStretch(row: Row, { outline, venue, was }: { readonly outline: Polygon; readonly venue: Venue; readonly was: Stretch | undefined }): Stretch {
  const typed = { wall: row.raw("wall"), start: row.raw("start") === "" ? 0 : row.length("start", 0), width: row.length("width", 1) };
  const before = was && onWall(outline, was);
  if (was && before && before.wall === typed.wall && before.start === typed.start && before.width === typed.width) return was;
  if (outline.length === 0) return { from: [0, 0], to: [0, 0] };
  if (wallIndex(outline, typed.wall) < 0) row.amiss("wall", `the outline has no wall ${typed.wall}; it has A to ${wallName(outline.length - 1)}.`);
  else if (reachesPast(outline, typed)) row.amiss("start", `this is not on a wall: wall ${typed.wall} is ${saidLength(wallLength(outline, wallIndex(outline, typed.wall)), venue)} long, and this reaches past its end.`, true);
  return stretchOn(outline, typed) ?? { from: [0, 0], to: [0, 0] };
}

type SocketPlace = { readonly outline: Polygon; readonly corner: Point; readonly was: Room["sockets"][number] | undefined };
function readSocket(row: Row, { outline, corner, was }: SocketPlace): Room["sockets"][number] {
  const wall = row.raw("wall"), circuit = row.maybe.text("circuit"), amps = row.maybe.figure("amps");
  const stands = wall === "floor" ? ([row.length("left") + corner[0], row.length("top") + corner[1]] as const) : stretchOn(outline, { wall, start: row.raw("start") === "" ? 0 : row.length("start", 0), width: 0 })?.from ?? ([0, 0] as const);
  const old = was === undefined ? undefined : socketAt(was);
  // A socket within 2 mm of its wall stays where it was measured.
  const at = old && Math.abs(old[0] - stands[0]) <= 2 && Math.abs(old[1] - stands[1]) <= 2 ? old : stands;
  return circuit === undefined && amps === undefined ? at : { ...(was && !("length" in was) ? was : {}), at, circuit, amps };
}
