import { boxOf, contains, type Box, type Point, type Region } from "../../geometry";
import { isRound, footprintPolygon, type Item, type Scene } from "../../layout";
import type { Drape, Room, Venue } from "../../venue";
import type { Layer, Mark, Paper } from "../display";
import { closed, line, regionSteps } from "../paths";
import { seatCorners, seatsOf } from "./chairs";
import { chairOf } from "../../rules";
import { planVoice, planWords } from "../../words/plan";
import { labelOf, partsOf, readingOrder, roomSize } from "./describe";
import { dimensionStrings, leastGaps, type Strings } from "./dimensions";
import { drawDrape, drawKeepClear, drawObstacle, drawSocket, drawTerrace, drawWall, drapeTrack, socketPoint } from "./fittings";
import { drawChanges, type Change } from "../changes";
import { drawFindings, type Lettered } from "./findings";
import { drawFlows, drawSights, flowsOf, sightsOf } from "./flows";
import type { Rect } from "./ground";
import { toPaper, type Frame, type Hand } from "./hand";
import { setBlock, blockSize, beside, firstFree, type Line } from "./lettering";
import { numbersOf, runsOf, withRunsAsOne } from "./numbers";
import { extentOf, inflate, occupy } from "./occupy";
import { drawOpening, drawWindow, openingsOf, stepsPolygon, type Opening } from "./openings";
import { drawPiece, layerOf } from "./pieces";
import type { Storey } from "./spread";
import { massOf } from "./walls";
import { medallion, pieceRect, roomName, wayOut, wordsBeside, wordsOn, type Desk } from "./words";
import { formatLength, formatSize } from "../../measure";
import { textWidth } from "../metrics";

/** What of a level is known before it has a place on the paper. */
export type Level = {
  readonly venue: Venue;
  readonly scene: Scene;
  readonly rooms: readonly Room[];
  readonly items: readonly Item[];
  readonly walls: Region;
  readonly openings: readonly Opening[];
  /** Levels drawn beside one another, each with its name; empty where there is one only. */
  readonly storeys: readonly Storey[];
  /** Walls, terraces, swings and steps, in mm of the venue. */
  readonly box: Box;
};

export function levelOf(venue: Venue, scene: Scene, rooms: readonly Room[], storeys: readonly Storey[] = []): Level {
  const { walls } = massOf(rooms);
  const openings = openingsOf(rooms, walls);
  const points: Point[] = [
    ...walls.flatMap((p) => p.outer), ...rooms.flatMap((r) => r.outline),
    ...openings.flatMap((o) => [...o.sweeps.flat(), ...(stepsPolygon(o) ?? [])]),
  ];
  const ids = new Set(rooms.map((r) => r.id));
  return { venue, scene, rooms, items: scene.items.filter((i) => ids.has(i.room)), walls, openings, storeys, box: boxOf(points) };
}

export const stringsOf = (level: Level, frame: Frame, hand: Hand): Strings =>
  dimensionStrings({ rooms: level.rooms, items: level.items, runs: runsOf(level.scene, numbersOf(level.scene)), plan: level.box, sweeps: level.openings.flatMap((o) => [...o.sweeps.flat(), ...(stepsPolygon(o) ?? [])]), frame, hand });

/** The paper that a level's rooms, swings and steps cover: what the sheet's blocks must keep off. */
export function coverOf(level: Level, frame: Frame): readonly Rect[] {
  const rect = (points: readonly Point[], by: number): Rect => {
    const r = pieceRect(points, frame);
    return { x: r.x - by, y: r.y - by, width: r.width + 2 * by, height: r.height + 2 * by };
  };
  const wall = 500 * frame.perMm;
  return [
    ...level.rooms.map((r) => rect(r.outline, r.outdoor ? 1.5 : wall + 1.5)),
    ...level.openings.flatMap((o) => [...o.sweeps.map((s) => rect(s, 0.8)), ...(stepsPolygon(o) ? [rect(stepsPolygon(o) ?? [], 0.8)] : [])]),
  ];
}

/** Ground, walls, floors, openings and what is fixed. */
function fabric(level: Level, frame: Frame, hand: Hand): readonly Mark[] {
  const P = (p: Point): Paper => toPaper(frame, p);
  const { rooms, walls, venue, scene } = level;
  const indoors = rooms.filter((r) => !r.outdoor);
  const marks: Mark[] = rooms.filter((r) => r.outdoor).flatMap((r) => drawTerrace(r, frame, hand));
  if (walls.length > 0) marks.push({ kind: "path", steps: regionSteps(walls, P), fill: "wall", evenOdd: true });
  for (const r of indoors) marks.push({ kind: "path", steps: closed(r.outline.map(P)), fill: "floor", stroke: { ink: "wall", weight: hand.fine } });
  for (const r of indoors) for (const w of r.windows) marks.push(...drawWindow(r, w, walls, frame, hand));
  for (const o of level.openings) marks.push(...drawOpening(o, frame, hand));
  for (const r of rooms) {
    for (const k of r.keepClear) marks.push(...drawKeepClear(k.outline, frame, hand));
    for (const w of r.walls) marks.push(...drawWall(r, w, frame, hand));
    for (const s of r.sockets) marks.push(...drawSocket(r, socketPoint(s), frame, hand));
  }
  for (const d of venue.drapes) {
    const lender = rooms.find((r) => r.id === d.from);
    const drawn = scene.drapes.includes(d.id);
    if (lender && (drawn || hand.detail === "full")) marks.push(...drawDrape(d, lender, frame, hand, drawn));
  }
  for (const r of rooms) for (const o of r.obstacles) if (o.kind !== "column") marks.push(...drawObstacle(o, frame, hand));
  return marks;
}

/** Aisles that a person will measure: the least way between two tables, across and down. */
function gaps(level: Level, desk: Desk): readonly Mark[] {
  const { frame, hand, ground } = desk;
  if (hand.detail !== "full") return [];
  const marks: Mark[] = [];
  for (const room of level.rooms) for (const g of leastGaps(room, level.items)) {
    const a = toPaper(frame, g.from), b = toPaper(frame, g.to);
    const flat = Math.abs(a[1] - b[1]) < Math.abs(a[0] - b[0]);
    const text = formatLength(Math.round(g.mm), hand.lengths);
    const wide = textWidth(text, { size: hand.note, face: "sans" });
    const mid: Paper = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const where: Paper = flat ? [mid[0], mid[1] - 0.9] : [mid[0] - 0.9, mid[1]];
    const rect: Rect = flat ? { x: mid[0] - wide / 2, y: where[1] - hand.note * 0.75, width: wide, height: hand.note * 0.8 } : { x: where[0] - hand.note * 0.75, y: mid[1] - wide / 2, width: hand.note * 0.8, height: wide };
    if (!ground.free(rect)) continue;
    ground.takeRect(inflate(rect, 0.4));
    ground.takeLine(a, b);
    marks.push(
      { kind: "path", steps: line(a, b), stroke: { ink: "ink-3", weight: hand.fine } },
      { kind: "path", steps: [a, b].flatMap((c) => line([c[0] - 0.8, c[1] + 0.8], [c[0] + 0.8, c[1] - 0.8])), stroke: { ink: "ink", weight: hand.mid } },
      { kind: "text", at: where, text, size: hand.note, face: "sans", anchor: "middle", ink: "ink-2", ...(flat ? {} : { angle: -90 }) },
    );
  }
  return marks;
}

function remarks(level: Level, desk: Desk): readonly Mark[] {
  const { frame, hand } = desk;
  const marks: Mark[] = [];
  const told = planVoice(hand.lengths.locale);
  const say = (text: string, points: readonly Point[], room: number): void => {
    const target = pieceRect(points, frame);
    const words = wordsBeside(text, { target, tight: target, room, desk });
    if (words) marks.push(...words);
  };
  level.rooms.forEach((r, i) => {
    for (const k of r.keepClear) say(k.why, k.outline, i);
    for (const o of r.obstacles) if (o.kind === "stair" || o.kind === "hearth") say(told(o.kind), o.outline, i);
    if (hand.detail !== "full") return;
    const seen = new Set<string>();
    for (const w of r.walls) if (w.is !== "plain" && !seen.has(w.is)) { seen.add(w.is); say(told(w.is === "feature" ? "feature wall" : "mirror"), [w.from, w.to], i); }
  });
  if (hand.detail === "full") for (const d of level.venue.drapes) drapeWord(d, level, desk, marks);
  return marks;
}

function drapeWord(d: Drape, level: Level, { frame, hand, ground }: Desk, marks: Mark[]): void {
  const index = level.rooms.findIndex((r) => r.id === d.from);
  const lender = level.rooms[index];
  const track = lender && drapeTrack(d, lender)[0];
  if (!track) return;
  const text = planVoice(hand.lengths.locale)(level.scene.drapes.includes(d.id) ? "drape" : "drape track");
  const lines: readonly Line[] = [{ text, type: { size: hand.note, face: "serif", italic: true }, ink: "ink-2" }];
  const spot = firstFree(ground, beside(pieceRect(track, frame), blockSize(lines), 6), index);
  if (spot) marks.push(...setBlock(lines, spot.at, spot.anchor));
}

/** Draws a level where it has been put. Nothing with an edge comes after the words. */
export function drawLevel(level: Level, { frame, hand, ground, strings, ways, findings, changes = [], layers = [] }: Omit<Desk, "venue"> & {
  readonly strings: Strings; readonly ways: boolean; readonly findings: readonly Lettered[]; readonly changes?: readonly Change[]; readonly layers?: readonly LineLayer[];
}): readonly Mark[] {
  const { venue, scene } = level;
  const desk: Desk = { frame, hand, ground, venue };
  occupy(level, desk, strings);
  const numbers = numbersOf(scene);
  const parts = partsOf(scene, venue.locale), say = planWords(venue.locale);
  const chair = chairOf(venue);
  const style = hand.lengths;
  const items = [...readingOrder(scene)].filter((i) => level.items.includes(i));
  const piecesOf = (room: Room): readonly Mark[] => {
    const here = items.filter((i) => i.room === room.id);
    const rows = here.filter((i) => i.kind === "chair");
    const others = here.filter((i) => i.kind !== "chair").sort((a, b) => layerOf(a) - layerOf(b));
    const group = (item: Item): Mark => ({
      kind: "group", id: `piece-${item.id}`, role: "piece", label: labelOf(item, numbers.get(item.id), style, parts.get(item.id)), marks: drawPiece(item, { venue, frame, hand }),
    });
    return [
      ...others.filter((i) => layerOf(i) === 0).map(group),
      ...(rows.length > 0 ? [{ kind: "group", role: "piece", label: say.chairsInRows(rows.length), marks: rowsOf(rows, { venue, frame, hand }) } satisfies Mark] : []),
      ...others.filter((i) => layerOf(i) > 0).map(group),
    ];
  };
  const rooms: readonly Mark[] = level.rooms.map((room) => {
    const [w, d] = roomSize(room);
    return { kind: "group", id: `room-${room.id}`, role: "room", label: `${room.name}, ${formatSize(w, d, { ...style, unit: true })}`, marks: piecesOf(room) };
  });
  const columns = level.rooms.flatMap((r) => r.obstacles.filter((o) => o.kind === "column").flatMap((o) => drawObstacle(o, frame, hand)));
  const over = lineLayers(level, layers, desk);
  const runs = runsOf(scene, numbers).filter((r) => r.items.some((i) => level.items.includes(i)));
  const figures = runs.flatMap((r) => medallion(r, desk));
  const aisles = gaps(level, desk);
  const named = new Set<string>();
  const on: Mark[] = [];
  const pieces = withRunsAsOne(level.items);
  for (const item of pieces) {
    if (numbers.has(item.id) || item.kind === "chair" || item.role === "wheelchair-space") continue;
    const words = wordsOn(item, desk);
    if (words) { on.push(...words); named.add(item.id); }
  }
  const changed = drawChanges(changes, new Set(level.rooms.map((r) => r.id)), desk);
  const storeys = level.storeys.flatMap((s) => storeyName(s, desk));
  const names = level.rooms.flatMap((r, i) => roomName(r, i, desk, { outside: ways, used: scene.rooms.includes(r.id) }));
  const out = ways ? level.openings.filter((o) => o.gate.door.exit).flatMap((o) => wayOut(o, desk)) : [];
  const besides: Mark[] = [];
  const said = new Set<string>();
  for (const item of pieces) {
    if (numbers.has(item.id) || item.kind === "chair" || named.has(item.id)) continue;
    const room = level.rooms.findIndex((r) => r.id === item.room);
    // Pieces that share a name and stand together are named once.
    const key = `${item.room}/${item.label}`;
    if (said.has(key)) continue;
    const same = pieces.filter((i) => i.room === item.room && i.label === item.label && i.kind === item.kind).length;
    const name = item.role === "wheelchair-space" ? say.wheelchairPlace : item.label;
    const text = same > 1 ? `${name} (${same})` : name;
    const words = wordsBeside(text, { target: pieceRect(extentOf(item, chair), frame), tight: pieceRect(footprintPolygon(item), frame), room, desk });
    if (words) { besides.push(...words); said.add(key); }
  }
  const seats = hand.detail === "full" ? wheelchairWords(level, desk) : [];
  return [
    { kind: "group", id: "fabric", role: "decoration", marks: fabric(level, frame, hand) },
    ...rooms,
    ...(changed.was.length > 0 ? [{ kind: "group", id: "was", layer: "changes", role: "decoration", marks: changed.was } satisfies Mark] : []),
    { kind: "group", role: "decoration", marks: columns },
    ...over,
    { kind: "group", role: "decoration", marks: [...aisles, ...strings.marks, ...figures, ...on, ...storeys, ...names, ...out, ...besides, ...seats, ...remarks(level, desk)] },
    ...layered("changes", changed.is),
    ...layered("findings", drawFindings(findings, level.items, desk)),
  ];
}

/** Layers of lines that are drawn where they are asked for. */
export type LineLayer = Extract<Layer, "ways" | "sight">;

function lineLayers(level: Level, asked: readonly LineLayer[], desk: Desk): readonly Mark[] {
  return asked.flatMap((layer): readonly Mark[] => {
    const told = layer === "ways" ? flowsOf(level.venue, level.scene) : sightsOf(level.venue, level.scene);
    const marks = "ways" in told ? drawFlows(told, desk, level.rooms) : drawSights(told, desk);
    return marks.length === 0 ? [] : [{ kind: "group", id: layer, layer, role: "note", label: told.words.join(" "), marks }];
  });
}

/** What the layers of lines among the marks say in words. */
export const layerWords = (marks: readonly Mark[]): readonly string[] =>
  marks.flatMap((m) => (m.kind === "group" && (m.layer === "ways" || m.layer === "sight") && m.label ? [m.label] : []));

/** What a level is called, outside its walls. */
function storeyName({ name, box }: Storey, { frame, hand, ground }: Desk): readonly Mark[] {
  const lines: readonly Line[] = [{ text: name, type: { size: Math.max(hand.note, hand.room * 0.8), face: "serif", italic: true }, ink: "ink" }];
  const wall = inflate(pieceRect([[box.minX, box.minY], [box.maxX, box.maxY]], frame), 500 * frame.perMm);
  const spot = firstFree(ground, beside(wall, blockSize(lines), 14), -1);
  return spot ? setBlock(lines, spot.at, spot.anchor) : [];
}

/** A layer that a page can hide and show; none where nothing is on it. */
const layered = (layer: Layer, marks: readonly Mark[]): readonly Mark[] => (marks.length === 0 ? [] : [{ kind: "group", id: layer, layer, role: "figure", marks }]);

/** All chairs of a room's rows in one go: three marks for a hundred chairs. */
function rowsOf(rows: readonly Item[], to: { readonly venue: Venue; readonly frame: Frame; readonly hand: Hand }): readonly Mark[] {
  const bySize = new Map<string, Item[]>();
  for (const r of rows) { const key = isRound(r.shape) ? "round" : `${r.shape.width}/${r.shape.depth}`; bySize.set(key, [...(bySize.get(key) ?? []), r]); }
  return [...bySize.values()].flatMap((list) => {
    const first = list[0];
    return first ? drawPiece({ ...first, seats: list.flatMap(seatsOf) }, to) : [];
  });
}

function wheelchairWords(level: Level, desk: Desk): readonly Mark[] {
  return level.items.flatMap((item) => item.role === "wheelchair-space" ? [] : item.seats.filter((s) => s.place === "wheelchair").flatMap((s) => {
    const room = level.rooms.findIndex((r) => contains(r.outline, [s.x, s.y]));
    const target = pieceRect(seatCorners(s, chairOf(level.venue)), desk.frame);
    return wordsBeside(planWords(level.venue.locale).wheelchairPlace, { target, tight: target, room, desk }) ?? [];
  }));
}

